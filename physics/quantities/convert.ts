/** Plain conversions between SI and what is shown. Exact by definition (NIST SP 811, Appendix B; ISO 80000-5). */
import { zeroCelsius } from '../materials/constants.ts';

/** K to degrees Celsius. */
export function toCelsius(kelvin: number): number {
  return kelvin - zeroCelsius;
}

/** Degrees Celsius to K. */
export function fromCelsius(celsius: number): number {
  return celsius + zeroCelsius;
}

/** K to degrees Fahrenheit. */
export function toFahrenheit(kelvin: number): number {
  return (toCelsius(kelvin) * 9) / 5 + 32;
}

/** Degrees Fahrenheit to K. */
export function fromFahrenheit(fahrenheit: number): number {
  return fromCelsius(((fahrenheit - 32) * 5) / 9);
}

/** m to inches: 1 in = 25.4 mm. */
export function toInches(metres: number): number {
  return metres / 0.0254;
}

/** kg to ounces: 1 lb = 0.45359237 kg = 16 oz. */
export function toOunces(kilograms: number): number {
  return (kilograms / 0.45359237) * 16;
}

/** J to kWh: 1 kWh = 3.6 MJ. */
export function toKWh(joule: number): number {
  return joule / 3.6e6;
}
