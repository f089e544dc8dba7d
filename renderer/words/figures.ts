/** Figures of the answer (degrees Celsius, grams, minutes) in the units shown. */
import { fromCelsius, showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';

export function temperatureC(celsius: number, units: UnitSystem): string {
  return showQuantity(fromCelsius(celsius), 'temperature', units);
}
export function temperatureK(kelvin: number, units: UnitSystem): string {
  return showQuantity(kelvin, 'temperature', units);
}
/** `244°`: where many figures stand together and the unit is said once. */
export function shortDegrees(kelvin: number, units: UnitSystem): string {
  return `${degreesOfK(kelvin, units).toFixed(0)}°`;
}
/** A number of degrees for the axis or a table cell, without its unit. */
export function degreesOfK(kelvin: number, units: UnitSystem): number {
  const celsius = kelvin - 273.15;
  return units === 'us' ? celsius * 1.8 + 32 : celsius;
}
export function degreeUnit(units: UnitSystem): string {
  return units === 'us' ? '°F' : '°C';
}
/** A difference of temperatures, as whole degrees of the unit shown. */
export function degreesApart(kelvin: number, units: UnitSystem): string {
  const size = Math.round(units === 'us' ? kelvin * 1.8 : kelvin);
  return `${String(size)} ${size === 1 ? 'degree' : 'degrees'}`;
}
export function grams(value: number, units: UnitSystem): string {
  // A tenth of an ounce is as fine as three grams: where there is less, the next digit counts.
  const ounces = { unit: 'oz', decimals: value < 28.35 ? 2 : 1 };
  return showQuantity(value / 1000, 'mass', units, units === 'us' ? ounces : { decimals: 0 });
}
