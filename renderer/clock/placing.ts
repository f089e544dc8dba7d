/** Where labels go so that none ever lies on another. All in pixels. */

export interface Flag {
  readonly x: number;
  readonly width: number;
}

/**
 * Rows for texts that stand to the right of their lines, row 0 lowest. Every line rises through all rows below its
 * own text, so an earlier text must stand above each later line that it reaches over.
 */
export function flagRows(flags: readonly Flag[]): readonly number[] {
  const order = flags.map((_, index) => index).sort((a, b) => flags[b]!.x - flags[a]!.x);
  const rows = new Array<number>(flags.length).fill(0);
  order.forEach((index, done) => {
    const { x, width } = flags[index]!;
    const reached = order.slice(0, done).filter((later) => flags[later]!.x < x + width);
    rows[index] = reached.reduce((row, later) => Math.max(row, rows[later]! + 1), 0);
  });
  return rows;
}

/**
 * Moves wanted heights apart until neighbours are `gap` apart, within `low` and `high`; the order stays. Pools that
 * touch share their displacement, so that no label wanders further than it must.
 */
export function spreadApart(
  wanted: readonly number[],
  gap: number,
  low: number,
  high: number,
): readonly number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => wanted[a]! - wanted[b]!);
  interface Pool {
    readonly members: readonly number[];
    readonly start: number;
  }
  const startOf = (members: readonly number[]): number => {
    const middle = members.reduce((sum, index, i) => sum + wanted[index]! - i * gap, 0) / members.length;
    return Math.min(Math.max(middle, low), high - (members.length - 1) * gap);
  };
  const pools: Pool[] = [];
  for (const index of order) {
    let pool: Pool = { members: [index], start: startOf([index]) };
    let previous = pools.at(-1);
    while (previous !== undefined && previous.start + previous.members.length * gap > pool.start) {
      pools.pop();
      const members = [...previous.members, ...pool.members];
      pool = { members, start: startOf(members) };
      previous = pools.at(-1);
    }
    pools.push(pool);
  }
  const placed = new Array<number>(wanted.length).fill(low);
  for (const { members, start } of pools) {
    members.forEach((index, i) => {
      placed[index] = start + i * gap;
    });
  }
  return placed;
}

/** Rows within a lane, so that tasks that overlap in time do not lie on each other. */
export function stackRows(
  spans: readonly { readonly from: number; readonly to: number }[],
): readonly number[] {
  const ends: number[] = [];
  const order = spans.map((_, index) => index).sort((a, b) => spans[a]!.from - spans[b]!.from);
  const rows = new Array<number>(spans.length).fill(0);
  for (const index of order) {
    const { from, to } = spans[index]!;
    const free = ends.findIndex((end) => end <= from);
    const row = free === -1 ? ends.length : free;
    ends[row] = to;
    rows[index] = row;
  }
  return rows;
}
