/** One published figure beside the model's value for it. */
export interface ValidationCase {
  /** stable, kebab-case */
  readonly id: string;
  /** what the published figure stands on */
  readonly source: string;
  readonly quantity: string;
  readonly published: number;
  readonly model: number;
  readonly unit: string;
  /** how far the two may lie apart, in `unit` */
  readonly tolerance: number;
  readonly within: boolean;
  /** why this tolerance, and what the published figure leaves open */
  readonly note: string;
  /**
   * What was changed in the model, in the set-up or in the tolerance after the row had been compared once; null for a
   * row that stands as it was first computed. An adjusted row is no independent check.
   */
  readonly adjusted: string | null;
}

export type Published = Omit<ValidationCase, 'model' | 'within' | 'adjusted'> & {
  readonly adjusted?: string;
};

/** Sets the model's value beside a published one. */
export function compared(published: Published, model: number): ValidationCase {
  return {
    ...published,
    model,
    within: Math.abs(model - published.published) <= published.tolerance,
    adjusted: published.adjusted ?? null,
  };
}
