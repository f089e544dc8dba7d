/** The rack as a choice of positions, or a height in percent; the plate in the drawing does the same by dragging. */
import { Choice } from './Choice.tsx';
import { TextEntry } from './TextEntry.tsx';
import { entryOf } from './shown.ts';
import { change, dropDraft, enter, refuse, usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { rackCount, rackHeightOf, rackPositionOf } from '../words/names.ts';
import type { ControlProps } from './FieldRow.tsx';

const path = 'plate.rackHeight';
const positions = Array.from({ length: rackCount }, (_, index) => index + 1);

export function RackControl({ control }: { control: ControlProps }) {
  const file = usePlan((state) => state.file);
  const draft = usePlan(({ drafts }) => drafts[path]);
  const reading = readingOf(file);
  const height = reading.ok ? reading.evening.plate.rackHeight : 0;
  const position = rackPositionOf(height);
  return (
    <span className="pair">
      <Choice
        aria-label="Rack position"
        options={[
          ...(position === undefined ? ([['between', 'own']] as const) : []),
          ...positions.map((one) => [String(one), `${String(one)} of ${String(rackCount)}`] as const),
        ]}
        value={position === undefined ? 'between' : String(position)}
        onChoose={(id) => {
          const chosen = Number(id);
          if (Number.isInteger(chosen)) change({ [path]: rackHeightOf(chosen) });
        }}
      />
      <TextEntry
        {...control}
        shown={draft?.text ?? `${String(Math.round(height * 1000) / 10)} %`}
        step={1}
        inputMode="decimal"
        onTake={(text) => {
          const entry = entryOf(text, path, 'metric');
          if (!entry.ok)
            refuse(path, text, 'Found no number; allowed 3 % to 90 % of the height of the cavity.');
          else enter(path, text, Math.round(Number(entry.value) * 10) / 1000);
        }}
        onBack={() => {
          dropDraft(path);
        }}
      />
    </span>
  );
}
