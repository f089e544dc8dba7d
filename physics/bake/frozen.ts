/**
 * Dough from the freezer: temperature and heat of a cell part of whose water is ice.
 *
 *     ice(t) = (w - 0.3 s) (1 - t_f/t)   for t below t_f,   t_f = -2.5 degC
 *     H = (s c_s + (w - ice) c_w) t + ice (c_i t - L)
 *
 * w and s kg/m2 of water and dry matter, t in degC. The form is Raoult's law for a dilute solution, as handbooks of
 * refrigeration print it (ASHRAE Refrigeration, thermal properties of foods; from memory). That 0.3 kg of water a kg
 * of dough's dry matter never freeze, and that dough begins to freeze at -2.5 degC, is from memory too. L = 333.6
 * kJ/kg and c_i = 2.1 kJ/(kg K) belong to ice at 0 degC.
 */
import { zeroCelsius } from '../materials/constants.ts';
import { waterHeat } from './moistCell.ts';

const freezing = -2.5;
const unfrozenShare = 0.3;
const heatOfFusion = 333.6e3;
const iceHeat = 2100;

interface Cell {
  /** kg/m2 */
  readonly solids: number;
  readonly water: number;
  /** J/(kg K) */
  readonly solidsHeat: number;
}

function iceIn({ solids, water }: Cell, t: number): number {
  const free = water - unfrozenShare * solids;
  return t < freezing && free > 0 ? free * (1 - freezing / t) : 0;
}

/** J/m2 above liquid water and dry matter at 0 degC. @param temperature K */
export function heatOf(cell: Cell, temperature: number): number {
  const t = temperature - zeroCelsius;
  const ice = iceIn(cell, t);
  return (
    (cell.solids * cell.solidsHeat + (cell.water - ice) * waterHeat) * t + ice * (iceHeat * t - heatOfFusion)
  );
}

/** J/(m2 K), what a kelvin takes, thawing included. @param temperature K */
export function capacityOf(cell: Cell, temperature: number): number {
  const whole = cell.solids * cell.solidsHeat + cell.water * waterHeat;
  const t = temperature - zeroCelsius;
  if (t >= freezing) return whole;
  const free = Math.max(cell.water - unfrozenShare * cell.solids, 0);
  // d ice/dT = free t_f/t^2, which is negative: ice melts as it warms.
  const melting = (-free * freezing) / (t * t);
  return (
    whole - iceIn(cell, t) * (waterHeat - iceHeat) + melting * (heatOfFusion + (waterHeat - iceHeat) * t)
  );
}

/** K that belongs to a heat (J/m2): the inverse of `heatOf`, within 1e-9 K where there is ice. */
export function temperatureOf(cell: Cell, heat: number): number {
  const t = heat / (cell.solids * cell.solidsHeat + cell.water * waterHeat);
  if (t >= freezing) return zeroCelsius + t;
  let [low, high] = [1, zeroCelsius + freezing];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (heatOf(cell, middle) > heat) high = middle;
    else low = middle;
  }
  return high;
}
