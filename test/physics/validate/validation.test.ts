import { describe, expect, it } from 'vitest';
import { brickTest } from '../../../physics/validate/brickTest.ts';
import { wetBrickConductivity } from '../../../physics/validate/brick.ts';
import { asMarkdown, asText, validation } from '../../../physics/validate/table.ts';

const groups = validation();
const cases = groups.flatMap((group) => group.cases);

/**
 * What the model misses by more than the published figure is uncertain. They stay in the table; a miss that comes or
 * goes is seen here. One hour at 350 degF: the guide's 2.0 and 3.28 kWh do not go with the block test (from memory),
 * which the model meets. The first half hour: the preset warms up faster than most of its witnesses.
 */
const missed = [
  'hour-electric-350F',
  'hour-gas-350F',
  'fan-45min-325F',
  'signal-electric-350F',
  'first-crest-350F',
  'test-kitchen-15min',
  'test-kitchen-30min',
  'test-kitchen-45min',
  // A second over the 60 to 90 s of a wood oven.
  'bake-wood',
  // Long rises: the model's yeast neither grows nor warms its dough, and ends differ (doubled, fallen, tripled).
  'rise-naples',
  'rise-oven-maker',
  'rise-no-knead',
  'rise-sponge',
  'ready-window-naples',
  'proof-13-57-degc',
  'bulk-warms-itself',
  // The rule of a treatise without friction or losses.
  'liquid-hot-shop',
  'liquid-cool-shop',
];

describe('the published figures', () => {
  it('are each met within their tolerance, but for those known to be missed', () => {
    const outside = cases.filter(({ within }) => !within).map(({ id }) => id);
    expect(outside).toEqual(missed);
  });
  it('have ids of their own, sources, notes and figures, and say truly whether they are within', () => {
    expect(cases.length).toBeGreaterThan(40);
    expect(new Set(cases.map(({ id }) => id)).size).toBe(cases.length);
    for (const c of cases) {
      expect(c.id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/iu);
      for (const text of [c.source, c.quantity, c.unit, c.note]) expect(text, c.id).not.toBe('');
      expect(c.tolerance, c.id).toBeGreaterThan(0);
      expect(Number.isFinite(c.model), c.id).toBe(true);
      expect(c.within, c.id).toBe(Math.abs(c.model - c.published) <= c.tolerance);
    }
  });
  it('tell rows that stand as first computed from those adjusted after a first look, and count both', () => {
    const kept = cases.filter(({ adjusted }) => adjusted === null);
    const changed = cases.filter(({ adjusted }) => adjusted !== null);
    expect(kept.length).toBeGreaterThan(10);
    expect(changed.length).toBeGreaterThan(10);
    // Whoever reads only the count of what is met must see how much of it is independent.
    const met = (rows: typeof cases): string =>
      `${String(rows.filter(({ within }) => within).length)} of ${String(rows.length)}`;
    const markdown = asMarkdown(groups);
    expect(markdown).toContain(`Of those it meets ${met(changed)}`);
    expect(markdown).toContain(`first computed ${met(kept)}`);
    expect(markdown.split('*Adjusted*').length - 1).toBe(changed.length);
  });
  it('mark what stands on memory', () => {
    const remembered = cases.filter(({ id }) => /^(?:block|label|black)-/u.test(id));
    for (const { source, note } of remembered) expect(`${source} ${note}`).toContain('from memory');
  });
  it('rank the test kitchen’s stones as they were browned: each reading hotter than the one before', () => {
    const stones = cases.filter(({ id }) => id.startsWith('test-kitchen'));
    expect(stones.map(({ published }) => published)).toEqual([143.9, 212.8, 232.8, 265]);
    expect(stones[1]!.model).toBeGreaterThan(stones[0]!.model);
  });
  it('are all in both tables, the misses with them', () => {
    const markdown = asMarkdown(groups);
    const text = asText(groups);
    for (const c of cases) {
      expect(markdown).toContain(c.quantity);
      expect(text).toContain(c.quantity);
    }
    expect(markdown).toContain(`${String(missed.length)} are missed and left in`);
    expect(markdown.split('\n').filter((line) => line.includes('(outside)'))).toHaveLength(missed.length);
  });
});

describe('the wet brick', () => {
  it('closes its heat: in = stored in oven and brick + lost, to 1e-6', () => {
    for (const fan of [false, true]) {
      const { energy, stored, lost } = brickTest({ preset: 'european', fan }, 0.355);
      expect(Math.abs(energy - stored - lost)).toBeLessThan(1e-6 * energy);
    }
  });
  it('gives off a part of its water, and takes under two hours in every electric preset', () => {
    for (const [preset, height] of [
      ['european', 0.355],
      ['small', 0.3],
      ['strong', 0.355],
    ] as const) {
      const { evaporated, seconds } = brickTest({ preset }, height);
      expect(evaporated).toBeGreaterThan(0.05);
      expect(evaporated).toBeLessThan(0.5);
      expect(seconds).toBeLessThan(2 * 3600);
    }
  });
  it('needs more than its useful heat of 286 kJ, and less than everything put in', () => {
    // (0.92 x 0.88 + 1.05 x 4.186) x 55 kJ; 8 to 10 % of the energy of products (EN 60350-1 brick, from memory).
    const { energy } = brickTest({ preset: 'european' }, 0.355);
    expect(286e3 / energy).toBeGreaterThan(0.06);
    expect(286e3 / energy).toBeLessThan(0.12);
  });
  it('takes more energy in an oven that loses more', () => {
    const tight = brickTest({ preset: 'european' }, 0.355).energy;
    const leaky = brickTest({ preset: 'european', physics: { ventFlow: '1.5 l/s' } }, 0.355).energy;
    expect(leaky).toBeGreaterThan(1.05 * tight);
  });
  it('conducts better the warmer it is, by the vapour in its pores; dry it would be below wet clay', () => {
    const [cold, warm, hot] = [283, 323, 353].map((T) => wetBrickConductivity(T, 101_325));
    expect(cold).toBeGreaterThan(0.45);
    expect(warm).toBeGreaterThan(cold!);
    expect(hot).toBeGreaterThan(warm!);
    expect(hot).toBeLessThan(2);
  });
});
