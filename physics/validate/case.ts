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
  /** how far the two may lie apart, in `unit`; set from the spread of the published figure, never from the miss */
  readonly tolerance: number;
  readonly within: boolean;
  /** why this tolerance, and what the published figure leaves open */
  readonly note: string;
}

export type Published = Omit<ValidationCase, 'model' | 'within'>;

export function compared(published: Published, model: number): ValidationCase {
  return { ...published, model, within: Math.abs(model - published.published) <= published.tolerance };
}
