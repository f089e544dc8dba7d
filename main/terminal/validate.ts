/** `validate`: published figures beside the model's, as text, as a table for the docs, or as JSON. */
import { wording, type Problem } from '../../physics/evening/problem.ts';
import { asMarkdown, asText, type ValidationGroup } from '../../physics/validate/table.ts';
import { messageOf } from '../files/disk.ts';
import type { ExitStatus } from './plan.ts';

export interface ValidateIo {
  readonly stdout: (text: string) => void;
  readonly stderr: (text: string) => void;
  readonly validation: () => readonly ValidationGroup[];
}

const help = `Usage: npm run --silent validate -- [--json | --markdown]

Computes every published figure that the model was compared with and prints it
beside the model's, with the miss and what was allowed. Misses stay in; rows
whose model, set-up or tolerance was changed after a first look say "adjusted".

  --json      { "cases": [ { "id", "source", "quantity", "published", "model",
              "unit", "tolerance", "within", "note", "adjusted" } ] }
  --markdown  the table of the developers' notes
  --help      this text

Exit status: 0 done, 2 something in the input is wrong, 1 our fault.
`;

const options = ['--json', '--markdown', '--help', '-h'] as const;

export function runValidate(argv: readonly string[], io: ValidateIo): ExitStatus {
  const problems: Problem[] = argv
    .filter((word) => !options.some((option) => option === word))
    .map((word) => ({
      path: JSON.stringify(word),
      found: 'an unknown option',
      allowed: '--json, --markdown, --help',
    }));
  const [json, markdown] = [argv.includes('--json'), argv.includes('--markdown')];
  if (json && markdown)
    problems.push({ path: '--markdown', found: '--json beside it', allowed: 'one of the two' });
  if (problems.length > 0) {
    io.stderr(problems.map((problem) => `${wording(problem)}\n`).join(''));
    return 2;
  }
  if (argv.includes('--help') || argv.includes('-h')) {
    io.stdout(help);
    return 0;
  }
  try {
    const groups = io.validation();
    if (json) io.stdout(`${JSON.stringify({ cases: groups.flatMap(({ cases }) => cases) })}\n`);
    else io.stdout(markdown ? asMarkdown(groups) : asText(groups));
    return 0;
  } catch (error) {
    io.stderr(`This is our fault, not yours: ${messageOf(error).replaceAll(/\s+/gu, ' ')}\n`);
    return 1;
  }
}
