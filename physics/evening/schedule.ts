/**
 * The evening in seconds from the moment the first pizza goes in: three chains (dough, plate, hands) that end there.
 * No clock, no words.
 *
 * What **limits** an evening is the chain that has to begin first. With `eatAt` and `ovenOnAt` all are begun backwards
 * from the first load, each as late as it can, so that they meet; if the evening were to begin later than that chain,
 * or supper be sooner, it is this chain that would have to give, and no other yet. With `startAt` it is the one
 * everybody waits for. The **slack** of another chain is how much later than that it may begin, or how much longer it
 * may take, before it limits in its turn.
 */
import { type HandledBake, type HandsTask, latestFree, placeHands, turnUpTop } from './handsLane.ts';
import { handling } from './handling.ts';
import type { AnchorId, RisePieceId, RisePlaceId } from './ids.ts';

export type Chain = 'plate' | 'dough' | 'hands';

/** A stretch of the rise: where, as what, s. */
export interface Stage {
  readonly where: RisePlaceId;
  readonly as: RisePieceId;
  readonly duration: number;
}

export interface ScheduleInput {
  readonly kind: AnchorId;
  /** s from switching the oven on, one for each pizza */
  readonly bakes: readonly HandledBake[];
  /** s */
  readonly mix: number;
  readonly ball: number;
  readonly prepare: number;
  /** the rise in order, from the end of mixing to shaping; balls come last and there are some */
  readonly stages: readonly Stage[];
  /** s from the end of mixing until ready, and until past its best */
  readonly ready: number;
  readonly past: number;
  /** bases that are baked ahead; undefined: the pizzas are baked fresh */
  readonly ahead?: BasesInput | undefined;
}

/** How bases are baked ahead, s. */
export interface BasesInput {
  /** each on the plate */
  readonly seconds: readonly number[];
  /** between one out and the next in, if hands are as quick */
  readonly wait: number;
  /** from the last one wrapped to switching the oven on for the evening */
  readonly kept: number;
}

/** The bases on the clock of the schedule. */
export interface PlacedBases {
  readonly ovenOn: number;
  readonly firstIn: number;
  /** shaping the last one */
  readonly lastShape: number;
  readonly lastOut: number;
}

/** A stretch on the clock of the schedule. */
export interface PlacedStage extends Stage {
  readonly from: number;
  readonly to: number;
}

/** All in s from the first pizza's load. */
export interface Schedule {
  readonly ovenOn: number;
  readonly mixFrom: number;
  readonly mixTo: number;
  readonly ballFrom: number;
  readonly ballTo: number;
  readonly stages: readonly PlacedStage[];
  readonly doughReady: number;
  readonly doughPast: number;
  /** when the balls may be shaped: ready, and their phases over */
  readonly shapeable: number;
  readonly hands: readonly HandsTask[];
  readonly ahead: PlacedBases | undefined;
  readonly limitedBy: Chain;
  /** s by which each chain is shorter than the longest; 0 for the one that limits */
  readonly slack: Readonly<Record<Chain, number>>;
  /** when each chain begins at the latest for the first load at 0 */
  readonly beginBy: Readonly<Record<Chain, number>>;
}

/** The dough alone, in s from the end of mixing. */
interface DoughLane {
  readonly stages: readonly PlacedStage[];
  readonly ballTo: number;
  readonly ready: number;
  readonly past: number;
  readonly end: number;
  /** balling, and carrying the dough from one place to the next */
  readonly hands: readonly HandsTask[];
}

/**
 * Divides the rise: balling takes the last minutes of the dough in one piece, carrying it to another place the last
 * minute there. Where a stretch is too short for what hands have to do in it, what follows is pushed back.
 */
function doughLane({ stages, ball, ready, past }: ScheduleInput): DoughLane {
  const placed: PlacedStage[] = [];
  const hands: HandsTask[] = [];
  let at = 0;
  /** Hands before a stretch begins, and no sooner than the last time they were needed. */
  const handsBefore = (kind: 'ball' | 'move', pizza: number | undefined, duration: number): void => {
    const free = hands.at(-1)?.to ?? 0;
    at = Math.max(at, free + duration);
    hands.push({ kind, pizza, from: at - duration, to: at });
  };
  for (const [index, stage] of stages.entries()) {
    const before = stages[index - 1];
    const first = hands.every(({ kind }) => kind !== 'ball');
    if (first && stage.as === 'balls') handsBefore('ball', undefined, ball);
    else if (before !== undefined && before.where !== stage.where) handsBefore('move', index, handling.move);
    placed.push({ ...stage, from: at, to: at + stage.duration });
    at += stage.duration;
  }
  const ballTo = hands.find(({ kind }) => kind === 'ball')!.to;
  // A phase cut short by its own rounding must not be shaped a blink before it is ready.
  const end = Math.max(at, ready);
  return { stages: placed, ballTo, ready, past: Math.max(past, ready), end, hands };
}

/**
 * Bases one after another on a plate that is ready, so long before the evening that they can be kept as the plan wants. Each is shaped
 * while the one before it bakes; where that is too short, the plate waits for hands.
 *
 * @param preheat s, as on the evening
 */
function bakedAhead({ seconds, wait, kept }: BasesInput, preheat: number): PlacedBases {
  const handwork = handling.shape + handling.load + handling.cut;
  const cycles = seconds.map((bake) => Math.max(bake + wait, handwork));
  const last = cycles.slice(0, -1).reduce((sum, cycle) => sum + cycle, 0);
  const end = last + seconds.at(-1)! + handling.cut;
  const firstIn = -preheat - kept - end;
  return {
    ovenOn: firstIn - preheat,
    firstIn,
    lastShape: firstIn + last - handling.load - handling.shape,
    lastOut: firstIn + last + seconds.at(-1)!,
  };
}

/**
 * Joins the chains. The dough of bases baked ahead ends with them, on a clock of its own, and the evening needs none.
 *
 * With `eatAt` and `ovenOnAt` every chain begins as late as it can. With `startAt` the cook mixes at once; the oven
 * still goes on no sooner than needed, and a dough that is ready before the plate waits. Sauce and cheese are prepared
 * in the last pause before shaping that is long enough; when none is, the balls wait, and hands set the pace.
 */
export function schedule(input: ScheduleInput): Schedule {
  const { bakes, mix, ball, prepare } = input;
  const first = bakes[0]!.inAt;
  const fromFirst = bakes.map(({ inAt, outAt, steps = [] }) => ({
    inAt: inAt - first,
    outAt: outAt - first,
    steps: steps.map(({ what, at }) => ({ what, at: at - first })),
  }));
  const atOven = placeHands(fromFirst);
  const shapeFrom = Math.min(...atOven.map((task) => task.from));
  const ahead = input.ahead && bakedAhead(input.ahead, first);
  /** when the dough is first wanted */
  const wanted = ahead === undefined ? shapeFrom : ahead.firstIn - handling.load - handling.shape;
  const lane = doughLane(input);

  const pause = latestFree(lane.hands, prepare, lane.end);
  const lastPause = lane.end - Math.max(...lane.hands.map(({ to }) => to));
  const wait = pause.from >= 0 || ahead !== undefined ? 0 : prepare - lastPause;
  const doughLength = mix + lane.end - wanted;
  const moved = lane.hands.reduce((sum, { from, to }) => sum + to - from, 0);
  const length: Readonly<Record<Chain, number>> = {
    plate: first,
    dough: doughLength,
    hands: wait > 0 ? doughLength + wait : (ahead === undefined ? mix + moved : 0) + prepare - shapeFrom,
  };
  const longest = Math.max(length.plate, length.dough, length.hands);
  /** What is longer than the bases are kept would begin before they are baked. */
  const longestRoom = input.ahead?.kept ?? Infinity;
  const limitedBy = (['plate', 'dough', 'hands'] as const).find((chain) => length[chain] === longest)!;

  const mixFrom = input.kind === 'startAt' ? -longest : -(doughLength + wait);
  const mixTo = mixFrom + mix;
  const later = <T extends { readonly from: number; readonly to: number }>(task: T): T => ({
    ...task,
    from: task.from + mixTo,
    to: task.to + mixTo,
  });
  const doughHands = lane.hands.map(later);
  const fixed: readonly HandsTask[] = [
    { kind: 'mix', pizza: undefined, from: mixFrom, to: mixTo },
    ...doughHands,
    ...(ahead === undefined
      ? []
      : [{ kind: 'ahead', pizza: undefined, from: wanted, to: ahead.lastOut + handling.cut } as const]),
    ...atOven,
  ];
  const tops = turnUpTop(fromFirst, fixed);
  const preparing = latestFree([...doughHands, ...tops], prepare, shapeFrom);
  // Sauce and cheese can mostly be ready before the element is turned up; where they cannot, it is turned up sooner.
  const roomy = preparing.from >= mixTo;
  const prepared: HandsTask = {
    kind: 'prepare',
    pizza: undefined,
    ...(roomy ? preparing : latestFree(doughHands, prepare, shapeFrom)),
  };
  return {
    ovenOn: -first,
    mixFrom,
    mixTo,
    ballFrom: mixTo + lane.ballTo - ball,
    ballTo: mixTo + lane.ballTo,
    stages: lane.stages.map(later),
    // Dough in one piece cannot be shaped, however ready.
    doughReady: mixTo + Math.max(lane.ready, lane.ballTo),
    doughPast: mixTo + Math.max(lane.past, lane.ballTo),
    shapeable: mixTo + lane.end,
    hands: [...fixed, prepared, ...(roomy ? tops : turnUpTop(fromFirst, [...fixed, prepared]))],
    ahead,
    limitedBy,
    slack: {
      plate: Math.min(longest - length.plate, longestRoom),
      dough: longest - length.dough,
      hands: Math.min(longest - length.hands, longestRoom),
    },
    beginBy: { plate: -length.plate, dough: -(doughLength + wait), hands: -length.hands },
  };
}

/** The handwork of an evening with so many pizzas, s. */
export function handworkFor(
  count: number,
  mixing: keyof typeof handling.mix,
): Pick<ScheduleInput, 'mix' | 'ball' | 'prepare'> {
  return {
    mix: handling.mix[mixing],
    ball: handling.ball.once + count * handling.ball.each,
    prepare: handling.prepare.once + count * handling.prepare.each,
  };
}
