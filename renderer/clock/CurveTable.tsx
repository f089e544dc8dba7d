import { clockText } from '../words/clock.ts';
import { temperatureK } from '../words/figures.ts';
import { curveRows } from './table.ts';
import type { ClockModel, Span } from './model.ts';
import type { Forecast } from '../state/forecastStore.ts';
import { inUnits, type UnitSystem } from '../../physics/quantities/index.ts';

interface CurveTableProps {
  readonly forecast: Forecast;
  readonly model: ClockModel;
  readonly view: Span;
  readonly units: UnitSystem;
}

/** The chart's figures, one key away. */
export function CurveTable({ forecast, model, view, units }: CurveTableProps) {
  const figure = (kelvin: number | undefined): string =>
    kelvin === undefined ? '–' : temperatureK(kelvin, units);
  return (
    <div className="table-room" tabIndex={0} role="region" aria-label="Temperatures and tasks as tables">
      <table>
        <caption>Temperatures, every five minutes and at each load and end of a bake</caption>
        <thead>
          <tr>
            {['Clock', 'Oven air', 'Plate top', 'Plate core', 'Pizza', 'Base', 'Crumb'].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {curveRows(forecast, model, view).map((row) => (
            <tr key={row.at}>
              <th scope="row">{clockText(row.at, model.offset)}</th>
              <td>{figure(row.air)}</td>
              <td>{figure(row.plateTop)}</td>
              <td>{figure(row.plateCore)}</td>
              <td>{row.pizza ?? '–'}</td>
              <td>{figure(row.base)}</td>
              <td>{figure(row.crumb)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <table>
        <caption>Tasks of the whole evening</caption>
        <thead>
          <tr>
            {['From', 'To', 'Lane', 'Task', 'What to do'].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {model.bars.map(({ task, from, to }) => (
            <tr key={task.id}>
              <th scope="row">{clockText(from, model.offset)}</th>
              <td>{clockText(to, model.offset)}</td>
              <td>{task.lane}</td>
              <td>{task.name}</td>
              <td>{task.step === undefined ? '–' : inUnits(task.step, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
