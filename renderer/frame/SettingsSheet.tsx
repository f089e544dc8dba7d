/** Everything that holds for all plans, in one place: units, theme, keys. */
import { useId, type ReactNode } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { themes, unitSystems } from './choices.ts';
import { changeSettings, useSettings } from '../state/settingsStore.ts';
import { showSettings, useSheet } from '../state/sheetStore.ts';

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
  const open = useSheet(({ settings }) => settings);
  const { units, theme, letterKeys } = useSettings();
  return (
    <ModalOverlay className="veil" isOpen={open} isDismissable onOpenChange={showSettings}>
      <Modal className="sheet">
        <Dialog className="sheet-body">
          <Heading slot="title">Settings</Heading>
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
          <label className="flag">
            <input
              type="checkbox"
              checked={letterKeys}
              onChange={(event) => {
                changeSettings({ letterKeys: event.currentTarget.checked });
              }}
            />
            Single letters work as keys
          </label>
          <div className="actions">
            <Button
              className="key main"
              onPress={() => {
                showSettings(false);
              }}
            >
              Close
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
