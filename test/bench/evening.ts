/** The whole evening of the first example, four pizzas, at several steps against a fine solution that is kept. */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { fitOven } from '../../physics/calibrate/fit.ts';
import { saturday } from '../../physics/evening/demos.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import { standardResolution } from '../../physics/evening/model.ts';
import type { Resolution } from '../../physics/evening/model.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';
import type { EveningRun } from '../../physics/evening/run.ts';
import { simulateEvening } from '../../physics/evening/simulate.ts';
import { spreadOf } from '../../physics/evening/spread.ts';
import { timed } from './timed.ts';

export interface EveningRow {
  readonly stepSeconds: number;
  readonly milliseconds: number;
  readonly plateErrorK: number;
  readonly bakeErrorSeconds: number;
  readonly lightnessError: number;
}

/** What of an evening is compared. */
interface Figures {
  /** K, top of the plate through the preheat, every five minutes, then as each pizza is laid down and taken up */
  readonly plate: readonly number[];
  /** s, each bake */
  readonly bakes: readonly number[];
  /** L* of each rim at the end, and of each base at the end of the fine bake */
  readonly rims: readonly number[];
}

const kept = fileURLToPath(new URL('../../test/bench/fineEvening.json', import.meta.url));

export function exampleEvening(change: object = {}): Evening {
  const read = readPlanObject({ ...saturday, ...change }, { now: Date.parse(saturday.anchor.time) });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.evening;
}

function plateAt({ preheat }: EveningRun, time: number): number {
  const { seconds, plateTop } = preheat.trace;
  const k = Math.max(
    1,
    seconds.findIndex((s) => s >= time),
  );
  const part = (time - seconds[k - 1]!) / (seconds[k]! - seconds[k - 1]!);
  return plateTop[k - 1]! + part * (plateTop[k]! - plateTop[k - 1]!);
}

function figuresOf(run: EveningRun): Figures {
  const minutes = [5, 10, 15, 20, 25, 30, 35, 40];
  return {
    plate: [
      ...minutes.map((m) => plateAt(run, 60 * m)),
      ...run.bakes.flatMap(({ plateTopAtLoad, plateTopAtUnload }) => [plateTopAtLoad, plateTopAtUnload]),
    ],
    bakes: run.bakes.map(({ inAt, outAt }) => outAt - inAt),
    rims: run.bakes.map(({ rimLightness }) => rimLightness),
  };
}

/** L* a second of a base near the end of a golden bake, from its own times to L* 70 and 60. */
function lightnessRate({ bakes }: EveningRun): number {
  const times = bakes[0]!.secondsToLightness;
  return 10 / (times.get(60)! - times.get(70)!);
}

/** Some four times the cells, a tenth of the step: takes a second or two. */
const fine: Partial<Resolution> = {
  preheatStep: 0.5,
  bakeStep: 0.2,
  recoveryStep: 0.5,
  allowedStrain: 0.05,
  plateLayers: 12,
  mesh: { dough: 104, rim: 80, sauce: 9, cheese: 12, firstCell: 0.03e-3 },
};

export function keepFineEvening(): void {
  const figures = figuresOf(simulateEvening(exampleEvening(), { resolution: fine }));
  writeFileSync(kept, `${JSON.stringify(figures, undefined, 2)}\n`);
}

const largest = (a: readonly number[], b: readonly number[]): number =>
  Math.max(...a.map((value, i) => Math.abs(value - b[i]!)));

export function benchEvening(): readonly EveningRow[] {
  const truth = JSON.parse(readFileSync(kept, 'utf8')) as Figures;
  const evening = exampleEvening();
  return [0.5, 1, 2].map((factor) => {
    const { preheatStep, bakeStep, recoveryStep } = standardResolution;
    const resolution = {
      preheatStep: factor * preheatStep,
      bakeStep: factor * bakeStep,
      recoveryStep: factor * recoveryStep,
      allowedStrain: standardResolution.allowedStrain * factor ** 2,
    };
    const { milliseconds, result } = timed(() => simulateEvening(evening, { resolution }), 21);
    const found = figuresOf(result);
    const late = largest(found.bakes, truth.bakes);
    return {
      stepSeconds: factor * preheatStep,
      milliseconds,
      plateErrorK: largest(found.plate, truth.plate),
      bakeErrorSeconds: late,
      // A base that is late has, when the fine one is taken out, still so far to go.
      lightnessError: Math.max(late * lightnessRate(result), largest(found.rims, truth.rims)),
    };
  });
}

export interface BandRow {
  readonly draws: number;
  readonly milliseconds: number;
}

export function benchBand(): BandRow {
  const evening = exampleEvening();
  const run = simulateEvening(evening);
  const draws = 2000;
  const { milliseconds } = timed(() => spreadOf(evening, run, { samples: draws, seed: 1 }), 5);
  return { draws, milliseconds };
}

export interface GridRow {
  readonly evenings: number;
  readonly milliseconds: number;
}

/** Nine settings by ten thicknesses, the whole evening each. */
export function benchGrid(): GridRow {
  const evenings = Array.from({ length: 9 }, (_, i) => 210 + 5 * i).flatMap((setting) =>
    Array.from({ length: 10 }, (_, j) =>
      exampleEvening({
        oven: { ...saturday.oven, setpoint: `${setting} degC` },
        plate: { ...saturday.plate, thickness: `${4 + j} mm` },
      }),
    ),
  );
  const { milliseconds } = timed(() => evenings.map((evening) => simulateEvening(evening)), 1);
  return { evenings: evenings.length, milliseconds };
}

export interface FitRow {
  readonly readings: number;
  readonly milliseconds: number;
}

/** Three numbers of an oven a third weaker than planned, from six readings of its plate. */
export function benchFit(): FitRow {
  const evening = exampleEvening();
  const { power } = evening.oven;
  const weaker = {
    ...evening,
    oven: { ...evening.oven, power: { bottom: 0.7 * power.bottom, top: 0.7 * power.top } },
  };
  const run = simulateEvening(weaker);
  const readings = [10, 20, 30, 40, 50, 60].map((minute) => ({
    seconds: 60 * minute,
    place: 'plateTop' as const,
    temperature: plateAt(run, 60 * minute),
  }));
  const { milliseconds } = timed(() => fitOven(evening, readings, 2), 5);
  return { readings: readings.length, milliseconds };
}
