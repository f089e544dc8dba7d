/** One of several names to choose from. */
import type { SelectHTMLAttributes } from 'react';

export type Options = readonly (readonly [id: string, name: string])[];

interface ChoiceProps extends Omit<SelectHTMLAttributes<HTMLSelectElement>, 'onChange' | 'value'> {
  readonly options: Options;
  readonly value: string;
  /** takes the id of what is chosen */
  readonly onChoose: (id: string) => void;
}

export function Choice({ options, onChoose, className = 'entry', ...select }: ChoiceProps) {
  return (
    <select
      // A name that is longer than its field is read whole under the pointer.
      title={options.find(([id]) => id === select.value)?.[1]}
      {...select}
      className={className}
      onChange={(event) => {
        onChoose(event.currentTarget.value);
      }}
    >
      {options.map(([id, name]) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
}
