/** The figures of a run as a page of text. */
import type { BandRow, EveningRow, FitRow, GridRow } from './evening.ts';
import type { NetworkRow } from './network.ts';
import type { Size, Start } from './start.ts';
import type { Drag, Memory } from './window.ts';

export interface Figures {
  readonly machine: string;
  readonly network: readonly NetworkRow[];
  readonly evening: readonly EveningRow[];
  readonly band: BandRow;
  readonly grid: GridRow;
  readonly fit: FitRow;
  readonly drag: Drag;
  readonly start: Start & { readonly windowMilliseconds: number };
  readonly bundleKB: Size;
  readonly memory: Memory;
}

const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : 0)} ms`.padStart(10);

export function table(all: Figures): string {
  const { drag, start, bundleKB, memory } = all;
  const fastest = all.network[0]!;
  return [
    all.machine,
    '',
    'Network, 20 min of heating: time, error of the plate, times our time',
    ...all.network.map(
      (row) =>
        `${ms(row.milliseconds)}  ${row.plateErrorK.toPrecision(2).padStart(8)} K  ${(row.milliseconds / fastest.milliseconds).toFixed(1).padStart(6)} x  ${row.solver}`,
    ),
    '',
    'Evening with four pizzas against the fine solution: time, plate, bake, lightness',
    ...all.evening.map(
      (row) =>
        `${ms(row.milliseconds)}  ${row.plateErrorK.toFixed(2)} K  ${row.bakeErrorSeconds.toFixed(1)} s  ${row.lightnessError.toFixed(2)} L*  preheat steps of ${row.stepSeconds} s`,
    ),
    '',
    `${ms(all.band.milliseconds)}  band, ${all.band.draws} draws`,
    `${ms(all.grid.milliseconds)}  grid of ${all.grid.evenings} evenings`,
    `${ms(all.fit.milliseconds)}  fit of an oven to ${all.fit.readings} readings`,
    '',
    'Window: a drag of the plate',
    `${ms(drag.paintedMedian)}  input to painted, median`,
    `${ms(drag.painted95)}  input to painted, 95th percentile`,
    `${ms(drag.answerMedian)}  key to new answers painted, median`,
    `${ms(drag.longestTask)}  longest task of the window's thread`,
    `${ms(drag.task95)}  95th percentile of its tasks of 50 ms and more (0 when there is none)`,
    '',
    `${ms(start.planMilliseconds)}  plan --json, whole process`,
    `${ms(start.serveMilliseconds)}  start --host serve until the address is there`,
    `${ms(start.windowMilliseconds)}  window opened until the answers stand`,
    '',
    ...Object.entries(bundleKB).map(([name, size]) => `${size.toFixed(0).padStart(7)} kB  ${name}`),
    '',
    `Memory of the window after ${memory.redraws} redraws: ${memory.beforeMB.toFixed(1)} MB before, ${memory.afterMB.toFixed(1)} MB after`,
    '',
  ].join('\n');
}
