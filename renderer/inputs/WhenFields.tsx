/** What the evening is tied to: the first pizza cut, or the start; by the clock of the plan's own offset. */
import { FieldRow } from './FieldRow.tsx';
import { change, enter, refuse, usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { epochOfWall, instantText, localOffset, wallFields } from '../words/clock.ts';
import type { ControlProps } from './FieldRow.tsx';

/**
 * The wall time as an instant. A plan that keeps this machine's offset keeps it over a change of the clocks too; one
 * that was written elsewhere stays in its own.
 */
export function anchored(
  day: string,
  time: string,
  before: { at: number; offset: number },
): string | undefined {
  const kept = epochOfWall(day, time, before.offset);
  if (kept === undefined) return undefined;
  if (before.offset !== localOffset(before.at)) return instantText(kept, before.offset);
  const offset = localOffset(kept);
  return instantText(epochOfWall(day, time, offset) ?? kept, offset);
}

export function WhenFields() {
  const file = usePlan((state) => state.file);
  const reading = readingOf(file);
  if (!reading.ok) return null;
  const { kind, time } = reading.evening.anchor;
  const before = { at: time.epochMilliseconds, offset: time.offsetMinutes };
  const wall = wallFields(before.at, before.offset);
  const take = (day: string, clock: string): void => {
    const text = anchored(day, clock, before);
    if (text === undefined)
      refuse('anchor.time', `${day} ${clock}`, 'Found no full day and time; allowed both.');
    else enter('anchor.time', `${day} ${clock}`, text);
  };
  const days = ({ id, ...control }: ControlProps) => (
    <span className="pair">
      <input
        {...control}
        id={id}
        className="entry"
        type="time"
        value={wall.time}
        onChange={(event) => {
          if (event.currentTarget.value !== '') take(wall.day, event.currentTarget.value);
        }}
      />
    </span>
  );
  return (
    <>
      <FieldRow
        path="anchor.kind"
        label="Tied to"
        control={(control) => (
          <select
            {...control}
            className="entry"
            value={kind}
            onChange={(event) => {
              change({ 'anchor.kind': event.currentTarget.value });
            }}
          >
            <option value="eatAt">Eat at</option>
            <option value="startAt">Start at</option>
          </select>
        )}
      />
      <FieldRow
        path="anchor.time"
        label={kind === 'eatAt' ? 'First pizza cut' : 'Flour in the bowl'}
        control={days}
      />
      <div className="field">
        <div className="field-name">
          <label htmlFor="field-anchor-day">Day</label>
        </div>
        <input
          id="field-anchor-day"
          className="entry"
          type="date"
          value={wall.day}
          onChange={(event) => {
            if (event.currentTarget.value !== '') take(event.currentTarget.value, wall.time);
          }}
        />
        <span />
      </div>
    </>
  );
}
