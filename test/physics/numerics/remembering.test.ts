import { describe, expect, it } from 'vitest';
import { remembering } from '../../../physics/numerics/remembering.ts';

describe('answers that are kept', () => {
  it('are worked out once, the one longest unasked forgotten first', () => {
    const asked: number[] = [];
    const square = remembering((x: number) => asked.push(x) && { square: x * x }, String, 2);
    expect(square(2)).toBe(square(2));
    square(3);
    square(2);
    square(4);
    expect(asked).toEqual([2, 3, 4]);
    square(2);
    square(3);
    expect(asked).toEqual([2, 3, 4, 3]);
    expect(square(3)).toEqual({ square: 9 });
  });

  it('what was thrown is not kept', () => {
    let tries = 0;
    const once = remembering((x: number) => {
      tries += 1;
      if (tries === 1) throw new Error('not yet');
      return x;
    }, String);
    expect(() => once(1)).toThrow('not yet');
    expect(once(1)).toBe(1);
  });
});
