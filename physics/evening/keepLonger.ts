/** Ways to a dough that keeps until the last pizza is shaped. */
import { findRoot } from '../numerics/root.ts';
import type { Suggestion } from './answer.ts';
import { attempt } from './attempt.ts';
import type { Evening } from './evening.ts';
import { type Joined, joinClocks, lastShape } from './join.ts';
import type { EveningRun } from './run.ts';
import { durationText, percentText } from './steps.ts';

/** So much less yeast is tried at most; beyond, it is another dough. */
const leastShare = 0.1;

function withYeast(evening: Evening, percent: number): Evening {
  return { ...evening, dough: { ...evening.dough, yeast: { ...evening.dough.yeast, percent } } };
}

/** Less yeast, so that the dough is still good when the last ball is shaped. */
export function keepingLonger(evening: Evening, run: EveningRun, joined: Joined): readonly Suggestion[] {
  const { kind, percent } = evening.dough.yeast;
  const spare = (factor: number): number => {
    const { plan } = joinClocks(withYeast(evening, percent * factor), run.bakes);
    return plan.doughPast - lastShape(plan);
  };
  const factor = attempt(() => findRoot(spare, leastShare, 1, 1e-3));
  if (factor === undefined) return [];
  const less = Number((percent * factor * 0.99).toPrecision(2));
  const after = attempt(() => joinClocks(withYeast(evening, less), run.bakes));
  if (after === undefined) return [];
  const gained = spare(less / percent) - spare(1);
  const longer = joined.plan.beginBy.dough - after.plan.beginBy.dough;
  return [
    {
      id: 'yeast',
      message: `Take ${percentText(less)} ${kind} yeast (${after.dough.grams['yeast']!} g) in place of ${percent} %: the dough keeps until the last pizza${longer >= 60 ? ` and has to be begun ${durationText(longer)} sooner` : ''}.`,
      change: [{ path: 'dough.yeast.percent', value: String(less) }],
      gainsMinutes: gained / 60,
      meets: spare(less / percent) >= 0,
    },
  ];
}
