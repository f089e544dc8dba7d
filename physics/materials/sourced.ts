/** How well a number is known to come from where it says. */
export type Standing = 'read in the source' | 'second hand' | 'derived' | 'from memory' | 'our estimate';

/** One number with where it comes from. The source belongs to the value, not to the table around it. */
export interface Sourced {
  readonly value: number;
  /** relative: 0.1 says that another specimen of the same name may lie 10 % off either way */
  readonly spread: number;
  readonly source: string;
  readonly standing: Standing;
}
