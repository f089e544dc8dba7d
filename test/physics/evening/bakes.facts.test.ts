import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bakeCases } from '../../../physics/bake/validation.ts';
import { bakeBetween } from '../../../physics/evening/givenOven.ts';
import { standardResolution } from '../../../physics/evening/model.ts';
import { simulateEvening } from '../../../physics/evening/simulate.ts';
import type { Bake } from '../../../physics/evening/run.ts';
import { evening, northAmerican } from '../../support/evenings.ts';
import { firstBake, heated, secondsOf, unaccounted } from '../../support/bakes.ts';

const cordierite = { material: 'cordierite', surface: 'bare', thickness: '15 mm' };
const lightnesses = [70, 60, 50];

/** Whether the base of the one reaches every L* later than that of the other. */
function later(one: Bake, other: Bake): void {
  for (const lightness of lightnesses)
    expect(one.secondsToLightness.get(lightness)!).toBeGreaterThan(other.secondsToLightness.get(lightness)!);
}

describe('time to a lightness (directions: common practice, no source)', () => {
  const steel = heated(northAmerican());
  const usual = firstBake(steel);

  it('falls with the temperature of the plate at the load', () => {
    const [early, late] = ['25 min', '45 min'].map((loadAt) =>
      firstBake(steel, northAmerican({ pizzas: { loadAt } })),
    );
    expect(late!.plateTopAtLoad).toBeGreaterThan(early!.plateTopAtLoad + 5);
    later(early!, late!);
  });
  it('falls with the setting', () => {
    later(firstBake(heated(northAmerican({ oven: { setpoint: '250 degC' } }))), usual);
  });
  it('falls with the contact', () => {
    const bad = heated(northAmerican(), { bake: { contactConductance: 80 } });
    later(firstBake(bad), usual);
  });
  it('rises with parchment', () => {
    later(firstBake(steel, northAmerican({ pizzas: { bench: 'parchment' } })), usual);
  });
  it('rises with the thickness of bare dough: the base a little, since the crust throttles, the crumb much', () => {
    const bare = { sauce: '0 g', cheese: [] };
    const [thin, thick] = ['300 g', '700 g'].map((ballMass) =>
      firstBake(steel, northAmerican({ toppings: bare, pizzas: { ballMass } })),
    );
    later(thick!, thin!);
    expect(thick!.partsDone!.crumb!).toBeGreaterThan(1.3 * thin!.partsDone!.crumb!);
  });
  it('hardly changes under topping, from which a thicker dough also shields the base', () => {
    const thick = firstBake(steel, northAmerican({ pizzas: { ballMass: '700 g' } }));
    for (const lightness of lightnesses) {
      const ratio = thick.secondsToLightness.get(lightness)! / usual.secondsToLightness.get(lightness)!;
      expect(Math.abs(ratio - 1)).toBeLessThan(0.02);
    }
    expect(thick.partsDone!.crumb!).toBeGreaterThan(1.3 * usual.partsDone!.crumb!);
  });
  it('stone over steel at the same temperature is a factor that nobody typed in', () => {
    // Contact of two half-spaces holds the base of the one 60 K colder than that of the other (Carslaw and Jaeger).
    const boundaries = { floor: 553.15, vault: 553.15 };
    const seconds = (plate: Record<string, unknown>): number => {
      const watcher = bakeBetween(northAmerican({ plate }), boundaries);
      while (watcher.baseLightness > 60) watcher.step();
      return watcher.seconds;
    };
    const factor = seconds(cordierite) / seconds({});
    console.log(`stone over steel, both at 280 degC, to L* 60: ${factor.toFixed(2)}`);
    expect(factor).toBeGreaterThan(1.2);
    expect(factor).toBeLessThan(4);
  });
});

describe('a second pizza without waiting', () => {
  const longer = (plate: Record<string, unknown>): number => {
    const { bakes } = simulateEvening(northAmerican({ plate, pizzas: { count: 2, wait: '90 s' } }));
    expect(bakes[1]!.inAt - bakes[0]!.outAt).toBeLessThan(115);
    return secondsOf(bakes[1]!) / secondsOf(bakes[0]!);
  };
  it('bakes longer, and thin steel suffers more than thick', () => {
    const [thin, thick] = ['5 mm', '14 mm'].map((thickness) => longer({ thickness }));
    expect(thick!).toBeGreaterThan(1);
    expect(thin!).toBeGreaterThan(thick!);
  });
});

describe('twice the cells and half the steps', () => {
  const { mesh, ...steps } = standardResolution;
  const fine = {
    bakeStep: steps.bakeStep / 2,
    recoveryStep: steps.recoveryStep / 2,
    plateLayers: 2 * steps.plateLayers,
    mesh: {
      dough: 2 * mesh.dough,
      rim: 2 * mesh.rim,
      sauce: 2 * mesh.sauce,
      cheese: 2 * mesh.cheese,
      firstCell: mesh.firstCell / 2,
    },
  };
  it.each([
    ['steel', northAmerican()],
    ['steel, parchment', northAmerican({ pizzas: { bench: 'parchment' } })],
    ['cordierite', northAmerican({ plate: cordierite })],
    [
      'a clay plate of 20 mm',
      northAmerican({ plate: { material: 'fired-clay', surface: 'bare', thickness: '20 mm' } }),
    ],
  ])('on %s: base to every L* within 3 s, L* within 0.5', (name, asked) => {
    const { model, preheat } = heated(asked);
    const usual = firstBake({ model, preheat });
    const other = firstBake({ model: { ...model, resolution: { ...model.resolution, ...fine } }, preheat });
    const moved = lightnesses.map(
      (lightness) => other.secondsToLightness.get(lightness)! - usual.secondsToLightness.get(lightness)!,
    );
    const rim = other.rimLightness - usual.rimLightness;
    console.log(
      `${name}: L* 70, 60, 50 after ${moved.map((s) => s.toFixed(1)).join(', ')} s more; bake ${(secondsOf(other) - secondsOf(usual)).toFixed(1)} s, base L* ${(other.baseLightness - usual.baseLightness).toFixed(2)}, rim L* ${rim.toFixed(2)}`,
    );
    for (const seconds of moved) expect(Math.abs(seconds)).toBeLessThan(3);
    expect(Math.abs(secondsOf(other) - secondsOf(usual))).toBeLessThan(3);
    expect(Math.abs(other.baseLightness - usual.baseLightness)).toBeLessThan(0.5);
    expect(Math.abs(rim)).toBeLessThan(0.5);
  });
});

describe('any evening with steps, different pizzas and bases baked ahead', () => {
  const given = fc.record({
    preset: fc.constantFrom('european', 'north-american', 'strong' as const),
    thickness: fc.integer({ min: 5, max: 14 }),
    diameters: fc.array(fc.integer({ min: 22, max: 34 }), { minLength: 2, maxLength: 3 }),
    bench: fc.constantFrom('metal', 'flour', 'parchment'),
    turn: fc.boolean(),
    pull: fc.boolean(),
    look: fc.option(fc.integer({ min: 20, max: 200 }), { nil: undefined }),
    top: fc.option(fc.integer({ min: 0, max: 240 }), { nil: undefined }),
    end: fc.option(fc.integer({ min: 5, max: 90 }), { nil: undefined }),
    keep: fc.option(fc.constantFrom('room', 'refrigerator', 'freezer'), { nil: undefined }),
  });
  it('heat closes to 1e-6 and water to 1e-9 over every bake', () => {
    fc.assert(
      fc.property(given, ({ preset, thickness, diameters, bench, turn, pull, look, top, end, keep }) => {
        const { bakes } = simulateEvening(
          evening(preset, {
            plate: { width: '38 cm', depth: '36 cm', thickness: `${thickness} mm` },
            pizzas: {
              count: diameters.length,
              bench,
              shade: 'golden',
              each: diameters.map((cm) => ({
                diameter: `${cm} cm`,
                ballMass: `${Math.round(cm * cm * 0.3)} g`,
              })),
              steps: {
                turnAtHalfTime: turn,
                pullParchment: pull && bench === 'parchment',
                ...(look !== undefined && { lookAfter: `${look} s` }),
                ...(top !== undefined && { topElementAfter: `${top} s` }),
                ...(end !== undefined && { topElementAtEnd: `${end} s` }),
              },
              ...(keep && { parBake: { keep } }),
            },
          }),
        );
        for (const bake of bakes) {
          const open = unaccounted(bake);
          expect(open.heat).toBeLessThan(1e-6);
          expect(open.water).toBeLessThan(1e-9);
        }
      }),
      { seed: 2026, numRuns: 6 },
    );
  }, 60_000);
});

describe('published bakes', () => {
  const cases = bakeCases();
  for (const { id, published, model, unit, within } of cases)
    console.log(`${within ? 'within' : 'MISS  '} ${id}: ${published} ${unit}, model ${model.toFixed(2)}`);
  it('the one used for calibration is met; every other says that it is a prediction', () => {
    const calibrated = cases.filter(({ note }) => note.startsWith('calibration'));
    expect(calibrated.map(({ id, within }) => [id, within])).toEqual([['bake-steel-550', true]]);
    for (const one of cases) {
      expect(Number.isFinite(one.model)).toBe(true);
      expect(/^(calibration|prediction)[:;]/u.test(one.note)).toBe(true);
    }
  });
  it('a stone bakes paler the colder it is: 144, 213, 233, 265 degC, a visible step between each', () => {
    // Order: America's Test Kitchen, how-to 6633. A step of 2.3 is just seen (Mahy et al. 1994, from memory).
    const shades = cases.filter(({ id }) => id.startsWith('bake-kitchen-')).map(({ model }) => model);
    expect(shades).toHaveLength(4);
    shades.slice(1).forEach((lightness, i) => {
      expect(shades[i]! - lightness).toBeGreaterThan(2.3);
    });
  });
});
