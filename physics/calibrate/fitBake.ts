/**
 * The one number that one bake with its shade can tell: how fast crusts brown in this kitchen, as a factor on the rate
 * of the law. Contact with the plate, flour and dough all hide in it. It carries over to another plate.
 */
import { bakeParameters } from '../bake/parameters.ts';
import { browningLaw, rawLightness } from '../bake/browning.ts';
import type { Evening } from '../evening/evening.ts';
import { sampleAt } from '../numerics/samples.ts';
import { simulateEvening } from '../evening/simulate.ts';
import type { Quantiles } from './fit.ts';
import type { BakeRecord } from './readings.ts';

/**
 * One standard deviation of ln of the factor before a bake is known: browning rate 0.40 and contact 0.30 of the plan's
 * range, which moves the base's rate by about as much.
 */
export const browningSpread = 0.5;
/** L*, how well a cook tells a shade; our estimate: half the step from one named shade to the next */
const lightnessSpread = 5;
const z90 = 1.2815515655;
/** L*: dark enough that no real bake was longer */
const darkestAsked = 42;

export interface BakeFit {
  /** times the law's own rate */
  readonly browningRate: Quantiles;
  /** ln: one standard deviation after the bake */
  readonly spread: number;
  /** L* that the plan gave for that time, and the one seen */
  readonly model: number;
  readonly seen: number;
}

/**
 * @param evening with the oven as it is known by now
 * @returns undefined when the bake is longer than the model follows
 */
export function fitBake(evening: Evening, bake: BakeRecord): BakeFit | undefined {
  const law = browningLaw(evening.pizzas.browningLaw ?? bakeParameters.browningLaw);
  const rateBefore = evening.pizzas.browningRate ?? 1;
  const asked = {
    ...evening.pizzas,
    each: undefined,
    count: 1,
    shadeLightness: darkestAsked,
    loadAt: bake.inAt,
  };
  const simulated = simulateEvening({ ...evening, pizzas: asked }).bakes[0]!;
  const { trace } = simulated;
  const end = trace.seconds.at(-1)!;
  const out = simulated.inAt + (bake.outAt - bake.inAt);
  const integral = (t: number): number =>
    law.integralFor(Math.min(sampleAt(trace.seconds, trace.baseLightness, Math.min(t, end)), rawLightness));
  // Beyond the darkest shade the base goes on as in its last half minute.
  const rate = (integral(end) - integral(end - 30)) / 30;
  const reached = integral(out) + Math.max(0, out - end) * rate;
  if (!(reached > 0)) return undefined;
  const seen = Math.max(bake.lightness, law.darkest + 1);
  const step = 0.5;
  const wanted = law.integralFor(seen);
  // d ln I / dL by a small difference: what an error of the eye does to the factor.
  const perLightness =
    (Math.log(law.integralFor(seen - step)) - Math.log(law.integralFor(seen + step))) / (2 * step);
  const measured = Math.log(wanted / reached);
  const noise = perLightness * lightnessSpread;
  const weight = browningSpread ** 2 / (browningSpread ** 2 + noise ** 2);
  const spread = Math.sqrt(weight) * noise;
  const at = (u: number): number => rateBefore * Math.exp(weight * measured + u * spread);
  return {
    browningRate: { value: at(0), p10: at(-z90), p90: at(z90) },
    spread,
    model: law.lightness(reached),
    seen: bake.lightness,
  };
}
