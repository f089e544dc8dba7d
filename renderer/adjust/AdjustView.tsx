/** The view Adjust: the recipe in a reader's oven, and what gets a weak one back. */
import { useId, useMemo } from 'react';
import { create } from 'zustand';
import { ReaderCurves, ReadersTable } from './Readers.tsx';
import { WeakOven } from './WeakOven.tsx';
import { Progress } from '../compare/Progress.tsx';
import { useEscapeStops } from '../frame/useEscapeStops.ts';
import { Held } from '../Held.tsx';
import { Cell } from '../amounts/Cell.tsx';
import { readIn } from '../amounts/entries.ts';
import { usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { useUnits, type Theme } from '../state/settingsStore.ts';
import { stopStudies, useStudied } from '../state/studies.ts';
import { temperatureK } from '../words/figures.ts';
import { readersSettings } from '../../physics/evening/readersOven.ts';
import type { StudyJob } from '../state/study.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';

/** K, of the reader's oven; undefined takes the one below the plan's own. Kept while the window is open. */
export const useReader = create<{ readonly setting: number | undefined }>()(() => ({ setting: undefined }));

/** The one a reader is likely to have who asks: the next that is well below what the recipe is planned at. */
function usualReader(settings: readonly number[], own: number): number {
  return [...settings].reverse().find((setting) => setting < own - 8) ?? own;
}

interface ShownProps {
  readonly file: PlanFile;
  readonly evening: Evening;
  readonly theme: Theme;
}

function Shown({ file, evening, theme }: ShownProps) {
  const units = useUnits();
  const own = evening.oven.setpoint;
  const chosen = useReader((state) => state.setting);
  const settings = useMemo(() => readersSettings(evening, units), [evening, units]);
  const setting = chosen ?? usualReader(settings, own);
  const rowsAsked = useMemo(
    () =>
      settings.some((one) => Math.abs(one - setting) < 0.5)
        ? settings
        : [...settings, setting].sort((a, b) => a - b),
    [settings, setting],
  );
  const jobs = useMemo(
    () => rowsAsked.map((one): StudyJob => ({ kind: 'reader', file, setting: one })),
    [rowsAsked, file],
  );
  const studied = useStudied('table', jobs);
  const rows = useMemo(
    () =>
      studied.outcomes.flatMap((outcome) =>
        outcome?.ok === true && outcome.study.kind === 'reader' ? [outcome.study.row] : [],
      ),
    [studied],
  );
  const id = useId();
  useEscapeStops(stopStudies);
  return (
    <>
      <Held />
      <div className="reader-ask">
        <span id={id}>My reader&apos;s oven goes no further than</span>
        <Cell
          label="The highest setting of the reader's oven"
          shown={temperatureK(setting, units)}
          step={5}
          onTake={(text) => {
            const read = readIn(text, 'temperature', units === 'us' ? 'degF' : 'degC');
            if (!read.ok) return read.reason;
            // What a plan may be set to.
            if (read.value < 333.15 || read.value > 773.15)
              return `Found ${text.trim()}; allowed ${temperatureK(333.15, units)} to ${temperatureK(773.15, units)}.`;
            useReader.setState({ setting: read.value });
            return undefined;
          }}
        />
        <span className="muted">the recipe is planned at {temperatureK(own, units)}</span>
      </div>
      <div className="adjust">
        <div className="adjust-main">
          <Progress group="table" studied={studied} total={jobs.length} what="ovens" />
          {rows.length > 0 && (
            <>
              <ReaderCurves rows={rows} own={own} units={units} theme={theme} />
              <ReadersTable rows={rows} evening={evening} units={units} />
            </>
          )}
        </div>
        <div className="adjust-side">
          <WeakOven file={file} setting={setting} units={units} />
        </div>
      </div>
    </>
  );
}

export function AdjustView({ theme }: { readonly theme: Theme }) {
  const file = usePlan((state) => state.file);
  const reading = readingOf(file);
  if (!reading.ok) return null;
  return <Shown file={file} evening={reading.evening} theme={theme} />;
}
