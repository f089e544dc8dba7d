/** Where everything that a network couples stands in the matrix of one implicit step. Made once, used in every step. */
import { PatternSolver } from '../numerics/patternSolver.ts';
import { doorNode, networkLinks } from './networkParts.ts';
import type { NetworkSetting } from './networkParts.ts';

/** Indices into the row-major matrix of the two diagonal and the two other entries of a pair of nodes. */
export interface PairPlaces {
  readonly aa: Int32Array;
  readonly ab: Int32Array;
  readonly ba: Int32Array;
  readonly bb: Int32Array;
}

/** Places of everything a step writes, for one set of columns on the plate. */
export class StepLayout {
  readonly solver: PatternSolver;
  readonly place: Int32Array;
  /** index of each node's diagonal entry */
  readonly diagonal: Int32Array;
  readonly radiation: PairPlaces;
  /** the radiation links, those with the door last: through the open door the cavity sees the kitchen */
  readonly order: Int32Array;
  /** how many of them have nothing to do with the door */
  readonly closedLinks: number;

  /** @param ofColumns pairs of nodes that columns of pizza couple */
  constructor(setting: NetworkSetting, ofColumns: readonly (readonly [number, number])[]) {
    const { nodes, radiation } = setting;
    this.solver = new PatternSolver(nodes, [...networkLinks(setting), ...ofColumns]);
    this.place = this.solver.place;
    this.diagonal = Int32Array.from(this.place, (p) => p * nodes + p);
    const ofDoor = (k: number): boolean => radiation.a[k] === doorNode || radiation.b[k] === doorNode;
    const all = [...radiation.area.keys()];
    const closed = all.filter((k) => !ofDoor(k));
    this.order = Int32Array.from([...closed, ...all.filter(ofDoor)]);
    this.closedLinks = closed.length;
    this.radiation = this.#pairs(nodes, radiation.a, radiation.b);
  }

  #pairs(nodes: number, a: readonly number[], b: readonly number[]): PairPlaces {
    const at = (rows: readonly number[], columns: readonly number[]): Int32Array =>
      Int32Array.from(rows, (row, k) => this.place[row]! * nodes + this.place[columns[k]!]!);
    return { aa: at(a, a), ab: at(a, b), ba: at(b, a), bb: at(b, b) };
  }
}
