/** Entry of `npm run --silent plan`. */
import { runPlan } from './terminal/plan.ts';
import { processIo } from './terminal/processIo.ts';

process.exitCode = await runPlan(process.argv.slice(2), processIo());
