/** How brown the base is to be: a name or a lightness. The names are our own steps on the CIE L* scale. */
import type { ShadeId } from './ids.ts';

/** L* (CIE 1976) that each name stands for: ours, said so in the docs. */
export const shadeLightness: Readonly<Record<ShadeId, number>> = { pale: 70, golden: 60, dark: 50 };

/** Beyond these the browning law has no answer: raw dough is about 85, and it ends near 38. */
const lightest = 80;
export const darkestShade = 42;

export const shadeAllowed = `pale, golden, dark, or "lightness 53" with ${darkestShade} to ${lightest}`;

/** `pale`, `golden`, `dark` or `lightness 53` as L*; undefined for anything else. */
export function readShade(text: string): number | undefined {
  if (Object.hasOwn(shadeLightness, text)) return shadeLightness[text as ShadeId];
  const match = /^lightness (\d{1,3}(?:\.\d+)?)$/u.exec(text);
  if (match === null) return undefined;
  const lightness = Number(match[1]);
  return lightness >= darkestShade && lightness <= lightest ? lightness : undefined;
}
