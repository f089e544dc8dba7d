/**
 * Works through the evenings that the views ask for, a few at a time on workers of their own, the plan's two always
 * left free. What was worked out is kept; what nobody asks for any more is not begun.
 */
import { useEffect, useMemo } from 'react';
import { create } from 'zustand';
import SimulationWorker from '../simulation.worker.ts?worker';
import { localOffset } from '../words/clock.ts';
import type { Study, StudyJob } from './study.ts';
import type { StudyAnswered, StudyRequest } from '../simulation.worker.ts';

export type Outcome = Study | { readonly ok: 'fault'; readonly fault: string };

/** Who asks, the most urgent first. */
const groups = ['goal', 'table', 'reader', 'advice', 'map'] as const;
export type StudyGroup = (typeof groups)[number];

interface StudiesState {
  readonly outcomes: ReadonlyMap<string, Outcome>;
  readonly wanted: Readonly<Record<StudyGroup, readonly StudyJob[]>>;
  /** groups that were stopped before they were done */
  readonly stopped: ReadonlySet<StudyGroup>;
}

export const useStudies = create<StudiesState>()(() => ({
  outcomes: new Map<string, Outcome>(),
  wanted: { goal: [], table: [], reader: [], advice: [], map: [] },
  stopped: new Set<StudyGroup>(),
}));

const keys = new WeakMap<StudyJob, string>();
/** Jobs that ask the same are the same. */
export function keyOf(job: StudyJob): string {
  const known = keys.get(job) ?? JSON.stringify(job);
  keys.set(job, known);
  return known;
}

/** Outcomes kept at most; the oldest go first. */
const most = 600;
function keep(key: string, outcome: Outcome): void {
  const outcomes = new Map(useStudies.getState().outcomes);
  outcomes.set(key, outcome);
  for (const old of outcomes.keys()) {
    if (outcomes.size <= most) break;
    outcomes.delete(old);
  }
  useStudies.setState({ outcomes });
}

interface Hand {
  readonly worker: Worker;
  /** key of what it works on */
  busy: string | undefined;
}
let hands: readonly Hand[] | undefined;
let id = 0;

function makeHands(): readonly Hand[] {
  // The window itself and the plan need a core each.
  const count = Math.min(3, Math.max(1, navigator.hardwareConcurrency - 1));
  return Array.from({ length: count }, () => {
    const hand: Hand = { worker: new SimulationWorker(), busy: undefined };
    const hear = (outcome: Outcome): void => {
      const key = hand.busy;
      hand.busy = undefined;
      if (key !== undefined) keep(key, outcome);
      work();
    };
    hand.worker.addEventListener('message', ({ data }: MessageEvent<StudyAnswered>) => {
      hear(data.fault === undefined ? data.study : { ok: 'fault', fault: data.fault });
    });
    hand.worker.addEventListener('error', (event) => {
      event.preventDefault();
      hear({ ok: 'fault', fault: event.message || 'The simulation stopped.' });
    });
    return hand;
  });
}

function nextJob(): StudyJob | undefined {
  const { outcomes, wanted, stopped } = useStudies.getState();
  const busy = new Set((hands ?? []).map((hand) => hand.busy));
  return groups
    .filter((group) => !stopped.has(group))
    .flatMap((group) => wanted[group])
    .find((job) => !outcomes.has(keyOf(job)) && !busy.has(keyOf(job)));
}

function work(): void {
  for (const hand of (hands ??= makeHands())) {
    if (hand.busy !== undefined) continue;
    const job = nextJob();
    if (job === undefined) return;
    hand.busy = keyOf(job);
    id += 1;
    const now = Date.now();
    hand.worker.postMessage({ id, now, offsetMinutes: localOffset(now), job } satisfies StudyRequest);
  }
}

function want(group: StudyGroup, jobs: readonly StudyJob[]): void {
  const { wanted, stopped } = useStudies.getState();
  const rest = new Set(stopped);
  rest.delete(group);
  useStudies.setState({ wanted: { ...wanted, [group]: jobs }, stopped: rest });
  if (jobs.length > 0) work();
}

export function undone(group: StudyGroup): number {
  const { outcomes, wanted } = useStudies.getState();
  return wanted[group].filter((job) => !outcomes.has(keyOf(job))).length;
}

/** Begins nothing more of what is not done. Returns whether there was anything to stop. */
export function stopStudies(): boolean {
  const running = groups.filter((group) => undone(group) > 0 && !useStudies.getState().stopped.has(group));
  if (running.length === 0) return false;
  useStudies.setState({ stopped: new Set([...useStudies.getState().stopped, ...running]) });
  return true;
}
export function goOn(group: StudyGroup): void {
  const stopped = new Set(useStudies.getState().stopped);
  stopped.delete(group);
  useStudies.setState({ stopped });
  work();
}

export interface Studied {
  /** in the order of the jobs; undefined for what is not there yet */
  readonly outcomes: readonly (Outcome | undefined)[];
  readonly done: number;
  readonly stopped: boolean;
}

/** Asks for these while the view that wants them is open. The list has to stay the same one while it says the same. */
export function useStudied(group: StudyGroup, jobs: readonly StudyJob[]): Studied {
  useEffect(() => {
    want(group, jobs);
    return () => {
      // The view that opens asks before the one that closes lets go: what it asked for stays.
      if (useStudies.getState().wanted[group] === jobs) want(group, []);
    };
  }, [group, jobs]);
  const all = useStudies((state) => state.outcomes);
  const stopped = useStudies((state) => state.stopped.has(group));
  return useMemo(() => {
    const outcomes = jobs.map((job) => all.get(keyOf(job)));
    return { outcomes, done: outcomes.filter((one) => one !== undefined).length, stopped };
  }, [all, jobs, stopped]);
}
