/** `handout`: a planned evening as files for the printer, the recipe, the calendar and other programs. */
import type { OffsetAt } from '../../physics/evening/clock.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import { factsOf } from '../../physics/handout/facts.ts';
import { handoutIds, handouts } from '../../physics/handout/files.ts';
import type { NamedText } from '../files/writeHandouts.ts';
import { handoutHelp, readArguments } from './arguments.ts';
import { fileOf, guarded, refuse, type ExitStatus, type TerminalIo } from './plan.ts';

export interface HandoutIo extends TerminalIo {
  /** the clock on this machine's wall */
  readonly readersClock: OffsetAt;
  /** rejects with a FileProblem where the folder cannot be written */
  readonly write: (folder: string, files: readonly NamedText[]) => Promise<readonly string[]>;
}

/** Runs the command. Nothing is written unless everything could be made. */
export function runHandout(argv: readonly string[], io: HandoutIo): Promise<ExitStatus> {
  return guarded(io, async () => {
    const asked = readArguments(argv, 'handout');
    if (!asked.ok) return refuse(asked.problems, io);
    const { request } = asked;
    if (request.help || request.out === undefined) {
      io.stdout(handoutHelp);
      return 0;
    }
    const { now, offsetMinutes, readersClock } = io;
    const parsed = await fileOf(request, io);
    if (!parsed.ok) return refuse(parsed.problems, io);
    const planned = io.planFromFile(parsed.file, { now, offsetMinutes, readersClock, advice: false });
    if (!planned.ok) return refuse(planned.problems, io);
    const { units, paper } = request;
    // What has been planned is a plan.
    const facts = factsOf(planned, parsed.file as PlanFile, { units, paper, now, readersClock });
    const files = handoutIds.map((id) => ({ name: handouts[id].name, text: handouts[id].make(facts) }));
    const written = await io.write(request.out, files);
    io.stdout(written.map((path) => `${path}\n`).join(''));
    return 0;
  });
}
