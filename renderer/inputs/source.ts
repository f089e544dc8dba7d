/** Where a field's value comes from, and what it can be reset to. */
import { change, usePlan } from '../state/planStore.ts';
import { useDocument } from '../state/documentStore.ts';
import { readingOf } from '../state/reading.ts';
import { sameValue, valueAt } from '../state/path.ts';
import type { Assumption } from '../../physics/evening/evening.ts';

/** What a field is that a plan may leave empty, by where it stands. */
const unsaidAt: readonly (readonly [start: string, text: string])[] = [
  ['oven.physics.', 'from the preset'],
  ['pizzas.each.', 'as the others'],
  ['pizzas.', 'not said'],
];

const assumedFrom: Record<Assumption['from'], string> = {
  'demo evening': 'from the example',
  'oven preset': 'from the preset',
  'plate material': 'from the material',
  kitchen: 'from the kitchen',
  'common default': 'usual',
};

export interface Source {
  readonly text: string;
  /** puts back what the example or file says, or lets the preset speak; undefined when there is nothing to reset */
  readonly reset: (() => void) | undefined;
}

export function useSource(path: string): Source {
  const file = usePlan((state) => state.file);
  const base = useDocument((state) => state.base);
  const origin = useDocument((state) => state.origin);
  const value = valueAt(file, path);
  const before = valueAt(base, path);
  const changed = !sameValue(value, before);
  const reading = readingOf(file);
  const assumption = reading.ok ? reading.assumed.find((one) => one.path === path) : undefined;
  const unsaid = unsaidAt.find(([start]) => path.startsWith(start))?.[1] ?? 'usual';
  const text =
    value === undefined
      ? assumption === undefined
        ? unsaid
        : assumedFrom[assumption.from]
      : changed || origin === 'file'
        ? 'yours'
        : 'from the example';
  return {
    text,
    reset: changed
      ? () => {
          // What the evening is tied to and when are one.
          const along = path === 'anchor.kind' ? { 'anchor.time': valueAt(base, 'anchor.time') } : {};
          change({ [path]: before, ...along });
        }
      : undefined,
  };
}
