/** The view Calibrate: readings in, what they say of this oven out. */
import { useDeferredValue, useId, useMemo, useRef } from 'react';
import { Learned } from './Learned.tsx';
import { OvensLearned } from './Ovens.tsx';
import { Preview } from './Preview.tsx';
import {
  learnNow,
  longestFile,
  rowsOfTonight,
  stopLearning,
  takeText,
  useCalibrate,
} from './calibrateStore.ts';
import { useEscapeStops } from '../frame/useEscapeStops.ts';
import { useForecast } from '../state/forecastStore.ts';
import { usePlan } from '../state/planStore.ts';
import { useUnits, type Theme } from '../state/settingsStore.ts';
import { epochOf, localOffset } from '../words/clock.ts';
import { wording } from '../../physics/evening/problem.ts';
import { readReadings, usualUnit, type ReadingsRead } from '../../physics/calibrate/readings.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

const rowsIn = {
  metric: ['10 min,plateTop,83 degC', '30 min,plateTop,211 degC'],
  us: ['10 min,plateTop,181 degF', '30 min,plateTop,412 degF'],
} as const;
function exampleRows(units: UnitSystem): readonly string[] {
  return [...rowsIn[units], '50 min,pizza 1 in,', '57 min,pizza 1 out,golden'];
}

/** Longer texts are read when they are learned from: reading them at every key would hold the window up. */
const readAtOnce = 200_000;

/** The text as it is understood for this plan; undefined while there is none, or no plan to count its times from. */
function usePreview(text: string): ReadingsRead | undefined {
  const units = useUnits();
  const say = useCalibrate((state) => state.say);
  const ovenOnAt = useForecast((state) => state.forecast?.answer.ovenOnAt);
  const typed = useDeferredValue(text);
  return useMemo(() => {
    if (typed.trim() === '' || typed.length > readAtOnce || ovenOnAt === undefined) return undefined;
    const ovenOn = epochOf(ovenOnAt);
    return readReadings(typed, {
      ovenOn,
      offsetMinutes: localOffset(ovenOn),
      say,
      usualUnit: usualUnit(units),
    });
  }, [typed, ovenOnAt, say, units]);
}

export function CalibrateView({ theme }: { readonly theme: Theme }) {
  const units = useUnits();
  const id = useId();
  const { text, infrared, busy, learned, read, problems, fault } = useCalibrate();
  const preview = usePreview(text) ?? (text === learned?.text ? read : undefined);
  const result = useRef<HTMLHeadingElement>(null);
  const learnAndShow = async (): Promise<void> => {
    if (await learnNow()) result.current?.focus();
  };
  const log = usePlan((state) => state.file.tonight?.log);
  const tonight = log === undefined ? '' : rowsOfTonight();
  useEscapeStops(stopLearning);
  return (
    <div className="calibrate">
      <div className="calibrate-column">
        <section aria-labelledby={`${id}-readings`}>
          <h2 id={`${id}-readings`}>Readings and bakes</h2>
          <p className="muted">
            Minutes from switching the oven on, where, how hot; or the log of a thermometer. A bake is two
            rows, in and out with the shade of its base:
          </p>
          <pre className="calibrate-example">{exampleRows(units).join('\n')}</pre>
          <p className="muted">
            With a pizza on it the plate is read beside it, or under it as <code>plateTop pizza 1</code>.
          </p>
          <textarea
            className="entry calibrate-text"
            aria-label="Readings"
            rows={10}
            spellCheck={false}
            value={text}
            onChange={(event) => {
              takeText(event.currentTarget.value);
            }}
          />
          <div className="calibrate-keys">
            <label className="key framed tonight-key">
              Open a file
              <input
                className="hidden"
                type="file"
                accept=".csv,.tsv,.txt,text/csv,text/plain"
                onChange={(event) => {
                  const [file] = event.currentTarget.files ?? [];
                  if (file === undefined) return;
                  if (file.size > longestFile)
                    useCalibrate.setState({
                      fault: `${file.name}: found ${String(file.size)} bytes; allowed ${String(longestFile)}`,
                    });
                  else
                    void file.text().then((content) => {
                      takeText(content);
                      void learnAndShow();
                    });
                  event.currentTarget.value = '';
                }}
              />
            </label>
            {tonight !== '' && (
              <button
                type="button"
                className="key framed tonight-key"
                onClick={() => {
                  takeText(tonight);
                }}
              >
                Take tonight&apos;s
              </button>
            )}
            <label className="calibrate-check">
              <input
                type="checkbox"
                checked={infrared}
                onChange={(event) => {
                  useCalibrate.setState({ infrared: event.currentTarget.checked });
                }}
              />
              Read by infrared
            </label>
            {/* One key for both, so that the focus stays where it is. */}
            <button
              type="button"
              className={`key ${busy ? 'framed' : 'main'} tonight-key`}
              aria-keyshortcuts={busy ? 'Escape' : undefined}
              disabled={!busy && text.trim() === ''}
              onClick={() => {
                if (busy) stopLearning();
                else void learnAndShow();
              }}
            >
              {busy ? 'Stop (Escape)' : 'Learn'}
            </button>
          </div>
          <div role="status">
            {problems.map((problem) => (
              <p key={problem.path} className="reason">
                {wording(problem)}
              </p>
            ))}
            {fault !== '' && <p className="reason">{fault}</p>}
            {busy && <p className="muted">Heating the oven up some thirty times …</p>}
          </div>
          <p className="small muted">
            Each look costs heat, and what stands inside burns: open the oven briefly.
          </p>
        </section>
        {preview !== undefined && (
          <Preview
            read={preview}
            onCorrected={() => {
              if (learned !== undefined) void learnNow();
            }}
          />
        )}
        <OvensLearned />
      </div>
      {learned !== undefined && (
        <Learned
          heading={result}
          file={learned.file}
          learned={learned.calibration}
          stale={learned.text !== text}
          units={units}
          theme={theme}
        />
      )}
    </div>
  );
}
