/** A question whose answer may be that it cannot be. */
import { OutOfRange } from './problem.ts';

/** What `make` gives, or undefined when it says that it cannot be; any other error is ours and goes on. */
export function attempt<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof OutOfRange) return undefined;
    throw error;
  }
}
