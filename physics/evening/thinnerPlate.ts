/** A plate of the same kind that is ready sooner: how thick it may be, by running the oven with it. */
import { plateMaterial } from '../materials/plates.ts';
import type { Suggestion } from './answer.ts';
import { attempt } from './attempt.ts';
import type { Engine } from './engine.ts';
import type { Evening } from './evening.ts';
import type { EveningRun } from './run.ts';
import { durationText } from './steps.ts';

/** Share of its thickness: a plate below half of what it was is another plate. */
const leastShare = 0.5;
/** m: thinner ones are sold for no pizza; common practice, no source */
const thinnest = { metal: 0.004, stone: 0.01 } as const;
const millimetres = (metres: number): string => (1000 * metres).toFixed(1).replace(/\.0$/u, '');

/** m, the thinnest that a plate of this material is sold for pizza. */
export function thinnestSold({ material, surface, custom }: Evening['plate']): number {
  return plateMaterial(material, surface, custom).metallic ? thinnest.metal : thinnest.stone;
}

/**
 * One thinner plate: the thickness is found on the straight line between the plate as it is and half of it, and the
 * oven is run with what a shop would sell, a whole or half millimetre.
 *
 * @param needed s by which the plate has to be ready sooner
 */
export function thinnerPlate(
  evening: Evening,
  run: EveningRun,
  engine: Engine,
  needed: number,
): readonly Suggestion[] {
  const { thickness } = evening.plate;
  const now = run.preheat.plateReady;
  const readyWith = (metres: number): number | undefined =>
    attempt(
      () =>
        engine.simulateEvening({
          ...evening,
          plate: { ...evening.plate, thickness: metres },
          pizzas: { ...evening.pizzas, count: 1 },
        }).preheat.plateReady,
    );
  const half = Math.max(thickness * leastShare, thinnestSold(evening.plate));
  if (half >= thickness) return [];
  const atHalf = readyWith(half);
  if (atHalf === undefined || now - atHalf < 60) return [];
  const share = Math.min(1, needed / (now - atHalf));
  const wanted = Math.max(half, Math.floor(2000 * (thickness - share * (thickness - half))) / 2000);
  const gained = now - (readyWith(wanted) ?? now);
  if (gained < 60) return [];
  const meets = gained >= needed - 60;
  return [
    {
      id: 'plate',
      message: `A plate ${millimetres(wanted)} mm thick in place of ${millimetres(thickness)} mm is ready ${durationText(gained)} sooner${meets ? '' : ` of the ${durationText(needed)} missing`}; it also loses more heat to each pizza.`,
      change: [{ path: 'plate.thickness', value: `${millimetres(wanted)} mm` }],
      gainsMinutes: gained / 60,
      meets,
    },
  ];
}
