/** How brown a base is to be: a name, or a lightness from 42 to 80. */
import { Choice, type Options } from './Choice.tsx';
import { TextEntry } from './TextEntry.tsx';
import { valueAt } from '../state/path.ts';
import { change, dropDraft, enter, usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { shadeNames } from '../words/names.ts';
import { readShade, shadeLightness } from '../../physics/evening/shade.ts';
import { shadeIds } from '../../physics/evening/ids.ts';
import type { FieldSpec } from './fields.ts';
import type { ControlProps } from './FieldRow.tsx';

export function ShadeControl({ spec, control }: { spec: FieldSpec; control: ControlProps }) {
  const { path, optional } = spec;
  const file = usePlan((state) => state.file);
  const draft = usePlan(({ drafts }) => drafts[path]);
  const reading = readingOf(file);
  const written = valueAt(file, path);
  const all = reading.ok ? reading.evening.pizzas.shadeLightness : shadeLightness.golden;
  // A shade that may be left out is only there when it is written.
  const unsaid = optional !== undefined && written === undefined;
  const lightness = typeof written === 'string' ? (readShade(written) ?? all) : all;
  const named = unsaid ? undefined : shadeIds.find((id) => shadeLightness[id] === lightness);
  const options: Options = [
    ...(optional === undefined ? [] : ([['', optional]] as const)),
    ...(unsaid || named !== undefined ? [] : ([['own', 'own']] as const)),
    ...shadeIds.map((id) => [id, shadeNames[id]] as const),
  ];
  return (
    <span className="pair">
      <Choice
        {...control}
        options={options}
        value={unsaid ? '' : (named ?? 'own')}
        onChoose={(id) => {
          if (id !== 'own') change({ [path]: id === '' ? undefined : id });
        }}
      />
      <TextEntry
        id={`${control.id}-lightness`}
        aria-describedby={control['aria-describedby']}
        aria-invalid={control['aria-invalid']}
        label={`Lightness L*: ${spec.label}`}
        shown={draft?.text ?? (unsaid ? '' : `L* ${String(lightness)}`)}
        placeholder={unsaid ? 'L*' : undefined}
        step={undefined}
        onTake={(text) => {
          if (optional !== undefined && text.trim() === '') {
            dropDraft(path);
            change({ [path]: undefined });
            return;
          }
          enter(path, text, `lightness ${text.replace(/^\s*L\*?\s*/iu, '').trim()}`);
        }}
        onBack={() => {
          dropDraft(path);
        }}
      />
    </span>
  );
}
