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
import type { OvenNetwork } from '../oven/network.ts';
import type { Column } from '../oven/networkParts.ts';
import { BlockChain } from '../numerics/blockChain.ts';
import { cellConstants, emptyFields, updateVapour } from './columnFields.ts';
import type { CellConstants, ColumnFields, ColumnSetting, ColumnState } from './columnFields.ts';
import { capacityOf, heatOf, temperatureOf } from './frozen.ts';
import { ColumnLinks } from './columnLinks.ts';
import { steamEnthalpy, waterActivity, waterHeat } from './moistCell.ts';

export type { ColumnSetting, ColumnState } from './columnFields.ts';

/** K that a cell may change in one step: the linearisation holds no further */
const largestChange = 15;

/**
 * K that the vapour a cell was not counted on to give in one step could have cooled it by, and J/kg that vapour
 * carries, for that estimate. The next step puts it right: ten times as strict costs four times the steps and moves a
 * bake by a second.
 */
const largestMiss = 4000;
const latentHeatScale = 2.26e6;

/** One column of the pizza as the network of the oven takes it; see the head of this file for its equations. */
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
  readonly #constants: CellConstants;
  #now: ColumnFields;
  #next: ColumnFields;
  #nextBaseFace = 0;
  /** properties are those of an earlier state */
  #stale = true;
  readonly #links: ColumnLinks;

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
    this.#constants = cellConstants(setting.cells);
    updateVapour(this.#now, this.#constants, setting.pressure);
    this.baseFace = setting.cells[0]!.temperature;
    this.#chain = new BlockChain(n);
    this.#links = new ColumnLinks(n);
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

  eliminate(dt: number, network: OvenNetwork): void {
    // A step that is tried again with half its length starts from the same state.
    if (this.#stale) this.#links.update(this.setting, this.#constants, this.#now, network);
    this.#stale = false;
    this.#assemble(dt);
    const { area } = this.setting;
    const n = this.size;
    const chain = this.#chain;
    const { temperature } = this.#now;
    const { face } = this.#links;
    const first = area * face[0]!;
    const last = area * face[n]!;
    chain.solve();
    this.pp = first * (1 - chain.firstPerPlate);
    this.ps = first * chain.firstPerSurface;
    this.p0 = first * (temperature[0]! + chain.firstConstant);
    this.ss = last * (1 - chain.lastPerSurface);
    this.sp = last * chain.lastPerPlate;
    this.s0 = last * (temperature[n - 1]! + chain.lastConstant);
  }

  /**
   * The system of one step, cell by cell from the plate upwards. Its unknowns are the changes of the cells and the new
   * temperatures of plate and surface; a face's share in the cell above it is carried on to that cell's turn.
   */
  #assemble(dt: number): void {
    const n = this.size;
    const chain = this.#chain;
    const { lower, diagonal, upper, right } = chain;
    const { temperature, psi } = this.#now;
    const { face, vapour, psiT, psiW, cavityPsi } = this.#links;
    const perStep = 1 / dt;
    let below = face[0]!;
    chain.plate = below;
    chain.surface = face[n]!;
    let d00 = below;
    let d01 = 0;
    let d10 = 0;
    let d11 = 0;
    let r0 = -below * temperature[0]!;
    let r1 = 0;
    for (let i = 0; i < n; i++) {
      const k = 4 * i;
      const T = temperature[i]!;
      const above = i + 1;
      const conducted = face[above]!;
      const g = vapour[above]!;
      d00 += this.#capacity(i) * perStep + conducted;
      d11 += perStep;
      const top = above === n;
      const TAbove = top ? 0 : temperature[above]!;
      const flow = conducted * (T - TAbove);
      r0 -= flow;
      let next00 = conducted;
      let next01 = 0;
      let next10 = 0;
      let next11 = 0;
      let nextR0 = flow;
      let nextR1 = 0;
      let u00 = -conducted;
      let u01 = 0;
      let u10 = 0;
      let u11 = 0;
      below = -conducted;
      let l01 = 0;
      let l10 = 0;
      let l11 = 0;
      if (g > 0) {
        const steam = g * (psi[i]! - (top ? cavityPsi : psi[above]!));
        const carried = this.#carried(above);
        const given = carried - waterHeat * (T - 273.15);
        const bT = g * psiT[i]!;
        const bW = g * psiW[i]!;
        d00 += given * bT;
        d01 += given * bW;
        d10 += bT;
        d11 += bW;
        r0 -= given * steam;
        r1 -= steam;
        if (!top) {
          const taken = carried - waterHeat * (TAbove - 273.15);
          const aT = g * psiT[above]!;
          const aW = g * psiW[above]!;
          u00 -= given * aT;
          u01 = -given * aW;
          u10 = -aT;
          u11 = -aW;
          next00 += taken * aT;
          next01 = taken * aW;
          next10 = aT;
          next11 = aW;
          nextR0 += taken * steam;
          nextR1 = steam;
          below -= taken * bT;
          l01 = -taken * bW;
          l10 = -bT;
          l11 = -bW;
        }
      }
      diagonal[k] = d00;
      diagonal[k + 1] = d01;
      diagonal[k + 2] = d10;
      diagonal[k + 3] = d11;
      right[2 * i] = r0;
      right[2 * i + 1] = r1;
      if (top) return;
      upper[k] = u00;
      upper[k + 1] = u01;
      upper[k + 2] = u10;
      upper[k + 3] = u11;
      lower[k + 4] = below;
      lower[k + 5] = l01;
      lower[k + 6] = l10;
      lower[k + 7] = l11;
      d00 = next00;
      d01 = next01;
      d10 = next10;
      d11 = next11;
      r0 = nextR0;
      r1 = nextR1;
    }
  }

  /** J/(m2 K) */
  #capacity(i: number): number {
    const { solids, solidsCapacity } = this.#constants;
    const water = this.#now.water[i]!;
    const T = this.#now.temperature[i]!;
    if (T < 273.15) {
      const { solidsHeat } = this.setting.cells[i]!.material;
      return capacityOf({ solids: solids[i]!, water, solidsHeat }, T);
    }
    return solidsCapacity[i]! + water * waterHeat;
  }

  /** Enthalpy that vapour through face i carries: that of the cell it comes from. */
  #carried(i: number): number {
    const below = i - 1;
    const { psi, temperature } = this.#now;
    const up = i === this.size || psi[below]! >= psi[i]!;
    return steamEnthalpy(temperature[up ? below : i]!);
  }

  /**
   * Books the step on a copy of the state and compares the vapour potentials it ends with to those that the linear
   * solve counted on: what they differ by is a flux that the step got wrong, and so many kelvin of the cell.
   */
  strain(plate: number, surface: number, dt: number): number {
    const chain = this.#chain;
    chain.follow(plate, surface);
    const n = this.size;
    const { changeT, changeW } = chain;
    const { psi, water: oldWater } = this.#now;
    let change = 0;
    for (let i = 0; i < n; i++) {
      change = Math.max(change, Math.abs(changeT[i]!));
      if (!(oldWater[i]! + changeW[i]! >= 0)) return Infinity;
    }
    // Written so that NaN fails too.
    if (!(change < 10 * largestChange)) return Infinity;
    const byChange = (change / largestChange) ** 2;
    this.#bookStep(plate, surface, dt);
    const { evaporation, pressure } = this.setting;
    if (!evaporation) return byChange;
    updateVapour(this.#next, this.#constants, pressure);
    const { solidsCapacity } = this.#constants;
    const { psi: psiNext, water } = this.#next;
    const { psiT, psiW, vapour } = this.#links;
    let miss = 0;
    for (let i = 0; i < n; i++) {
      const counted = psi[i]! + psiT[i]! * changeT[i]! + psiW[i]! * changeW[i]!;
      const flux = (vapour[i]! + vapour[i + 1]!) * Math.abs(psiNext[i]! - counted);
      miss = Math.max(miss, flux / (solidsCapacity[i]! + water[i]! * waterHeat));
    }
    return Math.max(byChange, (miss * dt * latentHeatScale) / largestMiss);
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
    const { vapour, psiT, psiW, cavityPsi } = this.#links;
    const g = vapour[i]!;
    if (g === 0) return 0;
    const { psi } = this.#now;
    const { changeT, changeW } = this.#chain;
    const b = i - 1;
    const below = psi[b]! + psiT[b]! * changeT[b]! + psiW[b]! * changeW[b]!;
    if (i === this.size) return g * (below - cavityPsi);
    return g * (below - psi[i]! - psiT[i]! * changeT[i]! - psiW[i]! * changeW[i]!);
  }

  #bookStep(plate: number, surface: number, dt: number): void {
    const { cells, area, contactResistance } = this.setting;
    const { solidsCapacity } = this.#constants;
    const n = this.size;
    const { temperature, heat, water } = this.#now;
    const { temperature: newTemperature, heat: newHeat, water: newWater } = this.#next;
    const { changeT } = this.#chain;
    const { face } = this.#links;
    let own = temperature[0]! + changeT[0]!;
    let heatIn = face[0]! * (plate - own);
    let waterIn = 0;
    let carriedIn = 0;
    this.#nextBaseFace = plate - heatIn * contactResistance;
    for (let i = 0; i < n; i++) {
      const above = i + 1;
      const upper = above < n ? temperature[above]! + changeT[above]! : surface;
      const heatOut = face[above]! * (own - upper);
      const waterOut = this.#vapourFlow(above);
      const carriedOut = waterOut === 0 ? 0 : waterOut * this.#carried(above);
      const h = heat[i]! + dt * (heatIn - heatOut + carriedIn - carriedOut);
      const w = water[i]! + dt * (waterIn - waterOut);
      newHeat[i] = h;
      newWater[i] = w;
      if (h < 0) {
        const { solids, material } = cells[i]!;
        newTemperature[i] = temperatureOf({ solids, water: w, solidsHeat: material.solidsHeat }, h);
      } else newTemperature[i] = 273.15 + h / (solidsCapacity[i]! + w * waterHeat);
      own = upper;
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
    updateVapour(this.#now, this.#constants, this.setting.pressure);
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
