/** How each plate warms up and how each first pizza bakes, one over the other. */
import { useMemo } from 'react';
import { ChartPanel } from '../charts/ChartPanel.tsx';
import { curveTable, CurvesTable } from '../charts/CurvesTable.tsx';
import { useLook } from '../state/lookStore.ts';
import { degreesOfK, degreeUnit, temperatureK } from '../words/figures.ts';
import { spanText } from '../words/clock.ts';
import { csvText } from '../../physics/handout/csv.ts';
import type { ChartAsked } from '../charts/LineChart.tsx';
import type { Line } from '../charts/lineFigure.ts';
import type { Curve, EveningStudy } from '../state/study.ts';
import type { Theme } from '../state/settingsStore.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

export interface Compared {
  /** place in colours and dashes: 0 is the plan */
  readonly index: number;
  readonly name: string;
  readonly study: EveningStudy;
}
interface CurvesProps {
  readonly evenings: readonly Compared[];
  readonly units: UnitSystem;
  readonly theme: Theme;
}

/** The stretch of a curve up to so many minutes, its last point among them. */
function until({ minutes, values }: Curve, end: number): Curve {
  const last = minutes.findIndex((minute) => minute > end);
  return last === -1
    ? { minutes, values }
    : { minutes: minutes.slice(0, last), values: values.slice(0, last) };
}

function lineOf({ index, name }: Compared, curve: Curve, show: (value: number) => number): Line {
  return { index, name, x: curve.minutes, y: curve.values.map(show) };
}

function csvFrom(lines: readonly Line[], column: string, toSi: (value: number) => number): string {
  return csvText([
    ['plan', 'minute', column],
    ...lines.flatMap(({ name, x, y }) =>
      x.map((minute, i) => [name, minute.toFixed(3), toSi(y[i]!).toFixed(2)]),
    ),
  ]);
}

export function PreheatCurves({ evenings, units, theme }: CurvesProps) {
  const [what, setWhat] = useLook<'plateTop' | 'air'>('what warms up', 'plateTop');
  const asked = useMemo((): ChartAsked => {
    const ready = evenings.map(({ study }) => study.compared.preheat.minutes);
    const end = 1.15 * Math.max(...ready, 10);
    return {
      lines: evenings.map((one) =>
        lineOf(one, until(one.study[what], end), (kelvin) => degreesOfK(kelvin, units)),
      ),
      xTitle: 'min after switching on',
      yTitle: `${what === 'air' ? 'Oven air' : 'Plate top'}, ${degreeUnit(units)}`,
    };
  }, [evenings, units, what]);
  const first = [...evenings].sort(
    (a, b) => a.study.compared.preheat.minutes - b.study.compared.preheat.minutes,
  )[0];
  const summary =
    first === undefined
      ? 'Nothing is worked out yet.'
      : `Ready first: ${first.name}, after ${first.study.compared.preheat.minutes.toFixed(0)} min at ${temperatureK(first.study.compared.preheat.plateTopC + 273.15, units)}.`;
  return (
    <ChartPanel
      title="Warming up"
      summary={summary}
      asked={asked}
      theme={theme}
      saveAs="warming-up"
      csv={() =>
        csvFrom(asked.lines, what === 'air' ? 'oven_air_degC' : 'plate_top_degC', (value) =>
          units === 'us' ? (value - 32) / 1.8 : value,
        )
      }
      table={
        <CurvesTable
          caption={asked.yTitle}
          rows={curveTable(asked.lines, 5)}
          lines={asked.lines}
          decimals={0}
          head="Minute"
        />
      }
    >
      <select
        className="entry chart-choice"
        aria-label="What warms up"
        value={what}
        onChange={(event) => {
          setWhat(event.currentTarget.value === 'air' ? 'air' : 'plateTop');
        }}
      >
        <option value="plateTop">Plate top</option>
        <option value="air">Oven air</option>
      </select>
    </ChartPanel>
  );
}

const bakeCurves = {
  baseLightness: {
    name: 'Shade of the base',
    title: 'Lightness L* of the base',
    column: 'base_lightness',
    heat: false,
  },
  rimLightness: {
    name: 'Shade of the rim',
    title: 'Lightness L* of the rim',
    column: 'rim_lightness',
    heat: false,
  },
  base: { name: 'Heat of the base', title: 'Base', column: 'base_degC', heat: true },
  crumb: { name: 'Heat of the crumb', title: 'Crumb', column: 'crumb_degC', heat: true },
} as const;
type BakeCurve = keyof typeof bakeCurves;

export function BakeCurves({ evenings, units, theme }: CurvesProps) {
  const [what, setWhat] = useLook<BakeCurve>('what of the bake', 'baseLightness');
  const { title, column, heat } = bakeCurves[what];
  const asked = useMemo((): ChartAsked => {
    return {
      lines: evenings.map((one) =>
        lineOf(one, one.study[what], (value) => (heat ? degreesOfK(value, units) : value)),
      ),
      xTitle: 'min in the oven',
      yTitle: heat ? `${title}, ${degreeUnit(units)}` : `${title} (golden 60, dark 50)`,
    };
  }, [evenings, units, what, title, heat]);
  const first = [...evenings].sort(
    (a, b) => a.study.compared.bakes[0]!.minutes - b.study.compared.bakes[0]!.minutes,
  )[0];
  const summary =
    first === undefined
      ? 'Nothing is worked out yet.'
      : `Shortest first bake: ${first.name}, ${spanText(first.study.compared.bakes[0]!.minutes)}.`;
  return (
    <ChartPanel
      title="The first bake"
      summary={summary}
      asked={asked}
      theme={theme}
      saveAs="first-bake"
      csv={() =>
        csvFrom(asked.lines, column, (value) => (heat && units === 'us' ? (value - 32) / 1.8 : value))
      }
      table={
        <CurvesTable
          caption={asked.yTitle}
          rows={curveTable(asked.lines, 1)}
          lines={asked.lines}
          decimals={heat ? 0 : 1}
          head="Minute"
        />
      }
    >
      <select
        className="entry chart-choice"
        aria-label="What of the bake"
        value={what}
        onChange={(event) => {
          setWhat(event.currentTarget.value as BakeCurve);
        }}
      >
        {Object.entries(bakeCurves).map(([id, { name }]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </ChartPanel>
  );
}
