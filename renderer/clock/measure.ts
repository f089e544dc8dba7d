/** Measuring text on the page. */

const ruler = typeof document === 'undefined' ? null : document.createElement('canvas').getContext('2d');

/** Width of a text as the page sets it: with tabular figures, each as wide as a nought, which a canvas does not know. */
export function textWidth(text: string, font: string): number {
  // Without a canvas a generous guess keeps labels apart.
  if (ruler === null) return text.length * 8;
  ruler.font = font;
  return ruler.measureText(text.replaceAll(/\d/gu, '0')).width;
}
