/**
 * The load of the European energy test: a light, soaked brick that is heated in the middle of the oven until its centre
 * is 55 K warmer. Nested shells of equal depth, each at one temperature, conduct inwards; the surface is wet all the
 * time and gives off vapour by the Lewis relation against the cavity's humidity.
 *
 *     rho c V_i dT_i/dt = k A_i (T_(i-1) - T_i)/d - k A_(i+1) (T_i - T_(i+1))/d
 *     j = h/(rho_air c_p Le^(2/3)) p M/(R T) ln((p - p_v,air)/(p - p_sat(T_s)))
 *
 * Brick after EN 60350-1, from memory: 230 x 114 x 64 mm, dry 920 g, 1050 g of water. What is left out: that the wet
 * zone draws back, and the water's weight that goes with it (a tenth or two of it).
 */
import { airDensity, airSpecificHeat } from '../materials/air.ts';
import { gasConstant, molarMassWater } from '../materials/constants.ts';
import {
  latentHeat,
  saturationPressure,
  saturationSlope,
  waterVapourDiffusivity,
} from '../materials/water.ts';
import type { OvenNetwork } from '../oven/network.ts';
import type { Column } from '../oven/networkParts.ts';

/** m, kg */
export const brickSize = { width: 0.23, depth: 0.114, thickness: 0.064 } as const;
const dryMass = 0.92;
const waterMass = 1.05;
/** J/(kg K): fired clay 880 (between 800 of ASHRAE and 956 of the VDI Heat Atlas at 400 degC), water 4186 */
const heatCapacity = dryMass * 880 + waterMass * 4186;
/** volumes that these masses make, and W/(m K) of clay, water and air */
const share = { clay: 0.21, water: 0.63, air: 0.16 } as const;
const conducts = { clay: 2, water: 0.6, air: 0.026 } as const;
const shells = 8;
/** Lewis number of water vapour in air near 80 degC, alpha/D */
const lewis = 0.85 ** (2 / 3);

/**
 * W/(m K) of the wet brick: geometric mean over the volumes (Lichtenecker's rule), our estimate, with air that carries
 * vapour from warm to cold in every pore as well: k_v = D M L/(R T) dp_sat/dT p/(p - p_sat) (Krischer 1963, Die
 * wissenschaftlichen Grundlagen der Trocknungstechnik; from memory). 0.55 at 20 degC, 0.9 at 80 degC.
 */
export function wetBrickConductivity(temperature: number, pressure: number): number {
  const saturated = Math.min(saturationPressure(temperature), 0.95 * pressure);
  const carried =
    ((waterVapourDiffusivity(temperature, pressure) * molarMassWater * latentHeat(temperature)) /
      (gasConstant * temperature)) *
    saturationSlope(temperature) *
    (pressure / (pressure - saturated));
  return conducts.clay ** share.clay * conducts.water ** share.water * (conducts.air + carried) ** share.air;
}

/** The brick as a column of the network; it lies on nothing, so its plate side is empty. */
export class WetBrick implements Column {
  readonly plateNode: number;
  readonly surfaceNode: number;
  readonly pp = 0;
  readonly ps = 0;
  readonly p0 = 0;
  readonly sp = 0;
  ss = 0;
  s0 = 0;
  steamMass = 0;
  steamHeat = 0;
  /** kg given off since the start */
  evaporated = 0;
  /** K, from the surface to the centre */
  readonly temperature: Float64Array;
  readonly #pressure: number;
  readonly #capacity = new Float64Array(shells);
  /** m, area over distance from the surface to the first shell, then between shells; W/K of them */
  readonly #path = new Float64Array(shells);
  readonly #conductance = new Float64Array(shells);
  readonly #slope = new Float64Array(shells);
  readonly #offset = new Float64Array(shells);
  #vapour = 0;
  #vapourSlope = 0;
  #old = 0;
  #surface = 0;
  #dt = 0;

  /** @param start K; @param pressure Pa */
  constructor(surfaceNode: number, start: number, pressure: number) {
    this.plateNode = surfaceNode;
    this.surfaceNode = surfaceNode;
    this.#pressure = pressure;
    this.temperature = new Float64Array(shells).fill(start);
    const { width, depth, thickness } = brickSize;
    const d = thickness / 2 / shells;
    const side = (length: number, depthIn: number): number => length - 2 * depthIn;
    const volume = (x: number): number => side(width, x) * side(depth, x) * side(thickness, x);
    const area = (x: number): number =>
      2 *
      (side(width, x) * side(depth, x) +
        side(width, x) * side(thickness, x) +
        side(depth, x) * side(thickness, x));
    for (let i = 0; i < shells; i++) {
      const inner = i + 1 < shells ? volume((i + 1) * d) : 0;
      this.#capacity[i] = (heatCapacity * (volume(i * d) - inner)) / volume(0);
      this.#path[i] = area(i * d) / (i === 0 ? d / 2 : d);
    }
  }

  /** J above 0 K */
  get heat(): number {
    return this.temperature.reduce((sum, T, i) => sum + this.#capacity[i]! * T, 0);
  }

  get centre(): number {
    return this.temperature[shells - 1]!;
  }

  /** kg/s from the whole surface at a temperature */
  #flux(surface: number, network: OvenNetwork): number {
    const { faces } = network.setting;
    const air = network.temperature[0]!;
    const p = this.#pressure;
    const film = (surface + air) / 2;
    let exchange = 0;
    for (let k = 0; k < faces.length; k++)
      if (faces[k]!.node === this.surfaceNode) exchange += network.convection[k]! * faces[k]!.area;
    const transfer = exchange / (airDensity(film, p) * airSpecificHeat(film) * lewis);
    const saturated = Math.min(saturationPressure(surface), 0.99 * p);
    const humid = Math.min(network.steamFraction, 0.99) * p;
    return ((transfer * p * molarMassWater) / (gasConstant * film)) * Math.log((p - humid) / (p - saturated));
  }

  eliminate(dt: number, network: OvenNetwork): void {
    const T = this.temperature;
    const K = this.#conductance;
    this.#dt = dt;
    for (let i = 0; i < shells; i++) K[i] = this.#path[i]! * wetBrickConductivity(T[i]!, this.#pressure);
    let slope = 0;
    let offset = 0;
    for (let i = shells - 1; i >= 0; i--) {
      const store = this.#capacity[i]! / dt;
      const inward = i + 1 < shells ? K[i + 1]! : 0;
      const diagonal = store + K[i]! + inward * (1 - slope);
      offset = (store * T[i]! + inward * offset) / diagonal;
      slope = K[i]! / diagonal;
      this.#slope[i] = slope;
      this.#offset[i] = offset;
    }
    const surface = network.temperature[this.surfaceNode]!;
    this.#old = surface;
    this.#vapour = this.#flux(surface, network);
    this.#vapourSlope = (this.#flux(surface + 0.1, network) - this.#vapour) / 0.1;
    const heat = latentHeat(surface);
    this.ss = K[0]! * (1 - slope) + this.#vapourSlope * heat;
    this.s0 = K[0]! * offset - (this.#vapour - this.#vapourSlope * surface) * heat;
  }

  strain(_plate: number, surface: number): number {
    this.#surface = surface;
    return (Math.abs(surface - this.#old) / 20) ** 2;
  }

  follow(): void {
    let outer = this.#surface;
    for (let i = 0; i < shells; i++) {
      outer = this.#offset[i]! + this.#slope[i]! * outer;
      this.temperature[i] = outer;
    }
    this.steamMass = this.#dt * (this.#vapour + this.#vapourSlope * (this.#surface - this.#old));
    this.steamHeat = this.steamMass * latentHeat(this.#old);
    this.evaporated += this.steamMass;
  }
}
