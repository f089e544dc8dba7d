/** How each plate warms up and how each first pizza bakes, one over the other. */
import { useMemo } from 'react';
import { ChartPanel } from '../charts/ChartPanel.tsx';
import { curveTable, CurvesTable } from '../charts/CurvesTable.tsx';
import { Choice, type Options } from '../inputs/Choice.tsx';
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

interface ChosenProps {
  readonly title: string;
  readonly summary: string;
  readonly asked: ChartAsked;
  readonly theme: Theme;
  readonly units: UnitSystem;
  readonly saveAs: string;
  /** heading in the CSV, metric */
  readonly column: string;
  /** whether it is degrees that are drawn */
  readonly heat: boolean;
  /** min between rows of the table, and digits in it */
  readonly step: number;
  readonly decimals: number;
  readonly choice: {
    readonly label: string;
    readonly options: Options;
    readonly value: string;
    readonly onChoose: (id: string) => void;
  };
}

/** Curves of which one kind is chosen. */
function ChosenCurves({ units, column, heat, step, decimals, choice, ...panel }: ChosenProps) {
  const { asked } = panel;
  const { label, ...choosing } = choice;
  return (
    <ChartPanel
      {...panel}
      csv={() =>
        csvFrom(asked.lines, column, (value) => (heat && units === 'us' ? (value - 32) / 1.8 : value))
      }
      table={
        <CurvesTable
          caption={asked.yTitle}
          rows={curveTable(asked.lines, step)}
          lines={asked.lines}
          decimals={decimals}
          head="Minute"
        />
      }
    >
      <Choice className="entry chart-choice" aria-label={label} {...choosing} />
    </ChartPanel>
  );
}

const nothing = 'Nothing is worked out yet.';

/** The evening with the least of something; undefined of none. */
function leastOf(evenings: readonly Compared[], of: (one: Compared) => number): Compared | undefined {
  return [...evenings].sort((a, b) => of(a) - of(b))[0];
}

const preheatCurves = {
  plateTop: { name: 'Plate top', column: 'plate_top_degC' },
  air: { name: 'Oven air', column: 'oven_air_degC' },
} as const;
type PreheatCurve = keyof typeof preheatCurves;

export function PreheatCurves({ evenings, units, theme }: CurvesProps) {
  const [what, setWhat] = useLook<PreheatCurve>('what warms up', 'plateTop');
  const { name, column } = preheatCurves[what];
  const asked = useMemo((): ChartAsked => {
    const ready = evenings.map(({ study }) => study.compared.preheat.minutes);
    const end = 1.15 * Math.max(...ready, 10);
    return {
      lines: evenings.map((one) =>
        lineOf(one, until(one.study[what], end), (kelvin) => degreesOfK(kelvin, units)),
      ),
      xTitle: 'min after switching on',
      yTitle: `${name}, ${degreeUnit(units)}`,
    };
  }, [evenings, units, what, name]);
  const first = leastOf(evenings, ({ study }) => study.compared.preheat.minutes);
  return (
    <ChosenCurves
      title="Warming up"
      summary={
        first === undefined
          ? nothing
          : `Ready first: ${first.name}, after ${first.study.compared.preheat.minutes.toFixed(0)} min at ${temperatureK(first.study.compared.preheat.plateTopC + 273.15, units)}.`
      }
      asked={asked}
      theme={theme}
      units={units}
      saveAs="warming-up"
      column={column}
      heat
      step={5}
      decimals={0}
      choice={{
        label: 'What warms up',
        options: Object.entries(preheatCurves).map(([id, one]) => [id, one.name]),
        value: what,
        onChoose: (id) => {
          setWhat(id as PreheatCurve);
        },
      }}
    />
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
  const asked = useMemo(
    (): ChartAsked => ({
      lines: evenings.map((one) =>
        lineOf(one, one.study[what], (value) => (heat ? degreesOfK(value, units) : value)),
      ),
      xTitle: 'min in the oven',
      yTitle: heat ? `${title}, ${degreeUnit(units)}` : `${title} (golden 60, dark 50)`,
    }),
    [evenings, units, what, title, heat],
  );
  const first = leastOf(evenings, ({ study }) => study.compared.bakes[0]!.minutes);
  return (
    <ChosenCurves
      title="The first bake"
      summary={
        first === undefined
          ? nothing
          : `Shortest first bake: ${first.name}, ${spanText(first.study.compared.bakes[0]!.minutes)}.`
      }
      asked={asked}
      theme={theme}
      units={units}
      saveAs="first-bake"
      column={column}
      heat={heat}
      step={1}
      decimals={heat ? 0 : 1}
      choice={{
        label: 'What of the bake',
        options: Object.entries(bakeCurves).map(([id, { name }]) => [id, name]),
        value: what,
        onChoose: (id) => {
          setWhat(id as BakeCurve);
        },
      }}
    />
  );
}
