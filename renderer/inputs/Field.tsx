/** A field of the plan, drawn by its kind in the schema. */
import { Choice } from './Choice.tsx';
import { FieldRow } from './FieldRow.tsx';
import { RackControl } from './RackControl.tsx';
import { ShadeControl } from './ShadeControl.tsx';
import { TextEntry } from './TextEntry.tsx';
import { factsOf, stepOf, type FieldSpec } from './fields.ts';
import { entryOf, shownQuantity, shownUnit, steppedEntry } from './shown.ts';
import { valueAt } from '../state/path.ts';
import { change, dropDraft, enter, refuse, usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { useUnits } from '../state/settingsStore.ts';
import { effects, effectsOfNumber } from './effects.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';
import type { ControlProps } from './FieldRow.tsx';

function useValue(path: string): { written: unknown; si: unknown } {
  const file = usePlan((state) => state.file);
  const reading = readingOf(file);
  return {
    written: valueAt(file, path),
    si: reading.ok ? valueAt(reading.evening, siPath(path)) : undefined,
  };
}

/** Where the evening in SI keeps what the file keeps at a path; they differ in few places. */
function siPath(path: string): string {
  if (path === 'plate.diameter') return 'plate.width';
  return path.replace(/^plate\.(density|specificHeat|thermalConductivity|emissivity)$/u, 'plate.custom.$1');
}

/** As much as an empty field has room for. */
const emptyLength = 17;

/**
 * What a field that may be left empty says, with the unit that a bare number would take; a unit too long for it stands
 * under the name.
 */
function emptyText({ path, optional }: FieldSpec, units: UnitSystem): { empty?: string; under?: string } {
  const unit = shownUnit(path, units);
  if (optional === undefined) return {};
  if (unit === '') return { empty: optional };
  const both = `${optional}; ${unit}`;
  return both.length > emptyLength ? { empty: optional, under: unit } : { empty: both };
}

const shareOfFlour = 'dough.flourMoisture';
function shownPercent(share: number): number {
  return Number((share * 100).toPrecision(6));
}

function NumberControl({ spec, control }: { spec: FieldSpec; control: ControlProps }) {
  const { path, unit } = spec;
  const units = useUnits();
  const step = stepOf(spec, units);
  const draft = usePlan(({ drafts }) => drafts[path]);
  const { written, si } = useValue(path);
  const { kind } = factsOf(path);
  const quantity = kind !== 'number';
  const shown = (): string => {
    if (kind === 'price') return typeof written === 'string' ? written : '';
    if (typeof si !== 'number') return '';
    if (!quantity) {
      // The evening keeps some percentages as shares: the plan's own figure, where it has one, or as many digits.
      const figure = typeof written === 'number' ? written : path === shareOfFlour ? shownPercent(si) : si;
      return unit === undefined ? String(figure) : `${String(figure)} ${unit}`;
    }
    return shownQuantity(typeof written === 'string' ? written : undefined, si, path, units);
  };
  return (
    <TextEntry
      {...control}
      shown={draft?.text ?? shown()}
      step={step === undefined ? undefined : (text, by) => steppedEntry(text, by * step, path, units)}
      inputMode={quantity ? 'text' : 'decimal'}
      placeholder={emptyText(spec, units).empty}
      onTake={(text) => {
        if (spec.optional !== undefined && text.trim() === '') {
          dropDraft(path);
          change({ [path]: undefined });
          return;
        }
        const entry = entryOf(text, path, units);
        if (entry.ok)
          enter(path, text, entry.value, effectsOfNumber(path, entry.value, usePlan.getState().file));
        else refuse(path, text, entry.reason);
      }}
      onBack={() => {
        dropDraft(path);
      }}
    />
  );
}

function ChoiceControl({ spec, control }: { spec: FieldSpec; control: ControlProps }) {
  const { path, names, optional } = spec;
  const { si } = useValue(path);
  return (
    <Choice
      {...control}
      options={[
        ...(optional === undefined ? [] : ([['', optional]] as const)),
        ...(factsOf(path).choices ?? []).map((id) => [id, names?.[id] ?? id] as const),
      ]}
      value={typeof si === 'string' ? si : ''}
      onChoose={(chosen) => {
        const value = chosen === '' ? undefined : chosen;
        const problem = change({ [path]: value, ...effects(path, chosen, usePlan.getState().file) });
        if (problem !== undefined)
          refuse(path, chosen, `Found ${problem.path} ${problem.found}; allowed ${problem.allowed}.`);
      }}
    />
  );
}

function FlagControl({ spec, control }: { spec: FieldSpec; control: ControlProps }) {
  const { path } = spec;
  const { si } = useValue(path);
  const draft = usePlan(({ drafts }) => drafts[path]);
  const on = draft === undefined ? si === true : draft.value === true;
  return (
    <span className="flag">
      <input
        {...control}
        type="checkbox"
        checked={on}
        onChange={(event) => {
          const { checked } = event.currentTarget;
          enter(path, checked ? 'on' : 'off', checked);
        }}
      />
      <span aria-hidden="true">{on ? 'on' : 'off'}</span>
    </span>
  );
}

export function Field({ spec }: { spec: FieldSpec }) {
  const units = useUnits();
  const { kind } = factsOf(spec.path);
  const draw = (control: ControlProps) => {
    if (spec.path === 'plate.rackHeight') return <RackControl control={control} />;
    if (kind === 'shade') return <ShadeControl spec={spec} control={control} />;
    if (kind === 'choice') return <ChoiceControl spec={spec} control={control} />;
    if (kind === 'boolean') return <FlagControl spec={spec} control={control} />;
    return <NumberControl spec={spec} control={control} />;
  };
  return <FieldRow path={spec.path} label={spec.label} under={emptyText(spec, units).under} control={draw} />;
}
