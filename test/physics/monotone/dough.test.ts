/** What must go one way in a dough, whatever its formula (directions: common practice, no source). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { liquidTemperature, type Batch } from '../../../physics/dough/liquidTemperature.ts';
import { riseTime, roomRise } from '../../../physics/dough/rise.ts';
import { shareKilled } from '../../../physics/dough/yeastSurvival.ts';
import { gasTemperatures, type Leavened } from '../../../physics/dough/yeastActivity.ts';
import { boilingTemperature } from '../../../physics/materials/water.ts';
import { fromCelsius, toCelsius } from '../../../physics/quantities/index.ts';

const sure = { seed: 20_261_126, numRuns: 150 };
const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

const doughs = fc.record({
  liquid: fc
    .record({
      kind: fc.constantFrom('water', 'milk', 'beer'),
      percent: between(50, 75),
      waterShare: fc.constant(undefined),
    })
    .map((part) => [part]),
  salt: between(0, 3),
  sugar: between(0, 8),
  yeast: fc.record({ kind: fc.constantFrom('fresh', 'active-dry', 'instant'), percent: between(0.2, 1.5) }),
});
/** degC of dough and room, K that each is put up in what follows, all below the best temperature of the yeast */
const warmth = fc.record({ dough: between(18, 30), room: between(17, 32), more: between(0.5, 4) });

const seconds = (dough: Leavened, doughC: number, roomC: number): number =>
  riseTime(dough, fromCelsius(doughC), roomRise(fromCelsius(roomC), { mass: 1 })).seconds;

describe('a rise', () => {
  it('is the shorter the more yeast, the warmer the dough and the warmer the room', () => {
    fc.assert(
      fc.property(doughs, warmth, between(1.05, 2), (dough, { dough: doughC, room, more }, times) => {
        expect(room + more).toBeLessThan(toCelsius(gasTemperatures.best));
        const usual = seconds(dough, doughC, room);
        const { kind, percent } = dough.yeast;
        expect(seconds({ ...dough, yeast: { kind, percent: times * percent } }, doughC, room)).toBeLessThan(
          usual,
        );
        expect(seconds(dough, doughC + more, room)).toBeLessThan(usual);
        expect(seconds(dough, doughC, room + more)).toBeLessThan(usual);
      }),
      sure,
    );
  });

  it('is no shorter with more salt, nor with more sugar in a sweet dough', () => {
    fc.assert(
      fc.property(doughs, warmth, between(0.2, 2), (dough, { dough: doughC, room }, more) => {
        const usual = seconds(dough, doughC, room);
        expect(seconds({ ...dough, salt: dough.salt + more }, doughC, room)).toBeGreaterThanOrEqual(usual);
        const sweet = { ...dough, sugar: 6 + dough.sugar };
        expect(seconds({ ...sweet, sugar: sweet.sugar + more }, doughC, room)).toBeGreaterThanOrEqual(
          seconds(sweet, doughC, room),
        );
      }),
      sure,
    );
  });

  it('kills no less yeast the hotter the place, once that is hot enough to kill', () => {
    fc.assert(
      fc.property(between(40, 52), between(0.2, 3), between(600, 7200), (placeC, more, duration) => {
        const killed = (celsius: number): number =>
          shareKilled(fromCelsius(25), [
            { temperature: fromCelsius(celsius), duration, cover: 'covered', mass: 0.25 },
          ]);
        expect(killed(placeC + more)).toBeGreaterThanOrEqual(killed(placeC));
      }),
      sure,
    );
  });
});

describe('the liquid for a dough', () => {
  const batches = fc.record({
    wanted: between(15, 32),
    flour: between(0, 35),
    room: between(5, 35),
    water: between(0.28, 0.5),
    mixing: fc.constantFrom('hand', 'mixer', 'food-processor'),
  });
  type Kitchen = typeof batches extends fc.Arbitrary<infer T> ? T : never;
  const asked = ({ wanted, flour, room, water, mixing }: Kitchen) =>
    liquidTemperature({
      flour: 0.6,
      liquid: [{ mass: water, part: { kind: 'water', percent: 100 * (water / 0.6), waterShare: undefined } }],
      solids: 0.015,
      oil: 0.009,
      flourTemperature: fromCelsius(flour),
      roomTemperature: fromCelsius(room),
      wanted: fromCelsius(wanted),
      mixing,
      tapTemperature: fromCelsius(12),
    } satisfies Batch);

  it('is the colder the warmer the flour, the warmer the warmer the dough is wanted, by balance and by rule', () => {
    fc.assert(
      fc.property(batches, between(0.2, 5), (batch, more) => {
        const usual = asked(batch);
        const warmFlour = asked({ ...batch, flour: batch.flour + more });
        const warmDough = asked({ ...batch, wanted: batch.wanted + more });
        expect(warmFlour.asked).toBeLessThan(usual.asked);
        expect(warmFlour.byRule).toBeLessThan(usual.byRule);
        expect(warmFlour.temperature).toBeLessThanOrEqual(usual.temperature);
        expect(warmFlour.ice).toBeGreaterThanOrEqual(usual.ice);
        expect(warmDough.asked).toBeGreaterThan(usual.asked);
        expect(warmDough.byRule).toBeGreaterThan(usual.byRule);
        expect(warmDough.temperature).toBeGreaterThanOrEqual(usual.temperature);
      }),
      sure,
    );
  });
});

describe('water', () => {
  it('boils the cooler the higher the kitchen', () => {
    fc.assert(
      fc.property(between(-400, 4900), between(1, 100), (altitude, more) => {
        expect(boilingTemperature(altitude + more)).toBeLessThan(boilingTemperature(altitude));
      }),
      sure,
    );
  });
});
