/** The bars of the three lanes: the schedule on the clock, with words. */
import type { Task } from './answer.ts';
import type { Evening } from './evening.ts';
import type { HandsTask } from './handsLane.ts';
import type { RisePieceId, RisePlaceId } from './ids.ts';
import type { RiseStage } from './planDough.ts';
import type { EveningRun } from './run.ts';
import type { Schedule } from './schedule.ts';
import {
  ballStep,
  cutStep,
  loadStep,
  mixStep,
  moveStep,
  preheatStep,
  prepareStep,
  shapeStep,
  turnStep,
} from './steps.ts';

export interface MixFacts {
  /** g as weighed, by ingredient */
  readonly grams: Readonly<Record<string, number>>;
  /** K */
  readonly liquidTemperature: number;
  readonly doughTemperature: number;
  /** g of the water as ice */
  readonly ice: number;
  readonly stages: readonly RiseStage[];
}

type Bar = Omit<Task, 'from' | 'to'> & { readonly from: number; readonly to: number };

/** A recovery shorter than this is no pause: the next pizza simply follows. s */
const shortestRecovery = 1;

const handsNames: Readonly<Record<HandsTask['kind'], string>> = {
  mix: 'Mix',
  move: 'Move the dough',
  ball: 'Ball',
  prepare: 'Sauce and cheese',
  shape: 'Shape',
  load: 'Load',
  turn: 'Turn',
  cut: 'Cut',
};

function handsStep(task: HandsTask, evening: Evening, run: EveningRun, mix: MixFacts): string {
  const pizza = task.pizza ?? 0;
  const bake = run.bakes[pizza - 1];
  switch (task.kind) {
    case 'mix':
      return mixStep(evening, mix.grams, mix.liquidTemperature, mix.doughTemperature, mix.ice);
    case 'move':
      return moveStep(mix.stages[pizza]!, mix.stages[pizza - 1]!);
    case 'ball':
      return ballStep(
        evening,
        mix.stages.find((stage) => stage.as === 'balls')!,
      );
    case 'prepare':
      return prepareStep(evening);
    case 'shape':
      return shapeStep(evening, pizza);
    case 'load':
      return loadStep(pizza, bake!.outAt - bake!.inAt);
    case 'turn':
      return turnStep(pizza);
    case 'cut':
      return cutStep(pizza, bake!.finish);
  }
}

const stageNames: Readonly<Record<RisePieceId, Readonly<Record<RisePlaceId, string>>>> = {
  bulk: { room: 'Rise', refrigerator: 'Rise in the refrigerator', warm: 'Rise in a warm place' },
  balls: {
    room: 'Rest as balls',
    refrigerator: 'Balls in the refrigerator',
    warm: 'Balls in a warm place',
  },
};

/** One bar for each stretch of the rise: `rise`, `rise-b`, …, then `rest`, `rest-b`, …; balling ends the first kind. */
function stageBars(plan: Schedule): readonly Bar[] {
  const count: Record<RisePieceId, number> = { bulk: 0, balls: 0 };
  return plan.stages.map(({ as, where, from, to }) => {
    const id = as === 'bulk' ? 'rise' : 'rest';
    const nth = (count[as] += 1);
    return {
      id: nth === 1 ? id : `${id}-${'abcdefgh'[nth - 1]!}`,
      lane: 'dough',
      name: stageNames[as][where],
      from,
      to: as === 'bulk' ? Math.min(to, plan.ballFrom) : to,
    };
  });
}

/**
 * All bars, in the order in which they begin. The dough's `ready` bar is its ready window; handwork carries the steps,
 * and so does `preheat`, since someone has to switch the oven on.
 *
 * @param at writes a moment given in s from the first pizza's load
 */
export function tasksOf(
  evening: Evening,
  run: EveningRun,
  plan: Schedule,
  mix: MixFacts,
  at: (seconds: number) => string,
): readonly Task[] {
  const bars: Bar[] = [
    { id: 'mix', lane: 'dough', name: 'Mix', from: plan.mixFrom, to: plan.mixTo },
    ...stageBars(plan),
    { id: 'ball', lane: 'dough', name: 'Divide and ball', from: plan.ballFrom, to: plan.ballTo },
    {
      id: 'ready',
      lane: 'dough',
      name: 'Ready to shape',
      from: Math.max(plan.doughReady, plan.shapeable),
      to: plan.doughPast,
    },
    {
      id: 'preheat',
      lane: 'oven',
      name: 'Preheat',
      from: plan.ovenOn,
      to: plan.ovenOn + run.preheat.plateReady,
      step: preheatStep(evening, run.preheat.plateReady),
    },
  ];
  for (const [index, { pizza, inAt, outAt }] of run.bakes.entries()) {
    const [from, to] = [plan.ovenOn + inAt, plan.ovenOn + outAt];
    bars.push({ id: `bake-${pizza}`, lane: 'oven', name: `Pizza ${pizza}`, from, to });
    const next = run.bakes[index + 1];
    if (next !== undefined && next.inAt - outAt > shortestRecovery)
      bars.push({
        id: `recover-${next.pizza}`,
        lane: 'oven',
        name: 'Recover',
        from: to,
        to: plan.ovenOn + next.inAt,
      });
  }
  for (const task of plan.hands) {
    const name = handsNames[task.kind];
    bars.push({
      id: task.pizza === undefined ? `hands-${task.kind}` : `${task.kind}-${task.pizza}`,
      lane: 'hands',
      name: task.pizza === undefined || task.kind === 'move' ? name : `${name} ${task.pizza}`,
      from: task.from,
      to: task.to,
      step: handsStep(task, evening, run, mix),
    });
  }
  return bars
    .filter(({ from, to }) => to > from)
    .sort((a, b) => a.from - b.from)
    .map((bar) => ({ ...bar, from: at(bar.from), to: at(bar.to) }));
}
