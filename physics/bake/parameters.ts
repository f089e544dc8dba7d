/**
 * What the bake rests on beside geometry and published properties. Each value says where it comes from and how far it
 * may be off (one standard deviation, as a share); `spread.ts` draws from these. One set serves steel, stone, weak
 * ovens and wood ovens alike.
 */
import type { BenchId } from '../evening/ids.ts';
import type { BrowningLawId } from './browning.ts';

export interface BakeParameters {
  /** W/(m2 K) between plate and dough; our estimate, prior 75 to 250, kept constant: the growing crust throttles */
  readonly contactConductance: number;
  /** m2 K/W added by what lies between; parchment with its wrinkles and the oil below it is our estimate */
  readonly benchResistance: Readonly<Record<BenchId, number>>;
  /** kg/m3, stretched dough under the topping and in the rim; published final dough 770 to 790, less as it springs */
  readonly baseDensity: number;
  readonly rimDensity: number;
  /** m, width of the bare rim; published 1 to 2 cm for one style */
  readonly rimWidth: number;
  /** areal mass of the rim over that of the base; our estimate */
  readonly rimMassFactor: number;
  /** factor on the conductivity of the dry crust's gas-filled structure */
  readonly crustConductivityFactor: number;
  /** factor on the rate of the browning law, and the law itself unless a plan names one */
  readonly browningFactor: number;
  readonly browningLaw: BrowningLawId;
  /** share of the open pores in free diffusion: porosity times tortuosity, 0.4 to 0.67 times porosity (published) */
  readonly doughVapourShare: number;
  readonly sauceVapourShare: number;
  readonly cheeseVapourShare: number;
  /** factor on the evaporation from cheese, whose melted fat covers part of it; our estimate */
  readonly fatCover: number;
  /** total hemispherical, dough and topping; 0.9 in most published models (from memory) */
  readonly doughEmissivity: number;
  readonly toppingEmissivity: number;
  /** K, sauce and cheese as they come to the bench; our estimate */
  readonly toppingTemperature: number;
  /** K, cheese has melted through when its coldest place is here; 55 to 65 degC, common practice, no source */
  readonly meltTemperature: number;
  /** L* by which a rim may be lighter than the base and still count as done; our definition */
  readonly rimLighter: number;
}

/** The values that a bake is computed with unless a spread or a test says otherwise. */
export const bakeParameters: BakeParameters = {
  contactConductance: 115,
  benchResistance: { metal: 0, flour: 0, semolina: 0.0008, parchment: 0.004 },
  baseDensity: 600,
  rimDensity: 400,
  rimWidth: 0.018,
  rimMassFactor: 1.6,
  crustConductivityFactor: 0.9,
  browningFactor: 1,
  browningLaw: 'zanoni-1995',
  doughVapourShare: 0.25,
  sauceVapourShare: 0.06,
  cheeseVapourShare: 0.08,
  fatCover: 0.5,
  doughEmissivity: 0.9,
  toppingEmissivity: 0.92,
  toppingTemperature: 285.15,
  meltTemperature: 338.15,
  rimLighter: 8,
};

/** Effects of the model that a test may switch off to see what they do. */
export interface Effects {
  readonly radiation: boolean;
  /** evaporation, condensation and the movement of vapour */
  readonly evaporation: boolean;
  /** vapour from cell to cell; without it only the top gives off water */
  readonly vapourInside: boolean;
  /** boiling point and dryness from the water left; without it water counts as free until it is nearly gone */
  readonly sorption: boolean;
  /** melted fat over part of the cheese */
  readonly fatCover: boolean;
  /** dried dough as a sponge; without it as moist dough with bubbles, whatever its water */
  readonly dryCrust: boolean;
  /** the plate under the pizza colder than around it; without it one temperature in every depth */
  readonly twoPlateColumns: boolean;
  /** steam from the pizza in the cavity; without it the cavity's air is as dry as the kitchen's */
  readonly cavityHumidity: boolean;
}

/** The model as it is: nothing switched off. */
export const allEffects: Effects = {
  radiation: true,
  evaporation: true,
  vapourInside: true,
  sorption: true,
  fatCover: true,
  dryCrust: true,
  twoPlateColumns: true,
  cavityHumidity: true,
};
