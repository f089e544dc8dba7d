import { describe, expect, it } from 'vitest';
import { SeededRandom } from '../../../physics/numerics/random.ts';

const count = 100_000;
function moments(values: readonly number[]): readonly number[] {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  const central = (power: number): number =>
    values.reduce((sum, x) => sum + (x - mean) ** power, 0) / values.length;
  const deviation = Math.sqrt(central(2));
  return [mean, deviation, central(3) / deviation ** 3, central(4) / deviation ** 4];
}

describe('SeededRandom', () => {
  it('gives the same numbers for the same seed and others for another', () => {
    const take = (seed: number): number[] => {
      const random = new SeededRandom(seed);
      return Array.from({ length: 20 }, () => random.normal());
    };
    expect(take(7)).toEqual(take(7));
    expect(take(7)).not.toEqual(take(8));
  });
  // Tolerances: five standard errors of 1e5 independent draws.
  it('is uniform in (0, 1): mean 1/2, deviation 1/sqrt 12, skewness 0, kurtosis 9/5', () => {
    const random = new SeededRandom(1);
    const values = Array.from({ length: count }, () => random.uniform());
    expect(values.every((x) => x > 0 && x < 1)).toBe(true);
    const [mean, deviation, skewness, kurtosis] = moments(values);
    expect(Math.abs(mean! - 0.5)).toBeLessThan(0.0046);
    expect(Math.abs(deviation! - 1 / Math.sqrt(12))).toBeLessThan(0.0021);
    expect(Math.abs(skewness!)).toBeLessThan(0.03);
    expect(Math.abs(kurtosis! - 1.8)).toBeLessThan(0.02);
  });
  it('is normal: mean 0, deviation 1, skewness 0, kurtosis 3, 68.27 % within one deviation', () => {
    const random = new SeededRandom(2);
    const values = Array.from({ length: count }, () => random.normal());
    const [mean, deviation, skewness, kurtosis] = moments(values);
    expect(Math.abs(mean!)).toBeLessThan(0.016);
    expect(Math.abs(deviation! - 1)).toBeLessThan(0.0112);
    expect(Math.abs(skewness!)).toBeLessThan(0.039);
    expect(Math.abs(kurtosis! - 3)).toBeLessThan(0.078);
    const inside = values.filter((x) => Math.abs(x) < 1).length / count;
    expect(Math.abs(inside - 0.6827)).toBeLessThan(0.0075);
  });
  it('does not lean on its last value: neighbours are uncorrelated', () => {
    const random = new SeededRandom(3);
    const values = Array.from({ length: count }, () => random.uniform() - 0.5);
    const lagged = values.slice(1).reduce((sum, x, i) => sum + x * values[i]!, 0) / (count - 1);
    expect(Math.abs(lagged * 12)).toBeLessThan(0.016);
  });
});
