import { describe, expect, it } from 'vitest';
import { inUnits } from '../../../physics/quantities/index.ts';

describe('sentences in other units', () => {
  it.each([
    ['Set it to 250 °C.', 'Set it to 482 °F.'],
    ['Rated to 215 to 230 °C: it chars', 'Rated to 419 to 446 °F: it chars'],
    ['4 balls of 250 g, 30 cm across', '4 balls of 8.82 oz, 11.8 in across'],
    ['a plate of 8.8 kg, 8 mm thick', 'a plate of 19.4 lb, 0.31 in thick'],
    ['Shape pizza 1 to 30 cm', 'Shape pizza 1 to 11.8 in'],
    // A figure that is no temperature stays as it was written.
    ['from -300 to 20 °C', 'from -300 °C to 68 °F'],
    ['0 g of sugar, 0 cm of air', '0 oz of sugar, 0 in of air'],
    ['after 48 min, 12 grams, 5 g/l', 'after 48 min, 12 grams, 5 g/l'],
  ])('%s', (metric, us) => {
    expect(inUnits(metric, 'us')).toBe(us);
    expect(inUnits(metric, 'metric')).toBe(metric);
  });
});
