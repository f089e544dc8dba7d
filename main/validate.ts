/** Entry of `npm run --silent validate`. */
import { validation } from '../physics/validate/table.ts';
import { bearOutputErrors } from './terminal/output.ts';
import { runValidate } from './terminal/validate.ts';

bearOutputErrors();
process.exitCode = runValidate(process.argv.slice(2), {
  stdout: (text) => process.stdout.write(text),
  stderr: (text) => process.stderr.write(text),
  validation,
});
