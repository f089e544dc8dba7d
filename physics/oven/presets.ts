/**
 * The kinds of oven a plan can name, one row each. A new row is offered, checked and computed with everywhere; what it
 * lacks the compiler names. Sizes are of no maker: they are round figures of the classes sold, our estimate.
 */
import type { BottomElementId, FuelId } from '../evening/ids.ts';
import type { OvenParameters } from './parameters.ts';

/** What a cook can read off an oven or its type plate, as a plan writes it; a plan that leaves it out takes it from here. */
export interface TypePlate {
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

export interface OvenPreset {
  /** as it stands in a list */
  readonly name: string;
  readonly typePlate: TypePlate;
  /** the physical rest, which a cook cannot know */
  readonly parameters: OvenParameters;
}

/** What both North American ovens have in common: the dial, the cavity of 132 l, its insulation, racks and seams. */
const wide = {
  typePlate: {
    ...plain,
    setpoint: '550 degF',
    highestSetting: '550 degF',
    cavity: { width: '61 cm', depth: '48 cm', height: '45 cm' },
  },
  parameters: { woolThickness: 0.035, rackCapacity: 1200, seamConductance: 0.65 },
} as const;

/** m3/s of air that each W of methane needs to burn: 0.31 g/s a kW, see `burnerAir` */
export const burningAir = 0.31e-6 / 1.2;

/** What all have in common: the built-in electric oven of a European kitchen. */
const electric: OvenParameters = {
  linerCapacity: 4200,
  rackCapacity: 750,
  woolThickness: 0.03,
  outerCoefficient: 9,
  doorPaneCapacity: 8000,
  doorGapConductance: 3.5,
  seamConductance: 0.5,
  ventFlow: 0.5e-3,
  burnerAir: burningAir,
  wallEmissivity: 0.88,
  doorEmissivity: 0.9,
  element: { surfaceLoad: 45e3, emissivity: 0.88, capacity: 6000, convection: 14, lossBelow: 0.15 },
  burnerToFloor: 0,
  preheatShare: { bottom: 1, top: 1 },
  holdShare: { bottom: 1, top: 1 },
  thermostat: { lag: 55, halfBand: 4, wallShare: 0.3 },
  circulation: 5,
  convectionFactor: 1,
  fanCoefficient: 18,
};

const rows = {
  // Built in under the worktop of a 60 cm kitchen: 67 l, bottom heat under an enamelled floor. Both elements rated
  // near 1.2 kW and switched together; electronic control.
  european: {
    name: 'European, 67 l',
    typePlate: {
      ...plain,
      setpoint: '250 degC',
      highestSetting: '250 degC',
      fuel: 'electric',
      bottomElement: 'hidden',
      power: { bottom: '1.3 kW', top: '1.1 kW' },
      cavity: { width: '46 cm', depth: '41 cm', height: '35.5 cm' },
    },
    parameters: electric,
  },
  // 30 in wide, on 240 V: 132 l, both elements in the cavity, sold with dials to 550 degF. The broad top element
  // only helps in preheat and hardly takes part in baking (two repair trades: both in preheat, then mostly the
  // lower, sometimes the upper at part power). Thicker insulation, because the cavity is self-cleaning; racks,
  // seams and vent of a cavity of twice the size. The vent (0.5 to 1 l/s) so that it holds 288 degC with about 1.1
  // kW.
  'north-american': {
    name: 'North American, electric',
    typePlate: {
      ...wide.typePlate,
      fuel: 'electric',
      bottomElement: 'exposed',
      power: { bottom: '2.5 kW', top: '3.2 kW' },
    },
    parameters: {
      ...electric,
      ...wide.parameters,
      ventFlow: 0.6e-3,
      preheatShare: { bottom: 1, top: 0.4 },
      holdShare: { bottom: 1, top: 0.1 },
      thermostat: { lag: 55, halfBand: 5, wallShare: 0.3 },
    },
  },
  // The same cavity over a burner of some 16,000 BTU/h. The grill burner's 3.5 kW (12,000 BTU/h) is our estimate.
  // Burner under the floor sheet. A flame that is not luminous gives off 15 to 20 % by radiation; its gases, some
  // 400 K hotter than the sheet, pass 15 to 20 W/(m2 K) x 0.29 m2 to it, 35 to 45 % of 4.1 kW: 0.55 in all. The
  // gases come up through slots at 0.5 to 1 m/s along the walls, 7 to 8 W/(m2 K), and radiate as vapour and CO2 do
  // (emissivity about 0.1 at 0.03 atm m, 600 K, Hottel's chart, from memory), 4 to 5 more: circulation 12. The
  // vent stands open for them all the time: 40 cm2 of slot at the draught of 0.5 m of hot air, inlet and outlet in
  // series, 0.42 A sqrt(2 g H dT/T) = 2.5 l/s of kitchen air; gas ranges so take about twice the energy of
  // electric ones (two US sources). Hydraulic thermostat. The floor's share (0.45 to 0.6), the vent (1.5 to 3 l/s)
  // and the circulation (8 to 13) were chosen within these ranges after comparison with the gas rows of
  // `validate/`.
  'north-american-gas': {
    name: 'North American, gas',
    typePlate: {
      ...wide.typePlate,
      fuel: 'gas',
      bottomElement: 'hidden',
      power: { bottom: '4.6 kW', top: '3.5 kW' },
    },
    parameters: {
      ...electric,
      ...wide.parameters,
      ventFlow: 2.5e-3,
      burnerToFloor: 0.55,
      preheatShare: { bottom: 1, top: 0 },
      holdShare: { bottom: 1, top: 0 },
      thermostat: { lag: 65, halfBand: 9, wallShare: 0.3 },
      circulation: 12,
    },
  },
  // Half height or older, weaker in everything: the oven of a reader for whom a recipe has to be rewritten. Thin
  // insulation, hydraulic thermostat.
  small: {
    name: 'Small',
    typePlate: {
      ...plain,
      setpoint: '230 degC',
      highestSetting: '230 degC',
      fuel: 'electric',
      bottomElement: 'hidden',
      power: { bottom: '0.9 kW', top: '0.9 kW' },
      cavity: { width: '42 cm', depth: '38 cm', height: '30 cm' },
    },
    parameters: {
      ...electric,
      woolThickness: 0.025,
      rackCapacity: 600,
      seamConductance: 0.43,
      ventFlow: 0.36e-3,
      thermostat: { lag: 60, halfBand: 8, wallShare: 0.3 },
    },
  },
  // 72 l with more power and a dial to 300 degC. Pyrolytic, thick insulation; both elements switched together.
  strong: {
    name: 'Strong',
    typePlate: {
      ...plain,
      setpoint: '300 degC',
      highestSetting: '300 degC',
      fuel: 'electric',
      bottomElement: 'hidden',
      power: { bottom: '1.5 kW', top: '1.9 kW' },
      cavity: { width: '48 cm', depth: '42 cm', height: '35.5 cm' },
    },
    parameters: {
      ...electric,
      woolThickness: 0.04,
    },
  },
} satisfies Readonly<Record<string, OvenPreset>>;

export type OvenPresetId = keyof typeof rows;
export const ovenPresets: Readonly<Record<OvenPresetId, OvenPreset>> = rows;
export const ovenPresetIds = Object.keys(rows) as readonly OvenPresetId[];
