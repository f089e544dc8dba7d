import { describe, expect, it } from 'vitest';
import { capacityOf, heatOf, temperatureOf } from '../../../physics/bake/frozen.ts';
import { waterHeat } from '../../../physics/bake/moistCell.ts';

const zero = 273.15;
const dough = { solids: 1, water: 0.7, solidsHeat: 1700 };

describe('dough with ice in it', () => {
  it('temperature and heat are each other\u2019s inverse from the freezer to the oven', () => {
    for (let celsius = -40; celsius <= 120; celsius += 1.7) {
      const T = zero + celsius;
      expect(Math.abs(temperatureOf(dough, heatOf(dough, T)) - T)).toBeLessThan(1e-6);
    }
  });

  it('the capacity is the slope of the heat', () => {
    for (const celsius of [-30, -18, -10, -5, -3, 5, 60]) {
      const T = zero + celsius;
      const slope = (heatOf(dough, T + 1e-4) - heatOf(dough, T - 1e-4)) / 2e-4;
      expect(Math.abs(capacityOf(dough, T) / slope - 1)).toBeLessThan(1e-5);
    }
  });

  it('above freezing it is dry matter and water side by side', () => {
    expect(heatOf(dough, zero + 40)).toBeCloseTo((1700 + 0.7 * waterHeat) * 40, 6);
  });

  it('at -18 degC six parts of seven of the free water are ice: Raoult, 1 - 2.5/18 of 0.4 kg (worked out)', () => {
    const ice = 0.4 * (1 - 2.5 / 18);
    // L 333.6 kJ/kg and c 2.1 kJ/(kg K) of ice at 0 degC (handbook values, from memory).
    const expected = (1700 + (0.7 - ice) * waterHeat) * -18 + ice * (2100 * -18 - 333.6e3);
    expect(heatOf(dough, zero - 18)).toBeCloseTo(expected, 6);
  });

  it('dough too dry to freeze does not', () => {
    const dry = { ...dough, water: 0.25 };
    expect(temperatureOf(dry, heatOf(dry, zero - 18))).toBeCloseTo(zero - 18, 6);
    expect(capacityOf(dry, zero - 18)).toBeCloseTo(1700 + 0.25 * waterHeat, 9);
  });
});
