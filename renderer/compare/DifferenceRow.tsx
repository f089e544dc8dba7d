/** One field in which another evening differs, with its value. A wrong entry stays with its reason. */
import { useId } from 'react';
import { comparable, specOf, valueText, type Difference } from './differences.ts';
import { factsOf, stepOf } from '../inputs/fields.ts';
import { entryOf, steppedEntry } from '../inputs/shown.ts';
import { Choice } from '../inputs/Choice.tsx';
import { LeaveOutKey } from '../inputs/LeaveOutKey.tsx';
import { TextEntry } from '../inputs/TextEntry.tsx';
import { rackCount, rackHeightOf, rackText } from '../words/names.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface DifferenceRowProps {
  readonly difference: Difference;
  readonly units: UnitSystem;
  readonly onChange: (next: Difference) => void;
  readonly onDrop: () => void;
}

/** What a field can be chosen from, if it is not typed. */
function choicesOf(
  path: string,
): readonly (readonly [value: string | number | boolean, name: string])[] | undefined {
  const { kind, choices } = factsOf(path);
  if (path === 'plate.rackHeight')
    return Array.from({ length: rackCount }, (_, i) => [rackHeightOf(i + 1), rackText(rackHeightOf(i + 1))]);
  if (kind === 'boolean')
    return [
      [true, 'on'],
      [false, 'off'],
    ];
  if (kind === 'shade')
    return [
      ['pale', 'Pale'],
      ['golden', 'Golden'],
      ['dark', 'Dark'],
    ];
  if (kind !== 'choice') return undefined;
  return (choices ?? []).map((id) => [id, specOf(path).names?.[id] ?? id]);
}

/** The first value that a field takes when it is chosen. */
export function firstValue(path: string, units: UnitSystem): Difference['value'] {
  const [first] = choicesOf(path) ?? [];
  if (first !== undefined) return first[0];
  const starts: Readonly<Record<string, readonly [metric: string | number, us: string | number]>> = {
    'plate.thickness': ['12 mm', '1/2 in'],
    'oven.setpoint': ['230 degC', '450 degF'],
    'oven.highestSetting': ['300 degC', '550 degF'],
    'pizzas.count': [3, 3],
    'pizzas.diameter': ['28 cm', '11 in'],
    'pizzas.ballMass': ['220 g', '8 oz'],
    'toppings.sauce': ['50 g', '2 oz'],
  };
  const start = starts[path]?.[units === 'us' ? 1 : 0];
  if (start !== undefined) return start;
  const { kind, units: shownUnits } = factsOf(path);
  const unit = shownUnits?.[units] ?? '';
  return kind === 'number' ? 1 : `10 ${unit}`.trim();
}

export function DifferenceRow({ difference, units, onChange, onDrop }: DifferenceRowProps) {
  const { path, value, wrong: entry } = difference;
  const id = useId();
  const { label } = specOf(path);
  const choices = choicesOf(path);
  const step = stepOf(specOf(path), units);
  const wrong = entry !== undefined;
  return (
    <div className={wrong ? 'difference wrong' : 'difference'}>
      <select
        className="entry"
        aria-label="What differs"
        value={path}
        onChange={(event) => {
          const next = event.currentTarget.value;
          onChange({ path: next, value: firstValue(next, units) });
        }}
      >
        {comparable.map(({ name, fields }) => (
          <optgroup key={name} label={name}>
            {fields.map((field) => (
              <option key={field.path} value={field.path}>
                {field.label}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
      {choices === undefined ? (
        <TextEntry
          id={id}
          label={label}
          aria-describedby={`${id}-reason`}
          aria-invalid={wrong ? true : undefined}
          shown={entry?.text ?? valueText(difference, units)}
          step={step === undefined ? undefined : (text, by) => steppedEntry(text, by * step, path, units)}
          onTake={(text) => {
            const read = entryOf(text, path, units);
            if (read.ok) onChange({ path, value: read.value as Difference['value'] });
            else onChange({ path, value, wrong: { text, reason: read.reason } });
          }}
          onBack={() => {
            if (wrong) onChange({ path, value });
          }}
        />
      ) : (
        <Choice
          aria-label={label}
          options={choices.map(([one, name]) => [String(one), name])}
          value={String(value)}
          onChoose={(chosen) => {
            const next = choices.find(([one]) => String(one) === chosen);
            if (next !== undefined) onChange({ path, value: next[0] });
          }}
        />
      )}
      <LeaveOutKey label={`Leave out ${label.toLowerCase()}`} onLeaveOut={onDrop} />
      <p className="reason" id={`${id}-reason`} hidden={!wrong}>
        {entry?.reason}
      </p>
    </div>
  );
}
