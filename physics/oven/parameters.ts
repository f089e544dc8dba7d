/**
 * The physical parameters of an oven: what a cook cannot know and a preset supplies. Values marked "our estimate"
 * carry the spread that `spread.ts` draws from; none of them is fitted to one case.
 */
import type { Oven } from '../evening/evening.ts';
import type { OvenPresetId } from '../evening/ids.ts';

export interface OvenParameters {
  /** J/(m2 K); enamelled sheet of 0.6 to 0.8 mm: 7850 kg/m3 x 500 J/(kg K) x 0.7 mm = 2.7 kJ plus stiffeners */
  readonly linerCapacity: number;
  /** J/K of racks and runners, carried by the side walls */
  readonly rackCapacity: number;
  /** m of mineral wool */
  readonly woolThickness: number;
  /** W/(m2 K), outer sheet to kitchen */
  readonly outerCoefficient: number;
  /** J/(m2 K), one pane of 4 mm: 2500 kg/m3 x 800 J/(kg K) x 4 mm = 8 kJ */
  readonly doorPaneCapacity: number;
  /** W/(m2 K), inner to outer pane */
  readonly doorGapConductance: number;
  /** W/K, metal bridges and door seam */
  readonly seamConductance: number;
  /** m3/s of room air through the vent when nothing burns */
  readonly ventFlow: number;
  /** m3/s of room air drawn per W of a lit gas burner: 0.344 g/s per kW is stoichiometric, twice that is drawn */
  readonly burnerAir: number;
  /** total hemispherical, enamel 0.85 to 0.92 (textbooks, from memory) */
  readonly wallEmissivity: number;
  readonly doorEmissivity: number;
  readonly element: {
    /** m2, surface of an 8 mm rod of some 2.2 m */
    readonly area: number;
    readonly emissivity: number;
    /** J/K */
    readonly capacity: number;
    /** W/(m2 K), rod to cavity air */
    readonly convection: number;
    /** W/K from a hidden bottom element down into the insulation below it */
    readonly lossBelow: number;
  };
  /** share of a gas burner's input that goes to the floor sheet; the rest comes with the gases */
  readonly burnerToFloor: number;
  /** share of rated power that each element has until the thermostat first cuts out, and after it */
  readonly preheatShare: { readonly bottom: number; readonly top: number };
  readonly holdShare: { readonly bottom: number; readonly top: number };
  readonly thermostat: {
    /** s, first-order lag of the sensor */
    readonly lag: number;
    /** K, half of the switching difference */
    readonly halfBand: number;
    /** share of what the sensor sees that is wall (the mean of ceiling and sides), the rest is air */
    readonly wallShare: number;
  };
  /** factor on the natural-convection correlations, which are for open plates and walls, not for a furnished box */
  readonly convectionFactor: number;
  /** W/(m2 K), forced convection everywhere when the fan runs; 15 to 30 is common practice, no source */
  readonly fanCoefficient: number;
}

const electric: OvenParameters = {
  linerCapacity: 4200,
  rackCapacity: 750,
  woolThickness: 0.03,
  outerCoefficient: 9,
  doorPaneCapacity: 8000,
  doorGapConductance: 3.5,
  seamConductance: 0.5,
  ventFlow: 0.5e-3,
  burnerAir: (2 * 0.344e-6) / 1.2,
  wallEmissivity: 0.88,
  doorEmissivity: 0.9,
  element: { area: 0.055, emissivity: 0.88, capacity: 330, convection: 14, lossBelow: 0.15 },
  burnerToFloor: 0,
  preheatShare: { bottom: 1, top: 1 },
  holdShare: { bottom: 1, top: 1 },
  thermostat: { lag: 55, halfBand: 4, wallShare: 0.3 },
  convectionFactor: 1,
  fanCoefficient: 18,
};

/**
 * One set per preset, with what sets it apart.
 *
 * - european: about 67 l, both elements rated near 1.2 kW and both on while the air warms; electronic control.
 * - north-american: exposed bottom rod; the broad top element only helps in preheat and hardly takes part in baking;
 *   thicker insulation, because the cavity is self-cleaning.
 * - north-american-gas: burner under the floor, so the floor sheet and the gases share its heat and the vent carries
 *   the rest away; hydraulic thermostat with a wide band.
 * - small: thin insulation, hydraulic thermostat.
 * - strong: pyrolytic, thick insulation, both elements on in preheat.
 */
export const ovenParameters: Readonly<Record<OvenPresetId, OvenParameters>> = {
  european: electric,
  'north-american': {
    ...electric,
    woolThickness: 0.035,
    preheatShare: { bottom: 1, top: 0.4 },
    holdShare: { bottom: 1, top: 0.1 },
    thermostat: { lag: 55, halfBand: 5, wallShare: 0.3 },
  },
  'north-american-gas': {
    ...electric,
    woolThickness: 0.035,
    ventFlow: 0.8e-3,
    burnerToFloor: 0.45,
    preheatShare: { bottom: 1, top: 0 },
    holdShare: { bottom: 1, top: 0 },
    thermostat: { lag: 65, halfBand: 9, wallShare: 0.3 },
  },
  small: {
    ...electric,
    woolThickness: 0.025,
    thermostat: { lag: 60, halfBand: 8, wallShare: 0.3 },
  },
  strong: {
    ...electric,
    woolThickness: 0.04,
    holdShare: { bottom: 1, top: 0.5 },
  },
};

/**
 * The preset's parameters. An oven whose fuel differs from its preset's takes the shares of the preset that has the
 * fuel: a burner cannot be switched as elements are.
 */
export function parametersOf(oven: Oven): OvenParameters {
  const preset = ovenParameters[oven.preset];
  const presetFuel = oven.preset === 'north-american-gas' ? 'gas' : 'electric';
  if (presetFuel === oven.fuel) return preset;
  const { preheatShare, holdShare, burnerToFloor } =
    ovenParameters[oven.fuel === 'gas' ? 'north-american-gas' : 'north-american'];
  return { ...preset, preheatShare, holdShare, burnerToFloor };
}
