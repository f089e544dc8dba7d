/** The colour of a crust on a screen, from its lightness. */
import { OutOfRange } from '../evening/problem.ts';

/** 8-bit sRGB. */
export interface Rgb {
  readonly r: number;
  readonly g: number;
  readonly b: number;
}

function checkLightness(lightness: number): void {
  if (!(lightness >= 0 && lightness <= 100)) {
    throw new OutOfRange('lightness', `L* ${lightness}`, 'L* 0 to 100');
  }
}

const linearBelow = 6 / 29;
/** Inverse of the CIE 1976 function f: a cube above L* 8, L/903.3 below. */
function inverse(f: number): number {
  return f > linearBelow ? f * f * f : 3 * linearBelow * linearBelow * (f - 4 / 29);
}

function channel(linear: number): number {
  const value = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
  // A screen shows no more than its white and no less than its black.
  return Math.round(255 * Math.min(Math.max(value, 0), 1));
}

/**
 * The sRGB colour of CIE L*a*b* under D65 (0.95047, 1, 1.08883). Colours beyond what a screen can show are cut off
 * at its limits, channel by channel.
 *
 * @throws OutOfRange outside L* 0 to 100 or when a* or b* is not finite
 *
 * Sources: CIE 15; IEC 61966-2-1 (matrix and curve).
 */
export function labToSrgb(lightness: number, a: number, b: number): Rgb {
  checkLightness(lightness);
  if (!Number.isFinite(a)) throw new OutOfRange('a*', String(a), 'a finite number');
  if (!Number.isFinite(b)) throw new OutOfRange('b*', String(b), 'a finite number');
  const f = (lightness + 16) / 116;
  const x = 0.95047 * inverse(f + a / 500);
  const y = inverse(f);
  const z = 1.08883 * inverse(f - b / 200);
  return {
    r: channel(3.2406 * x - 1.5372 * y - 0.4986 * z),
    g: channel(-0.9689 * x + 1.8758 * y + 0.0415 * z),
    b: channel(0.0557 * x - 0.204 * y + 1.057 * z),
  };
}

/**
 * How a* and b* move while a crust darkens, for drawing only: our own curve, after bread whose a* was seen to rise
 * from about 0 to 15 and b* from 18 to 30 and to fall again as it burns.
 */
const crust: readonly (readonly [lightness: number, a: number, b: number])[] = [
  [0, 0, 0],
  [25, 6, 9],
  [40, 12, 22],
  [50, 14, 30],
  [60, 13, 35],
  [70, 8, 32],
  [85, 0, 18],
  [100, 0, 6],
];

/** Colour to draw a crust of a lightness in; OutOfRange outside L* 0 to 100. */
export function crustColour(lightness: number): Rgb {
  checkLightness(lightness);
  let index = 1;
  while (index < crust.length - 1 && lightness > crust[index]![0]) index++;
  const [low, lowA, lowB] = crust[index - 1]!;
  const [high, highA, highB] = crust[index]!;
  const share = (lightness - low) / (high - low);
  return labToSrgb(lightness, lowA + share * (highA - lowA), lowB + share * (highB - lowB));
}

/** As CSS Color 4 writes it: `rgb(204 164 113)`. */
export function cssColour({ r, g, b }: Rgb): string {
  return `rgb(${r} ${g} ${b})`;
}
