import { describe, expect, it } from 'vitest';
import { type CautionFacts, cautionsFor } from '../../../physics/evening/cautions.ts';
import { coolingTime } from '../../../physics/plate/cooling.ts';
import { demos } from '../../../physics/evening/demos.ts';
import type { Evening } from '../../../physics/evening/evening.ts';
import type { PlateMaterialId } from '../../../physics/evening/ids.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import { plateMaterial } from '../../../physics/materials/plates.ts';

const kelvin = (celsius: number): number => celsius + 273.15;

function saturday(): Evening {
  const read = readPlanObject(demos.saturday, { now: 0 });
  if (!read.ok) throw new Error('the demo evening does not read');
  return read.evening;
}

const evening = saturday();
const facts: CautionFacts = {
  evening,
  material: plateMaterial('carbon-steel', 'bare'),
  plateMass: 7.5,
  hottestPlate: kelvin(180),
  toppingsOut: 3600,
  doughOut: 3600,
};
const oven = (change: Partial<Evening['oven']>): CautionFacts => ({
  ...facts,
  evening: { ...evening, oven: { ...evening.oven, ...change } },
});
const codes = (given: CautionFacts): readonly string[] => cautionsFor(given).map(({ code }) => code);
const message = (given: CautionFacts, code: string): string =>
  cautionsFor(given).find((warning) => warning.code === code)?.message ?? '';

describe('cautions', () => {
  it('always end with the makers first and the figures estimates', () => {
    expect(codes(facts).slice(-2)).toEqual(['maker-instructions-first', 'figures-are-estimates']);
    expect(message(facts, 'maker-instructions-first')).toMatch(/local rules/);
  });

  it('stand once each, kebab-case, as full sentences with no raw numbers', () => {
    const all = cautionsFor({ ...oven({ fuel: 'gas' }), plateMass: 12, hottestPlate: kelvin(260) });
    expect(new Set(all.map(({ code }) => code)).size).toBe(all.length);
    for (const warning of all) {
      expect(warning.code).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(warning.message).toMatch(/^[A-Z].*\.$/);
      expect(warning.message).not.toMatch(/\d\.\d{2}|NaN|undefined|Infinity/);
    }
  });

  // Makers print 420 to 450 degF, 215 to 232 degC, on baking paper (common practice; several pages agree).
  it('parchment: above 215 degC, only on parchment, with the setting', () => {
    const on = (setpoint: number): CautionFacts => ({
      ...facts,
      evening: {
        ...evening,
        oven: { ...evening.oven, setpoint: kelvin(setpoint) },
        pizzas: { ...evening.pizzas, bench: 'parchment' },
      },
    });
    expect(codes(on(215))).not.toContain('parchment-above-rating');
    expect(message(on(250), 'parchment-above-rating')).toMatch(/250 °C/);
    expect(message(on(250), 'parchment-above-rating')).toMatch(/fire/);
    expect(codes(oven({ setpoint: kelvin(250) }))).not.toContain('parchment-above-rating');
  });

  // 25 lb on a roll-out rack: four manuals of one maker group.
  it('rack load: silent to 8 kg, a caution above, no reassurance above 11 kg', () => {
    expect(codes({ ...facts, plateMass: 8 }).filter((code) => code.includes('heavy'))).toEqual([]);
    expect(message({ ...facts, plateMass: 9.1 }, 'plate-heavy-for-rack')).toMatch(/9\.1 kg/);
    expect(message({ ...facts, plateMass: 14.6 }, 'plate-too-heavy-for-rack')).toMatch(/Do not use/);
    expect(codes({ ...facts, plateMass: 14.6 })).not.toContain('plate-heavy-for-rack');
  });

  it('air round the plate: names the narrower gap', () => {
    const { cavity } = evening.oven;
    const narrow = { ...evening, plate: { ...evening.plate, width: cavity.width - 0.06, depth: 0.2 } };
    expect(message({ ...facts, evening: narrow }, 'little-air-round-plate')).toMatch(/\b3 cm .* beside/);
    const ample = {
      ...evening,
      plate: { ...evening.plate, width: cavity.width - 0.1, depth: cavity.depth - 0.1 },
    };
    expect(codes({ ...facts, evening: ample })).not.toContain('little-air-round-plate');
  });

  it('thermal shock: for stones, not for metal', () => {
    for (const id of ['cordierite', 'fired-clay', 'soapstone'] as const)
      expect(codes({ ...facts, material: plateMaterial(id, 'bare') })).toContain('stone-thermal-shock');
    for (const id of ['carbon-steel', 'stainless-steel', 'aluminium'] as const)
      expect(codes({ ...facts, material: plateMaterial(id, 'bare') })).not.toContain('stone-thermal-shock');
  });

  it('gas: ventilation, with an alarm, only for gas', () => {
    expect(message(oven({ fuel: 'gas' }), 'gas-ventilation')).toMatch(/carbon monoxide/);
    expect(codes(oven({ fuel: 'electric' }))).not.toContain('gas-ventilation');
  });

  // Smoke points, Wikipedia table (chemeurope copy): virgin olive 190 to 207, refined sunflower 227 to 254 degC.
  it('oil: from 190 degC of the plate, on a seasoned film or oil; above 254 nearly every oil', () => {
    const seasoned = { ...facts, material: plateMaterial('carbon-steel', 'seasoned') };
    expect(codes({ ...seasoned, hottestPlate: kelvin(185) })).not.toContain('seasoned-film-smokes');
    expect(message({ ...seasoned, hottestPlate: kelvin(220) }, 'seasoned-film-smokes')).toMatch(/many oils/);
    expect(message({ ...seasoned, hottestPlate: kelvin(270) }, 'seasoned-film-smokes')).toMatch(
      /nearly every kitchen oil/,
    );
    const stone = {
      ...evening,
      plate: { ...evening.plate, surface: 'bare' as const },
      dough: { ...evening.dough, oil: 0 },
    };
    expect(codes({ ...facts, evening: stone, hottestPlate: kelvin(270) }).join()).not.toMatch(/smoke/);
  });

  // USDA consumer statements 2012, 2016: 2 h between 40 and 140 degF, 1 h above 90 degF.
  it('perishables: two hours, one in a room above 32 degC, milk in the dough counted', () => {
    const hot = { ...evening, kitchen: { ...evening.kitchen, roomTemperature: kelvin(33) } };
    expect(codes({ ...facts, toppingsOut: 7100 })).not.toContain('perishables-out-long');
    expect(message({ ...facts, toppingsOut: 7500 }, 'perishables-out-long')).toMatch(/2\.1 h/);
    expect(codes({ ...facts, evening: hot, toppingsOut: 4000 })).toContain('perishables-out-long');
    const milk = {
      ...evening,
      dough: { ...evening.dough, liquid: [{ kind: 'milk' as const, percent: 62, waterShare: undefined }] },
    };
    expect(message({ ...facts, evening: milk, doughOut: 6 * 3600 }, 'perishables-out-long')).toMatch(/milk/);
    expect(codes({ ...facts, doughOut: 6 * 3600 })).not.toContain('perishables-out-long');
  });

  it('a kitchen warmer than skin gives no cooling time, and says so', () => {
    const desert = { ...evening, kitchen: { ...evening.kitchen, roomTemperature: kelvin(44) } };
    expect(message({ ...facts, evening: desert }, 'plate-stays-hot')).toMatch(/will not fall/);
  });
});

// Both faces free, emissivity 0.9, McAdams' horizontal plates, 288 degC in a room of 20 degC: minutes to 60, 48, 43 degC
// worked out beforehand by another program from the same correlations. Within 8 %: heat capacity taken constant there.
describe('cooling of a bare plate', () => {
  const plate = (id: PlateMaterialId, thickness: number) => ({
    material: { ...plateMaterial(id, 'bare'), emissivity: 0.9 },
    width: 0.406,
    depth: 0.356,
    thickness,
  });
  it.each([
    { thickness: 0.00635, minutes: [26, 33, 37] },
    { thickness: 0.0095, minutes: [40, 50, 56] },
    { thickness: 0.0127, minutes: [53, 67, 75] },
  ])('steel, $thickness m', ({ thickness, minutes }) => {
    for (const [index, celsius] of [60, 48, 43].entries()) {
      const ours =
        coolingTime(plate('carbon-steel', thickness), kelvin(288), kelvin(celsius), kelvin(20)) / 60;
      expect(Math.abs(ours / minutes[index]! - 1)).toBeLessThan(0.08);
    }
  });

  it('takes half again as long for half again the thickness, and never ends in a room as warm', () => {
    const thin = coolingTime(plate('carbon-steel', 0.006), kelvin(250), kelvin(43), kelvin(20));
    const thick = coolingTime(plate('carbon-steel', 0.009), kelvin(250), kelvin(43), kelvin(20));
    expect(thick / thin).toBeCloseTo(1.5, 2);
    expect(coolingTime(plate('carbon-steel', 0.006), kelvin(250), kelvin(43), kelvin(43))).toBe(Infinity);
  });
});
