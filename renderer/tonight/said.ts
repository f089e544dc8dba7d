/** The words of the view Tonight. */
import { clockText, spanText } from '../words/clock.ts';
import type { Course, CourseStep, Moved } from '../../physics/tonight/course.ts';

/** What a step is called when it stands alone in large type. */
export function titleOf({ id, name, status }: CourseStep): string {
  const [, kind, pizza] = /^(load|bake|turn|look|pull|top|cut|shape|recover)-(\d+)$/u.exec(id) ?? [];
  switch (kind) {
    case 'load':
      return `Pizza ${pizza!} in`;
    case 'bake':
      return status === 'due' ? `Pizza ${pizza!} out` : `Pizza ${pizza!} bakes`;
    case 'recover':
      return 'The plate recovers';
    case 'cut':
    case 'shape':
    case 'turn':
      return `${name.replace(/ \d+$/u, '')} pizza ${pizza!}`;
    default:
      if (id === 'preheat') return status === 'running' ? 'The plate heats up' : 'Oven on';
      return name;
  }
}

/** What the large key says for a step. */
export function doneText({ id }: CourseStep): string {
  const [, kind, pizza] = /^(load|bake)-(\d+)$/u.exec(id) ?? [];
  if (kind !== undefined) return `Pizza ${pizza!} is ${kind === 'load' ? 'in' : 'out'}`;
  return id === 'preheat' ? 'The oven is on' : 'Done';
}

/** `6:20`, `1:05:09`, with a minus sign for what is past. */
export function countText(milliseconds: number): string {
  const seconds = Math.round(Math.abs(milliseconds) / 1000);
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${milliseconds < 0 && seconds > 0 ? '−' : ''}${h > 0 ? `${String(h)}:${two(m)}` : String(m)}:${two(s)}`;
}

/** A duration as a screen reader says it. */
export function spokenCount(milliseconds: number): string {
  const span = spanText(Math.abs(milliseconds) / 60_000);
  return milliseconds < 0 ? `${span} over` : `${span} left`;
}

/** What an entry moved: the next that it touches, and the last pizza. */
export function movedText(moved: readonly Moved[], course: Course, offset: number): string {
  if (moved.length === 0) return '';
  const steps = new Map(course.steps.map((step) => [step.id, step]));
  const pizza = (id: string): boolean => /^(preheat|load|bake)-?\d*$/u.test(id);
  const told = moved.filter(({ id }) => pizza(id));
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
    return `${name} ${spanText(Math.abs(seconds) / 60)} ${seconds < 0 ? 'sooner' : 'later'}, ${clockText(at, offset)}`;
  };
  return `${[first!, ...(last !== undefined && last.id !== first!.id ? [last] : [])].map(one).join('. ')}.`;
}
