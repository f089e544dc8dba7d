/** `handout`: a planned evening as files for the printer, the recipe, the calendar and other programs. */
import type { OffsetAt } from '../../physics/evening/clock.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import { factsOf } from '../../physics/handout/facts.ts';
import { handoutIds, handouts } from '../../physics/handout/files.ts';
import type { NamedText } from '../files/writeHandouts.ts';
import { handoutHelp } from './arguments.ts';
import { commanded, refuse, type ExitStatus, type TerminalIo } from './plan.ts';

export interface HandoutIo extends TerminalIo {
  /** the clock on this machine's wall */
  readonly readersClock: OffsetAt;
  /** rejects with a FileProblem where the folder cannot be written */
  readonly write: (folder: string, files: readonly NamedText[]) => Promise<readonly string[]>;
}

/** Runs the command. Nothing is written unless everything could be made. */
export function runHandout(argv: readonly string[], io: HandoutIo): Promise<ExitStatus> {
  const about = { command: 'handout', help: handoutHelp } as const;
  return commanded(
    argv,
    io,
    about,
    ({ out }) => out,
    async ({ request, file }, out) => {
      const { now, offsetMinutes, readersClock } = io;
      const planned = io.planFromFile(file, { now, offsetMinutes, readersClock, advice: false });
      if (!planned.ok) return refuse(planned.problems, io);
      const { units, paper } = request;
      // What has been planned is a plan.
      const facts = factsOf(planned, file as PlanFile, { units, paper, now, readersClock });
      const files = handoutIds.map((id) => ({ name: handouts[id].name, text: handouts[id].make(facts) }));
      const written = await io.write(out, files);
      io.stdout(written.map((path) => `${path}\n`).join(''));
      return 0;
    },
  );
}
