/** The colour of a cell: from pale to deep, always dark enough a figure upon it. */

export type Rgb = readonly [red: number, green: number, blue: number];
export interface Heat {
  readonly low: Rgb;
  readonly high: Rgb;
}
/** From near white to the plate's orange (Okabe and Ito): one hue, told apart by its lightness; the same in both themes. */
export const heat: Heat = { low: [255, 244, 224], high: [213, 94, 0] };

/** @param share 0 to 1 */
export function heatColour(share: number, { low, high }: Heat = heat): string {
  const mixed = low.map((from, i) => Math.round(from + share * (high[i]! - from)));
  return `#${mixed.map((part) => part.toString(16).padStart(2, '0')).join('')}`;
}
