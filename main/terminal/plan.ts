/** `plan`: a plan file (or a built-in evening) to the answer, as text for the fridge or as JSON for scripts. */
import type { OffsetAt } from '../../physics/evening/clock.ts';
import { demoIds, upcoming } from '../../physics/evening/demos.ts';
import type { PlanContext, Planned } from '../../physics/evening/planEvening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import { setPath } from '../../physics/evening/planPath.ts';
import { hostileProblems, shapeProblems } from '../../physics/evening/planShape.ts';
import { parsePlanText, type TextParsed } from '../../physics/evening/planText.ts';
import { wording, type Problem } from '../../physics/evening/problem.ts';
import { messageOf } from '../files/disk.ts';
import { FileProblem } from '../files/readText.ts';
import { planHelp, readArguments, type Command, type Request } from './arguments.ts';
import { fridgeText } from './fridge.ts';

/** All that the command touches, so that it can be called without a process. */
export interface TerminalIo {
  /** rejects with a FileProblem when there is nothing to read */
  readonly readFile: (path: string) => Promise<string>;
  readonly stdout: (text: string) => void;
  readonly stderr: (text: string) => void;
  /** ms since 1970-01-01T00:00Z, and what the wall clock adds to it */
  readonly now: number;
  readonly offsetMinutes: number;
  /** the same at other moments; absent for a clock that is never put forward or back */
  readonly readersClock?: OffsetAt;
  readonly planFromFile: (file: unknown, context: PlanContext) => Planned;
}

/** Done; our fault; the input was wrong. */
export type ExitStatus = 0 | 1 | 2;

const oneLine = (text: string): string => text.replaceAll(/\s+/gu, ' ');

/** The file with what `--set` puts in its place. A file of the wrong shape is refused before it is changed. */
function changed(file: unknown, sets: Request['sets']): TextParsed {
  if (sets.length === 0) return { ok: true, file };
  const unfit = [...hostileProblems(file), ...shapeProblems(file)];
  if (unfit.length > 0) return { ok: false, problems: unfit };
  const problems: Problem[] = [];
  let result = file as PlanFile;
  for (const { path, text } of sets) {
    const set = setPath(result, path, text);
    if (set.ok) result = set.file;
    else problems.push(set.problem);
  }
  return problems.length === 0 ? { ok: true, file: result } : { ok: false, problems };
}

/** The plan file that a request speaks of, with what it sets. */
async function fileOf(request: Request, io: TerminalIo): Promise<TextParsed> {
  const parsed: TextParsed =
    request.file === undefined
      ? {
          ok: true,
          file: upcoming(request.example ?? demoIds[0]!, io.now, io.offsetMinutes, io.readersClock),
        }
      : parsePlanText(await io.readFile(request.file));
  return parsed.ok ? changed(parsed.file, request.sets) : parsed;
}

/** Tells the problems of an input, one line each. */
export function refuse(problems: readonly Problem[], io: TerminalIo): ExitStatus {
  io.stderr(problems.map((problem) => `${wording(problem)}\n`).join(''));
  return 2;
}

/** Runs a command so that nothing it throws shows a stack trace. */
async function guarded(io: TerminalIo, command: () => Promise<ExitStatus>): Promise<ExitStatus> {
  try {
    return await command();
  } catch (error) {
    if (error instanceof FileProblem) {
      io.stderr(`${oneLine(error.message)}\n`);
      return 2;
    }
    io.stderr(`This is our fault, not yours: ${oneLine(messageOf(error))}\n`);
    return 1;
  }
}

/** What a command is called with. */
interface Called {
  readonly request: Request;
  /** the plan file as it was read; of its shape nothing is known */
  readonly file: unknown;
}

/**
 * Runs a command on the plan file that its arguments name: reads both, tells what is wrong with them or how it is used.
 *
 * @param needs what the request has to hold beside; nothing: how the command is used is told
 */
export function commanded<Needed>(
  argv: readonly string[],
  io: TerminalIo,
  { command, help }: { readonly command: Command; readonly help: string },
  needs: (request: Request) => Needed | undefined,
  run: (called: Called, needed: Needed) => ExitStatus | Promise<ExitStatus>,
): Promise<ExitStatus> {
  return guarded(io, async () => {
    const asked = readArguments(argv, command);
    if (!asked.ok) return refuse(asked.problems, io);
    const { request } = asked;
    const needed = needs(request);
    if (request.help || needed === undefined) {
      io.stdout(help);
      return 0;
    }
    const parsed = await fileOf(request, io);
    return parsed.ok ? run({ request, file: parsed.file }, needed) : refuse(parsed.problems, io);
  });
}

/** For a command that needs nothing beside a plan. */
export const nothingMore = (): true => true;

/** Runs the command. Data goes to `stdout`, everything else to `stderr`. */
export function runPlan(argv: readonly string[], io: TerminalIo): Promise<ExitStatus> {
  return commanded(argv, io, { command: 'plan', help: planHelp }, nothingMore, ({ request, file }) => {
    const planned = io.planFromFile(file, {
      now: io.now,
      offsetMinutes: io.offsetMinutes,
      ...(io.readersClock && { readersClock: io.readersClock }),
      advice: request.advice,
      ...(request.goal && { goal: request.goal }),
    });
    if (!planned.ok) return refuse(planned.problems, io);
    io.stdout(
      request.json ? `${JSON.stringify(planned.answer)}\n` : fridgeText(planned.answer, request.units),
    );
    return 0;
  });
}
