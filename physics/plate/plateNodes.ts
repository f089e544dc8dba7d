/**
 * The plate as nodes of the oven's network: one lumped node; a slab of equal layers with a face of no thickness on
 * either side; or two such slabs side by side, under the pizza and around it, joined by conduction within each layer.
 * Heat is kept as enthalpy (the specific heat of steel rises by a fifth between the kitchen and the oven), so that a
 * run closes its energy account.
 */
import type { PlateMaterial } from '../materials/plates.ts';
import type { OvenNetwork } from '../oven/network.ts';
import type { Conductor } from '../oven/networkParts.ts';
import { firstPlateNode } from '../oven/networkParts.ts';

export interface PlateColumn {
  /** m2 */
  readonly area: number;
  /** node of the under-face, of each layer from below, of the top face; a lumped plate names one node throughout */
  readonly under: number;
  readonly layers: readonly number[];
  readonly top: number;
}

export interface PlateLayout {
  readonly columns: readonly PlateColumn[];
  readonly nodes: number;
}

/** One node for the whole plate. @param area m2 */
export function lumpedLayout(area: number): PlateLayout {
  const node = firstPlateNode;
  return { columns: [{ area, under: node, layers: [node], top: node }], nodes: 1 };
}

/** Columns of so many layers and two faces. @param areas m2 of each column */
export function slabLayout(areas: readonly number[], layers: number): PlateLayout {
  let next = firstPlateNode;
  const columns = areas.map((area) => {
    const under = next;
    const nodes = Array.from({ length: layers }, (_, i) => under + 1 + i);
    next += layers + 2;
    return { area, under, layers: nodes, top: next - 1 };
  });
  return { columns, nodes: next - firstPlateNode };
}

/** K within which a layer's conductivity counts as unchanged: that of steel moves by 0.1 % */
const conductsAlike = 1;
/** K within which its specific heat does: that of steel moves by 0.1 %, and its enthalpy is off by 5e-4 K at most */
const heatsAlike = 1;

/** The plate's share in a network: its heat, and the conductances between its nodes. */
export class PlateNodes {
  readonly layout: PlateLayout;
  readonly conductors: Conductor[] = [];
  readonly #material: PlateMaterial;
  readonly #thickness: number;
  readonly #mass: Float64Array;
  /** J above 0 degC of each layer, column by column */
  readonly #heat: Float64Array;
  readonly #old: Float64Array;
  readonly #nodes: number[] = [];
  readonly #links: { conductor: Conductor; factor: number; node: number }[] = [];
  /** K, temperatures of the layers that the conductances, and the specific heats (J/(kg K)), belong to */
  readonly #conducted: Float64Array;
  readonly #heated: Float64Array;
  readonly #specificHeat: Float64Array;
  /** J/kg above 0 degC at the temperatures of the specific heats */
  readonly #enthalpy: Float64Array;

  /** @param thickness m; @param lateral W/K per (W/(m K)) and metre of thickness between the two columns */
  constructor(layout: PlateLayout, material: PlateMaterial, thickness: number, lateral: number) {
    this.layout = layout;
    this.#material = material;
    this.#thickness = thickness;
    const masses: number[] = [];
    for (const column of layout.columns) {
      const n = column.layers.length;
      const dz = thickness / n;
      column.layers.forEach((node) => {
        this.#nodes.push(node);
        masses.push(column.area * dz * material.density);
      });
      if (column.under === column.top) continue;
      const chain = [column.under, ...column.layers, column.top];
      for (let i = 0; i + 1 < chain.length; i++) {
        const outermost = i === 0 || i + 2 === chain.length;
        const inner = i + 2 === chain.length ? chain[i]! : chain[i + 1]!;
        this.#addLink(chain[i]!, chain[i + 1]!, column.area / (outermost ? dz / 2 : dz), inner);
      }
    }
    const [under, around] = layout.columns;
    if (under && around)
      under.layers.forEach((node, i) => {
        this.#addLink(node, around.layers[i]!, (lateral * thickness) / under.layers.length, node);
      });
    this.#mass = Float64Array.from(masses);
    this.#heat = new Float64Array(masses.length);
    this.#old = new Float64Array(masses.length);
    this.#conducted = new Float64Array(masses.length);
    this.#heated = new Float64Array(masses.length);
    this.#specificHeat = new Float64Array(masses.length);
    this.#enthalpy = new Float64Array(masses.length);
  }

  #addLink(a: number, b: number, factor: number, node: number): void {
    const conductor = { a, b, conductance: 0 };
    this.conductors.push(conductor);
    this.#links.push({ conductor, factor, node });
  }

  get mass(): number {
    return this.#mass.reduce((sum, m) => sum + m, 0);
  }

  /** W/(m2 K) of half a layer at the top: between its node and the face */
  topHalfConductance(column: number, network: OvenNetwork): number {
    const { layers } = this.layout.columns[column]!;
    const dz = this.#thickness / layers.length;
    return this.#material.thermalConductivity(network.temperature[layers.at(-1)!]!) / (dz / 2);
  }

  /** Takes the network's temperatures as the plate's state. */
  take(network: OvenNetwork): void {
    this.#nodes.forEach((node, i) => {
      this.#heat[i] = this.#mass[i]! * this.#material.specificEnthalpy(network.temperature[node]!);
    });
  }

  /** Sets capacities and conductances for the step that follows. */
  prepare(network: OvenNetwork): void {
    const T = network.temperature;
    let moved = false;
    for (let i = 0; i < this.#nodes.length; i++) {
      const t = T[this.#nodes[i]!]!;
      this.#old[i] = t;
      network.capacity[this.#nodes[i]!] = this.#mass[i]! * this.#heatAt(i, t);
      if (!(Math.abs(t - this.#conducted[i]!) < conductsAlike)) moved = true;
    }
    if (!moved) return;
    for (let i = 0; i < this.#nodes.length; i++) this.#conducted[i] = T[this.#nodes[i]!]!;
    for (const { conductor, factor, node } of this.#links)
      conductor.conductance = factor * this.#material.thermalConductivity(T[node]!);
    network.linksChanged();
  }

  /** J/(kg K) of a layer; `follow` sets right what it is off by. */
  #heatAt(i: number, temperature: number): number {
    if (Math.abs(temperature - this.#heated[i]!) < heatsAlike) return this.#specificHeat[i]!;
    this.#heated[i] = temperature;
    this.#specificHeat[i] = this.#material.specificHeat(temperature);
    this.#enthalpy[i] = this.#material.specificEnthalpy(temperature);
    return this.#specificHeat[i];
  }

  /** Books the heat of the step as enthalpy and sets the temperature that belongs to it. */
  follow(network: OvenNetwork): void {
    const T = network.temperature;
    for (let i = 0; i < this.#nodes.length; i++) {
      const node = this.#nodes[i]!;
      const mass = this.#mass[i]!;
      const heat = this.#heat[i]! + network.capacity[node]! * (T[node]! - this.#old[i]!);
      this.#heat[i] = heat;
      // The linear solve is off by the curvature of the enthalpy over one time step: a step of Newton's puts it right.
      const specificHeat = this.#heatAt(i, T[node]!);
      T[node] = this.#heated[i]! + (heat / mass - this.#enthalpy[i]!) / specificHeat;
    }
  }

  /** Puts the temperatures right to rounding by the heat that was booked, for whoever takes them over as heat again. */
  sharpen(network: OvenNetwork): void {
    const T = network.temperature;
    this.#nodes.forEach((node, i) => {
      const t = T[node]!;
      const { specificEnthalpy, specificHeat } = this.#material;
      T[node] = t - (specificEnthalpy(t) - this.#heat[i]! / this.#mass[i]!) / specificHeat(t);
    });
  }

  /** J above 0 degC */
  get heat(): number {
    return this.#heat.reduce((sum, h) => sum + h, 0);
  }

  /** K, at the mid-plane of a column. @param T the network's temperatures */
  core(column: number, T: Float64Array): number {
    const { layers } = this.layout.columns[column]!;
    const middle = layers.length / 2;
    return layers.length % 2 === 1
      ? T[layers[Math.floor(middle)]!]!
      : (T[layers[middle - 1]!]! + T[layers[middle]!]!) / 2;
  }
}
