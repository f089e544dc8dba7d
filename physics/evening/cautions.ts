/**
 * What a cook is warned of: each caution has its condition, names the figure that triggered it and says where its limit
 * comes from. The last two always stand: the maker's instructions come first, and figures are estimates.
 */
import { zeroCelsius } from '../materials/constants.ts';
import type { PlateMaterial } from '../materials/plates.ts';
import type { Warning } from './answer.ts';
import { coolingTime, safeToTouch } from '../plate/cooling.ts';
import { enclosureSides } from '../plate/geometry.ts';
import type { Evening } from './evening.ts';
import type { BenchId } from './ids.ts';
import { everyPizza } from './onePizza.ts';

export interface CautionFacts {
  readonly evening: Evening;
  readonly material: PlateMaterial;
  /** kg */
  readonly plateMass: number;
  /** K, the hottest the plate's top gets */
  readonly hottestPlate: number;
  /** s for the plate to cool in the oven, switched off and shut; undefined when it was not computed */
  readonly coolInOven?: number;
  /** s from the sauce and cheese on the bench to the last pizza in the oven */
  readonly toppingsOut: number;
  /** s from the flour in the bowl to the last pizza in the oven */
  readonly doughOut: number;
}

/** degC: paper sold for baking is printed with 215 to 232 degC (420 to 450 degF) as its limit. */
export const parchmentRating = 215;
/** kg: four manuals of one maker group allow 25 lb on a roll-out rack; plain racks print nothing. */
const rackManuals = 11.3;
const rackCaution = 8;
const rackSerious = 11;
const rackSource =
  'four manuals of one North American maker group: 25 lb on a roll-out rack; for plain racks no limit was found';
/** m of free air around the plate: two makers' manuals ask for 5 cm, and for 5 to 10 cm */
const freeAir = 0.05;
/** degC: smoke points of usual kitchen oils begin at about 190 (virgin olive) and end at 227 to 254 (refined sunflower). */
const oilSmokes = { from: 190, all: 254 };
/** s: 2 h between 4 and 60 degC, 1 h above 32 degC (USDA consumer statements, 2012 and 2016). */
const perishableSource =
  'USDA consumer statements of September 2012 and May 2016, in reprints: 2 h between 4 and 60 °C, 1 h above 32 °C';
const perishable = { usual: 2 * 3600, hot: 3600, hotRoom: 32 + zeroCelsius };

const round = (value: number): string => value.toFixed(0);
const celsius = (kelvin: number): string => `${round(kelvin - zeroCelsius)} °C`;
const centimetres = (metres: number): string => `${Number((metres * 100).toFixed(1))} cm`;
const hours = (seconds: number): string => `${Number((seconds / 3600).toFixed(1))} h`;

type Caution = (facts: CautionFacts) => Warning | undefined;

/** Whether any pizza lies on this. */
const anyOn = (evening: Evening, bench: BenchId): boolean =>
  everyPizza(evening).some(({ pizzas }) => pizzas.bench === bench);

const parchment: Caution = ({ evening }) => {
  const { oven } = evening;
  const setpoint = oven.setpoint - zeroCelsius;
  if (!anyOn(evening, 'parchment') || setpoint <= parchmentRating) return undefined;
  return {
    code: 'parchment-above-rating',
    message: `Baking paper is commonly rated to ${parchmentRating} to 230 °C and the oven is set to ${round(setpoint)} °C: above its rating it chars and can catch fire. Trim it to the pizza, pull it out after a minute or two when the base has set, keep it from the elements and stay by the oven; flour or semolina and a peel avoid it.`,
    source:
      'limits printed on baking paper, 420 to 450 °F, by several secondary pages that agree; the advice is common practice, no source',
  };
};

const rackLoad: Caution = ({ plateMass }) => {
  if (plateMass <= rackCaution) return undefined;
  const kilograms = `${plateMass.toFixed(1)} kg`;
  return plateMass > rackSerious
    ? {
        code: 'plate-too-heavy-for-rack',
        source: rackSource,
        message: `The plate weighs ${kilograms}; some makers allow no more than ${rackManuals} kg on a rack, food included. Do not use it before the oven's maker has confirmed that the rack carries it, and never pull the rack out with it.`,
      }
    : {
        code: 'plate-heavy-for-rack',
        source: rackSource,
        message: `The plate weighs ${kilograms}; plain racks rarely state what they carry, and some makers allow ${rackManuals} kg with the food. Ask the maker, and do not pull the rack out with the plate on it.`,
      };
};

const air: Caution = ({ evening: { oven, plate } }) => {
  const side = (oven.cavity.width - plate.width) / 2;
  const front = (oven.cavity.depth - plate.depth) / 2;
  const least = Math.min(side, front);
  // A micrometre of grace: 46 cm less 36 cm is not quite 10 cm in binary.
  if (least >= freeAir - 1e-6) return undefined;
  return {
    code: 'little-air-round-plate',
    message: `Only ${centimetres(least)} stay free ${side <= front ? 'beside the plate' : 'before and behind the plate'}; the plate is ${centimetres(plate.width)} by ${centimetres(plate.depth)} in a cavity of ${centimetres(oven.cavity.width)} by ${centimetres(oven.cavity.depth)}, and makers commonly ask for ${centimetres(freeAir)} on all sides so that the air can pass and the thermostat reads the oven and not the plate.`,
    source: "two makers' manuals: 5 cm of free air on all sides, one of them up to 10 cm",
  };
};

/** K: an oven this much warmer than the kitchen is no cold oven any more; our own line, above any summer's day. */
const coldStart = 20;

const shock: Caution = ({ evening, material }) => {
  if (material.metallic) return undefined;
  const { oven, kitchen, pizzas } = evening;
  const frozen =
    pizzas.parBake?.keep === 'freezer'
      ? ` The bases come out of the freezer: thaw all ${pizzas.count} before they touch it.`
      : '';
  const hot = oven.startTemperature > kitchen.roomTemperature + coldStart;
  return {
    code: 'stone-thermal-shock',
    message: hot
      ? `${material.name} can crack when heated or cooled suddenly and the oven starts at ${celsius(oven.startTemperature)}: a stone that is not in it already must not go in now; let it heat with the oven from cold, let it cool in it, and keep water and wet or frozen food off it while hot.${frozen}`
      : `${material.name} can crack when heated or cooled suddenly: put it into the cold oven before it is set to ${celsius(oven.setpoint)}, let it cool in the oven, and keep water and wet or frozen food off it while hot.${frozen}`,
    source:
      "breakages reported by owners and makers' sheets; sudden steps of some 100 to 200 K for clay, 250 K and more for cordierite (handbooks, from memory)",
  };
};

const hotPlate: Caution = (facts) => {
  const { evening, material, hottestPlate, coolInOven = Infinity } = facts;
  const bare = coolingTime(
    { ...enclosureSides(evening.plate), thickness: evening.plate.thickness, material },
    hottestPlate,
    safeToTouch,
    evening.kitchen.roomTemperature,
  );
  const least = Number.isFinite(bare)
    ? `needs at least ${round(bare / 60)} min bare in open air to fall`
    : 'will not fall in so warm a kitchen';
  const shut = Number.isFinite(coolInOven)
    ? `some ${hours(coolInOven)}, rather overnight`
    : 'several hours or overnight';
  return {
    code: 'plate-stays-hot',
    message: `At ${celsius(hottestPlate)} the plate burns at a touch and ${least} below ${celsius(safeToTouch)}; in the shut oven count on ${shut}. Leave it there, and trust a thermometer and not the clock.`,
    source:
      'ISO 13732-1:2006, 43 °C for a touch of any length (from memory); 60 °C burns within 5 s (a table of safety engineers, 1997); cooling from this model',
  };
};

const door: Caution = ({ evening: { oven } }) => ({
  code: 'glass-door',
  message: `At ${celsius(oven.setpoint)} keep water and wet cloths off the hot glass of the door, put nothing on the open door and do not let a rack or the plate knock against it: scratched or struck glass can shatter, even later.`,
  source:
    "oven makers' manuals; over 700 complaints of shattered oven doors in the US, 2015 to 2018 (agency figures in a television report)",
});

const selfCleaning: Caution = ({ plateMass }) => ({
  code: 'self-cleaning',
  message: `Before a self-cleaning run (some 480 °C and more) take out the plate (${plateMass.toFixed(1)} kg), racks and foil, once cold.`,
  source: "four makers' manuals and a German consumer test: 480 to 500 °C for 2 to 4 h",
});

const oil: Caution = ({ evening, material, hottestPlate }) => {
  const { dough, plate, oven } = evening;
  const film = plate.surface === 'seasoned' && material.metallic;
  const oiled = anyOn(evening, 'metal') || dough.oil > 0;
  const top = hottestPlate - zeroCelsius;
  if (top <= oilSmokes.from || !(film || oiled)) return undefined;
  const which =
    top > oilSmokes.all
      ? 'above the smoke point of nearly every kitchen oil'
      : `above the smoke point of many oils, which begins at ${oilSmokes.from} °C`;
  return {
    code: film ? 'seasoned-film-smokes' : 'oil-near-smoke-point',
    source:
      'table of smoke points, Wikipedia (chemeurope copy): virgin olive 190 to 207 °C, refined sunflower 227 to 254 °C, some 20 K apart by batch',
    message: `The plate reaches ${round(top)} °C, ${which}: ${film ? 'its seasoned film and any oil on it may smoke' : 'oil on it may smoke'}. Wipe oil on thin, ventilate, never pour oil on the hot plate, and never leave it alone${oven.fuel === 'gas' ? ' by the gas flame' : ''}.`,
  };
};

const flour: Caution = ({ evening: { pizzas } }) => ({
  code: 'raw-flour',
  message: `Flour is raw: do not taste the dough, wash hands, bench and tools after shaping the ${pizzas.count === 1 ? 'pizza' : `${pizzas.count} pizzas`}, and bake until the crumb is done.`,
  source: 'FDA and CDC advice of 2016 to 2018, in reprints; the UK Food Standards Agency agrees',
});

const perishables: Caution = ({ evening: { kitchen, dough }, toppingsOut, doughOut }) => {
  const warmest = Math.max(kitchen.roomTemperature, dough.riseTemperature);
  const limit = (temperature: number): number =>
    temperature > perishable.hotRoom ? perishable.hot : perishable.usual;
  const advice = 'keep what is not in use in the refrigerator, and left-over pizza too';
  if (toppingsOut > limit(kitchen.roomTemperature))
    return {
      code: 'perishables-out-long',
      source: perishableSource,
      message: `Cheese and sauce would stand out for ${hours(toppingsOut)} until the last pizza, more than the ${hours(limit(kitchen.roomTemperature))} advised at ${celsius(kitchen.roomTemperature)}: ${advice}.`,
    };
  const milky = dough.liquid.some(({ kind, percent }) => (kind === 'milk' || kind === 'whey') && percent > 0);
  if (milky && dough.riseTemperature > 4 + zeroCelsius && doughOut > limit(warmest))
    return {
      code: 'perishables-out-long',
      source: perishableSource,
      message: `A dough with milk or whey would stand out for ${hours(doughOut)} at ${celsius(dough.riseTemperature)}, more than the ${hours(limit(warmest))} advised for perishables: take water, or let it rise in the refrigerator.`,
    };
  return undefined;
};

const gas: Caution = ({ evening: { oven } }) => {
  if (oven.fuel !== 'gas') return undefined;
  return {
    code: 'gas-ventilation',
    message: `A gas oven at ${celsius(oven.setpoint)} for so long gives off carbon monoxide and nitrogen dioxide: run a hood that vents outside or open a window, have a carbon monoxide alarm, and never block the vents or heat the room with it.`,
    source:
      'City of Englewood, Gas Stove Ventilation Safety: 130 to 546 ppb of nitrogen dioxide from gas ovens, outdoor limit of an hour 100',
  };
};

const makersFirst: Caution = () => ({
  code: 'maker-instructions-first',
  source: 'common practice, no source',
  message:
    "The instructions of the oven's and the plate's makers and local rules come before anything said here.",
});

const estimates: Caution = () => ({
  code: 'figures-are-estimates',
  source: 'own model; how far it is off is shown by its validation',
  message:
    'All figures are estimates from a model of an ordinary oven of this kind; watch the pizza and not the clock.',
});

const cautions: readonly Caution[] = [
  parchment,
  rackLoad,
  air,
  shock,
  hotPlate,
  oil,
  gas,
  perishables,
  flour,
  door,
  selfCleaning,
  makersFirst,
  estimates,
];

/** The cautions that apply to an evening, the most pressing first, the two that always apply last. */
export function cautionsFor(facts: CautionFacts): readonly Warning[] {
  return cautions.map((caution) => caution(facts)).filter((warning) => warning !== undefined);
}
