/** What was learned: the numbers with their ranges, the plan before and after, the readings beside both. */
import { useId, useMemo, type RefObject } from 'react';
import { adopt } from './calibrateStore.ts';
import { KeepOven } from './Ovens.tsx';
import { ChartPanel } from '../charts/ChartPanel.tsx';
import { say } from '../state/documentStore.ts';
import { usePlan } from '../state/planStore.ts';
import { spanRangeText, spanText } from '../words/clock.ts';
import { degreesApart, degreeUnit, degreesOfK, temperatureC } from '../words/figures.ts';
import { unbroken } from '../words/unbroken.ts';
import { placeWords } from '../../physics/calibrate/forecast.ts';
import { wording } from '../../physics/evening/problem.ts';
import { csvText } from '../../physics/handout/csv.ts';
import { fromCelsius, inUnits, toOunces, type UnitSystem } from '../../physics/quantities/index.ts';
import type { Calibration, Estimate, EstimateName } from '../../physics/calibrate/calibrate.ts';
import type { Curves, PlanAnswer } from '../../physics/evening/answer.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { ChartAsked } from '../charts/LineChart.tsx';
import type { Line } from '../charts/lineFigure.ts';
import type { Theme } from '../state/settingsStore.ts';

const names: Readonly<Record<EstimateName, string>> = {
  power: 'Power of the elements',
  plateMass: 'Weight of the plate',
  thermostatOffset: 'Hotter than the dial says by',
  browningRate: 'Browning, times the usual',
};

interface ShownEstimate {
  readonly name: string;
  readonly value: string;
  readonly range: string;
}

/** Figures of one number, all in one unit that is said once. */
function inOneUnit(
  name: string,
  { value, p10, p90 }: Estimate,
  show: (value: number) => string,
  unit = '',
): ShownEstimate {
  return { name, value: `${show(value)}${unit}`, range: `${show(p10)} to ${show(p90)}${unit}` };
}

function shown(name: EstimateName, estimate: Estimate, units: UnitSystem): ShownEstimate {
  const weight = units === 'us' ? 'lb' : 'kg';
  if (name === 'power') return inOneUnit(names.power, estimate, (kilowatts) => kilowatts.toFixed(2), ' kW');
  if (name === 'plateMass')
    return inOneUnit(
      names.plateMass,
      estimate,
      (kilograms) => (units === 'us' ? toOunces(kilograms) / 16 : kilograms).toFixed(1),
      ` ${weight}`,
    );
  if (name === 'browningRate') return inOneUnit(names.browningRate, estimate, (rate) => rate.toFixed(2));
  const degrees = (kelvin: number): string => {
    const size = Math.round(units === 'us' ? 1.8 * kelvin : kelvin);
    return size < 0 ? `−${String(-size)}` : String(size);
  };
  const { value, p10, p90 } = estimate;
  const [label, low, high] =
    value >= 0 ? [names.thermostatOffset, p10, p90] : ['Colder than the dial says by', -p90, -p10];
  return {
    name: label,
    value: degreesApart(Math.abs(value), units),
    range: `${degrees(low)} to ${degrees(high)} degrees`,
  };
}

function Numbers({ learned, units }: { readonly learned: Calibration; readonly units: UnitSystem }) {
  const rows = Object.entries(learned.estimates) as [EstimateName, Estimate][];
  return (
    <table className="small-table">
      <caption>What the readings tell</caption>
      <thead>
        <tr>
          <th scope="col">Of this oven</th>
          <th scope="col">Most likely</th>
          <th scope="col">8 in 10 within</th>
        </tr>
      </thead>
      <tbody>
        {rows
          .map(([name, estimate]) => shown(name, estimate, units))
          .map(({ name, value, range }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{unbroken(value)}</td>
              <td>{unbroken(range)}</td>
            </tr>
          ))}
        {learned.notTold.map((name) => (
          <tr key={name}>
            <th scope="row">{names[name]}</th>
            <td className="muted" colSpan={2}>
              not told by these readings
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Plans({ learned, units }: { readonly learned: Calibration; readonly units: UnitSystem }) {
  const { before, after } = learned;
  const rows: readonly (readonly [string, (plan: PlanAnswer) => string])[] = [
    ['Preheat', (plan) => spanText(plan.preheat.minutes)],
    ['Preheat, 8 in 10 within', (plan) => (plan.range ? spanRangeText(...plan.range.preheatMinutes) : '–')],
    ['Plate settles at', (plan) => temperatureC(plan.preheat.settledPlateTopC, units)],
    ['First bake', (plan) => spanText(plan.bakes[0]!.minutes)],
    ['First bake, 8 in 10 within', (plan) => (plan.range ? spanRangeText(...plan.range.bakeMinutes) : '–')],
  ];
  return (
    <table className="small-table">
      <caption>The plan</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Before</th>
          <th scope="col">After</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, of]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{unbroken(of(before))}</td>
            <td>{unbroken(of(after))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The plate's curve to a while after the last reading, in the units shown. */
function plateLine(
  index: number,
  name: string,
  curves: Pick<Curves, 'minutes' | 'plateTopC'>,
  until: number,
  units: UnitSystem,
): Line {
  const count = curves.minutes.filter((minute) => minute <= until).length;
  return {
    index,
    name,
    x: curves.minutes.slice(0, count),
    y: curves.plateTopC.slice(0, count).map((c) => degreesOfK(fromCelsius(c), units)),
  };
}

function Residuals({ learned, units }: { readonly learned: Calibration; readonly units: UnitSystem }) {
  return (
    <table className="small-table">
      <caption>Each reading beside the learned oven</caption>
      <thead>
        <tr>
          <th scope="col">Minute</th>
          <th scope="col">Where</th>
          <th scope="col">Read</th>
          <th scope="col">Forecast</th>
          <th scope="col">Apart</th>
        </tr>
      </thead>
      <tbody>
        {learned.residuals.map(({ minute, place, pizza, readingC, modelC, residualK, expectedK }) => (
          <tr key={`${String(minute)} ${place}`}>
            <th scope="row">{minute.toFixed(0)}</th>
            <td>
              {placeWords[place]}
              {pizza === undefined ? '' : `, under pizza ${String(pizza)}`}
            </td>
            <td>{unbroken(temperatureC(readingC, units))}</td>
            <td>{unbroken(temperatureC(modelC, units))}</td>
            <td>
              {residualK < 0 ? '−' : '+'}
              {degreesApart(Math.abs(residualK), units)}
              {Math.abs(residualK) > 3 * expectedK ? ', more than it should be' : ''}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The shades of the bases beside the plan's for the same minutes. */
function Bakes({ learned }: { readonly learned: Calibration }) {
  if (learned.bakes.length === 0) return null;
  const cells = (lightness: number): string => lightness.toFixed(0);
  return (
    <table className="small-table">
      <caption>The bakes: lightness L* of the base, 85 raw, less is darker</caption>
      <thead>
        <tr>
          <th scope="col">Pizza</th>
          <th scope="col">In the oven</th>
          <th scope="col">Seen</th>
          <th scope="col">As planned</th>
          <th scope="col">As learned</th>
        </tr>
      </thead>
      <tbody>
        {learned.bakes.map(({ pizza, seconds, seen, before, model }) => (
          <tr key={pizza}>
            <th scope="row">{pizza}</th>
            <td>{unbroken(spanText(seconds / 60))}</td>
            <td>{cells(seen)}</td>
            <td>{cells(before)}</td>
            <td>{cells(model)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface LearnedProps {
  readonly heading: RefObject<HTMLHeadingElement | null>;
  /** the readings have changed since */
  readonly stale: boolean;
  readonly file: PlanFile;
  readonly learned: Calibration;
  readonly units: UnitSystem;
  readonly theme: Theme;
}

export function Learned({ heading, stale, file, learned, units, theme }: LearnedProps) {
  const id = useId();
  const current = usePlan((state) => state.file);
  const { before, after, asRun, residuals, nextReading: next, warnings } = learned;
  const asked = useMemo((): ChartAsked => {
    const plate = residuals.filter(({ place }) => place === 'plateTop');
    const until = Math.max(60, asRun?.minutes.at(-1) ?? 0, ...residuals.map(({ minute }) => minute + 15));
    return {
      lines: [
        plateLine(0, 'as planned', before.preheatCurve, until, units),
        plateLine(1, 'as learned', asRun ?? after.preheatCurve, until, units),
        ...(plate.length === 0
          ? []
          : [
              {
                index: 2,
                name: 'read',
                points: true,
                x: plate.map(({ minute }) => minute),
                y: plate.map(({ readingC }) => degreesOfK(fromCelsius(readingC), units)),
              },
            ]),
      ],
      xTitle: 'minutes from switching the oven on',
      yTitle: `plate top, ${degreeUnit(units)}`,
    };
  }, [before, after, asRun, residuals, units]);
  const same = file === current;
  return (
    <section className="calibrate-learned" aria-labelledby={id}>
      <h2 id={id} ref={heading} tabIndex={-1}>
        What was learned
      </h2>
      {stale && <p className="muted">The readings have changed since: learn again to count them.</p>}
      {warnings.map(({ code, message }) => (
        <p key={code} className="reason calibrate-warning">
          {unbroken(inUnits(message, units))}
        </p>
      ))}
      <div className="calibrate-tables">
        <Numbers learned={learned} units={units} />
        <Plans learned={learned} units={units} />
        <Bakes learned={learned} />
      </div>
      <ChartPanel
        title="The plate"
        summary={`The plate is ready after ${spanText(before.preheat.minutes)} as planned and after ${spanText(after.preheat.minutes)} as learned.`}
        asked={asked}
        theme={theme}
        table={<Residuals learned={learned} units={units} />}
        csv={() =>
          csvText([
            ['minute', 'place', 'pizza', 'reading_degC', 'model_degC'],
            ...residuals.map(({ minute, place, pizza, readingC, modelC }) => [
              minute.toFixed(1),
              place,
              pizza === undefined ? '' : String(pizza),
              readingC.toFixed(1),
              modelC.toFixed(1),
            ]),
          ])
        }
        saveAs="readings"
      />
      <p>
        {next === null
          ? 'No single reading more would narrow the preheat by much.'
          : `One more reading would tell most at ${String(next.minute)} min, ${next.place === 'ovenAir' ? 'of the air' : 'on the plate'}: the range of the preheat narrows by ${spanText(next.narrowsMinutes)}.`}
      </p>
      <div className="tonight-keys">
        <button
          type="button"
          className="key main tonight-key"
          disabled={!same}
          onClick={() => {
            const problem = adopt(learned.learned);
            say({
              text:
                problem === undefined
                  ? 'The plan now has the learned oven; Undo brings the old one back.'
                  : `Not changed: ${wording(problem)}.`,
            });
          }}
        >
          Plan with this oven
        </button>
        {!same && <p className="muted">The plan has changed since: learn again to use it.</p>}
      </div>
      <KeepOven learned={learned.learned} />
    </section>
  );
}
