/**
 * The oven as a network of lumped capacitances. For node i
 *
 *     C_i dT_i/dt = sum_j sigma G_ij (T_j^4 - T_i^4) + sum_j K_ij (T_j - T_i) + h_i A_i (T_air - T_i)
 *                   - q_into_wall,i + q_i
 *
 * with total exchange areas G (grey diffuse enclosure), conductances K, convection h from horizontal- and
 * vertical-plate correlations (or one forced value with a fan), wall stacks eliminated onto their liners, and columns
 * of pizza eliminated onto the plate below and the surface above them. One implicit Euler step solves all nodes at
 * once; radiation is linearised about the old temperatures, T'^4 = T^4 + 4 T^3 (T' - T). Flows are booked as they
 * stand in the equations, so heat in = stored + lost to rounding, whatever the step.
 *
 * Nodes without capacity (faces of a slab) are allowed. The cavity's air is taken at constant heat capacity
 * (0.7 kg/m3 x 1010 J/(kg K), its value near 230 degC): 80 J/K in a European oven, a hundredth of a liner.
 */
import { airDensity } from '../materials/air.ts';
import {
  gasConstant,
  gravity,
  molarMassAir,
  molarMassWater,
  stefanBoltzmann,
} from '../materials/constants.ts';
import { naturalConvectionHorizontal, naturalConvectionVertical } from './convection.ts';
import { addLink, airNode, doorNode } from './networkParts.ts';
import type { Column, Drive, NetworkSetting } from './networkParts.ts';
import { StepLayout } from './stepLayout.ts';

export interface NetworkState {
  readonly temperature: Float64Array;
  readonly stacks: readonly Float64Array[];
  readonly steamFraction: number;
  readonly ledger: Ledger;
}

/** J, running sums since the oven was switched on */
export interface Ledger {
  supplied: number;
  lostToRoom: number;
  lostByVentAndDoor: number;
  lostBySteam: number;
}

interface DoorLoss {
  readonly node: number;
  readonly slope: number;
  readonly constant: number;
}
const nothingLost: readonly DoorLoss[] = [];

/** The nodes of one arrangement and their state; see the head of this file for its equations. */
export class OvenNetwork {
  readonly setting: NetworkSetting;
  readonly temperature: Float64Array;
  /** J/K */
  readonly capacity: Float64Array;
  readonly ledger: Ledger = { supplied: 0, lostToRoom: 0, lostByVentAndDoor: 0, lostBySteam: 0 };
  /** mole fraction of water vapour in the cavity */
  steamFraction: number;
  /** of the columns in the last step, taken or not (see `Column`), as a share of what is allowed */
  strain = 0;
  /** more than 1 where a look will do */
  allowedStrain = 1;
  readonly convection: Float64Array;
  readonly #matrix: Float64Array;
  #layout: StepLayout;
  readonly #layouts = new Map<string, StepLayout>();
  #columns: readonly Column[] = [];
  readonly #right: Float64Array;
  /** links that stay as they are between two looks at the coefficients, ready to be copied */
  readonly #linkMatrix: Float64Array;
  readonly #linkRight: Float64Array;
  #linksKnown = false;
  /** 4 sigma T^3 and 3 sigma T^4 of each node */
  readonly #radiated: Float64Array;
  readonly #radiatedTwice: Float64Array;
  readonly #doorArea: number;
  readonly #volume: number;

  constructor(setting: NetworkSetting) {
    this.setting = setting;
    const n = setting.nodes;
    this.temperature = new Float64Array(n).fill(setting.start);
    this.capacity = new Float64Array(n);
    this.convection = new Float64Array(setting.faces.length);
    this.#matrix = new Float64Array(n * n);
    this.#right = new Float64Array(n);
    this.#linkMatrix = new Float64Array(n * n);
    this.#linkRight = new Float64Array(n);
    this.#radiated = new Float64Array(n);
    this.#radiatedTwice = new Float64Array(n);
    this.#layout = this.#layoutFor([]);
    const { width, depth, height } = setting.cavity;
    this.#doorArea = width * height;
    this.#volume = width * depth * height;
    this.capacity[airNode] = 0.7 * 1010 * this.#volume;
    this.steamFraction = setting.roomSteam;
  }

  get columns(): readonly Column[] {
    return this.#columns;
  }
  set columns(columns: readonly Column[]) {
    this.#columns = columns;
    this.#layout = this.#layoutFor(columns.map(({ plateNode, surfaceNode }) => [plateNode, surfaceNode]));
    this.linksChanged();
  }

  #layoutFor(ofColumns: readonly (readonly [number, number])[]): StepLayout {
    const key = ofColumns.join(' ');
    const known = this.#layouts.get(key);
    if (known) return known;
    const made = new StepLayout(this.setting, ofColumns);
    this.#layouts.set(key, made);
    return made;
  }

  /** To be called when a conductance of the setting was changed from outside. */
  linksChanged(): void {
    this.#linksKnown = false;
  }

  /** Convection coefficients and the walls' conductances from the temperatures as they stand. */
  updateCoefficients(): void {
    for (const { node, stack } of this.setting.stacks) stack.updateConductances(this.temperature[node]!);
    const { faces, forcedCoefficient, convectionFactor, circulation, pressure } = this.setting;
    const loop = circulation * circulation * circulation;
    const T = this.temperature;
    const air = T[airNode]!;
    for (let k = 0; k < faces.length; k++) {
      const face = faces[k]!;
      if (forcedCoefficient !== undefined) {
        this.convection[k] = forcedCoefficient;
        continue;
      }
      const natural =
        face.facing === 'vertical'
          ? naturalConvectionVertical(T[face.node]!, air, face.length, pressure)
          : naturalConvectionHorizontal(face.facing, T[face.node]!, air, face.length, pressure);
      // Mixed convection: Nu^3 = Nu_forced^3 + Nu_natural^3 (Incropera and DeWitt, section 9.9).
      const mixed = loop === 0 ? natural : Math.cbrt(natural * natural * natural + loop);
      this.convection[k] = convectionFactor * mixed;
    }
    this.linksChanged();
  }

  /** Convection, conduction and the straight way to the kitchen, as matrix and right side. */
  #updateLinks(): void {
    const { nodes: n, room, faces, conductors, toRoom } = this.setting;
    const A = this.#linkMatrix.fill(0);
    const b = this.#linkRight.fill(0);
    const { place } = this.#layout;
    const air = place[airNode]!;
    for (let k = 0; k < faces.length; k++) {
      const face = faces[k]!;
      addLink(A, n, place[face.node]!, air, this.convection[k]! * face.area);
    }
    for (const { a, b: other, conductance } of conductors)
      addLink(A, n, place[a]!, place[other]!, conductance);
    for (const { node, conductance } of toRoom) {
      const p = place[node]!;
      A[p * n + p]! += conductance;
      b[p]! += conductance * room;
    }
    this.#linksKnown = true;
  }

  /**
   * m3/s of air exchanged through the open door: Q = (C/3) A sqrt(g H dT/T), C about 0.6.
   * Source: Brown and Solvason, Int. J. Heat Mass Transfer 5 (1962) 859-868 (form from memory).
   */
  #doorFlow(): number {
    const air = this.temperature[airNode]!;
    const drop = Math.abs(air - this.setting.room) / ((air + this.setting.room) / 2);
    return 0.2 * this.#doorArea * Math.sqrt(gravity * this.setting.cavity.height * drop);
  }

  /**
   * One implicit step of `dt` seconds. Columns and stacks take it too.
   *
   * @returns false when a column finds the step too long; nothing has changed then
   */
  step(dt: number, drive: Drive): boolean {
    const { nodes: n, room, pressure, stacks } = this.setting;
    if (!this.#linksKnown) this.#updateLinks();
    const T = this.temperature;
    const { capacity } = this;
    const A = this.#matrix;
    const b = this.#right;
    const { place, diagonal, solver } = this.#layout;
    A.set(this.#linkMatrix);
    b.set(this.#linkRight);
    for (let i = 0; i < n; i++) {
      const store = capacity[i]! / dt;
      A[diagonal[i]!]! += store;
      b[place[i]!]! += store * T[i]!;
    }
    for (const { node, watt } of drive.sources) b[place[node]!]! += watt;
    this.#addRadiation(drive.doorOpen);
    const air = place[airNode]!;
    // The mass drawn in at room temperature is the mass that leaves hot.
    const doorFlow = drive.doorOpen ? this.#doorFlow() : 0;
    const flow = drive.ventFlow + doorFlow;
    const ventConductance = flow * airDensity(room, pressure) * 1010;
    A[air * n + air]! += ventConductance;
    b[air]! += ventConductance * room;
    for (const { node, stack } of stacks) {
      stack.eliminate(room, dt);
      const p = place[node]!;
      A[p * n + p]! += stack.seenConductance;
      b[p]! += stack.seenSource;
    }
    for (const column of this.columns) {
      column.eliminate(dt, this);
      const p = place[column.plateNode]!;
      const s = place[column.surfaceNode]!;
      A[p * n + p]! += column.pp;
      A[p * n + s]! -= column.ps;
      b[p]! += column.p0;
      A[s * n + s]! += column.ss;
      A[s * n + p]! -= column.sp;
      b[s]! += column.s0;
    }
    for (let i = 0; i < n; i++) {
      if (A[diagonal[i]!] !== 0) continue;
      // a face that is not in use now
      A[diagonal[i]!] = 1;
      b[place[i]!] = T[i]!;
    }
    const doorLoss = this.#doorRadiation(drive.doorOpen);
    if (!solver.solve(A, b)) throw new Error('the network has a node without any link');
    this.strain = 0;
    for (const column of this.columns) {
      const strain =
        column.strain(b[place[column.plateNode]!]!, b[place[column.surfaceNode]!]!, dt) / this.allowedStrain;
      if (strain > this.strain) this.strain = strain;
      if (strain > 1) return false;
    }
    for (let i = 0; i < n; i++) T[i] = b[place[i]!]!;
    this.#book(dt, drive, ventConductance, doorLoss);
    for (const { node, stack } of stacks) {
      stack.follow(T[node]!, room);
      this.ledger.lostToRoom += stack.outward * dt;
    }
    let steam = drive.burnerSteam;
    for (const column of this.columns) {
      column.follow();
      steam += column.steamMass / dt;
      this.ledger.lostBySteam += column.steamHeat;
    }
    this.#moveSteam(dt, flow, steam);
    return true;
  }

  #addRadiation(doorOpen: boolean): void {
    const { a, b, area } = this.setting.radiation;
    const { nodes: n } = this.setting;
    const T = this.temperature;
    const A = this.#matrix;
    const right = this.#right;
    const { place, diagonal, radiation, order, closedLinks } = this.#layout;
    const { aa, ab, ba, bb } = radiation;
    const first = this.#radiated;
    const second = this.#radiatedTwice;
    for (let i = 0; i < n; i++) {
      const t = T[i]!;
      first[i] = 4 * stefanBoltzmann * t * t * t;
      second[i] = 0.75 * first[i]! * t;
    }
    const links = doorOpen ? closedLinks : area.length;
    for (let l = 0; l < links; l++) {
      const k = order[l]!;
      const i = a[k]!;
      const j = b[k]!;
      const g = area[k]!;
      const gi = g * first[i]!;
      const gj = g * first[j]!;
      A[aa[k]!]! += gi;
      A[ab[k]!]! -= gj;
      A[bb[k]!]! += gj;
      A[ba[k]!]! -= gi;
      const constant = g * (second[i]! - second[j]!);
      right[place[i]!]! += constant;
      right[place[j]!]! -= constant;
    }
    if (!doorOpen) return;
    // The opening looks like a black surface at the kitchen's temperature; the door itself hangs outside.
    const room4 = stefanBoltzmann * this.setting.room ** 4;
    for (let l = closedLinks; l < area.length; l++) {
      const k = order[l]!;
      const inside = a[k] === doorNode ? b[k]! : a[k]!;
      if (inside === doorNode) continue;
      const g = area[k]!;
      A[diagonal[inside]!]! += g * first[inside]!;
      right[place[inside]!]! += g * (second[inside]! + room4);
    }
  }

  /** What leaves through the open door by radiation, as a linear function of the new temperatures. */
  #doorRadiation(doorOpen: boolean): readonly DoorLoss[] {
    if (!doorOpen) return nothingLost;
    const { a, b, area } = this.setting.radiation;
    const out: DoorLoss[] = [];
    const room4 = this.setting.room ** 4;
    for (let k = 0; k < area.length; k++) {
      if (a[k] !== doorNode && b[k] !== doorNode) continue;
      const node = a[k] === doorNode ? b[k]! : a[k]!;
      const g = area[k]! * stefanBoltzmann;
      const t = this.temperature[node]!;
      out.push({ node, slope: 4 * g * t ** 3, constant: -g * (3 * t ** 4 + room4) });
    }
    return out;
  }

  #book(dt: number, drive: Drive, ventConductance: number, doorLoss: readonly DoorLoss[]): void {
    const { room, toRoom } = this.setting;
    const T = this.temperature;
    let supplied = drive.latent;
    for (const { watt } of drive.sources) supplied += watt;
    let lost = 0;
    for (const { node, conductance } of toRoom) lost += conductance * (T[node]! - room);
    let vented = drive.latent + ventConductance * (T[airNode]! - room);
    for (const { node, slope, constant } of doorLoss) vented += slope * T[node]! + constant;
    this.ledger.supplied += supplied * dt;
    this.ledger.lostToRoom += lost * dt;
    this.ledger.lostByVentAndDoor += vented * dt;
  }

  /**
   * Water vapour of the cavity at constant pressure, x its mole fraction:
   * N dx/dt = n_made (1 - x) - n_drawn (x - x_room), implicit in x.
   */
  #moveSteam(dt: number, flow: number, made: number): void {
    const { room, pressure, roomSteam } = this.setting;
    const moles = (pressure * this.#volume) / (gasConstant * this.temperature[airNode]!) / dt;
    const drawn = (flow * airDensity(room, pressure)) / molarMassAir;
    const madeMoles = made / molarMassWater;
    this.steamFraction =
      (moles * this.steamFraction + madeMoles + drawn * roomSteam) / (moles + drawn + madeMoles);
  }

  /** J above 0 K of nodes with constant capacity and of the walls; the plate and the pizza keep their own account. */
  heat(upTo: number): number {
    let sum = 0;
    for (let i = 0; i < upTo; i++) sum += this.capacity[i]! * this.temperature[i]!;
    for (const { stack } of this.setting.stacks) sum += stack.heat;
    return sum;
  }

  save(): NetworkState {
    return {
      temperature: this.temperature.slice(),
      stacks: this.setting.stacks.map(({ stack }) => stack.temperature.slice()),
      steamFraction: this.steamFraction,
      ledger: { ...this.ledger },
    };
  }

  /** Takes up a saved state; nodes beyond the saved ones keep theirs. */
  load(state: NetworkState): void {
    const shared = Math.min(state.temperature.length, this.temperature.length);
    this.temperature.set(state.temperature.subarray(0, shared));
    this.setting.stacks.forEach(({ stack }, k) => {
      stack.temperature.set(state.stacks[k]!);
    });
    this.steamFraction = state.steamFraction;
    Object.assign(this.ledger, state.ledger);
  }
}
