/** The answer of a plan: the run of the oven and the rise of the dough, joined on the clock. */
import { toKWh } from '../quantities/index.ts';
import { zeroCelsius } from '../materials/constants.ts';
import { plateMaterial, type PlateMaterial } from '../materials/plates.ts';
import type { BakeAnswer, PlanAnswer, Warning } from './answer.ts';
import { curvesOf } from './answerCurves.ts';
import { bakeAdvice, bakeExtras } from './bakesAnswer.ts';
import { cautionsFor } from './cautions.ts';
import { type OffsetAt, wallClock, writeInstant } from './clock.ts';
import type { Engine } from './engine.ts';
import type { Assumption, Evening, Instant } from './evening.ts';
import { doughAnswer, iceGrams } from './doughAnswer.ts';
import { guestsLate } from './guestsLate.ts';
import type { AnchorId } from './ids.ts';
import { joinClocks } from './join.ts';
import { type DoughPlan, planDough } from './planDough.ts';
import { coolingAnswer, costAnswer, plateMass, preheatAnswer } from './ovenAnswer.ts';
import { OutOfRange, type Problem } from './problem.ts';
import type { Bake, EveningRun } from './run.ts';
import type { Schedule } from './schedule.ts';
import { aheadWarnings, earlyWarnings, pastWarnings, readyWarnings } from './scheduleWarnings.ts';
import { shoppingList } from './shopping.ts';
import { suggestionsFor } from './suggestions.ts';
import { tasksOf } from './tasks.ts';
import { toppingsAnswer } from './toppings.ts';

export type Planned =
  | {
      readonly ok: true;
      readonly evening: Evening;
      readonly answer: PlanAnswer;
      readonly run: EveningRun;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface PlanExtras {
  readonly assumed: readonly Assumption[];
  /** what the reading of the file already warned of */
  readonly warnings: readonly Warning[];
  readonly band?: boolean;
  readonly advice?: boolean;
  /** ms since 1970-01-01T00:00Z; without it nothing can lie in the past */
  readonly now?: number;
  /** the clock of whoever reads, minutes east of UTC; without it every moment keeps the anchor's offset */
  readonly readersClock?: OffsetAt;
}

/** Runs of the oven behind a range: enough that P10 and P90 hold to a tenth or so of the spread. */
const bandOptions = { samples: 2000, seed: 1 } as const;
const lateMinutes = [5, 10, 15, 20] as const;
const minutes = (seconds: number): number => seconds / 60;

/** Plans an evening. Figures that lie beyond what can be computed come back as problems with the plan's own paths. */
export function planWith(evening: Evening, extras: PlanExtras, engine: Engine): Planned {
  try {
    const dough = planDough(evening);
    const run = engine.simulateEvening(evening);
    return { ok: true, evening, run, answer: answerOf(evening, dough, run, extras, engine) };
  } catch (error) {
    if (error instanceof OutOfRange && isPlanPath(error.problem.path))
      return { ok: false, problems: [error.problem] };
    throw error;
  }
}

/** Whether a problem names a field of the plan, and so is the cook's to mend and not ours. */
function isPlanPath(path: string): boolean {
  return /^(anchor|kitchen|oven|plate|pizzas|dough|toppings)(\.|$)/.test(path);
}

function answerOf(
  evening: Evening,
  dough: DoughPlan,
  run: EveningRun,
  extras: PlanExtras,
  engine: Engine,
): PlanAnswer {
  const { anchor, plate } = evening;
  const { plan } = joinClocks(evening, run.bakes, dough);
  // The schedule counts from the first load; the anchor ties it to the clock.
  const cutBy = (pizza: number): number =>
    plan.hands.find((task) => task.kind === 'cut' && task.pizza === pizza)!.to;
  const anchors: Readonly<Record<AnchorId, number>> = {
    eatAt: cutBy(1),
    startAt: plan.mixFrom,
    ovenOnAt: plan.ovenOn,
  };
  const anchored = anchors[anchor.kind];
  const offsetAt = wallClock(anchor.time, extras.readersClock);
  const instant = (seconds: number): Instant => {
    const epochMilliseconds = anchor.time.epochMilliseconds + 1000 * (seconds - anchored);
    return { epochMilliseconds, offsetMinutes: offsetAt(epochMilliseconds) };
  };
  const at = (seconds: number): string => writeInstant(instant(seconds));
  const atRun = (seconds: number): string => at(plan.ovenOn + seconds);

  const range = extras.band === false ? null : engine.spreadOf(evening, run, bandOptions);
  const material = plateMaterial(plate.material, plate.surface, plate.custom);
  const plateMassKg = plateMass(evening, material);
  const { preheat } = run;
  const tasks = tasksOf(
    evening,
    run,
    plan,
    {
      grams: dough.grams,
      liquidTemperature: dough.liquid.temperature,
      doughTemperature: dough.liquid.doughTemperature,
      ice: iceGrams(dough),
      stages: dough.stages,
    },
    at,
  );
  return {
    title: evening.title,
    anchor: { kind: anchor.kind, at: writeInstant(anchor.time) },
    ovenOnAt: atRun(0),
    airReadyAt: atRun(preheat.airReady),
    plateReadyAt: atRun(preheat.plateReady),
    eatAt: at(cutBy(1)),
    lastEatAt: at(cutBy(run.bakes.length)),
    range,
    preheat: preheatAnswer(evening, run, material),
    ...costAnswer(evening, run),
    cooling: coolingAnswer(evening, run, material),
    bakes: run.bakes.map((bake, index) => ({
      ...bakeAnswer(bake, run.bakes[index - 1], atRun),
      ...bakeExtras(bake, atRun),
    })),
    ...((extras.advice ?? extras.band !== false) && { bakeAdvice: bakeAdvice(evening, run, engine) }),
    dough: doughAnswer(evening, dough, plan, at),
    toppings: toppingsAnswer(evening),
    shopping: shoppingList(evening, dough.grams),
    tasks: tasks.tasks,
    curves: curvesOf(run.trace),
    preheatCurve: curvesOf(preheat.trace),
    energyKWh: toKWh(run.energy),
    limitedBy: plan.limitedBy,
    slackMinutes: {
      plate: minutes(plan.slack.plate),
      dough: minutes(plan.slack.dough),
      hands: minutes(plan.slack.hands),
    },
    criticalChain: tasks.chain,
    beginBy: { plate: at(plan.beginBy.plate), dough: at(plan.beginBy.dough), hands: at(plan.beginBy.hands) },
    suggestions: suggestionsFor({
      evening,
      run,
      joined: { dough, plan },
      engine,
      now: extras.now === undefined ? undefined : (extras.now - instant(0).epochMilliseconds) / 1000,
      preheatRange: range?.preheatMinutes,
      tryPlates: extras.band !== false,
    }),
    lateStart: engine.lateStart(evening, run, lateMinutes),
    guestsLate: guestsLate(evening, run, plan, engine),
    assumed: extras.assumed,
    warnings: [
      ...extras.warnings,
      ...pastWarnings(plan, extras.now, instant),
      ...dough.warnings,
      ...earlyWarnings(evening, run),
      ...aheadWarnings(evening, run),
      ...readyWarnings(plan, instant),
      ...cautions(evening, run, plan, material, plateMassKg),
    ],
  };
}

function bakeAnswer(bake: Bake, before: Bake | undefined, atRun: (seconds: number) => string): BakeAnswer {
  const toLightness = [...bake.secondsToLightness].map(
    ([lightness, seconds]) => [String(lightness), seconds === undefined ? null : minutes(seconds)] as const,
  );
  return {
    pizza: bake.pizza,
    inAt: atRun(bake.inAt),
    outAt: atRun(bake.outAt),
    minutes: minutes(bake.outAt - bake.inAt),
    plateTopAtLoadC: bake.plateTopAtLoad - zeroCelsius,
    plateTopAtUnloadC: bake.plateTopAtUnload - zeroCelsius,
    baseLightness: bake.baseLightness,
    rimLightness: bake.rimLightness,
    crumbC: bake.crumb - zeroCelsius,
    waterLeftOnTopG: 1000 * bake.waterLeftOnTop,
    waterLostG: 1000 * bake.waterLost,
    decidedBy: bake.decidedBy,
    minutesToLightness: Object.fromEntries(toLightness),
    finishMinutes: minutes(bake.finish),
    waitBeforeMinutes: before === undefined ? 0 : minutes(bake.inAt - before.outAt),
  };
}

function cautions(
  evening: Evening,
  run: EveningRun,
  plan: Schedule,
  material: PlateMaterial,
  plateMass: number,
): readonly Warning[] {
  const lastLoad = plan.ovenOn + run.bakes[run.bakes.length - 1]!.inAt;
  const prepare = plan.hands.find(({ kind }) => kind === 'prepare')!;
  const chilled = plan.stages
    .filter(({ where }) => where === 'refrigerator')
    .reduce((sum, { from, to }) => sum + to - from, 0);
  return cautionsFor({
    evening,
    material,
    plateMass,
    hottestPlate: Math.max(run.preheat.settledPlateTop, run.preheat.plateTop),
    coolInOven: run.coolInOven,
    toppingsOut: lastLoad - prepare.from,
    // Bases baked ahead are dough no longer.
    doughOut: (plan.ahead?.lastShape ?? lastLoad) - plan.mixFrom - chilled,
  });
}
