/** All comparisons, and the same as a table for people. */
import { bakeCases } from '../bake/validation.ts';
import { doughCases } from '../dough/validation.ts';
import type { ValidationCase } from './case.ts';
import { handbookCases } from './handbookCases.ts';
import { ovenCases } from './ovenCases.ts';
import { plateCases } from './plateCases.ts';

export type { ValidationCase } from './case.ts';

export interface ValidationGroup {
  readonly heading: string;
  readonly words: string;
  readonly cases: readonly ValidationCase[];
}

/** Runs every comparison: some forty ovens, a few seconds. */
export function validation(): readonly ValidationGroup[] {
  return [
    {
      heading: 'Standards, handbooks and textbooks',
      words: 'The parts that oven and plate are made of, at their printed examples.',
      cases: handbookCases(),
    },
    {
      heading: 'Ovens',
      words:
        'Energy, heat-up and control of ovens that nobody measured whole: means, makers’ figures, hobby pages. The preset that is nearest stands for each. The wet brick is the load of the European energy test.',
      cases: ovenCases(),
    },
    {
      heading: 'Plates',
      words:
        'Infrared spot readings. The test-kitchen rows are four stones in four ovens with one reading each, so they are not one curve; the others come from one home oven. The model’s value is what such a thermometer, set to 0.95, would show ten seconds after the door was opened. All are computed in the North American preset, the stone at 0.4 of the height.',
      cases: plateCases(),
    },
    {
      heading: 'Bakes',
      words:
        'Times and shades as cooks and test kitchens report them. Nobody measured a lightness: the words pale to dark stand for L* values of our own, 10 either way. One density was chosen from the first row; the others are predictions.',
      cases: bakeCases(),
    },
    {
      heading: 'Dough',
      words:
        'Rise, temperatures and yeast as published. Times of one dough differ by a third between sources. The level of the rise was set from the rows that say so; the others are predictions. Yeast grows in a long rise and the model does not know it: no published law with its conditions was found, so the range of a rise is widened below 1 % fresh yeast instead (`physics/dough/rise.ts`).',
      cases: doughCases(),
    },
  ];
}

/** Four digits, as a table wants them: enough for the miss to be seen. */
export function figure(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toPrecision(4))) : 'never';
}

/** `-0.5 %` of the published figure; `-` where that is 0. */
export function miss({ published, model }: ValidationCase): string {
  const share = (100 * (model - published)) / published;
  if (!Number.isFinite(share)) return '-';
  const digits = Math.abs(share) < 0.995 ? share.toPrecision(1) : share.toFixed(0);
  return `${share > 0 ? '+' : ''}${String(Number(digits))} %`;
}

/** One row of cells a case, in the order of `columns`. */
export const columns = ['what', 'published', 'model', 'miss', 'allowed', 'source'] as const;

/** The cells of one case. */
export function row(c: ValidationCase): readonly string[] {
  const unit = c.unit === '1' ? '' : ` ${c.unit}`;
  return [
    c.quantity,
    `${figure(c.published)}${unit}`,
    `${figure(c.model)}${unit}`,
    `${miss(c)}${c.within ? '' : ' (outside)'}${c.adjusted === null ? '' : ' adjusted'}`,
    `± ${figure(c.tolerance)}${unit}`,
    `${c.source}: ${c.note}${c.adjusted === null ? '' : `. *Adjusted*: ${c.adjusted}`}`,
  ];
}

/** The tables of DEVELOPERS.md. */
export function asMarkdown(groups: readonly ValidationGroup[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const all = groups.flatMap(({ cases }) => cases);
  const tally = (rows: readonly ValidationCase[]): string =>
    `${String(rows.filter(({ within }) => within).length)} of ${String(rows.length)}`;
  const kept = groups
    .map(
      ({ heading, cases }) =>
        [heading.toLowerCase(), cases.filter(({ adjusted }) => adjusted === null)] as const,
    )
    .map(([heading, rows]) => `${heading}: ${rows.length === 0 ? 'no such row' : tally(rows)}`)
    .join('; ');
  const outside = all.filter(({ within }) => !within).length;
  return [
    '## How the model was validated',
    '',
    `Made by \`npm run --silent validate -- --markdown\`. The model meets ${tally(all)} published figures within the tolerance beside each; ${String(outside)} are missed and left in.`,
    '',
    `Not all of these are independent. Rows marked *adjusted* were compared once, and then the model, the set-up of the comparison or the tolerance was changed, as the row says. Of those it meets ${tally(all.filter(({ adjusted }) => adjusted !== null))}; of the rows that stand as they were first computed ${tally(all.filter(({ adjusted }) => adjusted === null))} (${kept}). Each change has a physical reason (see \`physics/oven/parameters.ts\` and \`physics/validate/brick.ts\`), but it was looked for because of a miss. Tolerances are the printed spread where there is one and our own choice where the row says so.`,
    ...groups.flatMap(({ heading, words, cases }) => [
      '',
      `### ${heading}`,
      '',
      words,
      '',
      line(columns),
      line(columns.map(() => '---')),
      ...cases.map((c) => line(row(c))),
    ]),
    '',
  ].join('\n');
}

/** The same for a terminal. */
export function asText(groups: readonly ValidationGroup[]): string {
  return groups
    .map(({ heading, cases }) => {
      const rows = [columns.slice(0, 5), ...cases.map((c) => row(c).slice(0, 5))];
      const widths = columns.slice(0, 5).map((_, k) => Math.max(...rows.map((cells) => cells[k]!.length)));
      const lines = rows.map((cells) =>
        cells
          .map((cell, k) => cell.padEnd(widths[k]!))
          .join('  ')
          .trimEnd(),
      );
      return [heading, ...lines.map((line) => `  ${line}`), ''].join('\n');
    })
    .join('\n');
}
