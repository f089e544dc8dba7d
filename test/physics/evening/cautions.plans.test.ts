/** Every caution from a whole plan: one plan that triggers it, with the figure in its words, and one that does not. */
import { describe, expect, it } from 'vitest';
import type { Warning } from '../../../physics/evening/answer.ts';
import { demos } from '../../../physics/evening/demos.ts';
import { planFromFile } from '../../../physics/evening/planEvening.ts';

type Block = Readonly<Record<string, unknown>>;
type Plan = Readonly<Record<string, Block>>;

/** A small steel in a moderate oven, nothing that could smoke, burn or spoil: as few cautions as there can be. */
const quiet: Plan = {
  oven: { ...demos.saturday.oven, setpoint: '180 degC' },
  plate: {
    ...demos.saturday.plate,
    material: 'stainless-steel',
    surface: 'bare',
    width: '34 cm',
    depth: '31 cm',
  },
  pizzas: { ...demos.saturday.pizzas, count: 1, diameter: '28 cm' },
  dough: { ...demos.saturday.dough, oil: 0 },
};
const hot: Plan = { oven: { setpoint: '250 degC' } };

function merged(changes: Plan): Block {
  const { format, version, title, anchor, kitchen, toppings } = demos.saturday;
  const base: Plan = { anchor, kitchen, toppings, ...quiet };
  const blocks = Object.entries(base).map(([name, block]) => [name, { ...block, ...changes[name] }] as const);
  return { format, version, title, ...Object.fromEntries(blocks) };
}

const known = new Map<string, readonly Warning[]>();
function warningsOf(changes: Plan): readonly Warning[] {
  const plan = merged(changes);
  const key = JSON.stringify(plan);
  const before = known.get(key);
  if (before !== undefined) return before;
  const planned = planFromFile(plan, { now: Date.UTC(2026, 0, 30), band: false });
  if (!planned.ok) throw new Error(JSON.stringify(planned.problems));
  known.set(key, planned.answer.warnings);
  return planned.answer.warnings;
}

interface Case {
  readonly code: string;
  readonly says: RegExp;
  readonly source: RegExp;
  readonly with: Plan;
  /** no plan is without it */
  readonly without: Plan | 'always';
}

const cases: readonly Case[] = [
  {
    code: 'parchment-above-rating',
    says: /215 to 230 °C and the oven is set to 250 °C.*catch fire.*pull it out after a minute or two/,
    source: /secondary pages/,
    with: { ...hot, pizzas: { bench: 'parchment' } },
    without: { oven: { setpoint: '210 degC' }, pizzas: { bench: 'parchment' } },
  },
  {
    code: 'plate-heavy-for-rack',
    says: /weighs 1?\d\.\d kg.*11\.3 kg/,
    source: /25 lb/,
    with: { plate: { thickness: '11 mm' } },
    without: { plate: { thickness: '6 mm' } },
  },
  {
    code: 'plate-too-heavy-for-rack',
    says: /weighs 1\d\.\d kg.*Do not use it before the oven's maker/,
    source: /25 lb/,
    with: { plate: { thickness: '18 mm' } },
    without: { plate: { thickness: '11 mm' } },
  },
  {
    code: 'little-air-round-plate',
    says: /Only 2 cm stay free beside the plate/,
    source: /two makers' manuals/,
    with: { plate: { width: '42 cm' } },
    without: { plate: { width: '36 cm' } },
  },
  {
    code: 'stone-thermal-shock',
    says: /crack.*cold oven before it is set to 180 °C.*wet or frozen/,
    source: /from memory/,
    with: { plate: { material: 'cordierite' } },
    without: { plate: { material: 'aluminium' } },
  },
  {
    code: 'stone-thermal-shock',
    says: /out of the freezer: thaw all \d+ before they touch it/,
    source: /from memory/,
    with: { plate: { material: 'cordierite' }, pizzas: { parBake: { keep: 'freezer' } } },
    without: { pizzas: { parBake: { keep: 'freezer' } } },
  },
  {
    code: 'stone-thermal-shock',
    says: /the oven starts at 120 °C: a stone that is not in it already must not go in now/,
    source: /from memory/,
    with: { plate: { material: 'fired-clay' }, oven: { startTemperature: '120 degC' } },
    without: { oven: { startTemperature: '120 degC' } },
  },
  {
    code: 'stone-thermal-shock',
    says: /crack/,
    source: /from memory/,
    with: {
      plate: {
        material: 'custom',
        density: '2300 kg/m^3',
        specificHeat: '900 J/(kg K)',
        thermalConductivity: '2 W/(m K)',
        emissivity: 0.9,
      },
    },
    without: {
      plate: {
        material: 'custom',
        density: '2700 kg/m^3',
        specificHeat: '900 J/(kg K)',
        thermalConductivity: '160 W/(m K)',
        emissivity: 0.9,
      },
    },
  },
  {
    code: 'plate-stays-hot',
    says: /^At \d{3} °C the plate burns at a touch and needs at least \d+ min bare in open air to fall below 43 °C.*\d h, rather overnight/,
    source: /ISO 13732-1:2006/,
    with: hot,
    without: 'always',
  },
  {
    code: 'oil-near-smoke-point',
    says: /The plate reaches 2\d\d °C, above the smoke point/,
    source: /smoke points/,
    with: { ...hot, pizzas: { bench: 'metal' } },
    without: { ...hot },
  },
  {
    code: 'seasoned-film-smokes',
    says: /The plate reaches 2\d\d °C.*its seasoned film/,
    source: /smoke points/,
    with: { ...hot, plate: { material: 'carbon-steel', surface: 'seasoned' } },
    without: { plate: { material: 'carbon-steel', surface: 'seasoned' }, oven: { setpoint: '170 degC' } },
  },
  {
    code: 'gas-ventilation',
    says: /gas oven at 180 °C.*carbon monoxide.*vent/,
    source: /Englewood/,
    with: { oven: { fuel: 'gas' } },
    without: { oven: { fuel: 'electric' } },
  },
  {
    code: 'perishables-out-long',
    says: /Cheese and sauce would stand out for \d+(?:\.\d)? h.*the 2 h advised at 21 °C/,
    source: /USDA/,
    with: { ...hot, pizzas: { count: 6 } },
    without: hot,
  },
  {
    code: 'perishables-out-long',
    says: /the 1 h advised at 33 °C/,
    source: /USDA/,
    with: { ...hot, pizzas: { count: 3 }, kitchen: { roomTemperature: '33 degC' } },
    without: { ...hot, pizzas: { count: 3 }, kitchen: { roomTemperature: '21 degC' } },
  },
  {
    code: 'perishables-out-long',
    says: /milk or whey would stand out for \d+\.\d h at 21 °C/,
    source: /USDA/,
    with: { dough: { liquid: [{ kind: 'milk', percent: 68 }] } },
    without: { dough: { liquid: [{ kind: 'water', percent: 62 }] } },
  },
  {
    code: 'raw-flour',
    says: /do not taste the dough.*shaping the pizza/,
    source: /FDA and CDC/,
    with: {},
    without: 'always',
  },
  { code: 'glass-door', says: /At 250 °C.*hot glass/, source: /manuals/, with: hot, without: 'always' },
  { code: 'self-cleaning', says: /480 °C.*\d\.\d kg/, source: /manuals/, with: {}, without: 'always' },
  {
    code: 'maker-instructions-first',
    says: /makers and local rules come before/,
    source: /./,
    with: {},
    without: 'always',
  },
  {
    code: 'figures-are-estimates',
    says: /All figures are estimates/,
    source: /./,
    with: {},
    without: 'always',
  },
];

describe('cautions of whole plans', () => {
  it.each(cases)('$code ($says)', ({ code, says, source, with: triggers, without }) => {
    const found = warningsOf(triggers).filter((warning) => warning.code === code);
    expect(found).toHaveLength(1);
    expect(found[0]!.message).toMatch(says);
    expect(found[0]!.source).toMatch(source);
    const other = warningsOf(without === 'always' ? {} : without).map((warning) => warning.code);
    if (without === 'always') expect(other).toContain(code);
    else expect(other).not.toContain(code);
  });

  it('stand only where they apply: a moderate evening has the standing ones and no more', () => {
    expect(warningsOf({}).flatMap(({ code, source }) => (source === undefined ? [] : [code]))).toEqual([
      'plate-stays-hot',
      'raw-flour',
      'glass-door',
      'self-cleaning',
      'maker-instructions-first',
      'figures-are-estimates',
    ]);
  });

  it('are all in this table', () => {
    const tested = new Set(cases.map(({ code }) => code));
    const all = cases.flatMap(({ with: triggers }) => warningsOf(triggers));
    for (const { code, source } of all) if (source !== undefined) expect(tested).toContain(code);
  });
});
