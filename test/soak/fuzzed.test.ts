import { describe, it } from 'vitest';
import { fuzzers } from '../support/fuzzed.ts';

describe('twenty thousand nearly good texts are taken, or refused in one line', () => {
  it.each(Object.entries(fuzzers))('%s', (name, fuzz) => {
    // Another seed each time, said so that a failure can be had again.
    const seed = Math.floor(Math.random() * 2 ** 31);
    console.log(`${name}: seed ${seed}`);
    fuzz(20_000, seed);
  });
});
