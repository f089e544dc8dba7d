/** What the evening is tied to: the first pizza cut, the start, or the oven switched on; by the clock of the plan's own offset. */
import { Choice } from './Choice.tsx';
import { FieldRow } from './FieldRow.tsx';
import { TextEntry } from './TextEntry.tsx';
import { change, dropDraft, enter, refuse, usePlan } from '../state/planStore.ts';
import { useForecast } from '../state/forecastStore.ts';
import { readingOf } from '../state/reading.ts';
import {
  clockText,
  epochOf,
  epochOfWall,
  instantText,
  localOffset,
  offsetOf,
  wallFields,
  wallTimeOf,
} from '../words/clock.ts';
import { tiedTo } from '../words/names.ts';
import { anchorIds, type AnchorId } from '../../physics/evening/ids.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { ControlProps } from './FieldRow.tsx';

const timePath = 'anchor.time';

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

/** The evening where it stands, tied to another of its moments; only the kind while it is not worked out. */
function tiedAnew(kind: AnchorId, file: PlanFile): Readonly<Record<string, string>> {
  const { forecast } = useForecast.getState();
  if (forecast?.file !== file) return { 'anchor.kind': kind };
  const { eatAt, ovenOnAt, tasks } = forecast.answer;
  const moments: Readonly<Record<AnchorId, string | undefined>> = {
    eatAt,
    ovenOnAt,
    startAt: tasks.find(({ id }) => id === 'mix')?.from,
  };
  const moment = moments[kind];
  if (moment === undefined) return { 'anchor.kind': kind };
  const minute = Math.round(epochOf(moment) / 60_000) * 60_000;
  return { 'anchor.kind': kind, [timePath]: instantText(minute, offsetOf(moment)) };
}

export function WhenFields() {
  const file = usePlan((state) => state.file);
  const draft = usePlan(({ drafts }) => drafts[timePath]);
  const reading = readingOf(file);
  if (!reading.ok) return null;
  const { kind, time } = reading.evening.anchor;
  const before = { at: time.epochMilliseconds, offset: time.offsetMinutes };
  const wall = wallFields(before.at, before.offset);
  const take = (day: string, clock: string): void => {
    const time = wallTimeOf(clock);
    const text = time === undefined ? undefined : anchored(day, time, before);
    if (text === undefined)
      refuse(timePath, clock, `Found ${JSON.stringify(clock)}; allowed a time such as 19:30 or 7:30 pm.`);
    else enter(timePath, clock, text);
  };
  const clockEntry = (control: ControlProps) => (
    <TextEntry
      {...control}
      shown={draft?.text ?? clockText(before.at, before.offset)}
      step={undefined}
      onTake={(text) => {
        take(wall.day, text);
      }}
      onBack={() => {
        dropDraft(timePath);
      }}
    />
  );
  return (
    <>
      <FieldRow
        path="anchor.kind"
        label="Tied to"
        control={(control) => (
          <Choice
            {...control}
            options={anchorIds.map((id) => [id, tiedTo[id].name])}
            value={kind}
            onChoose={(id) => {
              change(
                tiedAnew(
                  anchorIds.find((one) => one === id)!,
                  file,
                ),
              );
            }}
          />
        )}
      />
      <FieldRow path={timePath} label={tiedTo[kind].moment} control={clockEntry} />
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
