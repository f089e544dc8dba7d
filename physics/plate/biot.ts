/** Whether a plate may be taken at one temperature throughout. */
import { stefanBoltzmann } from '../materials/constants.ts';

/** Below this Biot number a body may be taken at one temperature (all heat-transfer textbooks). */
export const lumpedLimit = 0.1;

/**
 * Biot number Bi = h L_c / k with L_c = V/A, A the heated surface.
 *
 * @param coefficient h, W/(m2 K); @param characteristicLength m; @param thermalConductivity W/(m K)
 */
export function biotNumber(
  coefficient: number,
  characteristicLength: number,
  thermalConductivity: number,
): number {
  return (coefficient * characteristicLength) / thermalConductivity;
}

/** L_c = V/A of a rectangular plate heated on both faces and its edges, m. */
export function plateCharacteristicLength(width: number, depth: number, thickness: number): number {
  const edges = 2 * (width + depth) * thickness;
  return (width * depth * thickness) / (2 * width * depth + edges);
}

/**
 * Heat transfer coefficient that a plate sees in a hot oven, W/(m2 K): linearised radiation 4 eps sigma T^3 and 5 for
 * natural convection (common practice, 5 to 10).
 */
export function ovenCoefficient(emissivity: number, temperature: number): number {
  return 4 * emissivity * stefanBoltzmann * temperature ** 3 + 5;
}
