/** Dry air: density, specific heat, viscosity, conductivity. */
import { OutOfRange } from '../evening/problem.ts';
import { gasConstant, molarMassAir } from './constants.ts';

/*
 * Dry air between 250 and 1000 K by linear interpolation in the table of Incropera and DeWitt, Fundamentals
 * of Heat and Mass Transfer, table A.4, one row every 50 K. Rows 300 to 600 K were read in transcriptions
 * that agree; 250 K and 650 to 1000 K are from memory. The Sutherland forms of the US Standard Atmosphere
 * 1976 lie 0.7 to 1.4 % below the table, so the table is used itself. All but the density are those of one
 * atmosphere; the pressure of a kitchen does not change them.
 */
const first = 250;
const last = 1000;
const step = 50;
// prettier-ignore
const specificHeatRows = Float64Array.of(
  1006, 1007, 1009, 1014, 1021, 1030, 1040, 1051, 1063, 1075, 1087, 1099, 1110, 1121, 1131, 1141,
);
// prettier-ignore
const viscosityRows = Float64Array.of(
  159.6e-7, 184.6e-7, 208.2e-7, 230.1e-7, 250.7e-7, 270.1e-7, 288.4e-7, 305.8e-7,
  322.5e-7, 338.8e-7, 354.6e-7, 369.8e-7, 384.3e-7, 398.1e-7, 411.3e-7, 424.4e-7,
);
// prettier-ignore
const conductivityRows = Float64Array.of(
  22.3e-3, 26.3e-3, 30.0e-3, 33.8e-3, 37.3e-3, 40.7e-3, 43.9e-3, 46.9e-3,
  49.7e-3, 52.4e-3, 54.9e-3, 57.3e-3, 59.6e-3, 62.0e-3, 64.3e-3, 66.7e-3,
);

function read(rows: Float64Array, temperature: number): number {
  if (!(temperature >= first && temperature <= last)) {
    throw new OutOfRange('air temperature', `${temperature} K`, `${first} K to ${last} K`);
  }
  const place = (temperature - first) / step;
  const row = Math.min(Math.floor(place), rows.length - 2);
  const low = rows[row]!;
  return low + (place - row) * (rows[row + 1]! - low);
}

/**
 * Density of dry air as an ideal gas, kg/m3: p M / (R T).
 *
 * @param temperature K, above zero
 * @param pressure Pa, above zero
 * @throws OutOfRange when either is not above zero
 *
 * Table A.4 gives 1.3 % less: its densities are those of 1 bar, whatever its heading says.
 */
export function airDensity(temperature: number, pressure: number): number {
  if (!(temperature > 0 && temperature < Infinity)) {
    throw new OutOfRange('air temperature', `${temperature} K`, 'above 0 K');
  }
  if (!(pressure > 0 && pressure < Infinity)) {
    throw new OutOfRange('air pressure', `${pressure} Pa`, 'above 0 Pa');
  }
  return (pressure * molarMassAir) / (gasConstant * temperature);
}

/** Specific heat of dry air at constant pressure, J/(kg K), 250 K to 1000 K; else OutOfRange. */
export function airSpecificHeat(temperature: number): number {
  return read(specificHeatRows, temperature);
}

/** What the correlations of convection need of the air between a face and the cavity. */
export interface AirFilm {
  /** W/(m K) */
  conductivity: number;
  /** Pa s */
  viscosity: number;
  /** J/(kg K) */
  specificHeat: number;
}

/** Writes them at a temperature, 250 K to 1000 K, else OutOfRange; a loop reads all three at once, so nothing is made. */
export function readFilm(temperature: number, out: AirFilm): void {
  if (!(temperature >= first && temperature <= last)) read(conductivityRows, temperature);
  const place = (temperature - first) / step;
  const row = Math.min(Math.floor(place), conductivityRows.length - 2);
  const part = place - row;
  const rest = 1 - part;
  out.conductivity = rest * conductivityRows[row]! + part * conductivityRows[row + 1]!;
  out.viscosity = rest * viscosityRows[row]! + part * viscosityRows[row + 1]!;
  out.specificHeat = rest * specificHeatRows[row]! + part * specificHeatRows[row + 1]!;
}
