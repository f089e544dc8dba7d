/** How brown the base is to be: a name, or a lightness from 42 to 80. */
import { TextEntry } from './TextEntry.tsx';
import { change, dropDraft, enter, usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { shadeNames } from '../words/names.ts';
import { shadeLightness } from '../../physics/evening/shade.ts';
import { shadeIds } from '../../physics/evening/ids.ts';
import type { ControlProps } from './FieldRow.tsx';

const path = 'pizzas.shade';

export function ShadeControl({ control }: { control: ControlProps }) {
  const file = usePlan((state) => state.file);
  const draft = usePlan(({ drafts }) => drafts[path]);
  const reading = readingOf(file);
  const lightness = reading.ok ? reading.evening.pizzas.shadeLightness : shadeLightness.golden;
  const named = shadeIds.find((id) => shadeLightness[id] === lightness);
  return (
    <span className="pair">
      <select
        {...control}
        className="entry"
        value={named ?? 'own'}
        onChange={(event) => {
          if (event.currentTarget.value !== 'own') change({ [path]: event.currentTarget.value });
        }}
      >
        {named === undefined && <option value="own">own</option>}
        {shadeIds.map((id) => (
          <option key={id} value={id}>
            {shadeNames[id]}
          </option>
        ))}
      </select>
      <TextEntry
        id={`${control.id}-lightness`}
        aria-describedby={control['aria-describedby']}
        aria-invalid={control['aria-invalid']}
        label="Lightness L* of the base"
        shown={draft?.text ?? `L* ${String(lightness)}`}
        step={undefined}
        onTake={(text) => {
          enter(path, text, `lightness ${text.replace(/^\s*L\*?\s*/iu, '').trim()}`);
        }}
        onBack={() => {
          dropDraft(path);
        }}
      />
    </span>
  );
}
