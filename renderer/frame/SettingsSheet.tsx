/** Everything that holds for all plans, in one place: units, theme, keys. */
import { useId, type ReactNode } from 'react';
import { themes, unitSystems } from './choices.ts';
import { LetterKeysFlag, Sheet } from './Sheet.tsx';
import { changeSettings, useSettings } from '../state/settingsStore.ts';

interface Choice<Id extends string> {
  readonly id: Id;
  readonly name: string;
}

function Choices<Id extends string>({
  legend,
  choices,
  chosen,
  onChoose,
}: {
  readonly legend: string;
  readonly choices: readonly Choice<Id>[];
  readonly chosen: Id;
  readonly onChoose: (id: Id) => void;
}): ReactNode {
  const group = useId();
  return (
    <fieldset className="choices">
      <legend>{legend}</legend>
      {choices.map(({ id, name }) => (
        <label key={id} className="flag">
          <input
            type="radio"
            name={group}
            checked={id === chosen}
            onChange={() => {
              onChoose(id);
            }}
          />
          {name}
        </label>
      ))}
    </fieldset>
  );
}

export function SettingsSheet() {
  const { units, theme } = useSettings();
  return (
    <Sheet id="settings" heading="Settings">
      <Choices
        legend="Units"
        choices={unitSystems}
        chosen={units}
        onChoose={(id) => {
          changeSettings({ units: id });
        }}
      />
      <Choices
        legend="Theme"
        choices={themes}
        chosen={theme}
        onChoose={(id) => {
          changeSettings({ theme: id });
        }}
      />
      <LetterKeysFlag />
    </Sheet>
  );
}
