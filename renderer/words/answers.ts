/** The three answers as a person says them, made from what was computed. */
import { spreadFrom, type SpreadPart } from '../../physics/evening/uncertain.ts';
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
import { paceText, waitTable, type WordTable } from './advice.ts';
import { cardinal, shadeWord, tiedTo } from './names.ts';
import { degreesApart, grams, temperatureC, temperatureK } from './figures.ts';
import type { Forecast } from '../state/forecastStore.ts';
import type { AnchorId } from '../../physics/evening/ids.ts';
import type { BakeAnswer, PlanAnswer } from '../../physics/evening/answer.ts';
import { showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';

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
  readonly table?: WordTable | undefined;
  /** the moment on the clock to look at, ms */
  readonly moment: number;
}

const minute = 60_000;

function clockPiece(epoch: number, offset: number): readonly Piece[] {
  const { figures, period } = clockParts(epoch, offset);
  return [{ figure: figures, unit: period }];
}

/** When the oven has to go on for the same end, with a preheat of P90 or of P10. */
export function ovenOnRange(answer: PlanAnswer, anchored: AnchorId): [number, number] | undefined {
  if (answer.range === null) return undefined;
  const [short, long] = answer.range.preheatMinutes;
  const middle = answer.preheat.minutes;
  // With a fixed start of cook or oven it goes on when it goes on; the spread then falls on the plate being ready.
  const around = epochOf(anchored === 'eatAt' ? answer.ovenOnAt : answer.plateReadyAt);
  return anchored === 'eatAt'
    ? [around - (long - middle) * minute, around + (middle - short) * minute]
    : [around - (middle - short) * minute, around + (long - middle) * minute];
}

/** `1.1 kWh, 0.35 EUR` */
function energyText(kWh: number, money: number | undefined, { cost }: PlanAnswer): string {
  const energy = `${kWh.toFixed(1)} kWh`;
  return money === undefined || cost === undefined
    ? energy
    : `${energy}, ${money.toFixed(2)} ${cost.currency}`;
}

/** What a thermometer that reads heat radiation shows of the plate, set as most are sold. */
function infraredText({ preheat }: PlanAnswer, units: UnitSystem): string {
  const { setTo, showsC } = preheat.infrared;
  return `shows ${temperatureC(showsC, units)}, set to ${String(setTo)}`;
}

function kilograms(mass: number, units: UnitSystem): string {
  return showQuantity(mass, 'mass', units, { unit: units === 'us' ? 'lb' : 'kg', decimals: 1 });
}

function coolingText({ openAirMinutes, shutOvenMinutes }: PlanAnswer['cooling']): string {
  const open = openAirMinutes === null ? 'never' : `after ${spanText(openAirMinutes)}`;
  const shut = shutOvenMinutes === null ? 'never' : `after ${spanText(shutOvenMinutes)}`;
  return `${open} in open air, ${shut} in the shut oven`;
}

function ovenOn({ answer, evening }: Forecast, units: UnitSystem): AnswerWords {
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
    because: `plate needs ${spanText(preheat.minutes)}; oven signals after ${String(Math.round(preheat.airReadyMinutes))} min`,
    figures: [
      ['Oven set to', temperatureK(evening.oven.setpoint, units)],
      ['Oven signals ready', clockText(epochOf(answer.airReadyAt), offset)],
      ['Plate ready', clockText(epochOf(answer.plateReadyAt), offset)],
      ['Plate top then', temperatureC(preheat.plateTopC, units)],
      ['Plate core then', temperatureC(preheat.plateCoreC, units)],
      ['Plate settles at', settles],
      ['Infrared thermometer', infraredText(answer, units)],
      ['Energy until then', energyText(preheat.energyKWh, answer.cost?.preheat, answer)],
      [
        'Of it in the plate',
        `${preheat.plateEnergyKWh.toFixed(2)} kWh, in ${kilograms(preheat.plateMassKg, units)}`,
      ],
      ['Held afterwards with', `${String(Math.round(preheat.idlePowerW / 10) * 10)} W`],
      [
        'Biot number',
        `${preheat.biot.toPrecision(2)}, computed ${preheat.plateModel === 'lumped' ? 'as one lump' : 'in layers'}`,
      ],
      ...widthFigure(answer.range?.preheatFrom),
      ['Tied to', tiedTo[kind].moment.toLowerCase()],
    ],
    moment: epochOf(answer.plateReadyAt),
  };
}

/** Which inputs make a range as wide as it is. */
function widthFigure(parts: readonly SpreadPart[] | undefined): readonly (readonly [string, string])[] {
  return parts === undefined || parts.length === 0 ? [] : [['The range comes from', spreadFrom(parts)]];
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

function waitsOf({ bakeAdvice }: PlanAnswer, units: UnitSystem): WordTable | undefined {
  const curve = bakeAdvice?.waitOrBake[0];
  return curve === undefined ? undefined : waitTable(curve, units);
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
      `${spanText(later.minutes)}, wait ${spanText(later.waitBeforeMinutes)}`,
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
      ...(answer.bakeAdvice === undefined
        ? []
        : ([['Browning after', answer.bakeAdvice.browningLaw]] as const)),
      ...widthFigure(answer.range?.bakeFrom),
      ...others,
    ],
    table: waitsOf(answer, units),
    moment: epochOf(first.outAt) - minute / 2,
  };
}

/** By the clock on the wall at that moment, which may have been put forward or back since. */
const ownClock = (text: string): string => clockText(epochOf(text), offsetOf(text));

function eat({ answer }: Forecast, units: UnitSystem): AnswerWords {
  const offset = offsetOf(answer.eatAt);
  const first = epochOf(answer.eatAt);
  const last = epochOf(answer.lastEatAt);
  const count = answer.bakes.length;
  const { cooling } = answer;
  const touch = temperatureC(cooling.belowC, units);
  return {
    id: 'eat',
    heading: 'Eat',
    pieces: clockPiece(first, offset),
    range: count > 1 ? `last of ${cardinal(count)} at ${clockText(last, offset)}` : 'one pizza',
    because: paceText(answer),
    figures: [
      ['First pizza cut', clockText(first, offset)],
      ['Last pizza cut', clockText(last, offset)],
      ['Dough ready from', ownClock(answer.dough.readyWindow.from)],
      ['Dough good until', ownClock(answer.dough.readyWindow.to)],
      ['Energy of the evening', energyText(answer.energyKWh, answer.cost?.evening, answer)],
      [`Plate below ${touch}`, coolingText(cooling)],
    ],
    moment: first,
  };
}

export function threeAnswers(forecast: Forecast, units: UnitSystem): readonly AnswerWords[] {
  return [ovenOn(forecast, units), bake(forecast, units), eat(forecast, units)];
}

/** What a late start costs, one line for each lateness. */
export function lateStartLines(answer: PlanAnswer, units: UnitSystem): readonly string[] {
  const [onTime] = answer.bakes;
  if (onTime === undefined) return [];
  return answer.lateStart.map(({ lateMinutes, plateTopC, bakeMinutes }) => {
    const colder = onTime.plateTopAtLoadC - plateTopC;
    const longer = (bakeMinutes - onTime.minutes) * 60;
    const seconds = Math.round(Math.abs(longer) / 5) * 5;
    return `${String(lateMinutes)} min late: plate ${degreesApart(Math.abs(colder), units)} ${colder < 0 ? 'warmer' : 'colder'}, first bake ${spanText(seconds / 60)} ${longer < 0 ? 'shorter' : 'longer'}.`;
  });
}
