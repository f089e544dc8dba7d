import { describe, expect, it } from 'vitest';
import { type Activity, criticalChain } from '../../../physics/evening/criticalChain.ts';

/** A task that begins as soon as what it waits for is over. */
function asSoonAs(
  rows: readonly (readonly [id: string, length: number, waitsFor: string])[],
): readonly Activity[] {
  const ends = new Map<string, number>();
  return rows.map(([id, length, waits]) => {
    const waitsFor = waits.split('');
    const from = Math.max(0, ...waitsFor.map((other) => ends.get(other)!));
    ends.set(id, from + length);
    return { id, from, to: from + length, hands: false, waitsFor, tiedTo: [] };
  });
}

describe('the critical path method', () => {
  // Hillier and Lieberman, Introduction to Operations Research, the construction project of 14 activities (from memory):
  // 44 weeks along A B C E F J L N, and these slacks.
  const project = asSoonAs([
    ['A', 2, ''],
    ['B', 4, 'A'],
    ['C', 10, 'B'],
    ['D', 6, 'C'],
    ['E', 4, 'C'],
    ['F', 5, 'E'],
    ['G', 7, 'D'],
    ['H', 9, 'EG'],
    ['I', 7, 'C'],
    ['J', 8, 'FI'],
    ['K', 4, 'J'],
    ['L', 5, 'J'],
    ['M', 2, 'H'],
    ['N', 6, 'KL'],
  ]);
  // What ends before the project does is due at its end.
  const due = project.map((one) => (one.id === 'M' ? { ...one, from: 42, to: 44 } : one));

  it('finds the chain and the slack of a published project', () => {
    const { chain, slack } = criticalChain(due);
    expect(chain.join('')).toBe('ABCEFJLN');
    expect(Object.fromEntries(slack)).toEqual({
      ...Object.fromEntries('ABCEFJLN'.split('').map((id) => [id, 0])),
      ...{ D: 4, G: 4, H: 4, M: 4, I: 2, K: 1 },
    });
  });

  it('counts one pair of hands: what has no need of another still waits for it', () => {
    const free: readonly Activity[] = [
      { id: 'mix', from: 0, to: 10, hands: true, waitsFor: [], tiedTo: [] },
      { id: 'sauce', from: 10, to: 30, hands: true, waitsFor: [], tiedTo: [] },
      { id: 'rise', from: 10, to: 40, hands: false, waitsFor: ['mix'], tiedTo: [] },
      { id: 'shape', from: 40, to: 45, hands: true, waitsFor: ['rise', 'sauce'], tiedTo: [] },
    ];
    const { chain, slack } = criticalChain(free);
    expect(chain).toEqual(['mix', 'rise', 'shape']);
    expect(slack.get('sauce')).toBe(10);
  });

  it('keeps a task at its distance from the one it is tied to', () => {
    const { slack } = criticalChain([
      { id: 'load', from: 20, to: 21, hands: true, waitsFor: [], tiedTo: [] },
      { id: 'turn', from: 24, to: 25, hands: true, waitsFor: ['load'], tiedTo: ['load'] },
      { id: 'rise', from: 0, to: 30, hands: false, waitsFor: [], tiedTo: [] },
    ]);
    expect(slack.get('load')).toBe(20);
    expect(slack.get('turn')).toBe(20);
    expect(slack.get('rise')).toBe(0);
  });
});
