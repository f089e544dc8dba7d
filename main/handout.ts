/** Entry of `npm run --silent handout`. */
import { writeHandouts } from './files/writeHandouts.ts';
import { runHandout } from './terminal/handout.ts';
import { processIo } from './terminal/processIo.ts';

process.exitCode = await runHandout(process.argv.slice(2), {
  ...processIo(),
  write: writeHandouts,
});
