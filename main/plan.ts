/** Entry of `npm run --silent plan`. */
import { planFromFile } from '../physics/evening/planEvening.ts';
import { readText } from './files/readText.ts';
import { runPlan } from './terminal/plan.ts';

// Whoever reads only the first lines (`| head`) closes the pipe: no fault of ours, and none of theirs.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

const now = Date.now();
process.exitCode = await runPlan(process.argv.slice(2), {
  readFile: async (path) => (await readText(path)).text,
  stdout: (text) => process.stdout.write(text),
  stderr: (text) => process.stderr.write(text),
  now,
  offsetMinutes: -new Date(now).getTimezoneOffset(),
  planFromFile,
});
