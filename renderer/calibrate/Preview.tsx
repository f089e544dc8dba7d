/** How the readings were understood, while they are typed; each guess can be set right. */
import { useCalibrate } from './calibrateStore.ts';
import { useUnits } from '../state/settingsStore.ts';
import { temperatureK } from '../words/figures.ts';
import { unbroken } from '../words/unbroken.ts';
import { placeIds } from '../../physics/evening/ids.ts';
import { placeWords } from '../../physics/calibrate/forecast.ts';
import type { ReadingsRead } from '../../physics/calibrate/readings.ts';

const shownRows = 12;
const shownDropped = 5;

function minuteText(seconds: number): string {
  return String(Number((seconds / 60).toFixed(1)));
}

/** @param onCorrected a guess was set right: what was learned before may be otherwise now */
export function Preview({
  read,
  onCorrected,
}: {
  readonly read: ReadingsRead;
  readonly onCorrected: () => void;
}) {
  const units = useUnits();
  const say = useCalibrate((state) => state.say);
  const { guesses, readings, bakes, dropped, repeated } = read;
  const correct = (change: typeof say): void => {
    useCalibrate.setState({ say: { ...say, ...change } });
    onCorrected();
  };
  return (
    <section aria-labelledby="calibrate-read">
      <h2 id="calibrate-read">As it is understood</h2>
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
                {placeWords[id]}
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
          {readings.slice(0, shownRows).map(({ line, seconds, place, pizza, temperature }) => (
            <tr key={`${String(line)} ${place}`}>
              <th scope="row">{minuteText(seconds)}</th>
              <td>
                {placeWords[place]}
                {pizza === undefined ? '' : `, under pizza ${String(pizza)}`}
              </td>
              <td>{unbroken(temperatureK(temperature, units))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {readings.length > shownRows && <p className="small muted">and {readings.length - shownRows} more</p>}
      {bakes.map(({ pizza, inAt, outAt, lightness }) => (
        <p key={`${String(pizza)} ${String(inAt)}`} className="small">
          {unbroken(
            [
              `Pizza ${String(pizza)}: in at ${minuteText(inAt)} min`,
              outAt === undefined ? 'not out yet' : `out at ${minuteText(outAt)} min`,
              ...(lightness === undefined ? [] : [`base at lightness ${lightness.toFixed(0)}`]),
            ].join(', '),
          )}
        </p>
      ))}
      {dropped.slice(0, shownDropped).map(({ line, found, allowed }) => (
        <p key={`${String(line)} ${found}`} className="small calibrate-dropped">
          {line > 0 ? `Line ${String(line)}: ` : ''}left out {found}; allowed {allowed}.
        </p>
      ))}
      {dropped.length > shownDropped && (
        <p className="small muted">and {dropped.length - shownDropped} more left out</p>
      )}
    </section>
  );
}
