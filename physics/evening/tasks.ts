/** The bars of the three lanes: the schedule on the clock, with words. */
import type { Task } from './answer.ts';
import { criticalChain } from './criticalChain.ts';
import type { Evening } from './evening.ts';
import { handling } from './handling.ts';
import type { HandsTask } from './handsLane.ts';
import type { RisePieceId, RisePlaceId } from './ids.ts';
import type { RiseStage } from './planDough.ts';
import type { EveningRun } from './run.ts';
import type { Schedule } from './schedule.ts';
import {
  aheadStep,
  ballStep,
  cutStep,
  keptWords,
  loadStep,
  lookStep,
  mixStep,
  moveStep,
  preheatStep,
  prepareStep,
  pullStep,
  shapeStep,
  topStep,
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
/** s within which two moments of the schedule are the same */
const rounding = 1e-6;

const handsNames: Readonly<Record<HandsTask['kind'], string>> = {
  mix: 'Mix',
  move: 'Move the dough',
  ball: 'Ball',
  prepare: 'Sauce and cheese',
  ahead: 'Bake the bases',
  shape: 'Shape',
  load: 'Load',
  turn: 'Turn',
  look: 'Look',
  pull: 'Pull the paper',
  'top-before': 'Top heat before',
  top: 'Top heat',
  cut: 'Cut',
};

const counter = new Set<HandsTask['kind']>(['mix', 'ball', 'prepare', 'ahead', 'shape', 'cut']);
const atOven = new Set<HandsTask['kind']>(['load', 'turn', 'look', 'pull', 'top-before', 'top', 'ahead']);

function handsStep(
  task: HandsTask,
  evening: Evening,
  run: EveningRun,
  plan: Schedule,
  mix: MixFacts,
): string {
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
    case 'ahead':
      return aheadStep(
        evening,
        run.bakes.flatMap(({ baseAhead }) => baseAhead?.seconds ?? []),
      );
    case 'shape':
      return shapeStep(evening, pizza);
    case 'load':
      return loadStep(pizza, bake!.outAt - bake!.inAt);
    case 'turn':
      return turnStep(pizza, evening.pizzas.steps?.turnAtHalfTime === true);
    case 'look':
      return lookStep(pizza);
    case 'pull':
      return pullStep(pizza);
    case 'top-before':
      return topStep(pizza, evening.pizzas.steps?.topElementBefore ?? 0, true);
    case 'top':
      return topStep(pizza, bake!.outAt - (task.from - plan.ovenOn), false);
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

/** The id of what hands do, stable within a plan. */
function idOf({ kind, pizza }: Pick<HandsTask, 'kind' | 'pizza'>): string {
  return pizza === undefined ? `hands-${kind}` : `${kind}-${pizza}`;
}

/** One bar for each stretch of the rise: `rise`, `rise-b`, …, then `rest`, `rest-b`, …; hands take the end of one. */
function stageBars(plan: Schedule): readonly Bar[] {
  const count: Record<RisePieceId, number> = { bulk: 0, balls: 0 };
  const handled = plan.hands.filter(({ kind }) => kind === 'ball' || kind === 'move');
  const led = plan.stages.map(({ from }) => handled.find(({ to }) => Math.abs(to - from) < rounding));
  const bars: Bar[] = [];
  for (const [index, { as, where, from, to }] of plan.stages.entries()) {
    const id = as === 'bulk' ? 'rise' : 'rest';
    const nth = (count[as] += 1);
    const before = led[index];
    bars.push({
      id: nth === 1 ? id : `${id}-${'abcdefgh'[nth - 1]!}`,
      lane: 'dough',
      name: stageNames[as][where],
      from,
      to: Math.max(from, Math.min(to, led[index + 1]?.from ?? Infinity)),
      needs: where === 'room' ? ['counter'] : [],
      waitsFor: [before === undefined ? (bars.at(-1)?.id ?? 'hands-mix') : idOf(before)],
    });
  }
  return bars;
}

/** Preheat, bakes, and the plate's recoveries between them. */
function ovenBars(evening: Evening, run: EveningRun, plan: Schedule): readonly Bar[] {
  const { plateReady } = run.preheat;
  // A pizza may be loaded too early on purpose: the preheat then ends with it.
  const heated = Math.min(plateReady, run.bakes[0]!.inAt);
  const bars: Bar[] = [
    {
      id: 'preheat',
      lane: 'oven',
      name: 'Preheat',
      from: plan.ovenOn,
      to: plan.ovenOn + heated,
      step: preheatStep(evening, plateReady),
      needs: ['oven'],
      waitsFor: plan.ahead === undefined ? [] : ['ahead-keep'],
    },
  ];
  for (const { pizza, inAt, outAt } of run.bakes) {
    const [from, to] = [plan.ovenOn + inAt, plan.ovenOn + outAt];
    const before = bars.at(-1)!;
    if (pizza > 1)
      bars.push({
        id: `recover-${pizza}`,
        lane: 'oven',
        name: 'Recover',
        from: before.to,
        to: from,
        needs: ['oven'],
        waitsFor: [before.id],
      });
    bars.push({
      id: `bake-${pizza}`,
      lane: 'oven',
      name: `Pizza ${pizza}`,
      from,
      to,
      needs: ['oven'],
      waitsFor: [bars.at(-1)!.id, `load-${pizza}`],
    });
  }
  return bars;
}

/** The oven on the day on which bases are baked ahead, and where they wait. */
function aheadBars(evening: Evening, run: EveningRun, { ahead, ovenOn }: Schedule): readonly Bar[] {
  if (ahead === undefined) return [];
  return [
    {
      id: 'ahead-preheat',
      lane: 'oven',
      name: 'Preheat for the bases',
      from: ahead.ovenOn,
      to: ahead.firstIn,
      step: preheatStep(evening, run.preheat.plateReady),
      needs: ['oven'],
      waitsFor: [],
    },
    {
      id: 'ahead-bake',
      lane: 'oven',
      name: 'Bases',
      from: ahead.firstIn,
      to: ahead.lastOut,
      needs: ['oven'],
      waitsFor: ['ahead-preheat'],
    },
    {
      id: 'ahead-keep',
      lane: 'dough',
      name: `Bases ${keptWords[evening.pizzas.parBake?.keep ?? 'room']}`,
      from: ahead.lastOut + handling.cut,
      to: ovenOn,
      needs: [],
      waitsFor: ['hands-ahead'],
    },
  ];
}

function handsBars(
  evening: Evening,
  run: EveningRun,
  plan: Schedule,
  mix: MixFacts,
  stages: readonly Bar[],
): readonly Bar[] {
  const waitsFor = ({ kind, pizza, to }: HandsTask): readonly string[] => {
    switch (kind) {
      case 'ball':
      case 'move': {
        const leads = stages.findIndex(({ from }) => Math.abs(to - from) < rounding);
        return [stages[leads - 1]?.id ?? 'hands-mix'];
      }
      case 'shape':
        return pizza === 1
          ? [plan.ahead === undefined ? stages.at(-1)!.id : 'ahead-keep', 'hands-prepare']
          : [`shape-${pizza! - 1}`];
      case 'ahead':
        return [stages.at(-1)!.id];
      case 'load':
        return [`shape-${pizza!}`];
      case 'cut':
        return [`bake-${pizza!}`];
      case 'turn':
      case 'look':
      case 'pull':
      case 'top':
        return [`load-${pizza!}`];
      default:
        return [];
    }
  };
  return plan.hands.map((task) => {
    const { kind, pizza, from, to, moved } = task;
    const name = kind === 'shape' && plan.ahead !== undefined ? 'Top' : handsNames[kind];
    return {
      id: idOf(task),
      lane: 'hands',
      name: pizza === undefined || kind === 'move' ? name : `${name} ${pizza}`,
      from,
      to,
      step: handsStep(task, evening, run, plan, mix),
      needs: [
        'hands',
        ...(counter.has(kind) ? (['counter'] as const) : []),
        ...(atOven.has(kind) ? (['oven'] as const) : []),
      ],
      waitsFor: waitsFor(task),
      ...(moved && { moved: { minutes: moved.by / 60, for: idOf(moved.for) } }),
    };
  });
}

/**
 * What keeps its distance to the begin of others: what is done to a pizza in the oven has its moment in the bake; a load
 * comes just before the plate is free, and so long after the top element.
 */
function tiedTo(id: string): readonly string[] {
  const [, kind, pizza] = /^(load|turn|look|pull|top)-(\d+)$/u.exec(id) ?? [];
  if (pizza === undefined) return [];
  if (kind !== 'load') return [`bake-${pizza}`];
  return [pizza === '1' ? 'preheat' : `recover-${pizza}`, `bake-${Number(pizza) - 1}`, `top-before-${pizza}`];
}

/** The bars that repeat what hands do in the lane of the dough, and the ready window: nothing waits for them. */
const shown: Readonly<Record<string, string | undefined>> = { mix: 'hands-mix', ball: 'hands-ball' };

export interface Tasks {
  readonly tasks: readonly Task[];
  /** ids, see `criticalChain` */
  readonly chain: readonly string[];
}

/**
 * All bars, in the order in which they begin, and the chain of those without slack. The dough's `ready` bar is its ready
 * window; handwork carries the steps, and so does `preheat`, since someone has to switch the oven on.
 *
 * @param at writes a moment given in s from the first pizza's load
 */
export function tasksOf(
  evening: Evening,
  run: EveningRun,
  plan: Schedule,
  mix: MixFacts,
  at: (seconds: number) => string,
): Tasks {
  const stages = stageBars(plan);
  const done = [
    ...stages,
    ...aheadBars(evening, run, plan),
    ...ovenBars(evening, run, plan),
    ...handsBars(evening, run, plan, mix, stages),
  ];
  const { slack, chain } = criticalChain(
    done.map((bar) => ({ ...bar, hands: bar.lane === 'hands', tiedTo: tiedTo(bar.id) })),
  );
  const repeated = Object.entries(shown).map(([id, of]): Bar => {
    const { from, to, needs, waitsFor } = done.find((bar) => bar.id === of)!;
    return { id, lane: 'dough', name: id === 'mix' ? 'Mix' : 'Divide and ball', from, to, needs, waitsFor };
  });
  const ready: Bar = {
    id: 'ready',
    lane: 'dough',
    name: 'Ready to shape',
    from: Math.max(plan.doughReady, plan.shapeable),
    to: plan.doughPast,
    needs: [],
    waitsFor: [stages.at(-1)!.id],
  };
  const all = [...repeated, ready, ...done];
  const kept = all.filter(
    ({ id, from, to }) => to - from > (id.startsWith('recover-') ? shortestRecovery : 0),
  );
  const standing = new Map(all.map((bar) => [bar.id, bar]));
  const there = new Set(kept.map(({ id }) => id));
  // What has no length is not shown: whoever waits for it waits for what it waited for.
  const through = (ids: readonly string[]): readonly string[] =>
    ids.flatMap((id) => (there.has(id) ? [id] : through(standing.get(id)!.waitsFor)));
  const tasks = kept
    .sort((a, b) => a.from - b.from)
    .map((bar) => {
      const own = slack.get(shown[bar.id] ?? bar.id);
      return {
        ...bar,
        from: at(bar.from),
        to: at(bar.to),
        waitsFor: [...new Set(through(bar.waitsFor))],
        ...(own === undefined ? {} : { slackMinutes: own / 60 }),
      };
    });
  return { tasks, chain: chain.filter((id) => there.has(id)) };
}
