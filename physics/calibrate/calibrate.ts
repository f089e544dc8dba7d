/** Readings, bakes and a plan file to what was learned: the numbers, the plan before and after, what to read next. */
import { zeroCelsius } from '../materials/constants.ts';
import { plateMaterial } from '../materials/plates.ts';
import { attempt } from '../evening/attempt.ts';
import type { PlanAnswer, Range, Warning } from '../evening/answer.ts';
import type { Evening } from '../evening/evening.ts';
import { prepareModel } from '../evening/model.ts';
import { plateMass } from '../evening/ovenAnswer.ts';
import { readInstant } from '../evening/clock.ts';
import { planFromFile, type PlanContext } from '../evening/planEvening.ts';
import { runPreheat } from '../evening/preheat.ts';
import type { PlanFile } from '../evening/planFile.ts';
import { OutOfRange, type Problem } from '../evening/problem.ts';
import type { BakeRecord } from './bakeRecords.ts';
import { fitBakes, type BakesFit, type SeenBake } from './fitBakes.ts';
import { fitOven, usualReadingSpread, type OvenFit, type Quantiles } from './fit.ts';
import { placeWords, type SeenPlace } from './forecast.ts';
import { learnedPlan } from './learnedPlan.ts';
import { nextReading, type NextReading } from './nextReading.ts';
import { eveningAt, ovenNumbers, type OvenNumberName } from './ovenNumbers.ts';
import type { DroppedRow, ReadingsRead } from './readings.ts';
import { rerun } from './rerun.ts';
import { usable } from './usable.ts';

export type EstimateName = OvenNumberName | 'browningRate';

export interface Estimate extends Quantiles {
  readonly unit: string;
}

export interface ResidualAnswer {
  readonly minute: number;
  readonly place: SeenPlace;
  /** the pizza that lay on it; of a plate read beside a pizza `plateAround` is the place */
  readonly pizza?: number | undefined;
  readonly readingC: number;
  readonly modelC: number;
  readonly residualK: number;
  /** one standard deviation that was to be expected */
  readonly expectedK: number;
}

export interface Calibration {
  /** only what the data tell */
  readonly estimates: Readonly<Partial<Record<EstimateName, Estimate>>>;
  /** what the readings leave as unsure as it was */
  readonly notTold: readonly EstimateName[];
  readonly before: PlanAnswer;
  readonly after: PlanAnswer;
  readonly nextReading: NextReading | null;
  readonly residuals: readonly ResidualAnswer[];
  /** those whose shade was judged */
  readonly bakes: readonly SeenBake[];
  /** the plate of the learned oven under the pizzas as they went in, for a chart; null when none did */
  readonly asRun: { readonly minutes: readonly number[]; readonly plateTopC: readonly number[] } | null;
  readonly warnings: readonly Warning[];
  /** rows that were left out, and why */
  readonly dropped: readonly DroppedRow[];
  readonly aside: readonly DroppedRow[];
  /** the plan with what was learned */
  readonly learned: PlanFile;
}

export type Calibrated =
  | { readonly ok: true; readonly calibration: Calibration }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A number counts as told when its spread has shrunk to this share of what was believed before. */
const told = 0.8;

function estimatesOf(
  evening: Evening,
  fit: OvenFit | undefined,
  bakes: BakesFit | undefined,
): Pick<Calibration, 'estimates' | 'notTold'> {
  const { oven, plate } = evening;
  const mass = plateMass(evening, plateMaterial(plate.material, plate.surface, plate.custom));
  const shown: Readonly<Record<OvenNumberName, (value: number) => number>> = {
    power: (factor) => (factor * (oven.power.bottom + oven.power.top)) / 1000,
    plateMass: (factor) => factor * mass,
    thermostatOffset: (offset) => offset + oven.thermostatOffset,
  };
  const units: Readonly<Record<OvenNumberName, string>> = {
    power: 'kW',
    plateMass: 'kg',
    thermostatOffset: 'K',
  };
  const estimates: Partial<Record<EstimateName, Estimate>> = {};
  const notTold: EstimateName[] = [];
  if (fit)
    for (const [k, { name }] of ovenNumbers.entries()) {
      const { value, p10, p90 } = fit.numbers[name];
      const n = ovenNumbers.length;
      if (Math.hypot(...fit.factor.slice(k * n, k * n + n)) > told) notTold.push(name);
      else {
        const show = shown[name];
        estimates[name] = { value: show(value), p10: show(p10), p90: show(p90), unit: units[name] };
      }
    }
  else notTold.push(...ovenNumbers.map(({ name }) => name));
  if (bakes) estimates.browningRate = { ...bakes.browningRate, unit: '1' };
  else notTold.push('browningRate');
  return { estimates, notTold };
}

function warningsOf(fit: OvenFit | undefined, bakes: BakesFit | undefined): readonly Warning[] {
  const uneven: readonly Warning[] =
    bakes === undefined || bakes.agrees
      ? []
      : [
          {
            code: 'bakes-disagree',
            message:
              'The bakes differ among each other by more than an eye and a dough explain: one may be misread, or something was not as the plan says. The range of the browning rate is wider for it.',
          },
        ];
  return [...disagreements(fit), ...uneven];
}

function disagreements(fit: OvenFit | undefined): readonly Warning[] {
  if (fit === undefined) return [];
  const worst = [...fit.residuals].sort(
    (a, b) => Math.abs(b.residual / b.expected) - Math.abs(a.residual / a.expected),
  )[0]!;
  const off = Math.abs(worst.residual / worst.expected);
  const which = `${(worst.reading.seconds / 60).toFixed(0)} min, ${placeWords[worst.reading.place]}: read ${(worst.reading.temperature - zeroCelsius).toFixed(0)} °C, model ${(worst.model - zeroCelsius).toFixed(0)} °C`;
  const warnings: Warning[] = [];
  if (!fit.agrees || off > 3)
    warnings.push({
      code: 'readings-disagree',
      message: `Readings and model disagree by more than their spread (worst at ${which}): a reading may be wrong, the plate may not be the one of the plan, or the oven does something the model does not know. The ranges are wider for it.`,
    });
  if (!fit.converged)
    warnings.push({
      code: 'fit-unsettled',
      message:
        'No set of numbers near the plan’s follows these readings well: take what was learned with care.',
    });
  return warnings;
}

/** A range about another middle, as wide in proportion. */
function scaled(range: Range, middle: number, now: number): Range {
  return [(range[0] / middle) * now, (range[1] / middle) * now];
}

export interface CalibrateContext extends PlanContext {
  /** K, one standard deviation of a reading */
  readonly readingSpread?: number;
}

/**
 * Learns from readings.
 *
 * @param readingsFor the readings, once it is known when the plan switches the oven on (ms since 1970-01-01T00:00Z)
 * @returns problems of the plan, or of readings that tell nothing
 */
export function calibrate(
  file: PlanFile,
  readingsFor: (ovenOn: number) => ReadingsRead,
  context: CalibrateContext,
): Calibrated {
  const before = planFromFile(file, { ...context, advice: false });
  if (!before.ok) return before;
  const ovenOn = readInstant(before.answer.ovenOnAt);
  if (!ovenOn.ok) throw new Error(`the plan's own ovenOnAt: ${ovenOn.problem.found}`);
  const read = readingsFor(ovenOn.instant.epochMilliseconds);
  const { readings, bakes: records, aside } = usable(read);
  if (readings.length === 0 && !records.some(({ lightness }) => lightness !== undefined))
    return { ok: false, problems: [nothingToLearn(read, aside)] };
  const readingSpread = context.readingSpread ?? usualReadingSpread;
  const fit =
    readings.length === 0 ? undefined : fitOven(before.evening, readings, readingSpread, 1, records);
  const heated = fit === undefined ? before.evening : eveningAt(before.evening, fit.z);
  const { bakes, beyond } = shadesOf(heated, records);
  const learned = learnedPlan(file, before.evening, before.answer.range, fit, bakes);
  const after = planFromFile(learned, { ...context, advice: false });
  if (!after.ok) return after;
  const { range } = after.answer;
  const preheatMinutes =
    fit && scaled([fit.ready.p10, fit.ready.p90], fit.ready.value, after.answer.preheat.minutes);
  const lastRead = Math.max(0, ...readings.map(({ seconds }) => seconds));
  // Past the point of an answer the next reading is one of the next evening.
  const next = fit && nextReading(fit, lastRead < fit.ready.value ? lastRead : 0, readingSpread);
  return {
    ok: true,
    calibration: {
      ...estimatesOf(before.evening, fit, bakes),
      before: before.answer,
      after: { ...after.answer, range: range && preheatMinutes ? { ...range, preheatMinutes } : range },
      nextReading: next ?? null,
      residuals: (fit?.residuals ?? []).map(({ reading, model, residual, expected }) => ({
        minute: reading.seconds / 60,
        place: reading.place,
        ...(reading.pizza === undefined ? {} : { pizza: reading.pizza }),
        readingC: reading.temperature - zeroCelsius,
        modelC: model - zeroCelsius,
        residualK: residual,
        expectedK: expected,
      })),
      bakes: bakes?.bakes ?? [],
      asRun: curveAsRun(heated, records, lastRead),
      warnings: warningsOf(fit, bakes),
      dropped: read.dropped,
      aside: [...aside, ...unfollowed(readings.length - (fit?.residuals.length ?? 0)), ...beyond],
      learned,
    },
  };
}

/** What the bakes tell, unless they leave what the model can follow. */
function shadesOf(
  evening: Evening,
  records: readonly BakeRecord[],
): { readonly bakes: BakesFit | undefined; readonly beyond: readonly DroppedRow[] } {
  try {
    return { bakes: fitBakes(evening, records), beyond: [] };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    const { path, found, allowed } = error.problem;
    return { bakes: undefined, beyond: [{ line: 0, found: `the bakes: ${path} of ${found}`, allowed }] };
  }
}

/** s after the last pizza or reading that a curve goes on */
const shownAfter = 10 * 60;

function curveAsRun(
  evening: Evening,
  records: readonly BakeRecord[],
  lastRead: number,
): Calibration['asRun'] {
  if (records.length === 0) return null;
  const until = Math.max(lastRead, ...records.map(({ inAt, outAt }) => outAt ?? inAt)) + shownAfter;
  const curve = attempt(() => {
    const model = prepareModel(evening);
    return rerun(model, runPreheat(model), records, until).trace;
  });
  return curve === undefined
    ? null
    : {
        minutes: Array.from(curve.seconds, (s) => s / 60),
        plateTopC: Array.from(curve.plateTop, (T) => T - zeroCelsius),
      };
}

function unfollowed(count: number): readonly DroppedRow[] {
  if (count === 0) return [];
  return [
    {
      line: 0,
      found: `${count} readings once pizzas went in: an evening like this is beyond what the model can follow`,
      allowed: 'bakes and temperatures such as the plan has',
    },
  ];
}

function nothingToLearn(read: ReadingsRead, aside: readonly DroppedRow[]): Problem {
  const first = read.dropped[0] ?? aside[0];
  return {
    path: first && first.line > 0 ? `readings line ${first.line}` : 'readings',
    found: first?.found ?? 'no rows',
    allowed: first?.allowed ?? 'rows such as 20 min,plateTop,212 degC',
  };
}
