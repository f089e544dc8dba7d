/** Which evenings stand beside the plan, and which map is asked for. Kept while the window is open, not in the plan. */
import { create } from 'zustand';
import type { Difference } from './differences.ts';
import type { MeasureId } from '../../physics/evening/comparison.ts';

export interface Variant {
  readonly id: number;
  readonly differences: readonly Difference[];
}
/** One side of the map: a field, and its values as typed where they are not the usual ones. */
export interface MapSide {
  readonly path: string;
  readonly typed: string | undefined;
}
export interface CompareState {
  /** undefined until the view is opened for the first time */
  readonly variants: readonly Variant[] | undefined;
  readonly nextId: number;
  readonly across: MapSide;
  readonly down: MapSide;
  readonly measure: MeasureId;
  /** the map is long work: it begins when it is asked for */
  readonly mapAsked: boolean;
}

export const useCompare = create<CompareState>()(() => ({
  variants: undefined,
  nextId: 1,
  across: { path: 'plate.thickness', typed: undefined },
  down: { path: 'plate.rackHeight', typed: undefined },
  measure: 'first_bake_min',
  mapAsked: false,
}));

/** The plan and five others: as many as can be told apart. */
export const mostVariants = 5;

export function addVariant(differences: readonly Difference[]): void {
  const { variants = [], nextId } = useCompare.getState();
  if (variants.length >= mostVariants) return;
  useCompare.setState({ variants: [...variants, { id: nextId, differences }], nextId: nextId + 1 });
}
export function dropVariant(id: number): void {
  const { variants = [] } = useCompare.getState();
  useCompare.setState({ variants: variants.filter((one) => one.id !== id) });
}
export function setDifferences(id: number, differences: readonly Difference[]): void {
  const { variants = [] } = useCompare.getState();
  useCompare.setState({ variants: variants.map((one) => (one.id === id ? { id, differences } : one)) });
}
