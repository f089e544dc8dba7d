import { EventEmitter } from 'node:events';
import type { ServerResponse } from 'node:http';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { EventStreams } from '../../main/window/eventStreams.ts';

/** An answer that is being written, with what was written. */
class Written extends EventEmitter {
  readonly parts: string[] = [];
  readonly writeHead = vi.fn();
  readonly end = vi.fn();
  write(part: string): boolean {
    return this.parts.push(part) > 0;
  }
}

describe('the stream of pushes', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('is kept open by a comment in every 20 s of silence, until its window goes', () => {
    const open: number[] = [];
    const streams = new EventStreams((count) => open.push(count));
    const window = new Written();
    streams.add(window as unknown as ServerResponse);
    vi.advanceTimersByTime(60_000);
    streams.push('command', 'save');
    expect(window.parts).toEqual([
      ': open\n\n',
      ...Array<string>(3).fill(': still here\n\n'),
      'data: {"name":"command","push":"save"}\n\n',
    ]);
    window.emit('close');
    vi.advanceTimersByTime(60_000);
    streams.push('command', 'save');
    expect(window.parts).toHaveLength(5);
    expect(open).toEqual([1, 0]);
    streams.close();
    expect(window.end).not.toHaveBeenCalled();
  });
});
