/** Saves one file again and again until it is killed: run as a program of its own by the kill test. */
import { writeAtomically } from '../../main/files/atomicWrite.ts';
import { checkedText } from './checkedText.ts';

const path = process.argv[2] ?? '';
for (let n = 1; ; n += 1) {
  await writeAtomically(path, checkedText(n, 20_000 + ((n * 77_777) % 400_000)));
  if (n === 1) process.stdout.write('writing\n');
}
