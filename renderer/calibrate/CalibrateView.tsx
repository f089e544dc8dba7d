/** The view Calibrate: readings in, what they say of this oven out. */
import { useId } from 'react';
import { Learned } from './Learned.tsx';
import { OvensLearned } from './Ovens.tsx';
import {
  learnNow,
  longestFile,
  rowsOfTonight,
  stopLearning,
  takeText,
  useCalibrate,
} from './calibrateStore.ts';
import { useEscapeStops } from '../frame/useEscapeStops.ts';
import { usePlan } from '../state/planStore.ts';
import { useUnits, type Theme } from '../state/settingsStore.ts';
import { temperatureK } from '../words/figures.ts';
import { wording } from '../../physics/evening/problem.ts';
import { placeIds, type PlaceId } from '../../physics/evening/ids.ts';
import type { ReadingsRead } from '../../physics/calibrate/readings.ts';

const example = 'time,place,temperature\n10 min,plateTop,83 degC\n30 min,plateTop,211 degC';
const placeNames: Readonly<Record<PlaceId, string>> = {
  ovenAir: 'air',
  plateTop: 'plate top',
  plateCore: 'plate core',
  dough: 'dough',
};

/** How the text was understood; each guess can be set right. */
function Preview({ read }: { readonly read: ReadingsRead }) {
  const units = useUnits();
  const say = useCalibrate((state) => state.say);
  const { guesses, readings, bakes, dropped, repeated } = read;
  const correct = (change: typeof say): void => {
    useCalibrate.setState({ say: { ...say, ...change } });
    void learnNow();
  };
  return (
    <section aria-labelledby="calibrate-read">
      <h2 id="calibrate-read">As it was understood</h2>
      <div className="calibrate-guesses">
        <label>
          Figures without a unit
          <select
            className="entry"
            value={guesses.unit}
            onChange={(event) => {
              correct({ unit: event.currentTarget.value === 'degF' ? 'degF' : 'degC' });
            }}
          >
            <option value="degC">°C</option>
            <option value="degF">°F</option>
          </select>
        </label>
        <label>
          Columns without a place
          <select
            className="entry"
            value={guesses.place}
            onChange={(event) => {
              const place = placeIds.find((id) => id === event.currentTarget.value);
              if (place !== undefined) correct({ place });
            }}
          >
            {placeIds.map((id) => (
              <option key={id} value={id}>
                {placeNames[id]}
              </option>
            ))}
          </select>
        </label>
      </div>
      <table className="small-table">
        <caption>
          {readings.length} {readings.length === 1 ? 'reading' : 'readings'}
          {bakes.length > 0 ? `, ${String(bakes.length)} ${bakes.length === 1 ? 'bake' : 'bakes'}` : ''}
          {repeated > 0 ? `, ${String(repeated)} said twice` : ''}
          {dropped.length > 0 ? `, ${String(dropped.length)} left out` : ''}
        </caption>
        <thead>
          <tr>
            <th scope="col">Minute</th>
            <th scope="col">Where</th>
            <th scope="col">Temperature</th>
          </tr>
        </thead>
        <tbody>
          {readings.slice(0, 12).map(({ line, seconds, place, pizza, temperature }) => (
            <tr key={`${String(line)} ${place}`}>
              <th scope="row">{(seconds / 60).toFixed(1)}</th>
              <td>
                {placeNames[place]}
                {pizza === undefined ? '' : `, under pizza ${String(pizza)}`}
              </td>
              <td>{temperatureK(temperature, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {bakes.map(({ pizza, inAt, outAt, lightness }) => (
        <p key={String(pizza) + String(inAt)} className="small">
          Pizza {pizza}: in at {(inAt / 60).toFixed(1)} min,{' '}
          {outAt === undefined ? 'not out yet' : `out at ${(outAt / 60).toFixed(1)} min`}
          {lightness === undefined ? '' : `, base at lightness ${lightness.toFixed(0)}`}
        </p>
      ))}
      {readings.length > 12 && <p className="small muted">and {readings.length - 12} more</p>}
      {dropped.slice(0, 5).map(({ line, found, allowed }) => (
        <p key={`${String(line)} ${found}`} className="small">
          {line > 0 ? `Line ${String(line)}: ` : ''}left out {found}; allowed {allowed}.
        </p>
      ))}
    </section>
  );
}

export function CalibrateView({ theme }: { readonly theme: Theme }) {
  const units = useUnits();
  const id = useId();
  const { text, infrared, busy, learned, read, problems, fault } = useCalibrate();
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
            rows: 50 min,pizza 1 in, and 57 min,pizza 1 out,golden. With a pizza on it the plate is read
            beside it, or under it: 53 min,plateTop pizza 1,228 degC.
          </p>
          <textarea
            className="entry calibrate-text"
            aria-label="Readings"
            rows={10}
            spellCheck={false}
            placeholder={example}
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
                      void learnNow();
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
                else void learnNow();
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
        {read !== undefined && <Preview read={read} />}
        <OvensLearned />
      </div>
      {learned !== undefined && (
        <Learned file={learned.file} learned={learned.calibration} units={units} theme={theme} />
      )}
    </div>
  );
}
