/** What a choice takes along, in the same step of the history. */
import { customPlateStart } from './fields.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';

/** What an oven preset speaks for. */
const presetFields = [
  'oven.setpoint',
  'oven.highestSetting',
  'oven.fuel',
  'oven.fan',
  'oven.bottomElement',
  'oven.power',
  'oven.cavity',
  'oven.thermostatOffset',
  'oven.physics',
];

/** The same for a number: fewer pizzas take what was said of the last ones with them. */
export function effectsOfNumber(
  path: string,
  value: unknown,
  file: PlanFile,
): Readonly<Record<string, unknown>> {
  const each = file.pizzas?.each;
  if (path !== 'pizzas.count' || each === undefined || !(Number(value) < each.length)) return {};
  const rest = each.slice(0, Math.max(0, Number(value)));
  return { 'pizzas.each': rest.some((one) => Object.keys(one).length > 0) ? rest : undefined };
}

export function effects(path: string, chosen: string, file: PlanFile): Readonly<Record<string, unknown>> {
  // Another oven: what was said of the old one no longer holds.
  if (path === 'oven.preset') return Object.fromEntries(presetFields.map((field) => [field, undefined]));
  if (path === 'plate.material') {
    const custom =
      chosen === 'custom'
        ? customPlateStart
        : Object.fromEntries(Object.keys(customPlateStart).map((field) => [field, undefined]));
    return { ...(file.plate?.material === chosen ? {} : custom), 'plate.surface': undefined };
  }
  if (path === 'plate.shape') {
    const { width, diameter } = file.plate ?? {};
    // A round plate as wide as the old one, and the other way round.
    return chosen === 'round'
      ? { 'plate.diameter': width ?? '36 cm', 'plate.width': undefined, 'plate.depth': undefined }
      : {
          'plate.width': diameter ?? '40 cm',
          'plate.depth': diameter ?? '35 cm',
          'plate.diameter': undefined,
        };
  }
  // Nothing baked ahead has no shade either.
  if (path === 'pizzas.parBake.keep' && chosen === '') return { 'pizzas.parBake': undefined };
  return {};
}
