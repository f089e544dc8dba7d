/** What the rest of the program needs of quantities; everything else in this folder is its own. */
export {
  fromCelsius,
  fromFahrenheit,
  toCelsius,
  toFahrenheit,
  toInches,
  toKWh,
  toOunces,
} from './convert.ts';
export {
  quantityOf,
  readQuantity,
  type QuantityProblem,
  type QuantityRead,
  type ReadOptions,
} from './read.ts';
export { heldTogether, inUnits, kept } from './sentences.ts';
export { showQuantity, unitOf, type ShowOptions, type UnitSystem } from './show.ts';
export { quantityKinds, type QuantityKind } from './units.ts';
