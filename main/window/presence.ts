/** Whether the window came, and how many are connected now: how a host without a window of its own knows its end. */
import { setTimeout as pause } from 'node:timers/promises';

const lookEveryMs = 50;

export class Presence {
  /** The one-time address was visited. */
  entered = false;
  /** Windows listening for pushes now. */
  open = 0;

  /** Waits until `is` holds, at most `limitMs`; false when the time ran out or `stop` was given. */
  async until(is: (presence: this) => boolean, stop: AbortSignal, limitMs = Infinity): Promise<boolean> {
    for (let waited = 0; waited <= limitMs; waited += lookEveryMs) {
      if (is(this)) return true;
      if (stop.aborted) return false;
      await pause(lookEveryMs);
    }
    return false;
  }
}
