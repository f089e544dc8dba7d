import { beforeAll, describe, expect, it } from 'vitest';
import type { Task } from '../../../physics/evening/answer.ts';
import { saturday } from '../../../physics/evening/demos.ts';
import { planFromFile } from '../../../physics/evening/planEvening.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import { alarmsOf } from '../../../physics/tonight/alarms.ts';
import { courseOf, movedBetween, stageOf, type Course } from '../../../physics/tonight/course.ts';
import {
  readLog,
  takenBack,
  writeEntry,
  type Happened,
  type LogEntry,
} from '../../../physics/tonight/log.ts';

let tasks: readonly Task[];

beforeAll(() => {
  const planned = planFromFile(saturday, { now: 0, band: false, advice: false });
  if (!planned.ok) throw new Error('the built-in evening');
  tasks = planned.answer.tasks;
}, 30_000);

const minute = 60_000;
const taskAt = (id: string): { readonly from: number; readonly to: number } => {
  const { from, to } = tasks.find((task) => task.id === id)!;
  return { from: Date.parse(from), to: Date.parse(to) };
};
const course = (log: readonly LogEntry[], now: number, preheatSeconds?: number): Course =>
  courseOf({ tasks, log, now, preheatSeconds });
const step = ({ steps }: Course, id: string) => steps.find((s) => s.id === id)!;
const entry = (at: number, happened: Happened): LogEntry => ({ at, ...happened });
const done = (id: string, at: number): LogEntry => entry(at, { what: 'done', step: id });

/** Everything done on time, up to a moment. */
function onTime(until: number): LogEntry[] {
  return tasks
    .filter(({ id, lane }) => lane === 'hands' || id === 'preheat' || id.startsWith('bake-'))
    .map(({ id }) => done(id, id === 'preheat' ? taskAt(id).from : taskAt(id).to))
    .filter(({ at }) => at <= until);
}

describe('an evening that goes as planned', () => {
  it('keeps every hour of the plan, before it begins and while it runs', () => {
    const early = course([], taskAt('hands-mix').from - 60 * minute);
    for (const { from, to, planned, status } of early.steps) {
      expect([from, to]).toEqual([planned.from, planned.to]);
      expect(status).toBe('ahead');
    }
    const at = taskAt('bake-2').from + minute;
    const running = course(onTime(at), at);
    for (const { id, from, to, planned } of running.steps)
      expect([id, Math.abs(from - planned.from) <= minute, Math.abs(to - planned.to) <= minute]).toEqual([
        id,
        true,
        true,
      ]);
    expect(running.now!.id).toBe('bake-2');
    expect(running.next!.id).toMatch(/^(turn-2|shape-3)$/u);
  });

  it('says what to do now and what comes next', () => {
    const before = taskAt('preheat').from;
    const due = course(onTime(before - 1), before + minute);
    expect(due.now).toMatchObject({ id: 'preheat', status: 'due' });
    const on = course([...onTime(before - 1), done('preheat', before + minute)], before + 2 * minute);
    expect(step(on, 'preheat').status).toBe('running');
    expect(step(on, 'preheat').to - step(on, 'preheat').from).toBe(
      taskAt('preheat').to - taskAt('preheat').from,
    );
  });
});

describe('what happens otherwise', () => {
  it('an oven switched on late moves the first load and all after it, and says by how much', () => {
    const on = taskAt('preheat').from;
    const before = course(onTime(on - 1), on - minute);
    const late = [...onTime(on - 1), done('preheat', on + 10 * minute)];
    const after = course(late, on + 10 * minute);
    expect(step(after, 'load-1').from - taskAt('load-1').from).toBe(10 * minute);
    const moved = movedBetween(before, after);
    expect(moved.find(({ id }) => id === 'bake-4')!.seconds).toBe(600);
    expect(moved.map(({ id }) => id)).not.toContain('rest');
  });

  it('readings that say the plate takes longer move the load by that', () => {
    const on = taskAt('preheat').from;
    const usual = (taskAt('preheat').to - on) / 1000;
    const log = [...onTime(on - 1), done('preheat', on)];
    const after = course(log, on + minute, usual + 480);
    expect(step(after, 'load-1').from - taskAt('load-1').from).toBe(480_000);
  });

  it('a base is shaped just before its load, however late the plate is', () => {
    const on = taskAt('preheat').from;
    const late = course([...onTime(on - 1), done('preheat', on + 10 * minute)], on + 10 * minute);
    for (const n of [1, 2, 4])
      expect([n, step(late, `load-${n}`).from - step(late, `shape-${n}`).from]).toEqual([
        n,
        taskAt(`load-${n}`).from - taskAt(`shape-${n}`).from,
      ]);
    expect(step(late, 'hands-prepare').from).toBe(taskAt('hands-prepare').from);
  });

  it('a pizza that came out before it was turned is not turned any more', () => {
    const at = taskAt('turn-1').from - minute;
    const out = course([...onTime(at), done('bake-1', at)], at + 10 * minute);
    expect(step(out, 'turn-1')).toMatchObject({ status: 'skipped', to: at });
    expect(out.now!.id).not.toBe('turn-1');
    const before = course([...onTime(at), done('turn-1', at), done('bake-1', at + minute)], at + 2 * minute);
    expect(step(before, 'turn-1').status).toBe('done');
  });

  it('one more minute in the oven moves what follows, and a pizza taken out early lets the next in sooner', () => {
    const at = taskAt('bake-1').to - minute;
    const log = onTime(at);
    const before = course(log, at);
    const more = course([...log, entry(at, { what: 'longer', step: 'bake-1', seconds: 60 })], at);
    expect(step(more, 'bake-1').to - step(before, 'bake-1').to).toBe(minute);
    expect(step(more, 'load-2').from - step(before, 'load-2').from).toBe(minute);
    const out = course([...log, done('bake-1', at)], at);
    expect(step(out, 'recover-2').from).toBe(at);
    expect(step(out, 'bake-2').from).toBeLessThan(step(before, 'bake-2').from);
  });

  it('what nobody confirms is not over: it is due, and what waits for it waits', () => {
    const at = taskAt('bake-1').to;
    const log = onTime(at - 1);
    const late = course(log, at + 3 * minute);
    expect(step(late, 'bake-1')).toMatchObject({ status: 'due', to: at + 3 * minute, calls: at });
    expect(step(late, 'recover-2').from).toBe(at + 3 * minute);
    expect(late.now!.id).toBe('bake-1');
  });

  it('a skipped step takes no time', () => {
    const at = taskAt('turn-1').from;
    const skipped = course([...onTime(at - 1), entry(at, { what: 'skipped', step: 'turn-1' })], at);
    expect(step(skipped, 'turn-1')).toMatchObject({ status: 'skipped', to: at });
    expect(step(skipped, 'bake-1').to).toBe(taskAt('bake-1').to);
  });

  it('guests half an hour late: oven and pizzas wait, the dough does not; too late for the dough is said', () => {
    const at = taskAt('hands-ball').to;
    const later = (minutes: number): Course =>
      course([...onTime(at), entry(at, { what: 'guestsLate', seconds: 60 * minutes })], at);
    const half = later(30);
    expect(step(half, 'preheat').from - taskAt('preheat').from).toBe(30 * minute);
    expect(step(half, 'bake-4').to - taskAt('bake-4').to).toBe(30 * minute);
    expect(step(half, 'rest').to).toBe(taskAt('rest').to);
    expect(half.doughPast).toBeUndefined();
    expect(later(9 * 60).doughPast).toBe(taskAt('ready').to);
    // Once the oven is on it stays on: only the pizzas wait.
    const on = taskAt('preheat').from;
    const hot = course([...onTime(on), entry(on, { what: 'guestsLate', seconds: 1200 })], on + minute);
    expect(step(hot, 'preheat').from).toBe(on);
    expect(step(hot, 'load-1').from - taskAt('load-1').from).toBe(20 * minute);
  });
});

describe('bases baked ahead', () => {
  it('call for the oven and for hands on their day; wrapped late, they hold nobody up', () => {
    const made = planFromFile(
      { ...saturday, pizzas: { ...saturday.pizzas, count: 1, parBake: { keep: 'refrigerator' } } },
      { now: 0, band: false, advice: false },
    );
    if (!made.ok) throw new Error('bases baked ahead');
    const { tasks: all } = made.answer;
    const at = (id: string): number => Date.parse(all.find((task) => task.id === id)!.from);
    const before = courseOf({ tasks: all, log: [], now: at('ahead-preheat') - minute });
    const titles = alarmsOf(before).map(({ title }) => title);
    expect(titles).toContain('Oven on for the bases');
    expect(titles).toContain('Bake the bases');
    const now = at('hands-ahead') + 90 * minute;
    const late = courseOf({
      tasks: all,
      log: ['hands-mix', 'hands-ball', 'hands-ahead'].map((id) => done(id, now)),
      now,
    });
    expect(step(late, 'preheat').from).toBe(at('preheat'));
    expect(step(late, 'load-1').from).toBe(at('load-1'));
    expect(late.doughPast).toBeUndefined();
  });
});

describe('the clock on the wall', () => {
  const at = () => taskAt('bake-1').from + 2 * minute;

  it('three hours of sleep: what came due is due since then, nothing is lost', () => {
    const late = course(onTime(at()), at() + 180 * minute);
    expect(step(late, 'bake-1')).toMatchObject({ status: 'due', calls: taskAt('bake-1').to });
    expect(step(late, 'bake-4').status).toBe('ahead');
  });

  it('set back by an hour in mid-bake: the bake ends when it would have, by the new clock', () => {
    const log = [...onTime(at()), entry(at() - 60 * minute, { what: 'clockMoved', seconds: -3600 })];
    const after = course(log, at() - 60 * minute);
    expect(step(after, 'bake-1').to).toBe(taskAt('bake-1').to - 60 * minute);
    expect(step(after, 'bake-1').status).toBe('running');
  });

  it('a reload gives the same course: the file holds all of it', () => {
    const log = [
      entry(at(), { what: 'begun' }),
      ...onTime(at()),
      entry(at(), { what: 'longer', step: 'bake-1', seconds: 60 }),
      entry(at(), { what: 'guestsLate', seconds: -90 }),
      entry(at(), { what: 'reading', place: 'plateTop', temperature: 523.15, instrument: 'infrared' }),
      entry(at(), { what: 'words', pizza: 1, words: 'crisp, a little pale', lightness: 62 }),
      entry(at(), { what: 'heard', step: 'bake-1' }),
    ];
    const file = { ...saturday, tonight: { log: log.map((one) => writeEntry(one, 60)) } };
    const text = JSON.parse(JSON.stringify(file)) as typeof file;
    expect(readPlanObject(text, { now: 0 }).ok).toBe(true);
    const again = readLog(text.tonight.log);
    expect(again).toEqual(log.map((one) => ({ ...one, at: Math.floor(one.at / 1000) * 1000 })));
    expect(course(again, at()).now!.id).toBe(course(log, at()).now!.id);
  });

  it.each([
    ['spring', '2026-03-28T22:00:00+01:00', '+01:00'],
    ['autumn', '2026-10-24T22:00:00+02:00', '+02:00'],
  ])('a rise of ten hours over the night of the %s change lasts ten hours', (_, mix, offset) => {
    const from = Date.parse(mix);
    const text = (ms: number): string =>
      new Date(ms + (offset === '+01:00' ? 1 : 2) * 3_600_000).toISOString().replace(/\.\d+Z$/u, offset);
    const night: Task[] = [
      {
        id: 'hands-mix',
        lane: 'hands',
        name: 'Mix',
        from: text(from),
        to: text(from + 15 * minute),
        needs: [],
        waitsFor: [],
      },
      {
        id: 'rise',
        lane: 'dough',
        name: 'Rise',
        from: text(from + 15 * minute),
        to: text(from + 615 * minute),
        needs: [],
        waitsFor: ['hands-mix'],
      },
    ];
    const late = courseOf({
      tasks: night,
      log: [done('hands-mix', from + 20 * minute)],
      now: from + 21 * minute,
    });
    expect(step(late, 'rise').to - (from + 20 * minute)).toBe(600 * minute);
  });
});

describe('taking back', () => {
  const what = (log: readonly LogEntry[]): readonly string[] => {
    const gone = takenBack(log);
    return log.filter((_, index) => !gone.has(index)).map((one) => one.what);
  };

  it('drops the last thing that was said, not what was heard or the clock did after it', () => {
    const log = [
      entry(0, { what: 'begun' }),
      done('hands-mix', -minute),
      entry(minute, { what: 'longer', step: 'rest', seconds: 60 }),
      entry(minute, { what: 'heard', step: 'preheat' }),
      entry(minute, { what: 'clockMoved', seconds: -60 }),
    ];
    expect(what(log)).toEqual(['begun', 'done', 'heard', 'clockMoved']);
  });

  it('drops all of what was left out with one key', () => {
    const left = ['load-4', 'bake-4', 'cut-4'].map((id) => entry(minute, { what: 'skipped', step: id }));
    const turn = entry(0, { what: 'skipped', step: 'turn-3' });
    expect(what([entry(-minute, { what: 'begun' }), turn, ...left])).toEqual(['begun', 'skipped']);
  });

  it('drops the beginning with all that was taken to have gone as planned, and no evening before it', () => {
    const words = entry(0, { what: 'words', pizza: 1, words: 'crisp', lightness: undefined });
    const begun = [entry(5, { what: 'begun' }), done('hands-mix', 1), done('hands-ball', 5)];
    expect(what([entry(0, { what: 'begun' }), words, ...begun])).toEqual(['begun', 'words']);
    expect(what([words])).toEqual(['words']);
  });
});

describe('where an evening stands', () => {
  const stage = (log: readonly LogEntry[], now: number) => stageOf(course(log, now), log, now);
  it('before it is begun, while something is left of it, and over', () => {
    const end = taskAt('cut-4').to;
    expect(stage([], end)).toBe('before');
    expect(stage(onTime(end - 2 * minute), end + minute)).toBe('running');
    expect(stage(onTime(end), end + minute)).toBe('over');
  });
  it('over, and its plan put on a day to come: before that one', () => {
    const end = taskAt('cut-4').to;
    const aWeekOn = (text: string): string => new Date(Date.parse(text) + 7 * 24 * 60 * minute).toISOString();
    const log = onTime(end);
    const next = courseOf({
      tasks: tasks.map((task) => ({ ...task, from: aWeekOn(task.from), to: aWeekOn(task.to) })),
      log,
      now: end + minute,
    });
    expect(stageOf(next, log, end + minute)).toBe('before');
  });
});

describe('a log that no plan may have', () => {
  it.each([
    [{ at: 'noon', what: 'done', step: 'rise' }, 'tonight.log.0.at'],
    [{ at: '2026-01-31T19:00:00+01:00', what: 'eaten' }, 'tonight.log.0.what'],
    [{ at: '2026-01-31T19:00:00+01:00', what: 'done' }, 'tonight.log.0'],
    [{ at: '2026-01-31T19:00:00+01:00', what: 'longer', step: 'bake-1', by: '40 K' }, 'tonight.log.0.by'],
    [
      { at: '2026-01-31T19:00:00+01:00', what: 'reading', place: 'chimney', temperature: '200 degC' },
      'tonight.log.0.place',
    ],
    [{ at: '2026-01-31T19:00:00+01:00', what: 'words', pizza: 1, words: 'a\nb' }, 'tonight.log.0.words'],
    [{ at: '2026-01-31T19:00:00+01:00', what: 'done', step: 'rise', who: 'me' }, 'tonight.log.0.who'],
  ])('%j', (logEntry, path) => {
    const read = readPlanObject({ ...saturday, tonight: { log: [logEntry] } }, { now: 0 });
    expect(read.ok ? [] : read.problems.map((problem) => problem.path)).toContain(path);
  });
});
