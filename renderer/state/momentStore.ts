/** Which moment is pointed at and which part of the evening is shown: neither belongs to the plan. */
import { create } from 'zustand';

export interface MomentState {
  /** ms; undefined while nothing was pointed at: the drawing then shows the first pizza */
  readonly moment: number | undefined;
  /** ms; undefined shows the part that matters, from half an hour before the oven goes on */
  readonly view: { readonly from: number; readonly to: number } | undefined;
  readonly tableShown: boolean;
}

export const useMoment = create<MomentState>()(() => ({
  moment: undefined,
  view: undefined,
  tableShown: false,
}));

export function pointAt(moment: number): void {
  useMoment.setState({ moment });
}
export function showPart(from: number, to: number): void {
  useMoment.setState({ view: { from, to } });
}
export function showUsualPart(): void {
  useMoment.setState({ view: undefined });
}
export function toggleTable(): void {
  useMoment.setState(({ tableShown }) => ({ tableShown: !tableShown }));
}
