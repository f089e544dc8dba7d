/** What a network is made of: its nodes, faces, links and drives. */
import type { OvenNetwork } from './network.ts';
import type { RadiationLinks } from './radiation.ts';
import type { WallStack } from './wallStack.ts';

/** Nodes that every network has, in this order. */
export const airNode = 0;
export const floorNode = 1;
export const ceilingNode = 2;
export const sidesNode = 3;
export const doorNode = 4;
export const bottomElementNode = 5;
export const topElementNode = 6;
/** plate nodes follow */
export const firstPlateNode = 7;

export interface ConvectingFace {
  readonly node: number;
  /** m2 */
  area: number;
  readonly facing: 'up' | 'down' | 'vertical';
  /** m, area over perimeter of a horizontal face, height of a vertical one */
  readonly length: number;
}

export interface Conductor {
  readonly a: number;
  readonly b: number;
  /** W/K */
  conductance: number;
}

/**
 * A column that lies between a plate node and a surface node, eliminated from the network. After `eliminate` the heat
 * it takes in the step is, with the new temperatures P of the plate node and S of the surface node,
 *
 *     from the plate: pp P - ps S - p0        from the surface: ss S - sp P - s0        (W)
 */
export interface Column {
  readonly plateNode: number;
  readonly surfaceNode: number;
  pp: number;
  ps: number;
  p0: number;
  ss: number;
  sp: number;
  s0: number;
  eliminate(dt: number, network: OvenNetwork): void;
  /**
   * How hard a step with these new temperatures (K) of plate and surface tries the column: above 1 it is too long and
   * must not be taken. Grows about with the square of its length; Infinity for one that makes no sense at all.
   */
  strain(plate: number, surface: number, dt: number): number;
  /** Takes the step that was accepted. */
  follow(): void;
  /** kg of steam given to the cavity in the last step, and J that went with it */
  readonly steamMass: number;
  readonly steamHeat: number;
}

export interface NetworkSetting {
  readonly nodes: number;
  /** K, Pa */
  readonly room: number;
  readonly pressure: number;
  /** m */
  readonly cavity: { readonly width: number; readonly depth: number; readonly height: number };
  readonly radiation: RadiationLinks;
  readonly faces: readonly ConvectingFace[];
  readonly conductors: readonly Conductor[];
  /** W/K, from a node straight to the kitchen: seams, the insulation below a hidden element */
  readonly toRoom: readonly { readonly node: number; readonly conductance: number }[];
  readonly stacks: readonly { readonly node: number; readonly stack: WallStack }[];
  readonly start: number;
  /** forced coefficient, W/(m2 K), or undefined for natural convection */
  readonly forcedCoefficient: number | undefined;
  /** factor on the coefficients without a fan */
  readonly convectionFactor: number;
  /** W/(m2 K) of the cavity's own loop of air */
  readonly circulation: number;
  /** mole fraction of water vapour in the kitchen's air */
  readonly roomSteam: number;
}

export interface Drive {
  /** W into each node */
  readonly sources: readonly { readonly node: number; watt: number }[];
  /** m3/s of kitchen air drawn in, vent and burner together */
  ventFlow: number;
  /** kg/s of water vapour from combustion */
  burnerSteam: number;
  /** W of the burner's input that leave with that vapour, uncondensed */
  latent: number;
  doorOpen: boolean;
}

/** Pairs of nodes that an implicit step couples, whatever the temperatures and the door. */
export function networkLinks({
  radiation,
  faces,
  conductors,
}: Pick<NetworkSetting, 'radiation' | 'faces' | 'conductors'>): readonly (readonly [number, number])[] {
  const links: (readonly [number, number])[] = [];
  for (let k = 0; k < radiation.area.length; k++) links.push([radiation.a[k]!, radiation.b[k]!]);
  for (const { node } of faces) links.push([node, airNode]);
  for (const { a, b } of conductors) links.push([a, b]);
  return links;
}

/** Writes a conductance (W/K) between i and j into a row-major n x n matrix. */
export function addLink(A: Float64Array, n: number, i: number, j: number, conductance: number): void {
  A[i * n + i]! += conductance;
  A[i * n + j]! -= conductance;
  A[j * n + j]! += conductance;
  A[j * n + i]! -= conductance;
}
