/** Standard output that cannot be written: told like everything else, or nobody's fault. */
import { causeOf } from '../files/disk.ts';

export function bearOutputErrors(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    // Whoever reads only the first lines (`| head`) closes the pipe: no fault of ours, and none of theirs.
    if (error.code === 'EPIPE') return;
    process.stderr.write(
      `standard output: found ${causeOf(error)}; allowed a file or pipe that takes it all\n`,
    );
    process.exit(1);
  });
}
