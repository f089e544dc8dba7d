import type { LinePalette } from './lineFigure.ts';

/** Places of lines in the style sheet's colours, `--line-1` first. */
export const lineCount = 6;

export function readLinePalette(element: Element): LinePalette {
  const style = getComputedStyle(element);
  const read = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    font: style.fontFamily,
    ground: read('raised'),
    ink: read('ink'),
    muted: read('muted'),
    rule: read('rule'),
    lines: Array.from({ length: lineCount }, (_, i) => read(`line-${String(i + 1)}`)),
  };
}

/** What every picture has on white paper, whatever the theme. */
export function paperLinePalette(font: string): LinePalette {
  return {
    font,
    ground: '#ffffff',
    ink: '#000000',
    muted: '#444444',
    rule: '#d8d8d8',
    lines: ['#000000', '#0072b2', '#d55e00', '#009e73', '#cc79a7', '#5c574e'],
  };
}
