/** Entry of `npm run --silent validate`. */
import { validation } from '../physics/validate/table.ts';
import { runValidate } from './terminal/validate.ts';

// Whoever reads only the first lines (`| head`) closes the pipe: no fault of ours, and none of theirs.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = runValidate(process.argv.slice(2), {
  stdout: (text) => process.stdout.write(text),
  stderr: (text) => process.stderr.write(text),
  validation,
});
