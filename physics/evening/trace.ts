/** Records what an oven does as the run goes on, at most one sample every `every` seconds. */
import { airNode, ceilingNode, doorNode, floorNode, sidesNode } from '../oven/networkParts.ts';
import type { OvenRun } from '../oven/ovenRun.ts';
import type { OvenTrace } from './run.ts';

const channels = [
  'seconds',
  'ovenAir',
  'floor',
  'ceiling',
  'sides',
  'door',
  'plateTop',
  'plateCore',
  'plateUnder',
  'plateAround',
  'bottomElement',
  'topElement',
] as const satisfies readonly (keyof OvenTrace)[];

/** Takes samples of a run; what lies after a moment can be cut off again. */
export class TraceRecorder {
  /** one list a channel, in their order: seconds first */
  readonly #lists: readonly number[][];
  readonly #every: number;

  constructor(every: number, lists: readonly number[][] = channels.map(() => [])) {
    this.#every = every;
    this.#lists = lists;
  }

  get #seconds(): number[] {
    return this.#lists[0]!;
  }

  get last(): number {
    return this.#seconds.at(-1) ?? -Infinity;
  }

  /** Takes a sample when one is due, or always when `force`. */
  record(run: OvenRun, force = false): void {
    if (!force && run.time - this.last < this.#every) return;
    // The same moment seen again (a load follows a recovery): the later view stays.
    if (run.time <= this.last) for (const list of this.#lists) list.pop();
    const T = run.network.temperature;
    const plate = run.plate!;
    const [under, around] = plate.layout.columns;
    const column = under!;
    const sample: Record<keyof OvenTrace, number> = {
      seconds: run.time,
      ovenAir: T[airNode]!,
      floor: T[floorNode]!,
      ceiling: T[ceilingNode]!,
      sides: T[sidesNode]!,
      door: T[doorNode]!,
      // Under a pizza the bare face has no heat balance of its own: the uppermost layer stands for it.
      plateTop: T[run.network.columns.length > 0 ? column.layers.at(-1)! : column.top]!,
      plateCore: plate.core(0, T),
      plateUnder: T[column.under]!,
      plateAround: T[(around ?? column).top]!,
      bottomElement: run.bottomShare,
      topElement: run.topShare,
    };
    for (let k = 0; k < channels.length; k++) this.#lists[k]!.push(sample[channels[k]!]);
  }

  /** Forgets the samples after `until` seconds. */
  cutAfter(until: number): void {
    while (this.last > until + 1e-9) for (const list of this.#lists) list.pop();
  }

  #countUpTo(until: number): number {
    return this.#seconds.filter((s) => s <= until + 1e-9).length;
  }

  /** The samples up to `until` seconds, as a trace. */
  trace(until = Infinity): OvenTrace {
    const count = this.#countUpTo(until);
    const take = (name: keyof OvenTrace): Float64Array =>
      Float64Array.from(this.#lists[channels.indexOf(name)]!.slice(0, count));
    return Object.fromEntries(channels.map((name) => [name, take(name)])) as unknown as OvenTrace;
  }

  /** Starts a recorder with the samples of this one up to `until`. */
  upTo(until: number): TraceRecorder {
    const count = this.#countUpTo(until);
    return new TraceRecorder(
      this.#every,
      this.#lists.map((list) => list.slice(0, count)),
    );
  }
}
