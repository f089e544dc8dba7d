/** A plate of the same kind that is ready sooner: how thick it may be, by running the oven with it. */
import type { Suggestion } from './answer.ts';
import { attempt } from './attempt.ts';
import type { Engine } from './engine.ts';
import type { Evening } from './evening.ts';
import type { EveningRun } from './run.ts';
import { durationText } from './steps.ts';

/** m and share of its thickness: a plate below half of what it was is another plate. */
const leastShare = 0.5;
const thinnest = 0.004;
const millimetres = (metres: number): string => (1000 * metres).toFixed(1).replace(/\.0$/u, '');

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
  const half = Math.max(thickness * leastShare, thinnest);
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
