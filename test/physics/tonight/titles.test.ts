import { expect, it } from 'vitest';
import { titleOf } from '../../../physics/tonight/titles.ts';

it.each([
  ['load-2', 'Load 2', 'due', 'Pizza 2 in'],
  ['bake-2', 'Bake 2', 'running', 'Pizza 2 bakes'],
  ['bake-2', 'Bake 2', 'due', 'Pizza 2 out'],
  ['recover-2', 'Recover', 'running', 'The plate recovers'],
  ['cut-2', 'Cut 2', 'due', 'Cut pizza 2'],
  ['shape-2', 'Shape 2', 'ahead', 'Shape pizza 2'],
  ['turn-2', 'Turn 2', 'due', 'Turn pizza 2'],
  ['look-2', 'Look 2', 'due', 'Look at pizza 2'],
  ['pull-2', 'Pull 2', 'due', 'Paper from under pizza 2'],
  ['top-2', 'Top 2', 'due', 'Top heat on pizza 2'],
  ['top-before-2', 'Top 2', 'due', 'Top heat before pizza 2'],
  ['preheat', 'Preheat', 'running', 'The plate heats up'],
  ['preheat', 'Preheat', 'due', 'Oven on'],
  ['rest', 'Rest', 'due', 'Rest'],
] as const)('%s (%s) that is %s stands in large type as %s', (id, name, status, title) => {
  expect(titleOf({ id, name, status })).toBe(title);
});
