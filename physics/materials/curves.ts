/** Properties that change with temperature, as straight lines through published points. */
import { OutOfRange } from '../evening/problem.ts';
import { zeroCelsius } from './constants.ts';

/** A property of a solid and its integral from 0 degC, both over kelvin. */
export interface Curve {
  readonly value: (temperature: number) => number;
  /** integral of the value from 273.15 K to the temperature; negative below */
  readonly integral: (temperature: number) => number;
}

/**
 * Straight lines through points; beyond the first and the last point the outer lines go on.
 *
 * @param points temperatures in degC, rising, at least one; one point alone makes a constant
 * @param lowest K, @param highest K: outside this range the curve throws OutOfRange named `what`
 */
export function throughPoints(
  what: string,
  lowest: number,
  highest: number,
  points: readonly (readonly [celsius: number, value: number])[],
): Curve {
  const at = points.map(([t]) => t);
  const values = points.map(([, value]) => value);
  const slopes = at.slice(1).map((t, index) => (values[index + 1]! - values[index]!) / (t - at[index]!));
  if (slopes.length === 0) slopes.push(0);
  const piece = (t: number): number => {
    let index = 0;
    while (index < slopes.length - 1 && t > at[index + 1]!) index++;
    return index;
  };
  const fromFirst = (t: number): number => {
    const end = piece(t);
    let sum = 0;
    for (let index = 0; index < end; index++) {
      sum += ((values[index]! + values[index + 1]!) / 2) * (at[index + 1]! - at[index]!);
    }
    const run = t - at[end]!;
    return sum + run * (values[end]! + (slopes[end]! * run) / 2);
  };
  const atZero = fromFirst(0);
  const celsius = (temperature: number): number => {
    checkRange(what, temperature, lowest, highest);
    return temperature - zeroCelsius;
  };
  return {
    value: (temperature) => {
      const t = celsius(temperature);
      const index = piece(t);
      return values[index]! + slopes[index]! * (t - at[index]!);
    },
    integral: (temperature) => fromFirst(celsius(temperature)) - atZero,
  };
}

/** Throws OutOfRange named `what` unless lowest <= temperature <= highest; NaN throws too. */
export function checkRange(what: string, temperature: number, lowest: number, highest: number): void {
  if (!(temperature >= lowest && temperature <= highest)) {
    throw new OutOfRange(what, `${temperature} K`, `${lowest} K to ${highest} K`);
  }
}
