/** Entry of `npm run --silent calibrate`. */
import { runCalibrate } from './terminal/calibrate.ts';
import { processIo } from './terminal/processIo.ts';

process.exitCode = await runCalibrate(process.argv.slice(2), processIo());
