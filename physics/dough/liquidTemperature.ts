/** How warm the liquid must be for a dough of a wanted temperature: a heat balance, and the bakers' rule beside it. */
import { zeroCelsius } from '../materials/constants.ts';
import type { LiquidPart } from '../evening/evening.ts';
import type { MixingId } from '../evening/ids.ts';
import { OutOfRange } from '../evening/problem.ts';
import { waterShareOf } from './ingredients.ts';

/**
 * Specific heats, J/(kg K). Flour and water: Cengel and Boles, Thermodynamics, 8th ed., data of a dough problem in
 * ch. 5. Milk: isoperibol calorimeter paper on doughs and milk, 3.942 +- 0.034. Salt and sugar, oil: our estimates;
 * in a pizza dough they weigh a tenth of the liquid or so.
 */
export const specificHeat = { flour: 1760, water: 4180, milk: 3942, solids: 1200, oil: 2000 } as const;

/** J per kg of flour, heat set free when flour of 11 to 12 % moisture is wetted. Source: Baker's Dictionary, 6.5 Btu/lb. */
const heatOfHydration = 15_100;

/** J/(kg K), dry solids of beer, whey and the like: Choi and Okos 1986, carbohydrate at 20 degC, rounded. */
const drySolidsHeat = 1550;

/** J/(kg K): milk by its published value, oil as oil, every other liquid by its water and its solids. */
function liquidSpecificHeat(part: LiquidPart): number {
  if (part.kind === 'milk') return specificHeat.milk;
  if (part.kind === 'oil') return specificHeat.oil;
  const water = waterShareOf(part);
  return specificHeat.water * water + drySolidsHeat * (1 - water);
}

/**
 * What mixing does to the temperature.
 *
 * `frictionFactor` (K) is the bakers' number for the rule with three temperatures; a third of it is the rise of a
 * dough whose parts all start at room temperature. `exchange` is the share of the difference to the room that the
 * dough loses to bowl, bench and air while it is mixed (our estimate). `work` (K) is the rise by the mechanical work:
 *
 *     work = frictionFactor / (3 (1 - exchange)) - 3.54
 *
 * so that balance and rule agree where the rule was made, at room temperature and 60 % water (3.54 K is the heat of
 * hydration there). Sources of the factors: hand 12 degF and planetary mixer 24 degF, doughandmortar blog after
 * Hamelman, "Bread". Food processor: no source; our estimate (factor 23 K).
 */
interface Mixing {
  readonly frictionFactor: number;
  readonly exchange: number;
  readonly work: number;
}
const hydrationRiseAt60 = heatOfHydration / (specificHeat.flour + 0.6 * specificHeat.water);
function mixing(frictionFactor: number, exchange: number): Mixing {
  return { frictionFactor, exchange, work: frictionFactor / (3 * (1 - exchange)) - hydrationRiseAt60 };
}
/** Friction of each way to mix; see `Mixing` for what the numbers mean and where they come from. */
export const mixingMethods: Readonly<Record<MixingId, Mixing>> = {
  hand: mixing(12 / 1.8, 0.4),
  mixer: mixing(24 / 1.8, 0.2),
  'food-processor': mixing(23, 0.1),
};

/**
 * K (43 degC): hotter liquid is not poured on yeast. Dry yeast is started at 105 to 110 degF, 41 to 43 degC
 * (TM 10-412, US forces); killing times of a brewing yeast extrapolate to half an hour per tenfold loss there and to
 * four seconds at 55 degC (Lajci et al., D47 3.86 min, z 4.68 K).
 */
export const hottestForYeast = 316.15;
const freezing = zeroCelsius;
/** J/kg, heat of fusion of ice: 144 Btu/lb, as the trade's ice formula takes it. */
const heatOfFusion = 144 * 2326;

/** One thing that goes into the bowl: mass in kg, temperature in K, specific heat in J/(kg K). */
export interface Portion {
  readonly mass: number;
  readonly temperature: number;
  readonly specificHeat: number;
}

function heatCapacity(portions: readonly Portion[]): number {
  return portions.reduce((sum, { mass, specificHeat: c }) => sum + mass * c, 0);
}

/** K, of parts stirred together with nothing set free and nothing lost. @throws OutOfRange when there is nothing */
export function mixtureTemperature(portions: readonly Portion[]): number {
  const capacity = heatCapacity(portions);
  if (!(capacity > 0)) throw new OutOfRange('portions', `${capacity} J/K`, 'a heat capacity above 0');
  return portions.reduce((sum, p) => sum + p.mass * p.specificHeat * p.temperature, 0) / capacity;
}

/** K, how much the wetting of this flour warms the whole. */
export function hydrationRise(flourMass: number, portions: readonly Portion[]): number {
  return (flourMass * heatOfHydration) / heatCapacity(portions);
}

/**
 * Share of ice in the liquid, the rest from the tap, that does the same as liquid of the wanted temperature.
 *
 *     s = c (t_tap - t) / (c t_tap + L),  t in degC
 *
 * The trade writes it in degF as (tap - t)/(tap + 112). Exact when ice *replaces* water; a published example takes the
 * ice *added* to the water by mistake (4.4 kg to 40 kg for 20 to 10 degC; replacing needs 4.0 kg).
 *
 * @param tap K, above freezing
 * @param wanted K, of the equivalent liquid; below freezing means ice that melts in the dough
 * @returns 0 when the tap is cold enough; above 1 there is not enough cold in ice
 */
export function iceShare(tap: number, wanted: number): number {
  if (!(tap >= freezing && Number.isFinite(wanted)))
    throw new OutOfRange('tap', `${tap} K`, 'above freezing, 273.15 K or more');
  if (wanted >= tap) return 0;
  return (specificHeat.water * (tap - wanted)) / (specificHeat.water * (tap - freezing) + heatOfFusion);
}

/**
 * The bakers' rule, K in and out (it also holds in degrees of any one scale): liquid = n wanted - (the others) -
 * friction factor, n being the number of others plus one.
 *
 * @param others flour and room, and a preferment if there is one
 */
export function bakersRule(wanted: number, others: readonly number[], frictionFactor: number): number {
  return (others.length + 1) * wanted - others.reduce((sum, t) => sum + t, 0) - frictionFactor;
}

/** Share of the water that may be ice: with more, crushed or not, too little is liquid to mix with. Our estimate. */
export const mostIce = 0.5;

export interface Batch {
  /** kg */
  readonly flour: number;
  /** kg and kind of each liquid; oil and honey come at room temperature, the others are poured at one temperature */
  readonly liquid: readonly { readonly mass: number; readonly part: LiquidPart }[];
  /** kg, at room temperature */
  readonly solids: number;
  readonly oil: number;
  /** K */
  readonly flourTemperature: number;
  readonly roomTemperature: number;
  readonly wanted: number;
  readonly mixing: MixingId;
  /** K, of the cold tap */
  readonly tapTemperature: number;
}

/** Where rule and balance part, for this batch. */
export interface HeatTerms {
  /** K of liquid that weigh as much as one kelvin of flour; the rule takes 1 */
  readonly flourCounts: number;
  /** K, by wetting the flour; by the work of mixing (below 0: its losses are larger) */
  readonly hydrationRise: number;
  readonly work: number;
  /** share of the difference to the room that goes to bowl, bench and air */
  readonly exchange: number;
}

export interface LiquidAdvice {
  /** K, to pour; ice water at 0 degC when the balance asks for less */
  readonly temperature: number;
  /** K, of the dough when mixing ends; the wanted one unless limited */
  readonly doughTemperature: number;
  /** K, what the balance would ask for if nothing stood in the way */
  readonly asked: number;
  readonly limited: 'yeast' | 'freezing' | undefined;
  /** mass fraction of the water that is ice, the rest from the tap; 0 when the tap is cold enough or there is no water */
  readonly iceShare: number;
  /** kg of ice in place of as much water */
  readonly ice: number;
  /** K, by the rule, for comparison; it may lie beyond what can be poured */
  readonly byRule: number;
  readonly terms: HeatTerms;
}

function checkBatch(batch: Batch): void {
  if (!(batch.flour > 0)) throw new OutOfRange('flour', `${batch.flour} kg`, 'more than 0 kg');
  const poured = batch.liquid.filter(isPoured).reduce((sum, { mass }) => sum + mass, 0);
  if (!(poured > 0)) throw new OutOfRange('dough.liquid', `${poured} kg`, 'more than 0 kg of liquid');
  for (const [path, value] of [
    ['dough.wantedTemperature', batch.wanted],
    ['dough.flourTemperature', batch.flourTemperature],
    ['kitchen.roomTemperature', batch.roomTemperature],
  ] as const)
    if (!(value > 200 && value < 400)) throw new OutOfRange(path, `${value} K`, '200 K to 400 K');
}

function isPoured({ part }: Batch['liquid'][number]): boolean {
  return part.kind !== 'oil' && part.kind !== 'honey';
}

/**
 * K of the dough when mixing ends, with the liquid poured at a temperature:
 *
 *     mixed  = (C_f T_f + C_l T_l + C_o T_r)/C + m_f q_h/C + work
 *     dough  = T_r + (1 - exchange)(mixed - T_r)
 *
 * @param temperature K; below freezing it stands for ice that melts in the dough
 * @throws OutOfRange as `liquidTemperature`
 */
export function doughTemperatureWith(batch: Batch, temperature: number): number {
  checkBatch(batch);
  const { roomTemperature } = batch;
  const all = portionsOf(batch, temperature);
  const { work, exchange } = mixingMethods[batch.mixing];
  const mixed = mixtureTemperature(all) + hydrationRise(batch.flour, all) + work;
  return roomTemperature + (1 - exchange) * (mixed - roomTemperature);
}

function portionsOf(batch: Batch, temperature: number): readonly Portion[] {
  const { roomTemperature } = batch;
  return [
    { mass: batch.flour, temperature: batch.flourTemperature, specificHeat: specificHeat.flour },
    { mass: batch.solids, temperature: roomTemperature, specificHeat: specificHeat.solids },
    { mass: batch.oil, temperature: roomTemperature, specificHeat: specificHeat.oil },
    ...batch.liquid.map((entry) => ({
      mass: entry.mass,
      temperature: isPoured(entry) ? temperature : roomTemperature,
      specificHeat: liquidSpecificHeat(entry.part),
    })),
  ];
}

/**
 * Ice for liquid that has to be colder than the tap. Only water can be ice; other liquids come as cold as they are
 * asked for, at 0 degC at the coldest, and what they cannot do the water's ice does.
 */
function iceFor(
  batch: Batch,
  asked: number,
): { readonly share: number; readonly mass: number; readonly reached: number } {
  const poured = batch.liquid.filter(isPoured);
  const capacity = (entries: typeof poured): number =>
    entries.reduce((sum, { mass, part }) => sum + mass * liquidSpecificHeat(part), 0);
  const water = poured.filter(({ part }) => part.kind === 'water');
  const mass = water.reduce((sum, entry) => sum + entry.mass, 0);
  if (mass === 0 || asked >= batch.tapTemperature)
    return { share: 0, mass: 0, reached: Math.max(asked, freezing) };
  const ratio = capacity(poured) / capacity(water);
  const others = Math.max(asked, freezing);
  const waterAt = others + (asked - others) * ratio;
  const share = iceShare(batch.tapTemperature, waterAt);
  if (share <= mostIce) return { share, mass: share * mass, reached: asked };
  // What half the water as ice does, spread over all that is poured.
  const tap = batch.tapTemperature;
  const coldest = tap - mostIce * (tap - freezing + heatOfFusion / specificHeat.water);
  return { share: mostIce, mass: mostIce * mass, reached: freezing + (coldest - freezing) / ratio };
}

/**
 * The liquid's temperature for a wanted dough temperature, from the balance of `doughTemperatureWith`. Above 43 degC
 * the liquid is held there for the yeast; below the tap's it takes ice in place of water, up to half of it; the advice
 * says when a limit holds and gives the dough temperature then reached. Honest to about +-2 K: friction is known no
 * better.
 *
 * @throws OutOfRange when there is no flour or no liquid, or a temperature is not finite
 */
export function liquidTemperature(batch: Batch): LiquidAdvice {
  checkBatch(batch);
  const { wanted, roomTemperature } = batch;
  // The dough's temperature is a straight line in the liquid's: two points give the answer.
  const atFreezing = doughTemperatureWith(batch, freezing);
  const slope = doughTemperatureWith(batch, freezing + 1) - atFreezing;
  const asked = freezing + (wanted - atFreezing) / slope;
  const ice = iceFor(batch, asked);
  const limited = asked > hottestForYeast ? 'yeast' : ice.reached > asked ? 'freezing' : undefined;
  const reached = limited === 'yeast' ? hottestForYeast : ice.reached;
  const { work, exchange, frictionFactor } = mixingMethods[batch.mixing];
  const all = portionsOf(batch, freezing);
  const liquids = batch.liquid.filter(isPoured);
  return {
    temperature: Math.max(reached, freezing),
    doughTemperature: limited === undefined ? wanted : doughTemperatureWith(batch, reached),
    asked,
    limited,
    iceShare: ice.share,
    ice: ice.mass,
    byRule: bakersRule(wanted, [batch.flourTemperature, roomTemperature], frictionFactor),
    terms: {
      flourCounts:
        (batch.flour * specificHeat.flour) /
        liquids.reduce((sum, { mass, part }) => sum + mass * liquidSpecificHeat(part), 0),
      hydrationRise: hydrationRise(batch.flour, all),
      work,
      exchange,
    },
  };
}
