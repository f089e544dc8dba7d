/** What was baked in and on, said so that somebody else can do the same. */
import type { Evening } from '../evening/evening.ts';
import { shadeLightness } from '../evening/shade.ts';
import { benchWords } from '../evening/steps.ts';
import { plateMaterial } from '../materials/plates.ts';
import type { Words } from './words.ts';

/** `golden`, or `lightness 53` where no name says it */
export function shadeText(lightness: number): string {
  const named = Object.entries(shadeLightness).find(([, value]) => value === lightness);
  return named?.[0] ?? `lightness ${Number(lightness.toFixed(1))}`;
}

/** `carbon steel`; `plate` for a material of the cook's own */
function plateName({ plate }: Evening): string {
  return plate.material === 'custom'
    ? 'plate'
    : plateMaterial(plate.material, plate.surface, plate.custom).name.toLowerCase();
}

/** `carbon steel, 8 mm thick, 40 cm by 35 cm` */
export function plateText(evening: Evening, words: Words): string {
  const { shape, width, depth, thickness } = evening.plate;
  const size =
    shape === 'round' ? `${words.length(width)} across` : `${words.length(width)} by ${words.length(depth)}`;
  return `${plateName(evening)}, ${words.length(thickness)} thick, ${size}`;
}

/** Where it lies: `its underside 30 % of the way up the oven`. */
export function rackText({ plate }: Evening): string {
  return `its underside ${Math.round(100 * plate.rackHeight)}\u00a0% of the way up the oven`;
}

/** `30 cm across, 250 g of dough, on a floured bench, golden below`; of pizzas that differ the first */
export function pizzaText({ pizzas }: Evening, words: Words): string {
  return [
    `${words.length(pizzas.diameter)} across`,
    `${words.grams(1000 * pizzas.ballMass)} of dough`,
    `shaped ${benchWords[pizzas.bench]}`,
    `${shadeText(pizzas.shadeLightness)} below`,
  ].join(', ');
}
