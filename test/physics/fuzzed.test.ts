import { describe, it } from 'vitest';
import { fuzzers } from '../support/fuzzed.ts';

describe('a thousand nearly good texts are taken, or refused in one line', () => {
  it.each(Object.entries(fuzzers))('%s', (_name, fuzz) => {
    fuzz(1000, 20_261_126);
  });
});
