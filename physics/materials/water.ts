/** Water: saturation, latent heat, vapour in air, and what altitude does to its boiling. */
import { OutOfRange } from '../evening/problem.ts';
import { standardPressure, zeroCelsius } from './constants.ts';

/*
 * Saturation line: IAPWS R7-97 (IAPWS-IF97), region 4, equations 30 and 31. The Magnus form that weather
 * services use is 2.4 % too high at 100 degC, so a dough would boil 0.7 K early by it.
 */
const n1 = 0.11670521452767e4;
const n2 = -0.72421316703206e6;
const n3 = -0.17073846940092e2;
const n4 = 0.1202082470247e5;
const n5 = -0.32325550322333e7;
const n6 = 0.1491510861353e2;
const n7 = -0.48232657361591e4;
const n8 = 0.40511340542057e6;
const n9 = -0.23855557567849;
const n10 = 0.65017534844798e3;

const coldest = zeroCelsius;
const hottest = 640;

function checkTemperature(temperature: number): void {
  if (!(temperature >= coldest && temperature <= hottest)) {
    throw new OutOfRange('water temperature', `${temperature} K`, `${coldest} K to ${hottest} K`);
  }
}

/**
 * Pressure of saturated water vapour, Pa.
 *
 * @param temperature K, 273.15 K to 640 K
 * @throws OutOfRange outside, NaN included
 *
 * Source: IAPWS R7-97, equation 30. Below 273.16 K the vapour is that over supercooled water.
 */
export function saturationPressure(temperature: number): number {
  checkTemperature(temperature);
  const v = temperature + n9 / (temperature - n10);
  const a = (v + n1) * v + n2;
  const b = (n3 * v + n4) * v + n5;
  const c = (n6 * v + n7) * v + n8;
  const root = (2 * c) / (Math.sqrt(b * b - 4 * a * c) - b);
  const squared = root * root;
  return squared * squared * 1e6;
}

/**
 * Slope of the saturation pressure, Pa/K: the derivative of {@link saturationPressure}.
 *
 * @param temperature K, 273.15 K to 640 K
 * @throws OutOfRange outside, NaN included
 */
export function saturationSlope(temperature: number): number {
  checkTemperature(temperature);
  const away = temperature - n10;
  const v = temperature + n9 / away;
  const dv = 1 - n9 / (away * away);
  const a = (v + n1) * v + n2;
  const b = (n3 * v + n4) * v + n5;
  const c = (n6 * v + n7) * v + n8;
  const da = 2 * v + n1;
  const db = 2 * n3 * v + n4;
  const dc = 2 * n6 * v + n7;
  const discriminant = Math.sqrt(b * b - 4 * a * c);
  const bottom = discriminant - b;
  const root = (2 * c) / bottom;
  const dBottom = (b * db - 2 * (da * c + a * dc)) / discriminant - db;
  const dRoot = (2 * dc - root * dBottom) / bottom;
  return 4 * root * root * root * dRoot * dv * 1e6;
}

/**
 * Temperature at which water boils under a pressure, K.
 *
 * @param pressure Pa, 611.213 Pa to 20 MPa
 * @throws OutOfRange outside, NaN included
 *
 * Source: IAPWS R7-97, equation 31 (the exact inverse of equation 30).
 */
export function saturationTemperature(pressure: number): number {
  if (!(pressure >= 611.213 && pressure <= 20e6)) {
    throw new OutOfRange('water pressure', `${pressure} Pa`, '611.213 Pa to 20000000 Pa');
  }
  const beta = Math.sqrt(Math.sqrt(pressure * 1e-6));
  const e = (beta + n3) * beta + n6;
  const f = (n1 * beta + n4) * beta + n7;
  const g = (n2 * beta + n5) * beta + n8;
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  const sum = n10 + d;
  return (sum - Math.sqrt(sum * sum - 4 * (n9 + n10 * d))) / 2;
}

const criticalTemperature = 647.096;
const criticalDensity = 322;

/** Density of saturated liquid water, kg/m3. Source: Wagner and Pruss 1993, equation 2.6 (from memory). */
function liquidDensity(temperature: number): number {
  const third = Math.cbrt(1 - temperature / criticalTemperature);
  return (
    criticalDensity *
    (1 +
      1.99274064 * third +
      1.09965342 * third ** 2 -
      0.510839303 * third ** 5 -
      1.75493479 * third ** 16 -
      45.5170352 * third ** 43 -
      6.7469445e5 * third ** 110)
  );
}

/** Density of saturated water vapour, kg/m3. Source: Wagner and Pruss 1993, equation 2.7 (from memory). */
function vapourDensity(temperature: number): number {
  const sixth = Math.sqrt(Math.cbrt(1 - temperature / criticalTemperature));
  return (
    criticalDensity *
    Math.exp(
      -2.0315024 * sixth ** 2 -
        2.6830294 * sixth ** 4 -
        5.38626492 * sixth ** 8 -
        17.2991605 * sixth ** 18 -
        44.7586581 * sixth ** 37 -
        63.9201063 * sixth ** 71,
    )
  );
}

// One entry a kelvin from 273 K to 640 K: the loops of a bake ask for it too often to take the powers each
// time. Between the entries a straight line is 1 J/kg off at most below 150 degC.
const firstLatent = 273;
const latentRows = Float64Array.from({ length: hottest - firstLatent + 1 }, (_, row) => {
  const temperature = Math.max(firstLatent + row, coldest);
  const volumes = 1 / vapourDensity(temperature) - 1 / liquidDensity(temperature);
  return temperature * volumes * saturationSlope(temperature);
});
latentRows[0] = latentRows[1]! + (latentRows[0]! - latentRows[1]!) / (firstLatent + 1 - coldest);

/**
 * Latent heat of evaporation on the saturation line, J/kg: T (v'' - v') dp/dT (Clapeyron).
 *
 * @param temperature K, 273.15 K to 640 K
 * @throws OutOfRange outside, NaN included
 *
 * Sources: dp/dT from IAPWS R7-97 region 4, densities from Wagner and Pruss 1993 (from memory; checked
 * against steam-table rows).
 */
export function latentHeat(temperature: number): number {
  checkTemperature(temperature);
  const place = temperature - firstLatent;
  const row = Math.min(Math.floor(place), latentRows.length - 2);
  const low = latentRows[row]!;
  return low + (place - row) * (latentRows[row + 1]! - low);
}

/**
 * Diffusivity of water vapour in air, m2/s: 0.2178e-4 (T/273.15)^1.81 (101325/p).
 *
 * @param temperature K, 253.15 K to 873.15 K
 * @param pressure Pa, above zero
 * @throws OutOfRange outside, NaN included
 *
 * Source: Massman 1998, Atmos Environ 32, 1111-1127 (constants from memory). An engineering table differs by
 * up to 8 % between 0 and 400 degC: take that as the spread.
 */
export function waterVapourDiffusivity(temperature: number, pressure: number): number {
  if (!(temperature >= 253.15 && temperature <= 873.15)) {
    throw new OutOfRange('vapour temperature', `${temperature} K`, '253.15 K to 873.15 K');
  }
  if (!(pressure > 0 && pressure < Infinity)) {
    throw new OutOfRange('vapour pressure', `${pressure} Pa`, 'above 0 Pa');
  }
  return 0.2178e-4 * Math.pow(temperature / zeroCelsius, 1.81) * (standardPressure / pressure);
}

/**
 * Pressure of the standard atmosphere at an altitude, Pa: 101325 (1 - 0.0065 h/288.15)^5.25588.
 *
 * @param altitude m above sea level, -500 m to 5000 m
 * @throws OutOfRange outside, NaN included
 *
 * Source: ISO 2533:1975 (constants from memory). Weather moves the true pressure by some 3 kPa, the boiling point by 0.8 K.
 */
export function pressureAtAltitude(altitude: number): number {
  if (!(altitude >= -500 && altitude <= 5000)) {
    throw new OutOfRange('altitude', `${altitude} m`, '-500 m to 5000 m');
  }
  return standardPressure * Math.pow(1 - (0.0065 * altitude) / 288.15, 5.25588);
}

/** Temperature at which water boils at an altitude in the standard atmosphere, K. Range and error as above. */
export function boilingTemperature(altitude: number): number {
  return saturationTemperature(pressureAtAltitude(altitude));
}
