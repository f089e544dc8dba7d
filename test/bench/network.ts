/**
 * The oven's network with a lumped plate, twenty minutes with all elements on: ours, the `solveODE` of mathjs and odex,
 * on the same equations. Convection is one constant and walls lose straight to the kitchen, so that every solver has the
 * same right side; the reference is odex at 1e-12.
 */
import { createRequire } from 'node:module';
import { all, create } from 'mathjs';
import { stefanBoltzmann } from '../../physics/materials/constants.ts';
import { prepareModel } from '../../physics/evening/model.ts';
import { startPreheat } from '../../physics/evening/preheat.ts';
import { OvenNetwork } from '../../physics/oven/network.ts';
import {
  airNode,
  bottomElementNode,
  ceilingNode,
  doorNode,
  firstPlateNode,
  floorNode,
  sidesNode,
  topElementNode,
} from '../../physics/oven/networkParts.ts';
import type { Drive } from '../../physics/oven/networkParts.ts';
import { northAmerican } from '../support/evenings.ts';
import { timed } from './timed.ts';

export interface NetworkRow {
  readonly solver: string;
  readonly milliseconds: number;
  readonly plateErrorK: number;
}

const seconds = 1200;
/** W/(m2 K), the same for every face */
const convection = 7;
const wallLoss = 1;

type State = readonly number[];
type Rate = (t: number, y: State) => number[];

interface Problem {
  readonly rate: Rate;
  readonly start: number[];
  readonly fresh: () => OvenNetwork;
  readonly drive: Drive;
}

function problem(): Problem {
  const model = prepareModel(northAmerican());
  const run = startPreheat(model);
  run.plate!.prepare(run.network);
  const { setting } = run.network;
  const walls = [floorNode, ceilingNode, sidesNode, doorNode];
  const areaOf = (node: number): number =>
    setting.faces.filter((face) => face.node === node).reduce((sum, { area }) => sum + area, 0);
  const toRoom = [
    ...setting.toRoom,
    ...walls.map((node) => ({ node, conductance: wallLoss * areaOf(node) })),
  ];
  const { bottom, top } = model.evening.oven.power;
  const drive: Drive = {
    sources: [
      { node: bottomElementNode, watt: bottom },
      { node: topElementNode, watt: top },
    ],
    ventFlow: 0,
    burnerSteam: 0,
    latent: 0,
    doorOpen: false,
  };
  const capacity = run.network.capacity.slice();
  const fresh = (): OvenNetwork => {
    const network = new OvenNetwork({ ...setting, stacks: [], toRoom, forcedCoefficient: convection });
    network.capacity.set(capacity);
    network.updateCoefficients();
    return network;
  };
  const links: (readonly [number, number, number])[] = [
    ...setting.faces.map(({ node, area }) => [node, airNode, convection * area] as const),
    ...setting.conductors.map(({ a, b, conductance }) => [a, b, conductance] as const),
  ];
  const { a, b, area } = setting.radiation;
  const power = new Float64Array(setting.nodes);
  for (const { node, watt } of drive.sources) power[node]! += watt;
  const rate: Rate = (_t, y) => {
    const heat = Array.from(power);
    for (const [i, j, conductance] of links) {
      const flow = conductance * (y[j]! - y[i]!);
      heat[i]! += flow;
      heat[j]! -= flow;
    }
    for (let k = 0; k < area.length; k++) {
      const [i, j] = [a[k]!, b[k]!];
      const flow = stefanBoltzmann * area[k]! * (y[j]! ** 4 - y[i]! ** 4);
      heat[i]! += flow;
      heat[j]! -= flow;
    }
    for (const { node, conductance } of toRoom) heat[node]! += conductance * (setting.room - y[node]!);
    return heat.map((watt, i) => watt / capacity[i]!);
  };
  return { rate, fresh, drive, start: new Array<number>(setting.nodes).fill(setting.start) };
}

interface Odex {
  relativeTolerance: number;
  absoluteTolerance: number;
  maxSteps: number;
  solve(rate: Rate, from: number, start: State, to: number): { y: number[]; outcome: number };
}
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => Odex };

function byOdex({ rate, start }: Problem, tolerance: number): number {
  const solver = new Solver(start.length);
  solver.relativeTolerance = tolerance;
  solver.absoluteTolerance = tolerance;
  solver.maxSteps = 1_000_000;
  return solver.solve(rate, 0, start, seconds).y[firstPlateNode]!;
}

// Its types leave solveODE out.
type SolveOde = (rate: Rate, span: number[], start: number[], options: object) => { y: number[][] };

const { solveODE } = create(all!) as unknown as { solveODE: SolveOde };

function byMathjs({ rate, start }: Problem, tol: number): number {
  const { y } = solveODE(rate, [0, seconds], start, { method: 'RK45', tol, firstStep: 0.5 });
  return y.at(-1)![firstPlateNode]!;
}

function ours({ fresh, drive }: Problem, dt: number): number {
  const network = fresh();
  for (let i = 0; i < Math.round(seconds / dt); i++) network.step(dt, drive);
  return network.temperature[firstPlateNode]!;
}

/** The same at two lengths of step, carried on to none: implicit Euler errs in proportion to its step. */
function extrapolated(asked: Problem, dt: number): number {
  return 2 * ours(asked, dt / 2) - ours(asked, dt);
}

export function benchNetwork(): readonly NetworkRow[] {
  const asked = problem();
  const truth = byOdex(asked, 1e-12);
  const row = (solver: string, solve: () => number, runs?: number): NetworkRow => {
    const { milliseconds, result } = timed(solve, runs);
    return { solver, milliseconds, plateErrorK: Math.abs(result - truth) };
  };
  return [
    row('ours, implicit steps of 5 s as in a plan', () => ours(asked, 5), 41),
    row('ours, implicit steps of 10 s', () => ours(asked, 10), 41),
    row('ours, extrapolated from 30 s and 15 s', () => extrapolated(asked, 30), 41),
    row('ours, extrapolated from 20 s and 10 s', () => extrapolated(asked, 20), 41),
    row('mathjs solveODE RK45, tolerance 1e-2', () => byMathjs(asked, 1e-2), 5),
    row('mathjs solveODE RK45, tolerance 1e-4', () => byMathjs(asked, 1e-4), 5),
    row('odex, tolerance 1e-3', () => byOdex(asked, 1e-3)),
    row('odex, tolerance 1e-6', () => byOdex(asked, 1e-6)),
  ];
}
