/** Title, saved state and everything that concerns the plan as a whole. */
import { Ellipsis, Printer, Redo2, Save, SunMoon, Undo2 } from 'lucide-react';
import { useState } from 'react';
import { Keyboard, MenuItem, Text, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { themes, unitSystems } from './choices.ts';
import { HeadMenu } from './HeadMenu.tsx';
import { OpenMenu } from './OpenMenu.tsx';
import { HandoutMenu } from '../handout/HandoutMenu.tsx';
import { command, commands, printPlan, setPicker } from '../state/commands.ts';
import { openPicked, savePlan, savePlanAs, unsaved, useDocument } from '../state/documentStore.ts';
import { downloadCopy, planEnding } from '../state/downloads.ts';
import { change, redo, undo, useHistory, usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { changeSettings, useSettings } from '../state/settingsStore.ts';
import { showSheet } from '../state/sheetStore.ts';
import { pastClockText, epochOf, localOffset } from '../words/clock.ts';

function Title() {
  const file = usePlan((state) => state.file);
  const reading = readingOf(file);
  const title = reading.ok ? reading.evening.title : '';
  const [typed, setTyped] = useState<string>();
  const take = (): void => {
    const text = typed?.trim();
    setTyped(undefined);
    if (text !== undefined && text !== '' && text !== title) change({ title: text });
  };
  return (
    <input
      className="title"
      aria-label="Title of the evening"
      maxLength={120}
      data-typing={typed === undefined ? undefined : true}
      value={typed ?? title}
      onChange={(event) => {
        setTyped(event.currentTarget.value);
      }}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
        if (event.key === 'Escape') setTyped(undefined);
      }}
    />
  );
}

function Saved() {
  // Reads the plan so that it is drawn again with every change of it.
  usePlan((state) => state.file);
  const { origin, savedAt, document, alone } = useDocument();
  const changed = unsaved();
  const at = savedAt === undefined ? undefined : epochOf(savedAt);
  const state = changed
    ? 'changes not saved'
    : at !== undefined
      ? `saved ${pastClockText(at, localOffset(at))}`
      : origin === 'example'
        ? 'example: set oven and plate'
        : 'as in its file';
  return (
    <span className="saved" title={document?.name}>
      {alone ? 'the program does not answer: download a copy to save' : state}
    </span>
  );
}

function ThemeMenu() {
  const theme = useSettings((state) => state.theme);
  return (
    <HeadMenu
      name="Theme"
      face={<SunMoon aria-hidden="true" />}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[theme]}
      onChoose={(key) => {
        const chosen = themes.find(({ id }) => id === key);
        if (chosen !== undefined) changeSettings({ theme: chosen.id });
      }}
    >
      {themes.map(({ id, name }) => (
        <MenuItem key={id} id={id}>
          {name}
        </MenuItem>
      ))}
    </HeadMenu>
  );
}

interface MoreItem {
  readonly id: string;
  readonly name: string;
  readonly keys?: string;
  readonly act: () => void;
}
const more: readonly MoreItem[] = [
  {
    id: 'saveAs',
    name: 'Save under another name',
    keys: `${command} Shift S`,
    act: () => void savePlanAs(),
  },
  { id: 'copy', name: 'Download a copy', act: downloadCopy },
  { id: 'new', name: 'New, from the example', act: commands.new },
  {
    id: 'keys',
    name: 'Keys',
    keys: '?',
    act: () => {
      showSheet('keys');
    },
  },
  { id: 'settings', name: 'Settings', keys: `${command} ,`, act: commands.settings },
  {
    id: 'about',
    name: 'About Hearthclock',
    act: () => {
      showSheet('about');
    },
  },
];

function MoreMenu() {
  return (
    <HeadMenu
      name="More"
      face={<Ellipsis aria-hidden="true" />}
      onChoose={(key) => {
        more.find(({ id }) => id === key)?.act();
      }}
    >
      {more.map(({ id, name, keys }) => (
        <MenuItem key={id} id={id} textValue={name}>
          <Text slot="label">{name}</Text>
          {keys !== undefined && <Keyboard>{keys}</Keyboard>}
        </MenuItem>
      ))}
    </HeadMenu>
  );
}

function UnitsSwitch() {
  const units = useSettings((state) => state.units);
  return (
    <ToggleButtonGroup
      className="switch"
      aria-label="Units"
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[units]}
      onSelectionChange={(keys) => {
        changeSettings({ units: keys.has('us') ? 'us' : 'metric' });
      }}
    >
      {unitSystems.map(({ id, name }) => (
        <ToggleButton key={id} id={id}>
          {name}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}

export function Header({ onInputs }: { readonly onInputs: () => void }) {
  const { canUndo, canRedo } = useHistory();
  return (
    <header className="head">
      <h1 className="hidden">Hearthclock</h1>
      <Title />
      <Saved />
      <button type="button" className="key framed inputs-key" onClick={onInputs}>
        Inputs
      </button>
      <button type="button" className="key" disabled={!canUndo} onClick={undo} aria-label="Undo" title="Undo">
        <Undo2 aria-hidden="true" /> <span className="wide">Undo</span>
      </button>
      <button type="button" className="key" disabled={!canRedo} onClick={redo} aria-label="Redo" title="Redo">
        <Redo2 aria-hidden="true" /> <span className="wide">Redo</span>
      </button>
      <UnitsSwitch />
      <ThemeMenu />
      <OpenMenu />
      <button type="button" className="key" onClick={() => void savePlan()}>
        <Save aria-hidden="true" /> Save
      </button>
      <button type="button" className="key" onClick={printPlan} aria-label="Print" title="Print">
        <Printer aria-hidden="true" /> <span className="wide">Print</span>
      </button>
      <HandoutMenu />
      <MoreMenu />
      <input
        ref={setPicker}
        type="file"
        accept={`${planEnding},.json,application/json`}
        className="hidden"
        tabIndex={-1}
        aria-label="Plan file"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = '';
          if (file !== undefined) void openPicked(file);
        }}
      />
    </header>
  );
}
