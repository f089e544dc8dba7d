/** What a change of the plan did to its answers, in one sentence for the live region. */
import { clockText, epochOf, offsetOf, spanText } from './clock.ts';
import type { PlanAnswer } from '../../physics/evening/answer.ts';

const minute = 60_000;

function shift(name: string, before: string, after: string): string | undefined {
  const from = epochOf(before);
  const to = epochOf(after);
  const minutes = Math.round((to - from) / minute);
  if (minutes === 0) return undefined;
  const clock = clockText(to, offsetOf(after));
  if (Math.abs(minutes) >= 12 * 60) return `${name} ${clock}`;
  const size = Math.abs(minutes);
  const unit = size === 1 ? 'minute' : 'minutes';
  const far = size >= 120 ? spanText(size) : `${String(size)} ${unit}`;
  return `${name} ${far} ${minutes < 0 ? 'earlier' : 'later'}, ${clock}`;
}

export function changesBetween(before: PlanAnswer, after: PlanAnswer): string {
  const said: string[] = [];
  const on = shift('Oven on', before.ovenOnAt, after.ovenOnAt);
  if (on !== undefined) said.push(on);
  const [was] = before.bakes;
  const [is] = after.bakes;
  if (was !== undefined && is !== undefined) {
    const seconds = Math.round(((is.minutes - was.minutes) * 60) / 10) * 10;
    if (seconds !== 0) {
      said.push(
        `Bake ${spanText(Math.abs(seconds) / 60)} ${seconds < 0 ? 'shorter' : 'longer'}, ${spanText(is.minutes)}`,
      );
    }
  }
  const eat = shift('Eat', before.eatAt, after.eatAt);
  if (eat !== undefined) said.push(eat);
  if (before.bakes.length !== after.bakes.length || said.length === 0) {
    const last = shift('Last pizza', before.lastEatAt, after.lastEatAt);
    if (last !== undefined) said.push(last);
  }
  return said.length === 0 ? 'The answers stay the same.' : `${said.join('. ')}.`;
}
