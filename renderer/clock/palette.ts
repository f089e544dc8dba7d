/** The theme's colours for what is not drawn by the style sheet. */
import type { Palette } from './asked.ts';

function variable(style: CSSStyleDeclaration, name: string): string {
  return style.getPropertyValue(`--${name}`).trim();
}

export function readPalette(element: Element): Palette {
  const style = getComputedStyle(element);
  const read = (name: string): string => variable(style, name);
  return {
    font: style.fontFamily,
    paper: read('paper'),
    ink: read('ink'),
    muted: read('muted'),
    rule: read('rule'),
    bar: read('bar'),
    barInk: read('bar-ink'),
    bake: read('plate'),
    bakeInk: read('bake-ink'),
    series: {
      air: read('air'),
      top: read('plate'),
      core: read('plate'),
      base: read('base'),
      crumb: read('crumb'),
    },
  };
}

/** What every figure has on white paper, whatever the theme. */
export function paperPalette(font: string): Palette {
  return {
    font,
    paper: '#ffffff',
    ink: '#000000',
    muted: '#444444',
    rule: '#d8d8d8',
    bar: '#e8e8e8',
    barInk: '#000000',
    bake: '#bdbdbd',
    bakeInk: '#000000',
    series: { air: '#0072b2', top: '#d55e00', core: '#d55e00', base: '#009e73', crumb: '#000000' },
  };
}
