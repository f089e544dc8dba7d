/** What can be done, as a cook would say it: where the evening has slack, base and rim apart, wait or bake longer. */
import { clockText, epochOf, halvesText, offsetOf, spanText } from './clock.ts';
import { grams, temperatureC } from './figures.ts';
import { rackText, shadeWord } from './names.ts';
import { chainText, movedTexts } from '../../physics/evening/chainWords.ts';
import type { BakeAdvice, PlanAnswer } from '../../physics/evening/answer.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

type Part = PlanAnswer['limitedBy'];
export type PlanChange = PlanAnswer['suggestions'][number]['change'][number];

const parts: readonly Part[] = ['plate', 'dough', 'hands'];
const begins: Record<Part, string> = {
  plate: 'The oven goes on first',
  dough: 'The dough begins first',
  hands: 'Your hands begin first',
};
const sets: Record<Part, string> = {
  plate: 'the plate sets the pace',
  dough: 'the dough sets the pace',
  hands: 'your hands set the pace',
};

function beginText(answer: PlanAnswer, part: Part): string {
  return clockText(epochOf(answer.beginBy[part]), offsetOf(answer.beginBy[part]));
}

/** `the dough sets the pace, from 13:22; oven on by 18:47`, for the third answer. */
export function paceText(answer: PlanAnswer): string {
  const beside =
    answer.limitedBy === 'plate'
      ? `dough by ${beginText(answer, 'dough')}`
      : `oven on by ${beginText(answer, 'plate')}`;
  return `${sets[answer.limitedBy]}, from ${beginText(answer, answer.limitedBy)}; ${beside}`;
}

/**
 * One line for what has to begin first, then one for each of the others: until when, and how much later that is; the
 * critical chain; and what gave way because hands were busy.
 */
export function paceLines(answer: PlanAnswer): readonly string[] {
  const [first, ...others] = [...parts].sort((a, b) => answer.slackMinutes[a] - answer.slackMinutes[b]);
  const waits: Record<Part, string> = {
    plate: 'The oven can go on as late as',
    dough: 'The dough can be mixed as late as',
    hands: 'Sauce and cheese can wait until',
  };
  const later = (part: Part): string => {
    const slack = answer.slackMinutes[part];
    return slack < 1
      ? `${waits[part]} ${beginText(answer, part)}, so without slack.`
      : `${waits[part]} ${beginText(answer, part)}, ${spanText(slack)} later.`;
  };
  return [
    `${begins[first!]}, by ${beginText(answer, first!)}: begun later, everything is later.`,
    ...others.map(later),
    chainText(answer),
    ...movedTexts(answer),
  ];
}

const doneNames: Readonly<Record<string, string>> = {
  base: 'base',
  rim: 'rim',
  crumb: 'crumb',
  cheese: 'cheese',
};

/** `The base is done 2 min 10 s before the rim.` */
export function apartText({ disagreement }: BakeAdvice): string {
  if (disagreement === null) return 'Base, rim, crumb and cheese are done together.';
  const { first, last, minutes } = disagreement;
  return `The ${doneNames[first] ?? first} is done ${spanText(minutes)} before the ${doneNames[last] ?? last}.`;
}

export interface RemedyWords {
  readonly what: string;
  readonly gives: string;
  readonly change: readonly PlanChange[];
}

function valueOf(change: readonly PlanChange[]): string {
  return change[0]?.value ?? '';
}
/** `14 s` and `300 s` as 14 s and 5 min. */
function secondsText(value: string): string {
  const seconds = Number.parseFloat(value);
  return seconds < 60 ? `${String(Math.round(seconds))} s` : spanText(seconds / 60);
}

const names: Readonly<Record<string, (value: string) => string>> = {
  'rack-higher': (value) => `The plate higher, ${rackText(Number(value))}`,
  'rack-lower': (value) => `The plate lower, ${rackText(Number(value))}`,
  parchment: () => 'Bake on parchment',
  semolina: () => 'Bake on semolina',
  flour: () => 'Bake on flour',
  'pull-parchment': () => 'Pull the parchment out once the base has set',
  'top-element-before': (value) => `Top heat for ${secondsText(value)} before the load`,
  'top-element-after': (value) =>
    Number.parseFloat(value) < 5
      ? 'Top heat from the load on'
      : `Top heat from ${secondsText(value)} after the load`,
  'top-element-at-end': (value) => `Top heat for the last ${secondsText(value)}`,
};

/** Each remedy with what it makes of the first bake. */
export function remedyWords(answer: PlanAnswer, units: UnitSystem): readonly RemedyWords[] {
  return (answer.bakeAdvice?.remedies ?? []).map((remedy) => {
    const { what, change, minutes, finishMinutes, baseLightness, waterLeftOnTopG, preheatMinutes } = remedy;
    const longer = preheatMinutes - answer.preheat.minutes;
    const said = [
      `bake ${spanText(minutes)}`,
      `base ${shadeWord(baseLightness)}`,
      finishMinutes > 0.2 ? `rim then needs ${halvesText(finishMinutes)} min top heat` : 'rim done too',
      `${grams(waterLeftOnTopG, units)} water left`,
      ...(Math.abs(longer) < 2
        ? []
        : [`plate ready ${spanText(Math.abs(longer))} ${longer < 0 ? 'sooner' : 'later'}`]),
    ];
    return { what: names[what]?.(valueOf(change)) ?? what, gives: said.join(', '), change };
  });
}

export interface WordTable {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export type WaitCurve = BakeAdvice['waitOrBake'][number];

/** What each wait before a pizza makes of its bake. */
export function waitTable(curve: WaitCurve, units: UnitSystem): WordTable {
  return {
    caption: `Wait or bake longer: pizza ${String(curve.pizza)}`,
    head: ['Wait', 'Plate', 'Bake', 'In all'],
    rows: curve.waitMinutes.map((wait, i) => [
      spanText(wait),
      temperatureC(curve.plateTopC[i]!, units),
      spanText(curve.bakeMinutes[i]!),
      spanText(curve.totalMinutes[i]!),
    ]),
  };
}

/** min: nobody leaves the plate bare for much longer while guests wait */
const patience = 10;

/**
 * What a long wait brings against the shortest: `Waiting 8 min instead of 1 min 30 s would bake it 1 min 10 s faster,
 * and have it out 5 min 20 s later.`
 */
export function waitSummary(curve: WaitCurve): string {
  const { pizza, plannedWaitMinutes: planned, waitMinutes, bakeMinutes, totalMinutes } = curve;
  const long = waitMinutes.findLastIndex((wait) => wait <= patience);
  const faster = bakeMinutes[0]! - bakeMinutes[long]!;
  const later = totalMinutes[long]! - totalMinutes[0]!;
  return `The plan waits ${spanText(planned)} before pizza ${String(pizza)}. Waiting ${spanText(waitMinutes[long]!)} instead of ${spanText(waitMinutes[0]!)} would bake it ${spanText(Math.abs(faster))} ${faster < 0 ? 'slower' : 'faster'}, and have it out ${spanText(Math.abs(later))} ${later < 0 ? 'sooner' : 'later'}.`;
}
