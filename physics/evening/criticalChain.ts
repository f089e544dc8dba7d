/**
 * How much later each task of an evening may be, and which of them may not: the critical path method on the tasks as
 * planned. Every task is put as early and as late as what it waits for, one pair of hands in the order of the plan, and
 * the end of every pizza allow; the difference is its slack (total float). The tasks without any, one waiting for the
 * other from the evening's begin to its last pizza, are the critical chain.
 */
export interface Activity {
  readonly id: string;
  /** s */
  readonly from: number;
  readonly to: number;
  readonly hands: boolean;
  /** ids of what has to be over before it begins; what is named here comes before it in the list */
  readonly waitsFor: readonly string[];
  /** ids of tasks begun before it to whose begin it keeps its distance at least, such as a turn to its bake */
  readonly tiedTo: readonly string[];
}

export interface Chained {
  /** s by id */
  readonly slack: ReadonlyMap<string, number>;
  /** ids in order, from the begin of the evening to the end of its last task */
  readonly chain: readonly string[];
}

/** s: a rise is solved to a thousandth of a second, and sums in another order differ by less */
const rounding = 0.01;

interface Placed {
  readonly activity: Activity;
  earliest: number;
  latest: number;
  /** the task that lets this one begin no sooner */
  binding: Placed | undefined;
  readonly before: readonly Placed[];
  readonly tied: readonly Placed[];
}

/** @param activities at least one; each after what it waits for */
export function criticalChain(activities: readonly Activity[]): Chained {
  const begin = Math.min(...activities.map(({ from }) => from));
  const placed = new Map<string, Placed>();
  const order: Placed[] = [];
  const hands = activities.filter((one) => one.hands).sort((a, b) => a.from - b.from);
  const handsBefore = new Map(hands.map((one, index) => [one.id, hands[index - 1]?.id]));
  // In the order of the plan whatever holds a task back has been placed before it.
  for (const activity of [...activities].sort((a, b) => a.from - b.from)) {
    const ids = [...activity.waitsFor, ...(activity.hands ? [handsBefore.get(activity.id)] : [])];
    const standing = (id: string | undefined): readonly Placed[] =>
      [id === undefined ? undefined : placed.get(id)].filter((other) => other !== undefined);
    const before = ids.flatMap(standing);
    const tied = activity.tiedTo.flatMap(standing);
    const one: Placed = {
      activity,
      earliest: begin,
      latest: activity.from,
      binding: undefined,
      before,
      tied,
    };
    for (const other of before) {
      const after = other.earliest + lengthOf(other);
      if (after < one.earliest) continue;
      one.earliest = after;
      one.binding = other;
    }
    for (const other of one.tied) {
      const after = other.earliest + apart(other, one);
      if (after <= one.earliest) continue;
      one.earliest = after;
      one.binding = other;
    }
    placed.set(activity.id, one);
    order.push(one);
  }
  placeLatest(order);
  const slack = new Map(
    order.map(({ activity, earliest, latest }) => [
      activity.id,
      latest - earliest > rounding ? latest - earliest : 0,
    ]),
  );
  return { slack, chain: chainOf(order) };
}

const lengthOf = ({ activity }: Placed): number => activity.to - activity.from;
const apart = (a: Placed, b: Placed): number => b.activity.from - a.activity.from;

/** As late as what follows allows; what nothing follows ends as planned. */
function placeLatest(order: readonly Placed[]): void {
  const ends = new Map<Placed, number>();
  const endBy = (one: Placed, time: number): void => {
    ends.set(one, Math.min(ends.get(one) ?? Infinity, time));
  };
  for (const one of [...order].reverse()) {
    one.latest = (ends.get(one) ?? one.activity.to) - lengthOf(one);
    for (const other of one.before) endBy(other, one.latest);
    for (const other of one.tied) endBy(other, one.latest - apart(other, one) + lengthOf(other));
  }
}

/** Back from the task that ends last, each time to the one whose end it had to wait for. */
function chainOf(order: readonly Placed[]): readonly string[] {
  let at: Placed | undefined = order.reduce((last, one) => (one.activity.to > last.activity.to ? one : last));
  const chain: string[] = [];
  while (at !== undefined) {
    chain.unshift(at.activity.id);
    at = at.binding;
  }
  return chain;
}
