/** The ovens learned so far: kept under a name, used, renamed, forgotten, shared as files, with what they were before. */
import { useEffect, useId, useRef, useState, type ReactNode } from 'react';
import {
  changeOvens,
  forget,
  keep,
  loadOvens,
  openOvenFile,
  planWith,
  saveAsFile,
  useOvens,
} from './ovenStore.ts';
import { useUnits } from '../state/settingsStore.ts';
import { dayText, epochOf, localOffset } from '../words/clock.ts';
import { degreesApart } from '../words/figures.ts';
import { figuresOf, type LearnedOven, type LearnedVersion } from '../../physics/calibrate/learnedOven.ts';
import { goBackTo, renameOven } from '../../physics/calibrate/learnedOvens.ts';
import { showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';

function NameForm({
  label,
  first,
  does,
  onName,
  children,
}: {
  readonly label: string;
  readonly first: string;
  readonly does: string;
  readonly onName: (name: string) => void;
  readonly children?: ReactNode;
}) {
  const [name, setName] = useState(first);
  const field = useRef<HTMLInputElement>(null);
  // Takes the focus where it stands in for the key that opened it.
  const opened = children !== undefined;
  useEffect(() => {
    if (!opened) return;
    field.current?.focus();
    field.current?.select();
  }, [opened]);
  return (
    <form
      className="calibrate-keys"
      onSubmit={(event) => {
        event.preventDefault();
        onName(name);
      }}
    >
      <label className="calibrate-name">
        {label}
        <input
          ref={field}
          className="entry"
          value={name}
          maxLength={60}
          data-typing="true"
          onChange={(event) => {
            setName(event.currentTarget.value);
          }}
        />
      </label>
      <button type="submit" className="key framed tonight-key" disabled={name.trim() === ''}>
        {does}
      </button>
      {children}
    </form>
  );
}

/** @param learned the plan with the numbers learned in it */
export function KeepOven({ learned }: { readonly learned: Parameters<typeof keep>[1] }) {
  return (
    <NameForm
      label="Name of this oven"
      first="My oven"
      does="Keep this oven"
      onName={(name) => void keep(name, learned)}
    />
  );
}

function dayOf(version: LearnedVersion): string {
  const epoch = epochOf(version.learnedAt);
  return `${dayText(epoch, localOffset(epoch))} ${String(new Date(epoch).getFullYear())}`;
}

function figuresText(version: LearnedVersion, units: UnitSystem): string {
  const { power, thermostatOffset, plateThickness, browningRate } = figuresOf(version);
  const watts = (value: number | undefined, where: string): string[] =>
    value === undefined ? [] : [`${showQuantity(value, 'power', units)} ${where}`];
  return [
    ...watts(power.bottom, 'below'),
    ...watts(power.top, 'above'),
    ...(thermostatOffset === undefined
      ? []
      : [
          `${degreesApart(Math.abs(thermostatOffset), units)} ${thermostatOffset < 0 ? 'cooler' : 'hotter'} than the dial`,
        ]),
    ...(plateThickness === undefined ? [] : [`plate ${showQuantity(plateThickness, 'length', units)}`]),
    ...(browningRate === undefined ? [] : [`browns ${browningRate.toFixed(2)} times the usual rate`]),
  ].join(', ');
}

interface OvenProps {
  readonly oven: LearnedOven;
  readonly units: UnitSystem;
  /** takes the focus back after its name was changed or left */
  readonly focused: boolean;
  /** its name is no longer being changed */
  readonly onNamed: (name: string) => void;
  readonly onForgotten: () => void;
}

function Oven({ oven, units, focused, onNamed, onForgotten }: OvenProps) {
  const id = useId();
  const [renaming, setRenaming] = useState(false);
  const keys = useRef<HTMLDivElement>(null);
  const { name, versions } = oven;
  useEffect(() => {
    if (focused && !renaming) keys.current?.querySelector<HTMLElement>('[data-does="Rename"]')?.focus();
  }, [focused, renaming]);
  const [current, ...others] = versions;
  if (current === undefined) return null;
  const key = (does: string, onPress: () => void) => (
    <button
      type="button"
      className="key framed"
      data-does={does}
      aria-label={`${does}: ${name}`}
      onClick={onPress}
    >
      {does}
    </button>
  );
  return (
    <li aria-labelledby={id}>
      <h3 id={id}>{name}</h3>
      <p className="small muted">
        {dayOf(current)}: {figuresText(current, units)}
      </p>
      {renaming ? (
        <NameForm
          label="New name"
          first={name}
          does="Take it"
          onName={(next) => {
            void changeOvens((ovens) => renameOven(ovens, name, next)).then((done) => {
              if (!done) return;
              setRenaming(false);
              onNamed(next.trim());
            });
          }}
        >
          <button
            type="button"
            className="key tonight-key"
            onClick={() => {
              setRenaming(false);
              onNamed(name);
            }}
          >
            Cancel
          </button>
        </NameForm>
      ) : (
        <div className="calibrate-keys" ref={keys}>
          {key('Use', () => {
            planWith(name, current);
          })}
          {key('Rename', () => {
            onNamed('');
            setRenaming(true);
          })}
          {key('Save as file', () => {
            saveAsFile(oven);
          })}
          {key('Forget', () => {
            void forget(oven).then((gone) => {
              if (gone) onForgotten();
            });
          })}
        </div>
      )}
      {others.length > 0 && (
        <details>
          <summary>
            {others.length} {others.length === 1 ? 'other version' : 'other versions'}
          </summary>
          <ul className="ovens-list">
            {others.map((version, i) => (
              <li key={`${version.learnedAt} ${String(i)}`}>
                <p className="small">
                  {dayOf(version)}: {figuresText(version, units)}
                </p>
                <button
                  type="button"
                  className="key framed"
                  onClick={() => void changeOvens((ovens) => goBackTo(ovens, name, version.learnedAt))}
                >
                  Go back to this one
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </li>
  );
}

export function OvensLearned() {
  const id = useId();
  const units = useUnits();
  const { ovens, fault } = useOvens();
  const [named, setNamed] = useState<string>();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    void loadOvens();
  }, []);
  return (
    <section aria-labelledby={id}>
      <h2 id={id} ref={heading} tabIndex={-1}>
        Ovens learned
      </h2>
      <p className="muted">
        {ovens.length === 0 && fault.length === 0
          ? 'None kept yet: learn from readings and keep the oven, or open the file of one.'
          : 'Use puts oven, plate, browning and what is known of them into the plan; the setting of the dial stays.'}
      </p>
      {fault.length > 0 && (
        <div role="alert">
          <p className="reason">The ovens kept cannot be read and are left as they are.</p>
          {fault.map((text) => (
            <p key={text} className="reason">
              {text}
            </p>
          ))}
        </div>
      )}
      {ovens.length > 0 && (
        <ul className="ovens-list">
          {ovens.map((oven) => (
            <Oven
              key={oven.name}
              oven={oven}
              units={units}
              focused={named === oven.name}
              onNamed={setNamed}
              onForgotten={() => heading.current?.focus()}
            />
          ))}
        </ul>
      )}
      <div className="calibrate-keys">
        <label className="key framed tonight-key">
          Open an oven file
          <input
            className="hidden"
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              const [file] = event.currentTarget.files ?? [];
              if (file !== undefined) void openOvenFile(file);
              event.currentTarget.value = '';
            }}
          />
        </label>
      </div>
    </section>
  );
}
