/**
 * The evening in seconds from the moment the first pizza goes in: three chains (dough, plate, hands) that end there.
 * The longest sets the pace; the others have slack. No clock, no words.
 */
import { placeHands, type HandsTask } from './handsLane.ts';
import { handling } from './handling.ts';

export type Chain = 'plate' | 'dough' | 'hands';

export interface ScheduleInput {
  readonly kind: 'eatAt' | 'startAt';
  /** s from switching the oven on, one for each pizza */
  readonly bakes: readonly { readonly inAt: number; readonly outAt: number }[];
  /** s */
  readonly mix: number;
  readonly ball: number;
  readonly prepare: number;
  /** s from balled to shaped, at least */
  readonly rest: number;
  /** s from the end of mixing until ready, and until past its best */
  readonly rise: number;
  readonly past: number;
}

/** All in s from the first pizza's load. */
export interface Schedule {
  readonly ovenOn: number;
  readonly mixFrom: number;
  readonly mixTo: number;
  readonly ballFrom: number;
  readonly ballTo: number;
  readonly doughReady: number;
  readonly doughPast: number;
  readonly hands: readonly HandsTask[];
  readonly limitedBy: Chain;
  /**
   * s by which each chain is shorter than the longest: so much longer may the plate, the dough or the handwork take,
   * begun that much sooner, before it sets the pace. 0 for the one that does.
   */
  readonly slack: Readonly<Record<Chain, number>>;
}

/**
 * Joins the chains.
 *
 * With `eatAt` every chain begins as late as it can. With `startAt` the cook mixes at once; the oven still goes on no
 * sooner than needed, and a dough that is ready before the plate waits. Sauce and cheese are prepared while the balls
 * rest, or before balling; when neither pause is long enough the balls wait, and hands set the pace.
 */
export function schedule(input: ScheduleInput): Schedule {
  const { bakes, mix, ball, prepare, rest } = input;
  const first = bakes[0]!.inAt;
  const atOven = placeHands(bakes.map(({ inAt, outAt }) => ({ inAt: inAt - first, outAt: outAt - first })));
  const shapeFrom = Math.min(...atOven.map((task) => task.from));

  const rise = Math.max(input.rise, ball + rest);
  const bulk = rise - ball - rest;
  const wait = bulk >= prepare || rest >= prepare ? 0 : prepare - rest;
  const doughLength = mix + rise - shapeFrom;
  const length: Readonly<Record<Chain, number>> = {
    plate: first,
    dough: doughLength,
    hands: wait > 0 ? doughLength + wait : mix + ball + prepare - shapeFrom,
  };
  const longest = Math.max(length.plate, length.dough, length.hands);
  const limitedBy = (['plate', 'dough', 'hands'] as const).find((chain) => length[chain] === longest)!;

  const mixFrom = input.kind === 'startAt' ? -longest : -(doughLength + wait);
  const mixTo = mixFrom + mix;
  const doughReady = mixTo + rise;
  const ballTo = doughReady - rest;
  const ballFrom = ballTo - ball;
  const prepareTo = shapeFrom - ballTo >= prepare ? shapeFrom : ballFrom;
  return {
    ovenOn: -first,
    mixFrom,
    mixTo,
    ballFrom,
    ballTo,
    doughReady,
    doughPast: mixTo + Math.max(input.past, rise),
    hands: [
      { kind: 'mix', pizza: undefined, from: mixFrom, to: mixTo },
      { kind: 'ball', pizza: undefined, from: ballFrom, to: ballTo },
      { kind: 'prepare', pizza: undefined, from: prepareTo - prepare, to: prepareTo },
      ...atOven,
    ],
    limitedBy,
    slack: {
      plate: longest - length.plate,
      dough: longest - length.dough,
      hands: longest - length.hands,
    },
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
