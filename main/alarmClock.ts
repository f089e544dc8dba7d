/** Keeps the alarms of the running evening for the window, which is held back while it is hidden. */
import { waitFor } from '../physics/tonight/clockWatch.ts';

export interface KeptAlarm {
  readonly step: string;
  /** ms since 1970-01-01T00:00Z */
  readonly at: number;
  readonly title: string;
  readonly body: string;
}

/** What it takes of the system, so that a test can put its own clock there. */
export interface Ticking {
  readonly now: () => number;
  readonly wait: (run: () => void, milliseconds: number) => { cancel: () => void };
}

const systemClock: Ticking = {
  now: () => Date.now(),
  wait: (run, milliseconds) => {
    const timer = setTimeout(run, milliseconds);
    // Alarms keep no process alive whose window is gone.
    timer.unref();
    return {
      cancel: () => {
        clearTimeout(timer);
      },
    };
  },
};

/** ms by which an alarm may move and still be the one that rang */
const same = 10_000;

/**
 * Rings each alarm once, at its instant or, after sleep, as soon as it looks again. Long waits are taken in pieces, so
 * that a moved clock is noticed within the hour and no wait is longer than the system's longest.
 */
export class AlarmClock {
  readonly #ring: (alarm: KeptAlarm) => void;
  readonly #clock: Ticking;
  #alarms: readonly KeptAlarm[] = [];
  #rang = new Map<string, number>();
  #waiting: { cancel: () => void } | undefined;

  constructor(ring: (alarm: KeptAlarm) => void, clock: Ticking = systemClock) {
    this.#ring = ring;
    this.#clock = clock;
  }

  /** These and no others. What was due before the list came is the window's to tell as missed. */
  set(alarms: readonly KeptAlarm[]): void {
    const now = this.#clock.now();
    this.#alarms = alarms;
    this.#rang = new Map([...this.#rang].filter(([step]) => alarms.some((alarm) => alarm.step === step)));
    for (const { step, at } of alarms) if (at <= now && !this.#rang.has(step)) this.#rang.set(step, at);
    this.#next();
  }

  #due(now: number): readonly KeptAlarm[] {
    return this.#alarms.filter(({ step, at }) => {
      const rang = this.#rang.get(step);
      return at <= now && (rang === undefined || Math.abs(at - rang) > same);
    });
  }

  #next(): void {
    this.#waiting?.cancel();
    this.#waiting = undefined;
    const now = this.#clock.now();
    const ahead = this.#alarms.filter(({ at }) => at > now).map(({ at }) => at);
    if (ahead.length === 0) return;
    this.#waiting = this.#clock.wait(
      () => {
        for (const alarm of this.#due(this.#clock.now())) {
          this.#rang.set(alarm.step, alarm.at);
          this.#ring(alarm);
        }
        this.#next();
      },
      waitFor(Math.min(...ahead), now),
    );
  }
}
