/**
 * An insulated wall behind its liner: layers from the liner outwards, each a finite volume with its own heat
 * capacity, the last one facing the kitchen.
 *
 *     C_i dT_i/dt = G_i (T_(i-1) - T_i) - G_(i+1) (T_i - T_(i+1)),     T_0 the liner, T_(n+1) the kitchen
 *
 * Implicit in time; the tridiagonal system is eliminated from the kitchen side inwards, so that the liner sees one
 * conductance and one source: T_1 = offset + slope T_liner. A single U-value would miss the slow uptake of the wool.
 */
export interface WallMaterial {
  /** J/(m2 K) of each layer, from the liner outwards */
  readonly capacities: readonly number[];
  /** Writes the conductances (W/(m2 K)) between liner, layers and kitchen, n + 1 of them. */
  conductances(liner: number, layers: Float64Array, out: Float64Array): void;
}

const woolLayers = 5;

/** (T/293)^1.55 by the kelvin up to 1300 K; straight lines between are within 1e-6 of it. */
const woolRise = Float64Array.from({ length: 1301 }, (_, kelvin) => Math.pow(kelvin / 293, 1.55));

function woolConductivity(temperature: number): number {
  const k = Math.floor(temperature);
  if (!(k >= 0 && k < woolRise.length - 1)) return 0.035 * Math.pow(temperature / 293, 1.55);
  const low = woolRise[k]!;
  return 0.035 * (low + (woolRise[k + 1]! - low) * (temperature - k));
}

/**
 * Mineral wool: k = 0.035 (T/293)^1.55 W/(m K), 70 kg/m3, 840 J/(kg K): our estimate, the exponent after makers'
 * curves for stone wool between 10 and 400 degC.
 *
 * @param thickness m
 * @param outerCoefficient W/(m2 K), outer sheet to kitchen by radiation and convection, about 9
 */
export function woolWall(thickness: number, outerCoefficient: number): WallMaterial {
  const layer = thickness / woolLayers;
  const half = layer / 2;
  return {
    capacities: new Array<number>(woolLayers).fill(70 * 840 * layer),
    conductances: (liner, T, out) => {
      let inner = half / woolConductivity((liner + T[0]!) / 2);
      out[0] = 1 / inner;
      inner = half / woolConductivity(T[0]!);
      for (let i = 1; i < woolLayers; i++) {
        const own = half / woolConductivity(T[i]!);
        out[i] = 1 / (inner + own);
        inner = own;
      }
      out[woolLayers] = 1 / (inner + 1 / outerCoefficient);
    },
  };
}

/**
 * The panes of a door behind the innermost one, lumped into the outer pane.
 *
 * @param gapConductance W/(m2 K) from the inner to the outer pane, radiation and air of all gaps together
 * @param paneCapacity J/(m2 K)
 */
export function doorPanes(
  gapConductance: number,
  paneCapacity: number,
  outerCoefficient: number,
): WallMaterial {
  return {
    capacities: [paneCapacity],
    conductances: (_liner, _layers, out) => {
      out[0] = gapConductance;
      out[1] = outerCoefficient;
    },
  };
}

/** One wall of the cavity behind its liner, eliminated onto it. */
export class WallStack {
  readonly temperature: Float64Array;
  /** what the liner sees in this step: W/K and W */
  seenConductance = 0;
  seenSource = 0;
  /** W through the outer face in the last step, positive outwards */
  outward = 0;
  readonly #material: WallMaterial;
  readonly #area: number;
  readonly #capacity: Float64Array;
  readonly #conductance: Float64Array;
  readonly #slope: Float64Array;
  readonly #offset: Float64Array;

  /** @param area m2; @param start K */
  constructor(material: WallMaterial, area: number, start: number) {
    const n = material.capacities.length;
    this.#material = material;
    this.#area = area;
    this.temperature = new Float64Array(n).fill(start);
    this.#capacity = Float64Array.from(material.capacities, (c) => c * area);
    this.#conductance = new Float64Array(n + 1);
    this.#slope = new Float64Array(n);
    this.#offset = new Float64Array(n);
  }

  /** Conductances from the temperatures as they stand. */
  updateConductances(liner: number): void {
    const G = this.#conductance;
    this.#material.conductances(liner, this.temperature, G);
    for (let i = 0; i < G.length; i++) G[i]! *= this.#area;
  }

  /** Takes the profile that a liner at this temperature leads to in the end. */
  rest(liner: number, room: number): void {
    for (let i = 0; i < 6; i++) {
      this.updateConductances(liner);
      this.eliminate(room, 1e9);
      this.follow(liner, room);
    }
  }

  /** Prepares an implicit step of `dt` seconds: sets `seenConductance` and `seenSource`. */
  eliminate(room: number, dt: number): void {
    const T = this.temperature;
    const n = T.length;
    const G = this.#conductance;
    let slope = 0;
    let offset = room;
    for (let i = n - 1; i >= 0; i--) {
      const store = this.#capacity[i]! / dt;
      const diagonal = store + G[i]! + G[i + 1]! * (1 - slope);
      offset = (store * T[i]! + G[i + 1]! * offset) / diagonal;
      slope = G[i]! / diagonal;
      this.#slope[i] = slope;
      this.#offset[i] = offset;
    }
    this.seenConductance = G[0]! * (1 - slope);
    this.seenSource = G[0]! * offset;
  }

  /** Ends the step: the layers follow the liner's new temperature. */
  follow(liner: number, room: number): void {
    const T = this.temperature;
    const n = T.length;
    let inner = liner;
    for (let i = 0; i < n; i++) {
      inner = this.#offset[i]! + this.#slope[i]! * inner;
      T[i] = inner;
    }
    this.outward = this.#conductance[n]! * (inner - room);
  }

  /** J above 0 K; its differences are the heat stored */
  get heat(): number {
    let sum = 0;
    for (let i = 0; i < this.temperature.length; i++) sum += this.#capacity[i]! * this.temperature[i]!;
    return sum;
  }
}
