/** Times a computation in this process: what runs on these machines beside it makes single figures worthless. */

export interface Timed<T> {
  readonly milliseconds: number;
  readonly result: T;
}

/** Median of `runs` runs after one that only warms up; `result` is that of the last. */
export function timed<T>(compute: () => T, runs = 9): Timed<T> {
  let result = compute();
  const all: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    result = compute();
    all.push(performance.now() - start);
  }
  all.sort((a, b) => a - b);
  return { milliseconds: all[Math.floor(runs / 2)]!, result };
}

export function quantileOf(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}
