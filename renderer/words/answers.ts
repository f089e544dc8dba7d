/** The three answers as a person says them, made from what was computed. */
import {
  clockParts,
  clockText,
  epochOf,
  halvesText,
  offsetOf,
  spanParts,
  spanRangeText,
  spanText,
} from './clock.ts';
import { cardinal, shadeWord } from './names.ts';
import { degreesApart, grams, temperatureC, temperatureK } from './figures.ts';
import type { Forecast } from '../state/forecastStore.ts';
import type { BakeAnswer, PlanAnswer } from '../../physics/evening/answer.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

export interface Piece {
  readonly figure: string;
  readonly unit: string;
}
export interface AnswerWords {
  readonly id: 'oven-on' | 'bake' | 'eat';
  readonly heading: string;
  readonly pieces: readonly Piece[];
  readonly range: string;
  readonly because: string;
  /** name and figure of everything that it rests on */
  readonly figures: readonly (readonly [name: string, figure: string])[];
  /** the moment on the clock to look at, ms */
  readonly moment: number;
}

const minute = 60_000;

function clockPiece(epoch: number, offset: number): readonly Piece[] {
  const { figures, period } = clockParts(epoch, offset);
  return [{ figure: figures, unit: period }];
}

/** When the oven has to go on for the same end, with a preheat of P90 or of P10. */
export function ovenOnRange(answer: PlanAnswer, anchored: 'eatAt' | 'startAt'): [number, number] | undefined {
  if (answer.range === null) return undefined;
  const [short, long] = answer.range.preheatMinutes;
  const middle = answer.preheat.minutes;
  // With a fixed start the oven goes on when it goes on; the spread then falls on the plate being ready.
  const around = epochOf(anchored === 'eatAt' ? answer.ovenOnAt : answer.plateReadyAt);
  return anchored === 'eatAt'
    ? [around - (long - middle) * minute, around + (middle - short) * minute]
    : [around - (middle - short) * minute, around + (long - middle) * minute];
}

function ovenOn({ answer, evening, file }: Forecast, units: UnitSystem): AnswerWords {
  const offset = offsetOf(answer.ovenOnAt);
  const at = epochOf(answer.ovenOnAt);
  const kind = evening.anchor.kind;
  const range = ovenOnRange(answer, kind);
  const { preheat } = answer;
  const between =
    range === undefined
      ? 'range follows'
      : `${kind === 'eatAt' ? 'between' : 'plate ready between'} ${clockText(range[0], offset)} and ${clockText(range[1], offset)}`;
  const settles = `${temperatureC(preheat.settledPlateTopC, units)} on its top face`;
  return {
    id: 'oven-on',
    heading: 'Switch the oven on',
    pieces: clockPiece(at, offset),
    range: between,
    because: `plate needs ${spanText(preheat.minutes)}; oven signals after ${String(Math.round(preheat.airReadyMinutes))}`,
    figures: [
      ['Oven set to', temperatureK(evening.oven.setpoint, units)],
      ['Oven signals ready', clockText(epochOf(answer.airReadyAt), offset)],
      ['Plate ready', clockText(epochOf(answer.plateReadyAt), offset)],
      ['Plate top then', temperatureC(preheat.plateTopC, units)],
      ['Plate core then', temperatureC(preheat.plateCoreC, units)],
      ['Plate settles at', settles],
      ['Energy until then', `${preheat.energyKWh.toFixed(1)} kWh`],
      ['Held afterwards with', `${String(Math.round(preheat.idlePowerW / 10) * 10)} W`],
      [
        'Biot number',
        `${preheat.biot.toPrecision(2)}, plate computed as ${preheat.plateModel === 'lumped' ? 'one lump' : 'a slab'}`,
      ],
      ['Anchored to', file.anchor?.kind === 'startAt' ? 'the start' : 'the first pizza cut'],
    ],
    moment: epochOf(answer.plateReadyAt),
  };
}

const decided: Record<BakeAnswer['decidedBy'], string> = {
  base: 'the base decides',
  top: 'the top decides',
  crumb: 'the crumb decides',
};

function bakeBecause(bake: BakeAnswer, units: UnitSystem): string {
  const finish =
    bake.finishMinutes > 0.2 ? `rim needs ${halvesText(bake.finishMinutes)} min top heat` : 'top done';
  return `base ${shadeWord(bake.baseLightness)}, ${finish}, ${grams(bake.waterLeftOnTopG, units)} water left`;
}

function bake({ answer, evening }: Forecast, units: UnitSystem): AnswerWords {
  const [first, second] = answer.bakes;
  if (first === undefined) throw new RangeError('bakes: found none; allowed one for each pizza');
  const spread = answer.range === null ? 'range follows' : spanRangeText(...answer.range.bakeMinutes);
  const wait = second === undefined ? '' : `; next after ${halvesText(second.waitBeforeMinutes)} min`;
  const others = answer.bakes
    .slice(1)
    .map((later): readonly [string, string] => [
      `Pizza ${String(later.pizza)}`,
      `${spanText(later.minutes)} after a wait of ${spanText(later.waitBeforeMinutes)}`,
    ]);
  return {
    id: 'bake',
    heading: answer.bakes.length > 1 ? 'Bake each' : 'Bake',
    pieces: spanParts(first.minutes),
    range: `${spread}${wait}`,
    because: bakeBecause(first, units),
    figures: [
      ['First pizza', `${spanText(first.minutes)}; ${decided[first.decidedBy]}`],
      ['Plate top at the load', temperatureC(first.plateTopAtLoadC, units)],
      ['Plate top at the end', temperatureC(first.plateTopAtUnloadC, units)],
      [
        'Base lightness L*',
        `${first.baseLightness.toFixed(0)}, ${shadeWord(first.baseLightness)} (wanted ${evening.pizzas.shadeLightness.toFixed(0)})`,
      ],
      ['Rim lightness L*', `${first.rimLightness.toFixed(0)}, ${shadeWord(first.rimLightness)}`],
      ['Coldest crumb', temperatureC(first.crumbC, units)],
      ['Water lost', grams(first.waterLostG, units)],
      ['Water left on top', grams(first.waterLeftOnTopG, units)],
      ...others,
    ],
    moment: epochOf(first.outAt) - minute / 2,
  };
}

const pace: Record<PlanAnswer['limitedBy'], string> = {
  plate: 'the plate sets the pace',
  dough: 'the dough sets the pace',
  hands: 'your hands set the pace',
};
export const slackNames: Record<PlanAnswer['limitedBy'], string> = {
  plate: 'the plate',
  dough: 'the dough',
  hands: 'your hands',
};

/** `has 12 min to spare`, or by how much it does not. */
export function slackText(minutes: number): string {
  return minutes < -0.5
    ? `comes ${spanText(-minutes)} too late`
    : `has ${spanText(Math.abs(minutes))} to spare`;
}

function eat({ answer }: Forecast): AnswerWords {
  const offset = offsetOf(answer.eatAt);
  const first = epochOf(answer.eatAt);
  const last = epochOf(answer.lastEatAt);
  const count = answer.bakes.length;
  const beside = answer.limitedBy === 'dough' ? 'plate' : 'dough';
  const slack = answer.slackMinutes[beside];
  return {
    id: 'eat',
    heading: 'Eat',
    pieces: clockPiece(first, offset),
    range: count > 1 ? `last of ${cardinal(count)} at ${clockText(last, offset)}` : 'one pizza',
    because: `${pace[answer.limitedBy]}; ${slackNames[beside]} ${slackText(slack)}`,
    figures: [
      ['First pizza cut', clockText(first, offset)],
      ['Last pizza cut', clockText(last, offset)],
      ['Dough ready from', clockText(epochOf(answer.dough.readyWindow.from), offset)],
      ['Dough good until', clockText(epochOf(answer.dough.readyWindow.to), offset)],
      ['Energy of the evening', `${answer.energyKWh.toFixed(1)} kWh`],
    ],
    moment: first,
  };
}

export function threeAnswers(forecast: Forecast, units: UnitSystem): readonly AnswerWords[] {
  return [ovenOn(forecast, units), bake(forecast, units), eat(forecast)];
}

/** What a late start costs, one line for each lateness. */
export function lateStartLines(answer: PlanAnswer, units: UnitSystem): readonly string[] {
  const [onTime] = answer.bakes;
  if (onTime === undefined) return [];
  return answer.lateStart.map(({ lateMinutes, plateTopC, bakeMinutes }) => {
    const colder = onTime.plateTopAtLoadC - plateTopC;
    const longer = (bakeMinutes - onTime.minutes) * 60;
    const seconds = Math.round(Math.abs(longer) / 5) * 5;
    return `${String(lateMinutes)} min late: plate ${degreesApart(Math.abs(colder), units)} ${colder < 0 ? 'warmer' : 'colder'}, first bake ${spanText(seconds / 60)} ${longer < 0 ? 'shorter' : 'longer'}`;
  });
}
