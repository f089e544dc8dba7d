import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    reporters: ['default', './test/support/closingLine.ts'],
    projects: [
      { test: { name: 'physics', include: ['test/physics/**/*.test.ts'], environment: 'node' } },
      {
        test: { name: 'main', include: ['test/main/**/*.test.ts'], environment: 'node', testTimeout: 20_000 },
      },
      {
        test: {
          name: 'window',
          include: ['test/window/**/*.test.ts'],
          environment: 'node',
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
