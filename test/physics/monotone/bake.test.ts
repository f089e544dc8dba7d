/** What must go one way in a bake between given boundaries, whatever the pizza (directions: common practice, no source). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bakeBetween } from '../../../physics/evening/givenOven.ts';
import type { ModelOptions } from '../../../physics/evening/model.ts';
import { simulateEvening } from '../../../physics/evening/simulate.ts';
import { waitCurves } from '../../../physics/evening/waitCurve.ts';
import { fromCelsius } from '../../../physics/quantities/index.ts';
import { evening, northAmerican } from '../../support/evenings.ts';

const bakes = fc.sample(
  fc.record({
    floor: fc.integer({ min: 230, max: 310 }),
    vault: fc.integer({ min: 220, max: 310 }),
    ball: fc.integer({ min: 200, max: 420 }),
    water: fc.integer({ min: 55, max: 70 }),
    bench: fc.constantFrom('metal', 'flour', 'parchment'),
    material: fc.constantFrom('carbon-steel', 'cordierite'),
    sauce: fc.integer({ min: 20, max: 110 }),
    cheese: fc.integer({ min: 40, max: 150 }),
  }),
  { numRuns: 5, seed: 20_261_126 },
);
type Asked = (typeof bakes)[number];

const lightnesses = [75, 70, 65, 60];
/** s that are looked at, and the longest step in them */
const watched = 360;
const step = 4;

interface Seen {
  /** s until base and rim have each lightness, as far as they come to it */
  readonly base: readonly number[];
  readonly rim: readonly number[];
  /** s until the crumb is done; Infinity where it is not */
  readonly crumb: number;
  /** L* of base and rim, and kg of free water on top, at the end */
  readonly baseAtEnd: number;
  readonly rimAtEnd: number;
  readonly wet: number;
}

function seen(
  { floor, vault, ball, water, bench, material, sauce, cheese }: Asked,
  options: ModelOptions = {},
): Seen {
  const asked = northAmerican({
    plate: { material, surface: material === 'cordierite' ? 'bare' : 'seasoned', thickness: '12 mm' },
    pizzas: { ballMass: `${ball} g`, bench },
    toppings: { sauce: `${sauce} g`, cheese: [{ kind: 'fresh-mozzarella', mass: `${cheese} g` }] },
    dough: { liquid: [{ kind: 'water', percent: water }] },
  });
  const watcher = bakeBetween(asked, { floor: fromCelsius(floor), vault: fromCelsius(vault) }, options);
  const [base, rim]: [number[], number[]] = [[], []];
  let crumb = Infinity;
  while (watcher.seconds < watched) {
    watcher.step(step);
    while (watcher.baseLightness <= (lightnesses[base.length] ?? -1)) base.push(watcher.seconds);
    while (watcher.rimLightness <= (lightnesses[rim.length] ?? -1)) rim.push(watcher.seconds);
    if (watcher.crumbDone) crumb = Math.min(crumb, watcher.seconds);
  }
  const { baseLightness, rimLightness, waterOnTop } = watcher;
  return { base, rim, crumb, baseAtEnd: baseLightness, rimAtEnd: rimLightness, wet: waterOnTop };
}

const topped = bakes.map((asked) => seen(asked));
const bare = bakes.map((asked) => ({ ...asked, sauce: 0, cheese: 0 }));
const untopped = bare.map((asked) => seen(asked));

/** Each pizza with what a change makes of it. */
function each(
  from: readonly Asked[],
  plain: readonly Seen[],
  change: (asked: Asked) => Seen,
  hold: (before: Seen, after: Seen, what: string) => void,
): void {
  from.forEach((asked, i) => {
    hold(plain[i]!, change(asked), JSON.stringify(asked));
  });
}

/** No lightness that both come to is reached sooner by more than a step. */
function noSooner(before: readonly number[], after: readonly number[], what: string): void {
  expect(after.length, what).toBeLessThanOrEqual(before.length);
  after.forEach((seconds, i) => {
    expect(seconds, what).toBeGreaterThanOrEqual(before[i]! - step);
  });
}

describe('a bake', () => {
  it('on a hotter plate browns its base sooner and sets its crumb no later', () => {
    each(
      bakes,
      topped,
      (asked) => seen({ ...asked, floor: asked.floor + 15 }),
      (before, after, what) => {
        noSooner(after.base, before.base, what);
        expect(after.baseAtEnd, what).toBeLessThan(before.baseAtEnd);
        expect(after.crumb, what).toBeLessThanOrEqual(before.crumb);
      },
    );
  });

  it('under a hotter vault browns its rim sooner, its base no later, and dries on top', () => {
    each(
      bakes,
      topped,
      (asked) => seen({ ...asked, vault: asked.vault + 15 }),
      (before, after, what) => {
        noSooner(after.rim, before.rim, what);
        noSooner(after.base, before.base, what);
        expect(after.rimAtEnd, what).toBeLessThan(before.rimAtEnd);
        expect(after.wet, what).toBeLessThan(before.wet);
      },
    );
  });

  it('with worse contact browns its base later and sets its crumb no sooner', () => {
    const worse = { bake: { contactConductance: 80 } };
    each(
      bakes,
      topped,
      (asked) => seen(asked, worse),
      (before, after, what) => {
        noSooner(before.base, after.base, what);
        expect(after.baseAtEnd, what).toBeGreaterThan(before.baseAtEnd);
        expect(after.crumb, what).toBeGreaterThanOrEqual(before.crumb);
      },
    );
  });

  it('of a heavier ball of bare dough is done no sooner: crumb later, base and rim no sooner', () => {
    each(
      bare,
      untopped,
      (asked) => seen({ ...asked, ball: Math.round(1.2 * asked.ball) }),
      (before, after, what) => {
        noSooner(before.base, after.base, what);
        noSooner(before.rim, after.rim, what);
        expect(after.crumb, what).toBeGreaterThan(before.crumb);
      },
    );
  });

  // Not so its crumb: wetter dough also conducts better.
  it('of a wetter dough browns later, base and rim', () => {
    each(
      bare,
      untopped,
      (asked) => seen({ ...asked, water: asked.water + 6 }),
      (before, after, what) => {
        noSooner(before.base, after.base, what);
        noSooner(before.rim, after.rim, what);
        expect(after.baseAtEnd, what).toBeGreaterThan(before.baseAtEnd);
      },
    );
  });

  it.each(['sauce', 'cheese'] as const)(
    'with more %s stays wetter on top and sets its crumb no sooner',
    (name) => {
      each(
        bakes,
        topped,
        (asked) => seen({ ...asked, [name]: asked[name] + 25 }),
        (before, after, what) => {
          expect(after.wet, what).toBeGreaterThan(before.wet);
          expect(after.crumb, what).toBeGreaterThanOrEqual(before.crumb);
        },
      );
    },
  );
});

describe('the rest between two pizzas', () => {
  it.each([
    ['european', 'carbon-steel', '6 mm'],
    ['small', 'cordierite', '12 mm'],
  ] as const)(
    'in the oven %s on %s of %s: the longer, the less cold the plate and the shorter the bake',
    (preset, material, thickness) => {
      const run = simulateEvening(
        evening(preset, {
          plate: { material, surface: 'bare', thickness, width: '33 cm', depth: '33 cm' },
          pizzas: { count: 2, shade: 'golden' },
        }),
      );
      const { points } = waitCurves(run, [90, 180, 300, 480])[0]!;
      for (const [i, point] of points.entries()) {
        if (i === 0) continue;
        // Recovered, it swings with the thermostat.
        expect(point.plateTop).toBeGreaterThan(points[i - 1]!.plateTop - 2);
        expect(point.bake).toBeLessThan(points[i - 1]!.bake + step);
      }
    },
  );
});
