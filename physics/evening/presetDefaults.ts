/**
 * What a plan takes of an oven that it does not describe: the figures a cook can read off the oven or its type plate.
 * The physical rest (liner, wool, seams, thermostat) belongs to the oven model. Sizes are of no maker: they are round
 * figures of the classes sold, our estimate.
 */
import type { BottomElementId, FuelId, OvenPresetId } from './ids.ts';

export interface PresetDefaults {
  readonly setpoint: string;
  readonly highestSetting: string;
  readonly fuel: FuelId;
  readonly fan: boolean;
  readonly bottomElement: BottomElementId;
  /** for gas, `bottom` is the burner's input and `top` the grill's */
  readonly power: { readonly bottom: string; readonly top: string };
  readonly cavity: { readonly width: string; readonly depth: string; readonly height: string };
  readonly thermostatOffset: string;
}

/** A dial that does not lie, no fan: what most home bakers bake with. */
const plain = { fan: false, thermostatOffset: '0 K' } as const;

export const presetDefaults: Readonly<Record<OvenPresetId, PresetDefaults>> = {
  // Built in under the worktop of a 60 cm kitchen: 67 l, bottom heat under an enamelled floor.
  european: {
    ...plain,
    setpoint: '250 degC',
    highestSetting: '250 degC',
    fuel: 'electric',
    bottomElement: 'hidden',
    power: { bottom: '1.3 kW', top: '1.1 kW' },
    cavity: { width: '46 cm', depth: '41 cm', height: '35.5 cm' },
  },
  // 30 in wide, on 240 V: 132 l, both elements in the cavity, sold with dials to 550 degF.
  'north-american': {
    ...plain,
    setpoint: '550 degF',
    highestSetting: '550 degF',
    fuel: 'electric',
    bottomElement: 'exposed',
    power: { bottom: '2.5 kW', top: '3.2 kW' },
    cavity: { width: '61 cm', depth: '48 cm', height: '45 cm' },
  },
  // The same cavity over a burner of some 16,000 BTU/h. The grill burner's 3.5 kW (12,000 BTU/h) is our estimate.
  'north-american-gas': {
    ...plain,
    setpoint: '550 degF',
    highestSetting: '550 degF',
    fuel: 'gas',
    bottomElement: 'hidden',
    power: { bottom: '4.6 kW', top: '3.5 kW' },
    cavity: { width: '61 cm', depth: '48 cm', height: '45 cm' },
  },
  // Half height or older, weaker in everything: the oven of a reader for whom a recipe has to be rewritten.
  small: {
    ...plain,
    setpoint: '230 degC',
    highestSetting: '230 degC',
    fuel: 'electric',
    bottomElement: 'hidden',
    power: { bottom: '0.9 kW', top: '0.9 kW' },
    cavity: { width: '42 cm', depth: '38 cm', height: '30 cm' },
  },
  // 71 l with more power and a dial to 300 degC.
  strong: {
    ...plain,
    setpoint: '300 degC',
    highestSetting: '300 degC',
    fuel: 'electric',
    bottomElement: 'hidden',
    power: { bottom: '1.5 kW', top: '1.9 kW' },
    cavity: { width: '48 cm', depth: '42 cm', height: '35.5 cm' },
  },
};
