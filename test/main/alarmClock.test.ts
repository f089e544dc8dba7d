import { describe, expect, it } from 'vitest';
import { AlarmClock, type KeptAlarm, type Ticking } from '../../main/alarmClock.ts';

const minute = 60_000;
const start = Date.UTC(2026, 0, 31, 18);

/** A clock that a test moves; waits are by the counted time, as a system's are, which stands still in sleep. */
function fakeClock() {
  let wall = start;
  let counted = 0;
  let waits: { readonly run: () => void; readonly until: number }[] = [];
  const longest: number[] = [];
  const clock: Ticking = {
    now: () => wall,
    wait: (run, milliseconds) => {
      longest.push(milliseconds);
      const one = { run, until: counted + milliseconds };
      waits.push(one);
      return {
        cancel: () => {
          waits = waits.filter((other) => other !== one);
        },
      };
    },
  };
  const pass = (milliseconds: number): void => {
    const end = counted + milliseconds;
    for (;;) {
      const due = waits.filter(({ until }) => until <= end).sort((a, b) => a.until - b.until)[0];
      if (due === undefined) break;
      waits = waits.filter((other) => other !== due);
      wall += due.until - counted;
      counted = due.until;
      due.run();
    }
    wall += end - counted;
    counted = end;
  };
  return {
    clock,
    pass,
    longest,
    /** the wall goes on, nothing is counted */
    sleep: (milliseconds: number): void => {
      wall += milliseconds;
    },
    waiting: () => waits.length,
  };
}

const alarm = (step: string, minutes: number): KeptAlarm => ({
  step,
  at: start + minutes * minute,
  title: step,
  body: '',
});

function watched() {
  const time = fakeClock();
  const rang: string[] = [];
  const alarms = new AlarmClock(
    ({ step }) => rang.push(`${step} ${(time.clock.now() - start) / minute}`),
    time.clock,
  );
  return { ...time, rang, alarms };
}

describe('the alarm clock of the shell', () => {
  it('rings each alarm once, at its instant, however long it is away', () => {
    const { alarms, pass, rang, longest } = watched();
    alarms.set([alarm('bake-1', 5), alarm('turn-2', 9), alarm('hands-ball', 60 * 24 * 40)]);
    pass(60 * 24 * 41 * minute);
    expect(rang).toEqual(['bake-1 5', 'turn-2 9', 'hands-ball 57600']);
    // Longer than 2^31 - 1 ms a wait of the system ends at once.
    expect(Math.max(...longest)).toBeLessThanOrEqual(3_600_000);
  });

  it('after three hours of sleep rings what came due, once, when it wakes', () => {
    const { alarms, pass, sleep, rang } = watched();
    alarms.set([alarm('bake-1', 5), alarm('turn-2', 9)]);
    pass(minute);
    sleep(180 * minute);
    pass(6 * minute);
    expect(rang.map((text) => text.split(' ')[0])).toEqual(['bake-1', 'turn-2']);
  });

  it('told the same list again it rings nothing twice; one more minute rings again', () => {
    const { alarms, pass, rang } = watched();
    alarms.set([alarm('bake-1', 5)]);
    pass(6 * minute);
    alarms.set([alarm('bake-1', 5)]);
    pass(minute);
    alarms.set([alarm('bake-1', 8)]);
    pass(5 * minute);
    expect(rang).toEqual(['bake-1 5', 'bake-1 8']);
  });

  it('leaves what was due before it heard of it to the window, and stops with an empty list', () => {
    const { alarms, pass, rang, waiting } = watched();
    alarms.set([alarm('bake-1', -3), alarm('turn-2', 9)]);
    pass(minute);
    expect(rang).toEqual([]);
    alarms.set([]);
    expect(waiting()).toBe(0);
    pass(60 * minute);
    expect(rang).toEqual([]);
  });
});
