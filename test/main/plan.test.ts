import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { TerminalIo } from '../../main/terminal/plan.ts';
import type { PlanAnswer } from '../../physics/evening/answer.ts';
import { writeInstant } from '../../physics/evening/clock.ts';
import { demoIds, demos, saturday } from '../../physics/evening/demos.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import { writePlan } from '../../physics/evening/planText.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';
import { tempFolder } from '../support/tempFolder.ts';
import { morning, plan, quickPlan } from './planCommand.ts';

/** The evening that a command line would have planned. */
async function evening(argv: readonly string[], now = morning, offsetMinutes = 60): Promise<Evening> {
  const seen: Evening[] = [];
  const { err } = await plan(argv, {
    now,
    offsetMinutes,
    planFromFile: (file, context) => {
      const read = readPlanObject(file, context);
      if (!read.ok) return read;
      seen.push(read.evening);
      return { ok: false, problems: [] };
    },
  });
  if (seen.length !== 1) throw new Error(err);
  return seen[0]!;
}

describe('what is planned', () => {
  it('without FILE the first built-in evening, on its own day while that lies ahead', async () => {
    const e = await evening([]);
    expect(e.title).toBe(saturday.title);
    expect(writeInstant(e.anchor.time)).toBe('2026-01-31T19:30:00+01:00');
    const later = await evening([], morning + 300 * 86_400_000, -300);
    expect(writeInstant(later.anchor.time)).toBe('2026-11-27T19:30:00-05:00');
  });
  it.each(demoIds)('the built-in evening %s by name', async (id) => {
    expect((await evening(['--example', id])).title).toBe(demos[id].title);
    expect((await evening([`--example=${id}`])).title).toBe(demos[id].title);
  });
  it('a file, with fields set over it, in any order and spelling', async () => {
    const path = join(tempFolder(), 'my plan.json');
    await writeFile(path, writePlan(demos.clay));
    const e = await evening(['--set', 'plate.thickness=12.7 mm', path, '--set=pizzas.count=2', '--json']);
    expect(e.title).toBe(demos.clay.title);
    expect(e.plate.thickness).toBeCloseTo(0.0127, 12);
    expect(e.pizzas.count).toBe(2);
    expect((await evening(['--', path])).title).toBe(demos.clay.title);
  });
  it('with advice for a goal and on the clock of the reader, when asked', async () => {
    const asked: unknown[] = [];
    const readersClock = (): number => 60;
    const planFromFile: TerminalIo['planFromFile'] = (file, context) => {
      asked.push(context);
      return quickPlan(file, context);
    };
    await plan(['--goal', 'sooner', '--advice', '--json'], { readersClock, planFromFile });
    await plan([], { planFromFile });
    expect(asked).toEqual([
      { now: morning, offsetMinutes: 60, readersClock, advice: true, goal: 'sooner' },
      { now: morning, offsetMinutes: 60, advice: false },
    ]);
  });
  it('takes fields together that would not pass one by one', async () => {
    const e = await evening(['--set', 'plate.width=55 cm', '--set', 'oven.cavity.width=60 cm']);
    expect(e.plate.width).toBeCloseTo(0.55, 12);
  });
  it('keeps the signs of equality of a value', async () => {
    expect((await evening(['--set', 'title=a = b'])).title).toBe('a = b');
  });
});

describe('what is printed', () => {
  it('the page, in the units asked for, and nothing on standard error', async () => {
    const { status, out, err } = await plan([]);
    expect([status, err]).toEqual([0, '']);
    expect(out).toContain('Switch the oven on at 18:34');
    expect((await plan(['--units', 'us'])).out).toContain('Switch the oven on at 6:34 pm');
  });
  it('one JSON object with --json, whatever the units', async () => {
    const { status, out, err } = await plan(['--json', '--units', 'us', '--set', 'oven.setpoint=270 degC']);
    expect([status, err]).toEqual([0, '']);
    const answer = JSON.parse(out) as PlanAnswer;
    expect(answer.preheat.plateTopC).toBe(250);
    expect(answer.warnings.map(({ code }) => code)).toEqual(['setpoint-above-highest']);
    expect(answer.assumed.map(({ path }) => path)).toContain('oven.startTemperature');
  });
  it('the help, within 80 columns, and nothing is planned', async () => {
    for (const word of ['--help', '-h']) {
      const { status, out, err } = await plan([word], {
        planFromFile: () => {
          throw new Error('planned');
        },
      });
      expect([status, err]).toEqual([0, '']);
      for (const option of ['--set', '--example', '--units', '--json', '--help'])
        expect(out).toContain(option);
      expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    }
  });
  it('our own fault as one line without a stack, with status 1', async () => {
    const { status, out, err } = await plan([], {
      planFromFile: () => {
        throw new Error('the solver\n  did not converge');
      },
    });
    expect([status, out]).toEqual([1, '']);
    expect(err).toBe('This is our fault, not yours: the solver did not converge\n');
  });
});
