/** The stretches of the rise in order: where, in what form, how warm, how long. Without any the dough rises once. */
import { Plus } from 'lucide-react';
import { Choice } from './Choice.tsx';
import { fieldId, FieldRow } from './FieldRow.tsx';
import { LeaveOutKey } from './LeaveOutKey.tsx';
import { TextEntry } from './TextEntry.tsx';
import { entryOf, shownQuantity, steppedEntry } from './shown.ts';
import { change, dropDraft, enter, refuse, usePlan } from '../state/planStore.ts';
import { valueAt } from '../state/path.ts';
import { useUnits } from '../state/settingsStore.ts';
import { coverNames, risePieceNames, risePlaceNames } from '../words/names.ts';
import type { Evening, RisePhase } from '../../physics/evening/evening.ts';

const path = 'dough.phases';

function ChoiceAt({
  place,
  label,
  value,
  names,
}: {
  place: string;
  label: string;
  value: string;
  names: Readonly<Record<string, string>>;
}) {
  return (
    <Choice
      id={fieldId(place)}
      aria-label={label}
      options={Object.entries(names)}
      value={value}
      onChoose={(id) => {
        change({ [place]: id });
      }}
    />
  );
}

function Amount({
  place,
  label,
  si,
  empty,
}: {
  place: string;
  label: string;
  si: number | undefined;
  empty: string;
}) {
  const units = useUnits();
  const draft = usePlan(({ drafts }) => drafts[place]);
  const written = usePlan(({ file }) => valueAt(file, place));
  const text = typeof written === 'string' ? written : undefined;
  const shown = si === undefined || text === undefined ? '' : shownQuantity(text, si, place, units);
  return (
    <FieldRow
      path={place}
      label={label}
      control={(control) => (
        <TextEntry
          {...control}
          shown={draft?.text ?? shown}
          placeholder={empty}
          step={(shownText, by) =>
            steppedEntry(shownText, by * (place.endsWith('duration') ? 15 : 1), place, units)
          }
          onTake={(entered) => {
            if (entered.trim() === '') {
              dropDraft(place);
              change({ [place]: undefined });
              return;
            }
            const entry = entryOf(entered, place, units);
            if (entry.ok) enter(place, entered, entry.value);
            else refuse(place, entered, entry.reason);
          }}
          onBack={() => {
            dropDraft(place);
          }}
        />
      )}
    />
  );
}

function Phase({ phase, index, onLeaveOut }: { phase: RisePhase; index: number; onLeaveOut: () => void }) {
  const place = `${path}.${String(index)}`;
  const name = `Stretch ${String(index + 1)} of the rise`;
  return (
    <div className="part" role="group" aria-label={name}>
      <div className="field">
        <span className="pair even wide-entry">
          <ChoiceAt place={`${place}.where`} label="Where" value={phase.where} names={risePlaceNames} />
          <ChoiceAt place={`${place}.as`} label="In what form" value={phase.as} names={risePieceNames} />
        </span>
        <LeaveOutKey label={`Leave out ${name.toLowerCase()}`} onLeaveOut={onLeaveOut} />
      </div>
      <Amount place={`${place}.duration`} label="How long" si={phase.duration} empty="until ready" />
      <Amount place={`${place}.temperature`} label="How warm" si={phase.temperature} empty="as the place" />
      <div className="field">
        <span className="field-name">Kept</span>
        <ChoiceAt place={`${place}.cover`} label="Kept" value={phase.cover} names={coverNames} />
        <span />
      </div>
    </div>
  );
}

export function PhaseList({ evening }: { evening: Evening }) {
  const file = usePlan((state) => state.file);
  const written = file.dough?.phases ?? [];
  return (
    <>
      {evening.dough.phases.map((phase, index) => (
        <Phase
          key={index}
          phase={phase}
          index={index}
          onLeaveOut={() => {
            const rest = written.filter((_, i) => i !== index);
            change({ [path]: rest.length === 0 ? undefined : rest });
          }}
        />
      ))}
      <button
        type="button"
        className="key add-part"
        onClick={() => {
          // The first one lasts as long as the dough needs; at most one may.
          const fresh = written.some(({ duration }) => duration === undefined)
            ? { where: 'room', duration: '1 h', as: 'balls' }
            : { where: 'room', as: 'bulk' };
          change({ [path]: [...written, fresh] });
        }}
      >
        <Plus aria-hidden="true" /> Add a stretch of the rise
      </button>
    </>
  );
}
