/** What joins the cells of a column in one step: conductances for heat and vapour, slopes of the vapour's potential. */
import { airDensity, airSpecificHeat } from '../materials/air.ts';
import { gasConstant, molarMassWater } from '../materials/constants.ts';
import type { OvenNetwork } from '../oven/network.ts';
import type { CellConstants, ColumnFields, ColumnSetting } from './columnFields.ts';
import { conductivity, vapourMobility, vapourPotential, vapourPotentialSlope } from './moistCell.ts';

/** mole fraction of vapour from which a pore counts as full of steam */
const nearlySteam = 0.98;

/** Lewis number of water vapour in air, alpha/D: 0.88 for films at 155 to 175 degC (derived from published D). */
const lewisFactor = 0.88 ** (2 / 3);

/** Links of one column, made once and filled anew in every step by `update`. */
export class ColumnLinks {
  /** conductance of each face, W/(m2 K); face i is below cell i, face n above the last */
  readonly face: Float64Array;
  /** vapour conductance of each face, kg/(m2 s) per unit of psi */
  readonly vapour: Float64Array;
  /** slopes of a cell's potential by its temperature (1/K) and its water (m2/kg) */
  readonly psiT: Float64Array;
  readonly psiW: Float64Array;
  /** potential of the steam in the cavity */
  cavityPsi = 0;

  constructor(n: number) {
    this.face = new Float64Array(n + 1);
    this.vapour = new Float64Array(n + 1);
    this.psiT = new Float64Array(n);
    this.psiW = new Float64Array(n);
  }

  update(setting: ColumnSetting, constants: CellConstants, now: ColumnFields, network: OvenNetwork): void {
    const { cells, pressure, evaporation, contactResistance, evaporationFactor, convectingFace } = setting;
    const inside = evaporation && setting.vapourInside !== false;
    const n = cells.length;
    const { face, vapour, psiT, psiW } = this;
    const { solids, halfThickness, vapourShare } = constants;
    const { temperature, water, x, xT, xW } = now;
    let heatBelow = contactResistance;
    let vapourBelow = 0;
    for (let i = 0; i < n; i++) {
      const T = temperature[i]!;
      const half = halfThickness[i]!;
      const heatResistance = half / conductivity(cells[i]!.material, water[i]! / solids[i]!, T);
      const vapourResistance = half / (vapourShare[i]! * vapourMobility(T));
      face[i] = 1 / (heatBelow + heatResistance);
      vapour[i] = inside && i > 0 ? 1 / (vapourBelow + vapourResistance) : 0;
      heatBelow = heatResistance;
      vapourBelow = vapourResistance;
      let slope = vapourPotentialSlope(x[i]!);
      if (i > 0) slope = Math.max(slope, chord(now, i, i - 1));
      if (i + 1 < n) slope = Math.max(slope, chord(now, i, i + 1));
      psiT[i] = slope * xT[i]!;
      psiW[i] = slope * xW[i]!;
    }
    face[n] = 1 / heatBelow;
    const h = network.convection[convectingFace]!;
    const film = (network.temperature[0]! + temperature[n - 1]!) / 2;
    const transfer = h / (airDensity(film, pressure) * airSpecificHeat(film) * lewisFactor);
    const gas = (transfer * molarMassWater * pressure * evaporationFactor) / (gasConstant * film);
    vapour[n] = evaporation && gas > 0 ? 1 / (vapourBelow + 1 / gas) : 0;
    const humid = setting.cavityHumidity !== false;
    this.cavityPsi = vapourPotential(humid ? network.steamFraction : network.setting.roomSteam);
  }
}

/**
 * Slope of the potential towards a neighbour that holds (nearly) pure steam. A cell beside one is driven up to the
 * knee of the potential within the step; its own slope there would let it shoot far beyond.
 */
function chord({ x, psi }: ColumnFields, i: number, neighbour: number): number {
  const ahead = x[neighbour]! - x[i]!;
  if (x[neighbour]! < nearlySteam || ahead < 1e-6) return 0;
  return (psi[neighbour]! - psi[i]!) / ahead;
}
