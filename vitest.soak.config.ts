import { defineConfig } from 'vitest/config';

/** `npm run soak`: what takes too long for every run of the tests. */
export default defineConfig({
  test: {
    globalSetup: './test/support/runFolder.ts',
    reporters: ['default', './test/support/closingLine.ts'],
    include: ['test/soak/**/*.test.ts'],
    environment: 'node',
    testTimeout: 1_200_000,
  },
});
