/** Entry of `npm run --silent compare`. */
import { setImmediate } from 'node:timers/promises';
import { runCompare } from './terminal/compare.ts';
import { processIo } from './terminal/processIo.ts';

let asked = false;
process.once('SIGINT', () => {
  asked = true;
});
process.exitCode = await runCompare(process.argv.slice(2), {
  ...processIo(),
  pause: async () => {
    await setImmediate();
    return asked;
  },
});
