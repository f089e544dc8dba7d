/** Calls the plan command without a process. */
import { readText } from '../../main/files/readText.ts';
import { runPlan, type ExitStatus, type TerminalIo } from '../../main/terminal/plan.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';
import { fixture } from './planFixture.ts';

export interface Ran {
  readonly status: ExitStatus;
  readonly out: string;
  readonly err: string;
}

/** 2026-01-31T08:00+01:00: on the day of the first built-in evening, before it. */
export const morning = 1_769_842_800_000;

/** Reads the plan for certain, and answers with the fixture instead of a simulation. */
export const quickPlan: TerminalIo['planFromFile'] = (file, context) => {
  const read = readPlanObject(file, context);
  if (!read.ok) return read;
  const trace = new Float64Array(0);
  return {
    ok: true,
    evening: read.evening,
    answer: { ...fixture, title: read.evening.title, assumed: read.assumed, warnings: read.warnings },
    run: { trace } as never,
  };
};

export async function plan(argv: readonly string[], other: Partial<TerminalIo> = {}): Promise<Ran> {
  let out = '';
  let err = '';
  const status = await runPlan(argv, {
    readFile: async (path) => (await readText(path)).text,
    stdout: (text) => (out += text),
    stderr: (text) => (err += text),
    now: morning,
    offsetMinutes: 60,
    planFromFile: quickPlan,
    ...other,
  });
  return { status, out, err };
}
