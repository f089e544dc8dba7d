import type { Reporter, TestModule } from 'vitest/node';

/** Ends a run with one plain line, `N passed, N failed`; a file that does not load counts as failed. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    const count = { passed: 0, failed: errors.length, skipped: 0, pending: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) count[test.result().state] += 1;
      if (module.errors().length > 0) count.failed += 1;
    }
    process.on('exit', () => {
      console.log(`${String(count.passed)} passed, ${String(count.failed)} failed`);
    });
  }
}
