/**
 * The one number that bakes with their shades can tell: how fast crusts brown in this kitchen, as a factor on the rate
 * of the law. Contact with the plate, flour and dough all hide in it. It carries over to another plate.
 *
 *     ln f = ln f0 + b,  b ~ N(0, 0.5^2) unless known better
 *     each bake:  ln(I(L seen) / I simulated) = b + error of the eye
 */
import { bakeParameters } from '../bake/parameters.ts';
import { browningLaw, rawLightness } from '../bake/browning.ts';
import type { Evening } from '../evening/evening.ts';
import { prepareModel } from '../evening/model.ts';
import { runPreheat } from '../evening/preheat.ts';
import { z90 } from '../numerics/normal.ts';
import type { BakeRecord } from './bakeRecords.ts';
import type { Quantiles } from './fit.ts';
import { unlikelySum } from './mostProbable.ts';
import { priorSpread, type Prior } from './ovenNumbers.ts';
import { rerun } from './rerun.ts';

/** ln of the factor before a bake is known: browning rate 0.40 and contact, which moves the base's rate as 0.30 does. */
export const browningPrior: Prior = { spread: 0.5, hides: { browning: 0.4, contact: 0.3 } };

/** L*, how well a cook tells a shade; our estimate: half the step from one named shade to the next */
const lightnessSpread = 5;
/** how much the rate differs from pizza to pizza of one evening (flour under it, dough, where it lay); our estimate */
const pizzaSpread = 0.15;

export interface SeenBake {
  readonly pizza: number;
  /** s from the load */
  readonly seconds: number;
  /** L* that the plan gave for that time, that it gives with what was learned, and the one seen */
  readonly before: number;
  readonly model: number;
  readonly seen: number;
}

export interface BakesFit {
  /** times the law's own rate */
  readonly browningRate: Quantiles;
  /** ln: one standard deviation after the bakes */
  readonly spread: number;
  readonly bakes: readonly SeenBake[];
  /** false when the bakes differ among each other by more than eye and dough explain; the range is wider then */
  readonly agrees: boolean;
}

/**
 * @param evening with the oven as it is known by now
 * @param records all pizzas of the evening, one after another; those whose shade was judged tell
 * @returns undefined when none was judged
 * @throws OutOfRange beyond what the properties are known for
 */
export function fitBakes(evening: Evening, records: readonly BakeRecord[]): BakesFit | undefined {
  const last = records.findLast(({ lightness }) => lightness !== undefined);
  if (last?.outAt === undefined) return undefined;
  const law = browningLaw(evening.pizzas.browningLaw ?? bakeParameters.browningLaw);
  const rateBefore = evening.pizzas.browningRate ?? 1;
  const told = records.slice(0, records.indexOf(last) + 1);
  const model = prepareModel(evening);
  const { browned } = rerun(model, runPreheat(model), told, last.outAt);
  const bakes = told.flatMap(({ pizza, inAt, outAt, lightness }, i) => {
    const reached = browned[i]!;
    if (lightness === undefined || outAt === undefined || !(reached > 0)) return [];
    // Where raw or burnt the law is flat: a shade says no more than that it is so.
    const seen = Math.min(Math.max(lightness, law.darkest + 1), rawLightness - 1);
    const step = 0.5;
    // d ln I / dL by a small difference: what an error of the eye does to the factor.
    const perLightness =
      (Math.log(law.integralFor(seen - step)) - Math.log(law.integralFor(seen + step))) / (2 * step);
    return [
      {
        pizza,
        seconds: outAt - inAt,
        seen: lightness,
        reached,
        measured: Math.log(law.integralFor(seen) / reached),
        variance: (perLightness * lightnessSpread) ** 2 + pizzaSpread ** 2,
      },
    ];
  });
  if (bakes.length === 0) return undefined;
  const before = priorSpread(browningPrior, evening.known);
  // One normal prior and independent normal measurements: precisions add.
  const posterior = (widened: number): { readonly mean: number; readonly spread: number } => {
    const weights = bakes.map(({ variance }) => 1 / (variance * widened));
    const precision = 1 / before ** 2 + weights.reduce((sum, w) => sum + w, 0);
    const pull = bakes.reduce((sum, { measured }, i) => sum + measured * weights[i]!, 0);
    return { mean: pull / precision, spread: 1 / Math.sqrt(precision) };
  };
  const asBelieved = posterior(1);
  const misfit = bakes.reduce(
    (sum, { measured, variance }) => sum + (measured - asBelieved.mean) ** 2 / variance,
    0,
  );
  // The bakes tell their own middle: one degree of freedom goes with it.
  const free = bakes.length - 1;
  const agrees = free === 0 || misfit <= unlikelySum(free);
  // More scatter than chance allows counts for less, in proportion (Birge, Phys Rev 40 (1932) 207-227).
  const { mean, spread } = agrees ? asBelieved : posterior(misfit / free);
  const at = (u: number): number => rateBefore * Math.exp(mean + u * spread);
  return {
    browningRate: { value: at(0), p10: at(-z90), p90: at(z90) },
    spread,
    bakes: bakes.map(({ pizza, seconds, seen, reached }) => ({
      pizza,
      seconds,
      seen,
      before: law.lightness(reached),
      model: law.lightness(reached * Math.exp(mean)),
    })),
    agrees,
  };
}
