/** Radiation between parts of the cavity: a surface may be of several temperatures, a plate with its pizza. */
import { totalExchangeAreas } from './enclosure.ts';

/** A part of a surface of the enclosure that has a temperature of its own. */
export interface RadiatingPart {
  /** node of the network that has this part's temperature */
  readonly node: number;
  /** index of the surface in the view factors */
  readonly surface: number;
  /** share of that surface's area */
  readonly share: number;
  readonly emissivity: number;
}

/** Pairs of nodes that exchange radiation: net heat from b to a = area sigma (T_b^4 - T_a^4). */
export interface RadiationLinks {
  readonly a: readonly number[];
  readonly b: readonly number[];
  /** total exchange area, m2 */
  readonly area: readonly number[];
}

/**
 * Total exchange areas between parts of surfaces. Parts of one surface share its view factors (a pizza on the plate
 * sees what the plate's top face sees), so closure and reciprocity of the surfaces carry over to the parts.
 *
 * @param factors row-major view factors of the surfaces; @param areas m2
 */
export function partExchange(
  factors: Float64Array,
  areas: Float64Array,
  parts: readonly RadiatingPart[],
): { readonly links: RadiationLinks; readonly absorbed: (part: number) => readonly number[] } {
  const surfaces = areas.length;
  const n = parts.length;
  const partFactors = new Float64Array(n * n);
  const partAreas = new Float64Array(n);
  const emissivities = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const from = parts[i]!;
    partAreas[i] = areas[from.surface]! * from.share;
    emissivities[i] = from.emissivity;
    for (let j = 0; j < n; j++) {
      const to = parts[j]!;
      partFactors[i * n + j] = factors[from.surface * surfaces + to.surface]! * to.share;
    }
  }
  const exchange = totalExchangeAreas(partFactors, partAreas, emissivities);
  const a: number[] = [];
  const b: number[] = [];
  const area: number[] = [];
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const g = exchange[i * n + j]!;
      if (g === 0) continue;
      a.push(parts[i]!.node);
      b.push(parts[j]!.node);
      area.push(g);
    }
  return {
    links: { a, b, area },
    /** Gebhart factors of one part: where what it emits is absorbed in the end. */
    absorbed: (part) =>
      parts.map((_, j) => exchange[part * n + j]! / (emissivities[part]! * partAreas[part]!)),
  };
}
