/**
 * For a goal the few changes that bring most. Each is set into the plan file as `--set` sets it and planned, so that
 * what is promised is what the plan then gives; none goes against a caution.
 */
import type { Advice, AdviceOutcome, Advised, PlanAnswer } from './answer.ts';
import { comparedOf, filled } from './comparison.ts';
import { minutesBetween } from './clock.ts';
import type { Evening } from './evening.ts';
import { type Trial, trialsFor } from './goals.ts';
import type { GoalId } from './ids.ts';
import type { PlanFile } from './planFile.ts';
import type { Planned } from './planWith.ts';
import { durationText } from './steps.ts';

/** So many are told; more is no advice. */
const few = 4;

/** What is made smaller for a goal, and by how much at least it must be before it is worth a word; our choice. */
const measures: Readonly<
  Record<GoalId, { readonly of: (outcome: AdviceOutcome) => number; readonly least: number }>
> = {
  sooner: { of: ({ eveningMinutes }) => eveningMinutes, least: 1 },
  'darker-base': { of: ({ bakeMinutes }) => bakeMinutes, least: 1 / 6 },
  'drier-top': { of: ({ waterLeftOnTopG }) => waterLeftOnTopG, least: 2 },
  'less-energy': { of: ({ energyKWh }) => energyKWh, least: 0.03 },
  'weaker-oven': { of: ({ bakeMinutes }) => bakeMinutes, least: 1 / 6 },
};

export interface AdviceFacts {
  readonly file: PlanFile;
  readonly evening: Evening;
  readonly answer: PlanAnswer;
  /** plans a file as the plan itself was planned */
  readonly plan: (file: PlanFile) => Planned;
}

/** What brings most for a goal: the trials of the goal, each planned, the best of each kind. */
export function adviceFor(goal: GoalId, { file, evening, answer, plan }: AdviceFacts): Advice {
  const { basis, trials } = trialsFor(goal, { evening, answer });
  const { of, least } = measures[goal];
  const before = outcomeOf(answer);
  const planned = (trial: Trial): PlanAnswer | undefined => {
    const changed = filled(file, Object.fromEntries(trial.change.map(({ path, value }) => [path, value])));
    const made = changed.ok ? plan(changed.file) : undefined;
    return made?.ok === true && !againstCaution(answer, made.answer, trial) ? made.answer : undefined;
  };
  const start = basis && planned(basis);
  const from = start ? outcomeOf(start) : before;
  const tried = basis !== undefined && start === undefined ? [] : trials;
  const advised = tried.flatMap((trial): readonly Advised[] => {
    const made = planned(trial);
    if (made === undefined) return [];
    const after = outcomeOf(made);
    const gain = of(from) - of(after);
    return gain < least ? [] : [told(trial, from, after, gain)];
  });
  const items = onePerKind(advised).slice(0, few);
  return {
    goal,
    before,
    ...(basis && start && { basis: told(basis, before, from, of(before) - of(from)) }),
    items,
  };
}

/** The best of each kind, the best first. */
function onePerKind(advised: readonly Advised[]): readonly Advised[] {
  const sorted = [...advised].sort((a, b) => b.gain - a.gain);
  return sorted.filter(({ what }, index) => sorted.findIndex((other) => other.what === what) === index);
}

/** What a plan gives, as far as advice speaks of it. */
export function outcomeOf(answer: PlanAnswer): AdviceOutcome {
  const first = answer.bakes[0]!;
  const { evening } = comparedOf(answer);
  return {
    preheatMinutes: answer.preheat.minutes,
    bakeMinutes: first.minutes,
    // Begun now, it is from now that a cook counts.
    eveningMinutes:
      answer.anchor.kind === 'startAt' ? minutesBetween(answer.anchor.at, answer.lastEatAt) : evening.minutes,
    energyKWh: answer.energyKWh,
    baseLightness: first.baseLightness,
    finishMinutes: first.finishMinutes,
    waterLeftOnTopG: first.waterLeftOnTopG,
  };
}

/** What depends on the hour of whoever asks is no caution, nor is what a change says of itself: in sooner, baked longer. */
const noCaution = new Set(['starts-in-the-past', 'step-in-the-night', 'pizza-before-plate']);

/** Whether a change brings a warning that the plan had not, or makes one worse that it has. */
function againstCaution(before: PlanAnswer, after: PlanAnswer, { change }: Trial): boolean {
  const had = new Set(before.warnings.map(({ code }) => code));
  if (after.warnings.some(({ code }) => !had.has(code) && !noCaution.has(code))) return true;
  // Paper above its rating does not get better by more heat.
  const hotter = after.preheat.settledPlateTopC > before.preheat.settledPlateTopC;
  return had.has('parchment-above-rating') && hotter && change.some(({ path }) => path === 'oven.setpoint');
}

function told(
  { what, says, change }: Trial,
  from: AdviceOutcome,
  after: AdviceOutcome,
  gain: number,
): Advised {
  return { what, message: `${says}: ${differences(from, after)}.`, change, after, gain };
}

/** `the evening 8 min shorter, the first bake 1 min longer, 0.2 kWh less`: gain and price alike. */
function differences(from: AdviceOutcome, after: AdviceOutcome): string {
  const time = (name: string, before: number, now: number, least: number): readonly string[] =>
    Math.abs(now - before) < least
      ? []
      : [`${name} ${durationText(60 * Math.abs(now - before))} ${now < before ? 'shorter' : 'longer'}`];
  const amount = (
    unit: string,
    of: string,
    by: number,
    least: number,
    decimals: number,
  ): readonly string[] =>
    Math.abs(by) < least
      ? []
      : [`${Math.abs(by).toFixed(decimals)} ${unit} ${by < 0 ? 'less' : 'more'}${of}`];
  const lacks = after.finishMinutes - from.finishMinutes;
  const parts = [
    ...time('the evening', from.eveningMinutes, after.eveningMinutes, 1),
    ...time('the preheat', from.preheatMinutes, after.preheatMinutes, 1),
    ...time('the first bake', from.bakeMinutes, after.bakeMinutes, 1 / 12),
    ...(Math.abs(after.baseLightness - from.baseLightness) < 1
      ? []
      : [`its base at L* ${after.baseLightness.toFixed(0)} in place of ${from.baseLightness.toFixed(0)}`]),
    ...(Math.abs(lacks) < 0.2
      ? []
      : [
          after.finishMinutes < 0.1
            ? 'its rim done too'
            : `its rim then lacks ${durationText(60 * after.finishMinutes)} of top heat`,
        ]),
    ...amount('g', ' water on top', after.waterLeftOnTopG - from.waterLeftOnTopG, 2, 0),
    ...amount('kWh', '', after.energyKWh - from.energyKWh, 0.03, 2),
  ];
  return parts.length === 0 ? 'as before' : parts.join(', ');
}
