import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // Without this vitest keeps a core free, and of two that is half of them.
    maxWorkers: 2,
    globalSetup: './test/support/runFolder.ts',
    reporters: ['default', './test/support/closingLine.ts'],
    projects: [
      {
        // Pure functions need no fresh copy of the program for every file; loading it took longer than the tests.
        test: {
          name: 'physics',
          include: ['test/physics/**/*.test.ts'],
          environment: 'node',
          isolate: false,
          testTimeout: 30_000,
        },
      },
      {
        test: { name: 'main', include: ['test/main/**/*.test.ts'], environment: 'node', testTimeout: 20_000 },
      },
      {
        test: {
          name: 'window',
          include: ['test/window/**/*.test.ts'],
          environment: 'node',
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
