/** The cook at the oven while a pizza bakes: looks, turns, pulls the paper, switches the top element. */
import type { BakeWatcher } from './bakeWatcher.ts';
import type { BakeSteps } from './evening.ts';
import type { DoneStep } from './run.ts';

/** s that the door stands open for each; common practice, no source */
const doorOpen = { look: 6, turn: 12, 'pull-parchment': 12 } as const;

const due = 1e-6;

/** Hands at the oven during one bake: `act` is called after every step of the simulation. */
export class Cook {
  readonly done: DoneStep[] = [];
  readonly #watcher: BakeWatcher;
  readonly #steps: BakeSteps;
  /** what has a set time, s after the load, the next one first */
  readonly #plan: { readonly at: number; readonly what: 'turn' | 'look' | 'top-element' }[] = [];
  #doorShuts = -Infinity;
  #topSince: number | undefined;
  #paperUnder: boolean;

  /** @param halfTime s after the load of the turn; undefined when there is none */
  constructor(watcher: BakeWatcher, halfTime: number | undefined) {
    const steps = watcher.oven.evening.pizzas.steps ?? {};
    this.#watcher = watcher;
    this.#steps = steps;
    this.#paperUnder = steps.pullParchment === true && watcher.oven.evening.pizzas.bench === 'parchment';
    if (halfTime !== undefined) this.#plan.push({ at: halfTime, what: 'turn' });
    if (steps.lookAfter !== undefined) this.#plan.push({ at: steps.lookAfter, what: 'look' });
    if (steps.topElementAfter !== undefined)
      this.#plan.push({ at: steps.topElementAfter, what: 'top-element' });
    this.#plan.sort((a, b) => a.at - b.at);
    this.act();
  }

  /** s until something has to be done at the oven */
  get until(): number {
    const now = this.#watcher.seconds;
    const shuts = this.#watcher.oven.run.doorOpen ? this.#doorShuts - now : Infinity;
    return Math.min(shuts, (this.#plan[0]?.at ?? Infinity) - now);
  }

  /** Does what has come due. */
  act(): void {
    const { oven, seconds } = this.#watcher;
    if (oven.run.doorOpen && seconds >= this.#doorShuts - due) oven.run.doorOpen = false;
    while (this.#plan.length > 0 && seconds >= this.#plan[0]!.at - due) {
      const { what } = this.#plan.shift()!;
      if (what === 'top-element') this.topElementOn();
      else this.#open(what);
    }
    if (this.#paperUnder && this.#watcher.baseSet) {
      this.#paperUnder = false;
      oven.pullParchment();
      this.#open('pull-parchment');
    }
  }

  #open(what: keyof typeof doorOpen): void {
    const { oven, seconds } = this.#watcher;
    oven.run.doorOpen = true;
    this.#doorShuts = Math.max(this.#doorShuts, seconds + doorOpen[what]);
    this.done.push({ what, at: oven.run.time, lasts: doorOpen[what] });
  }

  topElementOn(): void {
    const { run } = this.#watcher.oven;
    this.#topSince ??= run.time;
    run.topElementForced = true;
  }

  /** s after everything is done that the pizza is to stay under the top element */
  get topElementAtEnd(): number {
    return this.#steps.topElementAtEnd ?? 0;
  }

  /** The pizza comes out: the oven goes back to its thermostat. */
  leave(): void {
    const { run } = this.#watcher.oven;
    if (this.#topSince !== undefined)
      this.done.push({ what: 'top-element', at: this.#topSince, lasts: run.time - this.#topSince });
    run.topElementForced = false;
    run.doorOpen = false;
  }
}
