/** A plan with what was learned, in the words of the file: the numbers, and how much better they are now known. */
import { saturday } from '../evening/demos.ts';
import type { Evening } from '../evening/evening.ts';
import type { PlanFile } from '../evening/planFile.ts';
import { setPath } from '../evening/planPath.ts';
import { uncertainNames, usualSpread, type Spread, type UncertainName } from '../evening/uncertain.ts';
import { browningPrior, type BakesFit } from './fitBakes.ts';
import type { OvenFit } from './fit.ts';
import { p10To90 } from '../numerics/normal.ts';
import { eveningAt, ovenNumbers } from './ovenNumbers.ts';

const digits = (value: number): string => String(Number(value.toPrecision(5)));

/** Inputs of the plan's range that act on the bake alone; the first two hide in the browning rate. */
const browningInputs: readonly UncertainName[] = ['browning', 'contact'];
const bakeInputs: readonly UncertainName[] = [...browningInputs, 'density', 'crust'];

/**
 * One standard deviation of an input once readings and bakes are known, in the units of `usualSpread`. A preheat does not
 * tell which of the inputs behind its ready time was off: all of them shrink as the ready time's range has, the dial by
 * what is known of it, browning and contact by what is known of the rate.
 */
function spreadAfter(
  name: UncertainName,
  now: number,
  before: Spread | null,
  fit: OvenFit | undefined,
  bakes: BakesFit | undefined,
): number {
  const usual = usualSpread[name];
  if (browningInputs.includes(name))
    return bakes === undefined ? now : (usual * bakes.spread) / browningPrior.spread;
  if (fit === undefined || before === null || bakeInputs.includes(name)) return now;
  if (name === 'thermostatOffset') {
    const { p10, p90 } = fit.numbers.thermostatOffset;
    const { spread } = ovenNumbers.find((number) => number.name === name)!;
    return (usual * (p90 - p10)) / p10To90 / spread;
  }
  const [low, high] = before.preheatMinutes;
  return (now * Math.log(fit.ready.p90 / fit.ready.p10)) / Math.log(high / low);
}

function knownAfter(
  evening: Evening,
  before: Spread | null,
  fit: OvenFit | undefined,
  bakes: BakesFit | undefined,
): NonNullable<PlanFile['known']> {
  const entries = uncertainNames.flatMap((name): readonly (readonly [UncertainName, string | number])[] => {
    const own = evening.known[name];
    const now = own ?? usualSpread[name];
    const value = Math.min(now, spreadAfter(name, now, before, fit, bakes));
    if (value === usualSpread[name] && own === undefined) return [];
    if (name === 'thermostatOffset') return [[name, `${digits(value)} K`]];
    const absolute = name === 'plateEmissivity' || name === 'wallEmissivity';
    return [[name, Number(digits(absolute ? value : 100 * value))]];
  });
  return Object.fromEntries(entries);
}

/**
 * @param before the range before, by which the inputs' own spreads are narrowed
 * @returns a copy; a number beyond what a plan may say stays the plan's own
 */
export function learnedPlan(
  file: PlanFile,
  evening: Evening,
  before: Spread | null,
  fit: OvenFit | undefined,
  bake: BakesFit | undefined,
): PlanFile {
  const learned = fit === undefined ? evening : eveningAt(evening, fit.z);
  // A block that a file leaves out is the built-in evening's; one with a single field in it would not be.
  const whole: PlanFile = {
    ...file,
    oven: file.oven ?? saturday.oven,
    plate: file.plate ?? saturday.plate,
    pizzas: file.pizzas ?? saturday.pizzas,
    known: knownAfter(evening, before, fit, bake),
  };
  const ofOven =
    fit === undefined
      ? []
      : ([
          ['oven.power.bottom', `${digits(learned.oven.power.bottom / 1000)} kW`],
          ['oven.power.top', `${digits(learned.oven.power.top / 1000)} kW`],
          ['oven.thermostatOffset', `${digits(learned.oven.thermostatOffset)} K`],
          ['plate.thickness', `${digits(1000 * learned.plate.thickness)} mm`],
        ] as const);
  const ofBake =
    bake === undefined ? [] : ([['pizzas.browningRate', digits(bake.browningRate.value)]] as const);
  return [...ofOven, ...ofBake].reduce((changed, [path, text]) => {
    const set = setPath(changed, path, text);
    return set.ok ? set.file : changed;
  }, whole);
}
