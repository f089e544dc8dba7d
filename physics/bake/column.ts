/**
 * A column of pizza on the plate: finite volumes of dough, sauce and cheese from the plate upwards, each with dry
 * matter s (constant), water w and heat H a square metre.
 *
 *     dw_i/dt = j_(i-1/2) - j_(i+1/2)
 *     dH_i/dt = q_(i-1/2) - q_(i+1/2) + (j h_v)_(i-1/2) - (j h_v)_(i+1/2)
 *     H = (s c_s + w c_w) t,   h_v = 2501 kJ/kg + c_v t,   t in degC
 *     q = (T_i - T_(i+1)) / (r_i + r_(i+1) + r_between),   j = (psi_i - psi_(i+1)) / (R_i + R_(i+1))
 *
 * with r = dx/(2 k), R = dx/(2 kappa) and psi, kappa of `moistCell.ts`. No vapour passes the base (it lies on the
 * plate); at the top it leaves by the Lewis relation against the cavity's humidity, R = (rho c_p Le^(2/3)/h) R T/(M p).
 * Temperature and water of all cells are solved together, implicitly, linearised once a step (a block tridiagonal
 * with 2 x 2 blocks and three right sides: the column itself, the plate below, the surface above). The flows so found
 * are then booked on H and w, so that heat and water close to rounding.
 */
import { gasConstant, molarMassWater } from '../materials/constants.ts';
import { airDensity, airSpecificHeat } from '../materials/air.ts';
import type { OvenNetwork } from '../oven/network.ts';
import type { Column } from '../oven/networkParts.ts';
import { BlockChain } from '../numerics/blockChain.ts';
import { emptyFields, updateVapour } from './columnFields.ts';
import type { CellSpec, ColumnFields, ColumnSetting, ColumnState } from './columnFields.ts';
import { capacityOf, heatOf, temperatureOf } from './frozen.ts';
import {
  conductivity,
  steamEnthalpy,
  vapourMobility,
  vapourPotential,
  vapourPotentialSlope,
  waterActivity,
  waterHeat,
} from './moistCell.ts';

export type { ColumnSetting, ColumnState } from './columnFields.ts';

/** K that a cell may change in one step: the linearisation holds no further */
const largestChange = 15;

/**
 * K that the vapour a cell was not counted on to give in one step could have cooled it by, and J/kg that vapour
 * carries, for that estimate. The next step puts it right: ten times as strict costs four times the steps and moves a
 * bake by a second.
 */
const largestMiss = 2000;
const latentHeatScale = 2.26e6;

/** mole fraction of vapour from which a pore counts as full of steam */
const nearlySteam = 0.98;

/** Lewis number of water vapour in air, alpha/D: 0.88 for films at 155 to 175 degC (derived from published D). */
const lewisFactor = 0.88 ** (2 / 3);

export class PizzaColumn implements Column {
  readonly setting: ColumnSetting;
  readonly plateNode: number;
  readonly surfaceNode: number;
  readonly size: number;
  /** K, the dough's face on the plate */
  baseFace: number;
  /** kg and J (whole column) given to the cavity since it was laid down */
  evaporated = 0;
  steamHeatTotal = 0;
  steamMass = 0;
  steamHeat = 0;
  pp = 0;
  ps = 0;
  p0 = 0;
  ss = 0;
  sp = 0;
  s0 = 0;
  readonly #chain: BlockChain;
  #now: ColumnFields;
  #next: ColumnFields;
  #nextBaseFace = 0;
  /** properties are those of an earlier state */
  #stale = true;
  readonly #psiT: Float64Array;
  readonly #psiW: Float64Array;
  /** conductance of each face, W/(m2 K); face i is below cell i, face n above the last */
  readonly #face: Float64Array;
  /** vapour conductance of each face, kg/(m2 s) per unit of psi */
  readonly #vapour: Float64Array;
  #steamCavityPsi = 0;

  constructor(setting: ColumnSetting) {
    const n = setting.cells.length;
    this.setting = setting;
    this.plateNode = setting.plateNode;
    this.surfaceNode = setting.surfaceNode;
    this.size = n;
    this.#now = emptyFields(n);
    this.#next = emptyFields(n);
    setting.cells.forEach((c, i) => {
      this.#now.temperature[i] = c.temperature;
      this.#now.water[i] = c.water;
      this.#now.heat[i] = heatOf({ ...c, solidsHeat: c.material.solidsHeat }, c.temperature);
    });
    updateVapour(this.#now, setting);
    this.baseFace = setting.cells[0]!.temperature;
    this.#chain = new BlockChain(n);
    this.#psiT = new Float64Array(n);
    this.#psiW = new Float64Array(n);
    this.#face = new Float64Array(n + 1);
    this.#vapour = new Float64Array(n + 1);
  }

  get temperature(): Float64Array {
    return this.#now.temperature;
  }
  /** kg/m2 */
  get water(): Float64Array {
    return this.#now.water;
  }
  /** J/m2 above 0 degC */
  get heat(): Float64Array {
    return this.#now.heat;
  }

  moisture(i: number): number {
    return this.water[i]! / this.setting.cells[i]!.solids;
  }

  activity(i: number): number {
    return waterActivity(
      this.moisture(i),
      this.temperature[i]!,
      this.setting.cells[i]!.material.halfMoisture,
    );
  }

  #updateProperties(network: OvenNetwork): void {
    const { cells, pressure, evaporation, contactResistance, evaporationFactor, convectingFace } =
      this.setting;
    const inside = evaporation && this.setting.vapourInside !== false;
    const n = this.size;
    const { temperature, water, x, xT, xW } = this.#now;
    let heatBelow = 0;
    let vapourBelow = 0;
    for (let i = 0; i < n; i++) {
      const { material, solids } = cells[i]!;
      const T = temperature[i]!;
      const W = water[i]! / solids;
      const { thickness } = cells[i]!;
      const heatResistance = thickness / (2 * conductivity(material, W, T));
      const vapourResistance = thickness / (2 * material.vapourShare * vapourMobility(T));
      this.#face[i] = 1 / ((i === 0 ? contactResistance : heatBelow) + heatResistance);
      this.#vapour[i] = inside && i > 0 ? 1 / (vapourBelow + vapourResistance) : 0;
      heatBelow = heatResistance;
      vapourBelow = vapourResistance;
    }
    this.#face[n] = 1 / heatBelow;
    for (let i = 0; i < n; i++) {
      let slope = vapourPotentialSlope(x[i]!);
      if (i > 0) slope = Math.max(slope, this.#chord(i, i - 1));
      if (i + 1 < n) slope = Math.max(slope, this.#chord(i, i + 1));
      this.#psiT[i] = slope * xT[i]!;
      this.#psiW[i] = slope * xW[i]!;
    }
    const h = network.convection[convectingFace]!;
    const film = (network.temperature[0]! + this.temperature[n - 1]!) / 2;
    const transfer = h / (airDensity(film, pressure) * airSpecificHeat(film) * lewisFactor);
    const gas = (transfer * molarMassWater * pressure * evaporationFactor) / (gasConstant * film);
    this.#vapour[n] = evaporation && gas > 0 ? 1 / (vapourBelow + 1 / gas) : 0;
    const humid = this.setting.cavityHumidity !== false;
    this.#steamCavityPsi = vapourPotential(humid ? network.steamFraction : network.setting.roomSteam);
  }

  /**
   * Slope of the potential towards a neighbour that holds (nearly) pure steam. A cell beside one is driven up to the
   * knee of the potential within the step; its own slope there would let it shoot far beyond.
   */
  #chord(i: number, neighbour: number): number {
    const { x, psi } = this.#now;
    const ahead = x[neighbour]! - x[i]!;
    if (x[neighbour]! < nearlySteam || ahead < 1e-6) return 0;
    return (psi[neighbour]! - psi[i]!) / ahead;
  }

  eliminate(dt: number, network: OvenNetwork): void {
    // A step that is tried again with half its length starts from the same state.
    if (this.#stale) this.#updateProperties(network);
    this.#stale = false;
    const { cells, area } = this.setting;
    const n = this.size;
    const chain = this.#chain;
    chain.clear();
    const face = this.#face;
    for (let i = 0; i < n; i++) {
      chain.addDiagonal(i, 0, 0, this.#capacity(cells[i]!, i) / dt);
      chain.addDiagonal(i, 1, 1, 1 / dt);
    }
    // Heat through the faces. Unknowns are changes of the cells, new temperatures of plate and surface.
    chain.addDiagonal(0, 0, 0, face[0]!);
    chain.addRight(0, 0, -face[0]! * this.temperature[0]!);
    chain.plate = face[0]!;
    chain.addDiagonal(n - 1, 0, 0, face[n]!);
    chain.addRight(n - 1, 0, -face[n]! * this.temperature[n - 1]!);
    chain.surface = face[n]!;
    for (let i = 1; i < n; i++) {
      const K = face[i]!;
      const flow = K * (this.temperature[i - 1]! - this.temperature[i]!);
      chain.addDiagonal(i - 1, 0, 0, K);
      chain.addUpper(i - 1, 0, 0, -K);
      chain.addDiagonal(i, 0, 0, K);
      chain.addLower(i, 0, 0, -K);
      chain.addRight(i - 1, 0, -flow);
      chain.addRight(i, 0, flow);
      if (this.#vapour[i]! > 0) this.#addVapour(i);
    }
    if (this.#vapour[n]! > 0) this.#addEvaporation();
    chain.solve();
    this.pp = area * face[0]! * (1 - chain.firstPerPlate);
    this.ps = area * face[0]! * chain.firstPerSurface;
    this.p0 = area * face[0]! * (this.temperature[0]! + chain.firstConstant);
    this.ss = area * face[n]! * (1 - chain.lastPerSurface);
    this.sp = area * face[n]! * chain.lastPerPlate;
    this.s0 = area * face[n]! * (this.temperature[n - 1]! + chain.lastConstant);
  }

  /** J/(m2 K) */
  #capacity({ solids, material }: CellSpec, i: number): number {
    const { solidsHeat } = material;
    const water = this.water[i]!;
    const T = this.temperature[i]!;
    if (T < 273.15) return capacityOf({ solids, water, solidsHeat }, T);
    return solids * solidsHeat + water * waterHeat;
  }

  /** Enthalpy that vapour through face i carries: that of the cell it comes from. */
  #carried(i: number): number {
    const below = i - 1;
    const up = i === this.size || this.#now.psi[below]! >= this.#now.psi[i]!;
    return steamEnthalpy(this.temperature[up ? below : i]!);
  }

  #addVapour(i: number): void {
    const chain = this.#chain;
    const g = this.#vapour[i]!;
    const b = i - 1;
    const flow = g * (this.#now.psi[b]! - this.#now.psi[i]!);
    const carried = this.#carried(i);
    const given = carried - waterHeat * (this.temperature[b]! - 273.15);
    const taken = carried - waterHeat * (this.temperature[i]! - 273.15);
    const bT = g * this.#psiT[b]!;
    const bW = g * this.#psiW[b]!;
    const aT = g * this.#psiT[i]!;
    const aW = g * this.#psiW[i]!;
    chain.addDiagonal(b, 0, 0, given * bT);
    chain.addDiagonal(b, 0, 1, given * bW);
    chain.addDiagonal(b, 1, 0, bT);
    chain.addDiagonal(b, 1, 1, bW);
    chain.addUpper(b, 0, 0, -given * aT);
    chain.addUpper(b, 0, 1, -given * aW);
    chain.addUpper(b, 1, 0, -aT);
    chain.addUpper(b, 1, 1, -aW);
    chain.addRight(b, 0, -given * flow);
    chain.addRight(b, 1, -flow);
    chain.addDiagonal(i, 0, 0, taken * aT);
    chain.addDiagonal(i, 0, 1, taken * aW);
    chain.addDiagonal(i, 1, 0, aT);
    chain.addDiagonal(i, 1, 1, aW);
    chain.addLower(i, 0, 0, -taken * bT);
    chain.addLower(i, 0, 1, -taken * bW);
    chain.addLower(i, 1, 0, -bT);
    chain.addLower(i, 1, 1, -bW);
    chain.addRight(i, 0, taken * flow);
    chain.addRight(i, 1, flow);
  }

  #addEvaporation(): void {
    const chain = this.#chain;
    const n = this.size;
    const b = n - 1;
    const g = this.#vapour[n]!;
    const flow = g * (this.#now.psi[b]! - this.#steamCavityPsi);
    const given = this.#carried(n) - waterHeat * (this.temperature[b]! - 273.15);
    const bT = g * this.#psiT[b]!;
    const bW = g * this.#psiW[b]!;
    chain.addDiagonal(b, 0, 0, given * bT);
    chain.addDiagonal(b, 0, 1, given * bW);
    chain.addDiagonal(b, 1, 0, bT);
    chain.addDiagonal(b, 1, 1, bW);
    chain.addRight(b, 0, -given * flow);
    chain.addRight(b, 1, -flow);
  }

  /**
   * Books the step on a copy of the state and compares the vapour potentials it ends with to those that the linear
   * solve counted on: what they differ by is a flux that the step got wrong, and so many kelvin of the cell.
   */
  accepts(plate: number, surface: number, dt: number): boolean {
    const chain = this.#chain;
    chain.follow(plate, surface);
    const n = this.size;
    for (let i = 0; i < n; i++) {
      // Written so that NaN fails too.
      if (!(Math.abs(chain.changeT[i]!) <= largestChange)) return false;
      if (!(this.#now.water[i]! + chain.changeW[i]! >= 0)) return false;
    }
    this.#bookStep(plate, surface, dt);
    const { cells, evaporation } = this.setting;
    if (!evaporation) return true;
    updateVapour(this.#next, this.setting);
    for (let i = 0; i < n; i++) {
      const counted =
        this.#now.psi[i]! + this.#psiT[i]! * chain.changeT[i]! + this.#psiW[i]! * chain.changeW[i]!;
      const flux = (this.#vapour[i]! + this.#vapour[i + 1]!) * Math.abs(this.#next.psi[i]! - counted);
      const capacity = cells[i]!.solids * cells[i]!.material.solidsHeat + this.#next.water[i]! * waterHeat;
      if (!((dt * flux * latentHeatScale) / capacity <= largestMiss)) return false;
    }
    return true;
  }

  follow(): void {
    const before = this.#now;
    this.#now = this.#next;
    this.#next = before;
    this.#stale = true;
    this.baseFace = this.#nextBaseFace;
    this.evaporated += this.steamMass;
    this.steamHeatTotal += this.steamHeat;
  }

  /** Vapour through face i (above cell i - 1) at the end of the step, kg/(m2 s), as the linear solve has it. */
  #vapourFlow(i: number): number {
    const g = this.#vapour[i]!;
    if (g === 0) return 0;
    const { psi } = this.#now;
    const { changeT, changeW } = this.#chain;
    const b = i - 1;
    const below = psi[b]! + this.#psiT[b]! * changeT[b]! + this.#psiW[b]! * changeW[b]!;
    if (i === this.size) return g * (below - this.#steamCavityPsi);
    return g * (below - psi[i]! - this.#psiT[i]! * changeT[i]! - this.#psiW[i]! * changeW[i]!);
  }

  #bookStep(plate: number, surface: number, dt: number): void {
    const { cells, area, contactResistance } = this.setting;
    const n = this.size;
    const { temperature, heat, water } = this.#now;
    const { changeT } = this.#chain;
    let heatIn = this.#face[0]! * (plate - temperature[0]! - changeT[0]!);
    let waterIn = 0;
    let carriedIn = 0;
    this.#nextBaseFace = plate - heatIn * contactResistance;
    for (let i = 0; i < n; i++) {
      const above = i + 1;
      const upper = above < n ? temperature[above]! + changeT[above]! : surface;
      const heatOut = this.#face[above]! * (temperature[i]! + changeT[i]! - upper);
      const waterOut = this.#vapourFlow(above);
      const carriedOut = waterOut === 0 ? 0 : waterOut * this.#carried(above);
      const h = heat[i]! + dt * (heatIn - heatOut + carriedIn - carriedOut);
      const w = water[i]! + dt * (waterIn - waterOut);
      this.#next.heat[i] = h;
      this.#next.water[i] = w;
      const { solids, material } = cells[i]!;
      const { solidsHeat } = material;
      this.#next.temperature[i] =
        h < 0
          ? temperatureOf({ solids, water: w, solidsHeat }, h)
          : 273.15 + h / (solids * solidsHeat + w * waterHeat);
      heatIn = heatOut;
      waterIn = waterOut;
      carriedIn = carriedOut;
    }
    this.steamMass = area * waterIn * dt;
    this.steamHeat = area * carriedIn * dt;
  }

  save(): ColumnState {
    return {
      heat: this.heat.slice(),
      water: this.water.slice(),
      temperature: this.temperature.slice(),
      baseFace: this.baseFace,
      evaporated: this.evaporated,
      steamHeatTotal: this.steamHeatTotal,
    };
  }

  load(state: ColumnState): void {
    this.heat.set(state.heat);
    this.water.set(state.water);
    this.temperature.set(state.temperature);
    updateVapour(this.#now, this.setting);
    this.#stale = true;
    this.baseFace = state.baseFace;
    this.evaporated = state.evaporated;
    this.steamHeatTotal = state.steamHeatTotal;
  }

  /** kg and J of the whole column */
  get waterMass(): number {
    return this.setting.area * this.water.reduce((sum, w) => sum + w, 0);
  }
  get heatContent(): number {
    return this.setting.area * this.heat.reduce((sum, h) => sum + h, 0);
  }
}
