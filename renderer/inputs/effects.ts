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
  return {};
}
