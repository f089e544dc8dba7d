/** Charts of lines: names that never meet, axes that fit, and nothing drawn of nothing. */
import { describe, expect, it } from 'vitest';
import { curveTable, valueOn } from '../../renderer/charts/CurvesTable.tsx';
import {
  drawLines,
  lineDashes,
  niceStep,
  shortened,
  type Line,
  type LinePalette,
} from '../../renderer/charts/lineFigure.ts';

const palette: LinePalette = {
  font: 'sans-serif',
  ground: '#ffffff',
  ink: '#000000',
  muted: '#444444',
  rule: '#dddddd',
  lines: ['#000000', '#0072b2', '#d55e00', '#009e73', '#cc79a7', '#5c574e'],
};
const size = { width: 480, height: 272 };
function line(index: number, name: string, y: readonly number[]): Line {
  return { index, name, x: y.map((_, i) => i), y };
}

describe('a step of an axis', () => {
  it('is round, and makes about as many marks as asked for', () => {
    expect([niceStep(60, 6), niceStep(55, 6), niceStep(0.9, 4), niceStep(7, 3)]).toEqual([10, 10, 0.25, 2.5]);
  });
});

describe('a name', () => {
  it('is shortened to its room with an ellipsis, and left alone where it fits', () => {
    const width = (text: string): number => text.length;
    expect(shortened('Cordierite, 15 mm thick', 12, width)).toBe('Cordierite,…');
    expect(shortened('The plan', 12, width)).toBe('The plan');
  });
});

describe('lines that end at one height', () => {
  it('have their names a line apart, within the plot, each with its own dash', () => {
    const lines = Array.from({ length: 6 }, (_, i) => line(i, `Plan ${String(i)}`, [20, 100, 250]));
    const { layout, data } = drawLines({ lines, xTitle: 'min', yTitle: 'Plate', size }, palette);
    const plot = size.height - 28 - 44;
    const names = layout.annotations!.filter(({ text }) => text?.startsWith('Plan'));
    const heights = names.map(({ y }) => Number(y) * plot).sort((a, b) => a - b);
    expect(heights).toHaveLength(6);
    heights.slice(1).forEach((y, i) => {
      expect(y - heights[i]!).toBeGreaterThanOrEqual(17 - 1e-6);
    });
    expect(heights[0]).toBeGreaterThanOrEqual(-1e-6);
    expect(heights.at(-1)).toBeLessThanOrEqual(plot + 1e-6);
    expect(data).toHaveLength(6);
    expect(new Set(lineDashes).size).toBe(6);
  });

  it('and none at all leave an empty ground without axes', () => {
    const { layout, data } = drawLines({ lines: [], xTitle: 'min', yTitle: 'Plate', size }, palette);
    expect(data).toEqual([]);
    expect(layout.xaxis!.visible).toBe(false);
    expect(layout.xaxis!.range!.every((end) => Number.isFinite(end))).toBe(true);
  });
});

describe('a value of the level axis that stands out', () => {
  it('has a line through the plot and its name on the side that has more room', () => {
    const marked = (x: number) =>
      drawLines(
        {
          lines: [line(0, 'bake', [1, 2, 3])],
          uprights: [{ x, label: 'here' }],
          xTitle: '',
          yTitle: '',
          size,
        },
        palette,
      ).layout;
    const name = (x: number) => marked(x).annotations!.find(({ text }) => text === 'here')!;
    expect([name(0.5).xanchor, name(1.8).xanchor]).toEqual(['left', 'right']);
    expect([name(0.5).x, name(1.8).x]).toEqual([
      expect.closeTo(0.25, 6) as number,
      expect.closeTo(0.9, 6) as number,
    ]);
    const x = Number(name(0.5).x);
    const through = { x0: x, x1: x, y0: 0, y1: 1 };
    expect(marked(0.5).shapes).toContainEqual(expect.objectContaining(through));
  });
});

describe('the table behind a chart', () => {
  it('reads between points and says nothing outside of them', () => {
    const one = { x: [0, 2, 4], y: [20, 40, 100] };
    expect([valueOn(one, 0), valueOn(one, 1), valueOn(one, 3), valueOn(one, 5)]).toEqual([
      20,
      30,
      70,
      undefined,
    ]);
    const rows = curveTable(
      [
        { index: 0, name: 'a', ...one },
        { index: 1, name: 'b', x: [0, 2], y: [5, 7] },
      ],
      2,
    );
    expect(rows).toEqual([
      { x: 0, y: [20, 5] },
      { x: 2, y: [40, 7] },
      { x: 4, y: [100, undefined] },
    ]);
  });
});
