/** The words of the view Tonight. */
import { clockNear, localOffset, spanText } from '../words/clock.ts';
import { readInstant, wallClock, type OffsetAt } from '../../physics/evening/clock.ts';
import { titleOf } from '../../physics/tonight/titles.ts';
import type { Course, CourseStep, Moved } from '../../physics/tonight/course.ts';

/** A moment, ms since 1970, as the clock in the kitchen shows it. */
export type Clock = (moment: number) => string;

/** The offset that the clock on the wall keeps through the evening. @param named the moment that the plan names */
export function offsetsOf(named: string): OffsetAt {
  const read = readInstant(named);
  if (!read.ok) throw new RangeError(`time: found ${read.problem.found}; allowed ${read.problem.allowed}`);
  return wallClock(read.instant, localOffset);
}

export function kitchenClock(offsetAt: OffsetAt, now: number): Clock {
  return (moment) => clockNear(moment, now, offsetAt);
}

/** What the large key says for a step. */
export function doneText({ id }: CourseStep): string {
  const [, kind, pizza] = /^(load|bake)-(\d+)$/u.exec(id) ?? [];
  if (kind !== undefined) return `Pizza ${pizza!} is ${kind === 'load' ? 'in' : 'out'}`;
  return id === 'preheat' ? 'The oven is on' : 'Done';
}

export interface Count {
  /** `6:20`, `1:05:09` */
  readonly figure: string;
  /** what the figure counts, or it could be read as a time of day: `min`, `h`; `min late` for what is past */
  readonly unit: string;
}

export function countOf(milliseconds: number): Count {
  const seconds = Math.round(Math.abs(milliseconds) / 1000);
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const two = (n: number): string => String(n).padStart(2, '0');
  return {
    figure: `${h > 0 ? `${String(h)}:${two(m)}` : String(m)}:${two(s)}`,
    unit: `${h > 0 ? 'h' : 'min'}${milliseconds < 0 && seconds > 0 ? ' late' : ''}`,
  };
}

/** A duration as a screen reader says it. */
export function spokenCount(milliseconds: number): string {
  const span = spanText(Math.abs(milliseconds) / 60_000);
  return milliseconds < 0 ? `${span} late` : `${span} left`;
}

/** What an entry moved: the next that it touches, and the last pizza. */
export function movedText(moved: readonly Moved[], course: Course, clock: Clock): string {
  if (moved.length === 0) return '';
  const steps = new Map(course.steps.map((step) => [step.id, step]));
  const pizza = (id: string): boolean => /^(preheat|load|bake)-?\d*$/u.test(id);
  const told = moved.filter(({ id }) => pizza(id) && steps.has(id));
  const [first] = told.length > 0 ? told : moved;
  const last = told.at(-1);
  const one = ({ id, seconds }: Moved): string => {
    const step = steps.get(id)!;
    const [name, at] =
      id === 'preheat'
        ? ['Plate ready', step.to]
        : id.startsWith('bake')
          ? [titleOf({ ...step, status: 'due' }), step.to]
          : [titleOf(step), step.from];
    return `${name} ${spanText(Math.abs(seconds) / 60)} ${seconds < 0 ? 'sooner' : 'later'}, ${clock(at)}`;
  };
  return `${[first!, ...(last !== undefined && last.id !== first!.id ? [last] : [])].map(one).join('. ')}.`;
}
