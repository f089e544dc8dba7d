/** What the chart is drawn from, and how each kind of curve looks. */
import type { ClockModel, SeriesId, Span } from './model.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

export interface Palette {
  readonly font: string;
  readonly paper: string;
  readonly ink: string;
  readonly muted: string;
  readonly rule: string;
  readonly bar: string;
  readonly barInk: string;
  readonly bake: string;
  readonly bakeInk: string;
  readonly series: Readonly<Record<SeriesId, string>>;
}
/** Colour is never alone: each kind of curve has a dash of its own, in every theme and on paper. */
export const dashes: Record<SeriesId, { readonly dash: string; readonly width: number }> = {
  air: { dash: '7px,4px', width: 2 },
  top: { dash: 'solid', width: 2.5 },
  core: { dash: '12px,3px,2px,3px', width: 2 },
  base: { dash: '2px,3px', width: 2.5 },
  crumb: { dash: '5px,3px,1px,3px', width: 2 },
};
export const order: readonly SeriesId[] = ['air', 'top', 'core', 'base', 'crumb'];

export interface Asked {
  readonly model: ClockModel;
  readonly view: Span;
  readonly size: { readonly width: number; readonly height: number };
  readonly units: UnitSystem;
  readonly palette: Palette;
}
