import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bakersRule,
  type Batch,
  doughTemperatureWith,
  hydrationRise,
  iceShare,
  liquidTemperature,
  mixingMethods,
  mixtureTemperature,
  specificHeat,
} from '../../../physics/dough/liquidTemperature.ts';
import { OutOfRange } from '../../../physics/evening/problem.ts';

const kelvin = (celsius: number): number => celsius + 273.15;
const fromF = (fahrenheit: number): number => (fahrenheit - 32) / 1.8 + 273.15;
const toF = (temperature: number): number => (temperature - 273.15) * 1.8 + 32;

describe("the bakers' rule, printed cases", () => {
  it.each([
    { wanted: 80, others: [65, 75], friction: 35, liquid: 65, source: 'Pizza Today, June 2018, p. 29' },
    { wanted: 75, others: [65, 65], friction: 8, liquid: 87, source: 'SFBI teaching example, farine blog' },
    { wanted: 78, others: [85, 67], friction: 0, liquid: 82, source: 'A Treatise on Baking, hot shop' },
    { wanted: 78, others: [72, 62], friction: 0, liquid: 100, source: 'A Treatise on Baking, cool shop' },
  ])('$source: $liquid degF', ({ wanted, others, friction, liquid }) => {
    expect(bakersRule(wanted, others, friction)).toBe(liquid);
    // The same in kelvin, with the friction factor as a difference.
    expect(toF(bakersRule(fromF(wanted), others.map(fromF), friction / 1.8))).toBeCloseTo(liquid, 9);
  });

  // A base temperature is the sum of flour, room and water; friction is already taken off it.
  it.each([
    { base: 65, flour: 26, room: 18, water: 21, source: 'painaulevain.fr' },
    { base: 58, flour: 18, room: 18, water: 22, source: "a kitchen supplier's guide" },
  ])('$source, base temperature $base degC: $water degC', ({ base, flour, room, water }) => {
    const wanted = 24;
    expect(bakersRule(wanted, [flour, room], 3 * wanted - base)).toBeCloseTo(water, 9);
  });

  it('bvallejo notes: a base of 68 to 72 by hand and 60 to 64 improved for 24 degC hold our factors', () => {
    const { hand, mixer } = mixingMethods;
    expect(hand.frictionFactor).toBeGreaterThanOrEqual(0);
    expect(hand.frictionFactor).toBeLessThanOrEqual(72 - 60);
    expect(mixer.frictionFactor).toBeGreaterThanOrEqual(72 - 64);
    expect(mixer.frictionFactor).toBeLessThanOrEqual(72 - 50);
  });

  it('mesubim.com, "Pizza science": 25 + 15 + 15 and a 27 degC dough mean a factor of 26', () => {
    expect(bakersRule(27, [25, 15], 26)).toBe(15);
  });
});

const flourAndWater = (flour: number, water: number) => [
  { mass: 1, temperature: fromF(flour), specificHeat: specificHeat.flour },
  { mass: 0.6, temperature: fromF(water), specificHeat: specificHeat.water },
];

// Arithmetic by hand with Cengel and Boles' specific heats and 15.1 kJ/kg; inputs from A Treatise on Baking and
// Pizza Today, June 2018. Rule and balance disagree by 4 and 13 degF on the first two: friction and losses hide in it.
describe('heat balance of flour and 60 % water', () => {
  it.each([
    { flour: 67, water: 82, plain: 75.8, wetted: 82.2 },
    { flour: 62, water: 100, plain: 84.3, wetted: 90.7 },
    { flour: 65, water: 65, plain: 65, wetted: 71.4 },
  ])('flour $flour, water $water degF: $plain, with hydration $wetted', ({ flour, water, plain, wetted }) => {
    const parts = flourAndWater(flour, water);
    expect(Math.abs(toF(mixtureTemperature(parts)) - plain)).toBeLessThan(0.06);
    expect(Math.abs(toF(mixtureTemperature(parts) + hydrationRise(1, parts)) - wetted)).toBeLessThan(0.06);
  });

  it('Pizza Today, June 2018: a water change of 5 degF moves the dough about 2 degF (theirs holds at a factor of 2)', () => {
    const moved =
      toF(mixtureTemperature(flourAndWater(65, 70))) - toF(mixtureTemperature(flourAndWater(65, 65)));
    expect(moved).toBeGreaterThan(1.7);
    expect(moved).toBeLessThan(3.4);
  });
});

// A mixer maker's ice table, ice share; the print is up to 2 % low against its own formula.
describe('ice', () => {
  it.each([
    [80, 40, 0.206],
    [70, 40, 0.163],
    [60, 50, 0.057],
    [50, 40, 0.061],
    [32, 0, 0.222],
    [80, 0, 0.416],
  ])('tap %i degF for %i degF: %f', (tap, wanted, share) => {
    expect(Math.abs(iceShare(fromF(tap), fromF(wanted)) / share - 1)).toBeLessThan(0.025);
  });

  it('known misprint: 40 kg from 20 to 10 degC needs 4.0 kg of ice in place of water, not the printed 4.4 kg', () => {
    const replaced = 40 * iceShare(kelvin(20), kelvin(10));
    expect(replaced).toBeCloseTo(4.0, 1);
    // The printed figure is ice added to the 40 kg.
    const share = iceShare(kelvin(20), kelvin(10));
    expect((40 * share) / (1 - share)).toBeCloseTo(4.45, 1);
  });
});

const batch: Batch = {
  flour: 0.6,
  liquid: [{ mass: 0.372, part: { kind: 'water', percent: 62, waterShare: undefined } }],
  solids: 0.015,
  oil: 0.009,
  flourTemperature: kelvin(21),
  roomTemperature: kelvin(21),
  wanted: kelvin(25),
  mixing: 'hand',
  tapTemperature: kelvin(12),
};

describe('liquid for a wanted dough temperature', () => {
  it('agrees with the rule within 1.5 K where the rule was made: everything at room temperature, 60 % water', () => {
    for (const method of ['hand', 'mixer', 'food-processor'] as const) {
      const rise = mixingMethods[method].frictionFactor / 3;
      const advice = liquidTemperature({ ...batch, wanted: batch.roomTemperature + rise, mixing: method });
      expect(Math.abs(advice.temperature - advice.byRule)).toBeLessThan(1.5);
    }
  });

  it('asks for warmer liquid for a warmer dough and colder flour, and colder liquid for a harder mixing', () => {
    const hand = liquidTemperature(batch).temperature;
    expect(liquidTemperature({ ...batch, wanted: kelvin(26) }).temperature).toBeGreaterThan(hand);
    expect(liquidTemperature({ ...batch, flourTemperature: kelvin(10) }).temperature).toBeGreaterThan(hand);
    expect(liquidTemperature({ ...batch, mixing: 'mixer' }).temperature).toBeLessThan(hand);
  });

  it('stops at what the yeast survives and says what the dough then reaches', () => {
    const advice = liquidTemperature({ ...batch, wanted: kelvin(30), flourTemperature: kelvin(5) });
    expect(advice.limited).toBe('yeast');
    expect(advice.temperature).toBeCloseTo(kelvin(43), 9);
    expect(advice.asked).toBeGreaterThan(kelvin(43));
    expect(advice.doughTemperature).toBeLessThan(kelvin(30));
  });

  const summer: Batch = {
    ...batch,
    wanted: kelvin(18),
    roomTemperature: kelvin(28),
    flourTemperature: kelvin(28),
    tapTemperature: kelvin(20),
    mixing: 'food-processor',
  };

  it('takes ice where the tap is too warm: the heat of every part adds up, ice melted', () => {
    const advice = liquidTemperature(summer);
    expect(advice.limited).toBeUndefined();
    expect(advice.temperature).toBeCloseTo(kelvin(0), 9);
    expect(advice.iceShare).toBeGreaterThan(0.1);
    expect(advice.ice).toBeCloseTo(0.372 * advice.iceShare, 12);
    // J of the water part against 0 degC, by hand: tap water warm, ice short of 144 Btu/lb.
    const { mass } = summer.liquid[0]!;
    const heat = (mass - advice.ice) * 4180 * 20 - advice.ice * 144 * 2326;
    const asIfLiquid = kelvin(0) + heat / (mass * 4180);
    expect(doughTemperatureWith(summer, asIfLiquid)).toBeCloseTo(kelvin(18), 9);
  });

  it('needs no ice from a cold tap, and the more the warmer the tap', () => {
    const at = (tap: number) => liquidTemperature({ ...summer, tapTemperature: kelvin(tap) }).ice;
    expect(liquidTemperature({ ...batch, tapTemperature: kelvin(5) }).ice).toBe(0);
    expect(at(25)).toBeGreaterThan(at(15));
  });

  it('stops at half the water as ice and says what the dough then reaches', () => {
    const advice = liquidTemperature({ ...summer, wanted: kelvin(3) });
    expect(advice.limited).toBe('freezing');
    expect(advice.iceShare).toBe(0.5);
    expect(advice.temperature).toBeCloseTo(kelvin(0), 9);
    expect(advice.doughTemperature).toBeGreaterThan(kelvin(3));
  });

  it('takes no ice where there is no water to replace, and lets only the water be ice', () => {
    const beer = { kind: 'beer', percent: 62, waterShare: undefined } as const;
    const none = liquidTemperature({ ...summer, liquid: [{ mass: 0.372, part: beer }] });
    expect([none.ice, none.limited]).toEqual([0, 'freezing']);
    const half = liquidTemperature({
      ...summer,
      wanted: kelvin(20),
      liquid: [
        { mass: 0.186, part: beer },
        { mass: 0.186, part: { ...beer, kind: 'water' } },
      ],
    });
    expect(half.ice).toBeGreaterThan(0);
    expect(half.ice).toBeLessThanOrEqual(0.093);
  });

  it('leaves oil and honey at room temperature: they are not poured with the water', () => {
    const part = { kind: 'honey', percent: 10, waterShare: undefined } as const;
    const sweet = liquidTemperature({ ...batch, liquid: [...batch.liquid, { mass: 0.06, part }] });
    expect(sweet.temperature).not.toBeCloseTo(liquidTemperature(batch).temperature, 1);
    expect(() => liquidTemperature({ ...batch, liquid: [{ mass: 0.3, part }] })).toThrow(OutOfRange);
  });

  // Arithmetic by hand with Cengel and Boles' specific heats at 62 %: 1.76/(0.62 x 4.18) = 0.679; at 60 %: 0.702.
  it('says what one kelvin of flour weighs against one of liquid, where the rule says 1', () => {
    const { terms } = liquidTemperature(batch);
    expect(terms.flourCounts).toBeCloseTo(0.679, 3);
    expect(terms.hydrationRise).toBeGreaterThan(3.2);
    expect(terms.hydrationRise).toBeLessThan(3.5);
  });

  it('needs milk no cooler than water: milk carries less heat', () => {
    const milk = { kind: 'milk', percent: 62, waterShare: undefined } as const;
    const warm = { ...batch, wanted: kelvin(27) };
    expect(liquidTemperature({ ...warm, liquid: [{ mass: 0.372, part: milk }] }).temperature).toBeGreaterThan(
      liquidTemperature(warm).temperature,
    );
  });

  it('is put back: the dough comes out as wanted or the advice says why not', () => {
    const celsius = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(celsius(15, 32), celsius(0, 35), celsius(5, 35), (wanted, flour, room) => {
        const advice = liquidTemperature({
          ...batch,
          wanted: kelvin(wanted),
          flourTemperature: kelvin(flour),
          roomTemperature: kelvin(room),
        });
        expect(advice.temperature).toBeGreaterThanOrEqual(273.15);
        expect(advice.temperature).toBeLessThanOrEqual(316.15);
        const reached = advice.doughTemperature - kelvin(wanted);
        if (advice.limited === undefined) expect(Math.abs(reached)).toBeLessThan(1e-9);
        else expect(Math.sign(reached)).toBe(advice.limited === 'yeast' ? -1 : 1);
      }),
      { seed: 20260131, numRuns: 200 },
    );
  });

  it('refuses a dough without flour or without liquid', () => {
    expect(() => liquidTemperature({ ...batch, flour: 0 })).toThrow(OutOfRange);
    expect(() => liquidTemperature({ ...batch, liquid: [] })).toThrow(OutOfRange);
    expect(() => liquidTemperature({ ...batch, wanted: Number.NaN })).toThrow(OutOfRange);
  });
});
