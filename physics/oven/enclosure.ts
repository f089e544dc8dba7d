/** Radiation in a closed space of grey, diffuse surfaces: who absorbs what from whom. */
import { OutOfRange } from '../evening/problem.ts';
import { solveDense } from '../numerics/dense.ts';

function checkEnclosure(factors: Float64Array, areas: Float64Array, emissivities: Float64Array): void {
  const n = areas.length;
  if (factors.length !== n * n) {
    throw new OutOfRange('factors', `${factors.length} entries`, `${n * n} for ${n} areas`);
  }
  if (emissivities.length !== n) {
    throw new OutOfRange('emissivities', `${emissivities.length} entries`, `${n} for ${n} areas`);
  }
  for (let i = 0; i < n; i++) {
    const area = areas[i]!;
    const emissivity = emissivities[i]!;
    if (!(area > 0 && area < Infinity)) throw new OutOfRange(`areas[${i}]`, `${area} m2`, 'above 0 m2');
    if (!(emissivity >= 0 && emissivity <= 1)) {
      throw new OutOfRange(`emissivities[${i}]`, String(emissivity), '0 to 1');
    }
  }
  const tolerance = 1e-9;
  for (let i = 0; i < n; i++) {
    const area = areas[i]!;
    let sum = 0;
    for (let j = 0; j < n; j++) {
      sum += factors[i * n + j]!;
      const there = area * factors[i * n + j]!;
      const back = areas[j]! * factors[j * n + i]!;
      if (!(Math.abs(there - back) <= tolerance * area)) {
        throw new OutOfRange(
          `factors[${i}][${j}]`,
          `${there} m2 there and ${back} m2 back`,
          'the same both ways',
        );
      }
    }
    if (!(Math.abs(sum - 1) <= tolerance)) {
      throw new OutOfRange(`factors[${i}]`, `a row adding up to ${sum}`, 'a row adding up to 1');
    }
  }
}

/**
 * Absorption factors of a grey diffuse enclosure, row-major: B_ij is the share of what surface i emits that is in
 * the end absorbed by j, after all reflections.
 *
 *     B_ij = F_ij eps_j + sum_k F_ik (1 - eps_k) B_kj
 *
 * @param factors row-major view factors; rows add up to 1 and A_i F_ij = A_j F_ji, both within 1e-9
 * @param areas m2; @param emissivities 0 (insulated, re-radiating) to 1, at least one of them above 0
 * @returns rows adding up to 1
 * @throws OutOfRange naming the entry that breaks one of these
 *
 * Source: Gebhart 1961, Surface temperature calculations in radiant surroundings of arbitrary complexity, Int J
 * Heat Mass Transfer 3, 341-346.
 */
export function absorptionFactors(
  factors: Float64Array,
  areas: Float64Array,
  emissivities: Float64Array,
): Float64Array {
  checkEnclosure(factors, areas, emissivities);
  const n = areas.length;
  const result = new Float64Array(n * n);
  const matrix = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    for (let i = 0; i < n; i++) {
      column[i] = factors[i * n + j]! * emissivities[j]!;
      for (let k = 0; k < n; k++) {
        matrix[i * n + k] = (i === k ? 1 : 0) - factors[i * n + k]! * (1 - emissivities[k]!);
      }
    }
    if (!solveDense(matrix, column, n)) {
      throw new OutOfRange('emissivities', 'surfaces that see only mirrors', 'at least one above 0 in view');
    }
    for (let i = 0; i < n; i++) result[i * n + j] = column[i]!;
  }
  return result;
}

/**
 * Total exchange areas of a grey diffuse enclosure, m2, row-major: the net heat into surface i by radiation is
 *
 *     q_i = sum_j G_ij sigma (T_j^4 - T_i^4),   G_ij = eps_i A_i B_ij
 *
 * symmetric, with rows adding up to eps_i A_i. Arguments, errors and source as {@link absorptionFactors}.
 */
export function totalExchangeAreas(
  factors: Float64Array,
  areas: Float64Array,
  emissivities: Float64Array,
): Float64Array {
  const result = absorptionFactors(factors, areas, emissivities);
  const n = areas.length;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) result[i * n + j]! *= emissivities[i]! * areas[i]!;
  }
  // Rounding leaves the two directions of a pair apart in the last digits; heat must not be made by that.
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const mean = (result[i * n + j]! + result[j * n + i]!) / 2;
      result[i * n + j] = mean;
      result[j * n + i] = mean;
    }
  }
  return result;
}
