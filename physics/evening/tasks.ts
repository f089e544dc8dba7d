/** The bars of the three lanes: the schedule on the clock, with words. */
import type { Task } from './answer.ts';
import type { Evening } from './evening.ts';
import type { HandsTask } from './handsLane.ts';
import type { EveningRun } from './run.ts';
import type { Schedule } from './schedule.ts';
import {
  ballStep,
  cutStep,
  loadStep,
  mixStep,
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
}

/** A recovery shorter than this is no pause: the next pizza simply follows. s */
const shortestRecovery = 1;

const handsNames: Readonly<Record<HandsTask['kind'], string>> = {
  mix: 'Mix',
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
      return mixStep(evening, mix.grams, mix.liquidTemperature, mix.doughTemperature);
    case 'ball':
      return ballStep(evening);
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
  const bars: (Omit<Task, 'from' | 'to'> & { readonly from: number; readonly to: number })[] = [
    { id: 'mix', lane: 'dough', name: 'Mix', from: plan.mixFrom, to: plan.mixTo },
    { id: 'rise', lane: 'dough', name: 'Rise', from: plan.mixTo, to: plan.ballFrom },
    { id: 'ball', lane: 'dough', name: 'Divide and ball', from: plan.ballFrom, to: plan.ballTo },
    { id: 'rest', lane: 'dough', name: 'Rest as balls', from: plan.ballTo, to: plan.doughReady },
    { id: 'ready', lane: 'dough', name: 'Ready to shape', from: plan.doughReady, to: plan.doughPast },
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
      name: task.pizza === undefined ? name : `${name} ${task.pizza}`,
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
