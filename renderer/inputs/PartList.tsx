/** A list of parts, each a kind and an amount: the liquids of a dough, the cheeses of a pizza. */
import { Plus } from 'lucide-react';
import { Choice } from './Choice.tsx';
import { fieldId, FieldRow } from './FieldRow.tsx';
import { LeaveOutKey } from './LeaveOutKey.tsx';
import { TextEntry } from './TextEntry.tsx';
import { entryOf, shownQuantity } from './shown.ts';
import { change, dropDraft, enter, refuse, usePlan } from '../state/planStore.ts';
import { valueAt } from '../state/path.ts';
import { useUnits } from '../state/settingsStore.ts';

export interface Part {
  readonly kind: string;
  /** a number (baker's percent) or a quantity as written */
  readonly amount: number | string;
  /** SI of the amount */
  readonly si: number;
  readonly waterShare: number | undefined;
}
interface PartListProps {
  /** of the list */
  readonly path: string;
  readonly label: string;
  readonly names: Readonly<Record<string, string>>;
  readonly amountName: 'percent' | 'mass';
  readonly parts: readonly Part[];
  readonly fresh: { readonly kind: string; readonly percent?: number; readonly mass?: string };
  /** whether the list may be emptied */
  readonly mayBeEmpty: boolean;
}

/** Water in a part of one's own choosing, until the cook says better. */
const usualWater = 0.5;

export function PartList({ path, label, names, amountName, parts, fresh, mayBeEmpty }: PartListProps) {
  const units = useUnits();
  const drafts = usePlan((state) => state.drafts);
  const file = usePlan((state) => state.file);
  const written = (): unknown[] => {
    const list = valueAt(file, path);
    if (Array.isArray(list)) return list as unknown[];
    return parts.map(({ kind, amount }) => ({ kind, [amountName]: amount }));
  };
  const setPart = (index: number, part: unknown): Readonly<Record<string, unknown>> => ({
    [path]: written().map((old, i) => (i === index ? part : old)),
  });
  const asWritten = (
    { kind, amount, waterShare }: Part,
    field: string,
    value: unknown,
  ): Record<string, unknown> => ({
    kind,
    [amountName]: amount,
    ...(waterShare === undefined ? {} : { waterShare }),
    [field]: value,
  });
  const takeKind = (part: Part, index: number, kind: string): void => {
    const next = asWritten({ ...part, waterShare: kind === 'custom' ? usualWater : undefined }, 'kind', kind);
    change(setPart(index, next));
  };
  return (
    <>
      {parts.map((part, index) => {
        const place = `${path}.${String(index)}`;
        const amountPath = `${place}.${amountName}`;
        const sharePath = `${place}.waterShare`;
        const name = parts.length === 1 ? label : `${label} ${String(index + 1)}`;
        const amount =
          amountName === 'percent'
            ? `${String(part.amount)} %`
            : shownQuantity(String(part.amount), part.si, amountPath, units);
        return (
          <div className="part" key={place}>
            <FieldRow
              path={amountPath}
              label={name}
              control={(control) => (
                <TextEntry
                  {...control}
                  shown={drafts[amountPath]?.text ?? amount}
                  step={amountName === 'percent' ? 1 : units === 'us' ? 0.25 : 5}
                  onTake={(text) => {
                    const entry = entryOf(text, amountPath, units);
                    if (!entry.ok) refuse(amountPath, text, entry.reason);
                    else if (valueAt(file, path) !== undefined) enter(amountPath, text, entry.value);
                    else change(setPart(index, asWritten(part, amountName, entry.value)));
                  }}
                  onBack={() => {
                    dropDraft(amountPath);
                  }}
                />
              )}
            />
            <div className="field">
              <Choice
                id={fieldId(`${place}.kind`)}
                className="entry wide-entry"
                aria-label={`Kind of ${name.toLowerCase()}`}
                options={Object.entries(names)}
                value={part.kind}
                onChoose={(kind) => {
                  takeKind(part, index, kind);
                }}
              />
              {parts.length > 1 || mayBeEmpty ? (
                <LeaveOutKey
                  label={`Leave out ${name.toLowerCase()}`}
                  onLeaveOut={() => {
                    change({ [path]: written().filter((_, i) => i !== index) });
                  }}
                />
              ) : (
                <span />
              )}
            </div>
            {part.waterShare !== undefined && (
              <FieldRow
                path={sharePath}
                label="of it water"
                control={(control) => (
                  <TextEntry
                    {...control}
                    shown={drafts[sharePath]?.text ?? String(part.waterShare)}
                    step={0.05}
                    inputMode="decimal"
                    onTake={(text) => {
                      const entry = entryOf(text, sharePath, units);
                      if (entry.ok) enter(sharePath, text, entry.value);
                      else refuse(sharePath, text, entry.reason);
                    }}
                    onBack={() => {
                      dropDraft(sharePath);
                    }}
                  />
                )}
              />
            )}
          </div>
        );
      })}
      <button
        type="button"
        className="key add-part"
        onClick={() => {
          change({ [path]: [...written(), fresh] });
        }}
      >
        <Plus aria-hidden="true" /> Add {label.toLowerCase()}
      </button>
    </>
  );
}
