/** Wait longer, or bake longer: what leaving the plate bare before a pizza makes of its bake, as a curve and to be tried. */
import { useMemo } from 'react';
import { TryKey } from './TryKey.tsx';
import { ChartPanel } from '../charts/ChartPanel.tsx';
import { WordsTable } from '../charts/WordsTable.tsx';
import { Choice } from '../inputs/Choice.tsx';
import { useLook } from '../state/lookStore.ts';
import { waitSummary, waitTable, type WaitCurve } from '../words/advice.ts';
import { spanText } from '../words/clock.ts';
import { unbroken } from '../words/unbroken.ts';
import { csvText } from '../../physics/handout/csv.ts';
import type { ChartAsked } from '../charts/LineChart.tsx';
import type { Theme } from '../state/settingsStore.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface WaitOrBakeProps {
  /** of each pizza after the first */
  readonly curves: readonly WaitCurve[];
  readonly units: UnitSystem;
  readonly theme: Theme;
}

function csv(curves: readonly WaitCurve[]): string {
  return csvText([
    ['pizza', 'wait_min', 'plate_top_degC', 'bake_min', 'in_all_min'],
    ...curves.flatMap(({ pizza, waitMinutes, plateTopC, bakeMinutes, totalMinutes }) =>
      waitMinutes.map((wait, i) => [
        String(pizza),
        wait.toFixed(2),
        plateTopC[i]!.toFixed(1),
        bakeMinutes[i]!.toFixed(2),
        totalMinutes[i]!.toFixed(2),
      ]),
    ),
  ]);
}

/** Waits that differ from the planned one by so little are the planned one, min. */
const alike = 0.25;

function Waits({ curve }: { readonly curve: WaitCurve }) {
  return (
    <ul className="two-columns">
      {curve.waitMinutes.flatMap((wait, i) => {
        if (Math.abs(wait - curve.plannedWaitMinutes) < alike) return [];
        const what = `Wait ${spanText(wait)} before every pizza`;
        return [
          <li key={wait} className="advice">
            <span>
              {unbroken(
                `${what}: pizza ${String(curve.pizza)} bakes ${spanText(curve.bakeMinutes[i]!)}, ${spanText(curve.totalMinutes[i]!)} in all.`,
              )}
            </span>
            <TryKey
              change={[{ path: 'pizzas.wait', value: `${String(Math.round(60 * wait))} s` }]}
              what={what}
            />
          </li>,
        ];
      })}
    </ul>
  );
}

export function WaitOrBake({ curves, units, theme }: WaitOrBakeProps) {
  const [pizza, setPizza] = useLook<number>('wait or bake', 2);
  const curve = curves.find((one) => one.pizza === pizza) ?? curves[0];
  const asked = useMemo((): ChartAsked | undefined => {
    if (curve === undefined) return undefined;
    const { waitMinutes: x, bakeMinutes, totalMinutes, plannedWaitMinutes } = curve;
    return {
      lines: [
        { index: 0, name: 'bake', x, y: bakeMinutes },
        { index: 1, name: 'wait and bake', x, y: totalMinutes },
      ],
      uprights: [{ x: plannedWaitMinutes, label: `as planned, ${spanText(plannedWaitMinutes)}` }],
      dots: true,
      fromZero: true,
      xTitle: 'min that the plate is left bare',
      yTitle: 'Minutes',
    };
  }, [curve]);
  if (curve === undefined || asked === undefined) return null;
  return (
    <section className="wait-or-bake">
      <ChartPanel
        title="Wait or bake longer"
        summary={waitSummary(curve)}
        asked={asked}
        theme={theme}
        saveAs="wait-or-bake"
        csv={() => csv(curves)}
        table={<WordsTable table={waitTable(curve, units)} className="small-table" />}
      >
        {curves.length > 1 && (
          <Choice
            className="entry chart-choice"
            aria-label="Which pizza waits"
            options={curves.map((one) => [String(one.pizza), `Pizza ${String(one.pizza)}`])}
            value={String(curve.pizza)}
            onChoose={(id) => {
              setPizza(Number(id));
            }}
          />
        )}
      </ChartPanel>
      <Waits curve={curve} />
    </section>
  );
}
