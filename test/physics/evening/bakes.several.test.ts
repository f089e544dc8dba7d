import { describe, expect, it } from 'vitest';
import { LoadedOven } from '../../../physics/evening/loadedOven.ts';
import { withPizza } from '../../../physics/evening/onePizza.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import { waitRuleIds } from '../../../physics/evening/ids.ts';
import { alike, longerBake, readyFor, shortestTurn } from '../../../physics/evening/series.ts';
import { simulateEvening } from '../../../physics/evening/simulate.ts';
import { waitCurves } from '../../../physics/evening/waitCurve.ts';
import { northAmerican } from '../../support/evenings.ts';
import { firstBake, heated, secondsOf } from '../../support/bakes.ts';

describe('different pizzas one after another', () => {
  const each = [
    {},
    { diameter: '24 cm', ballMass: '180 g', sauce: '50 g', cheese: [{ kind: 'hard', mass: '20 g' }] },
    { sauce: '0 g', cheese: [], shade: 'golden' },
  ];
  const asked = northAmerican({ pizzas: { count: 3, each } });

  it('each is what the plan says of it', () => {
    const second = withPizza(asked, 2);
    expect(second.pizzas.diameter).toBeCloseTo(0.24, 12);
    expect(second.toppings.sauce).toBeCloseTo(0.05, 12);
    expect(second.pizzas.bench).toBe(asked.pizzas.bench);
    expect(withPizza(asked, 4)).toBe(asked);
  });
  it('each bakes to its own shade, and within a quarter of what it would take as the first', () => {
    const { bakes } = simulateEvening(asked);
    expect(bakes.map(({ baseLightness }) => Math.round(baseLightness))).toEqual([50, 50, 60]);
    expect(bakes[2]!.waterLeftOnTop).toBe(0);
    const steel = heated(asked);
    bakes.slice(1).forEach((bake, i) => {
      const alone = secondsOf(firstBake(steel, withPizza(asked, i + 2)));
      expect(secondsOf(bake)).toBeLessThan(longerBake * alone + 1);
    });
  });
  it('a plate takes its heat along when its columns change, to 1e-9', () => {
    const { model, preheat } = heated(asked);
    const { oven } = readyFor(model, preheat, 1, preheat.preheat.plateReady);
    expect(oven).toBeInstanceOf(LoadedOven);
    oven.load();
    oven.run.advance(oven.run.time + 120, 2);
    oven.unload();
    for (const pizza of [2, 1, 3]) {
      const before = oven.plate.heat;
      oven.prepare(withPizza(asked, pizza));
      expect(Math.abs(oven.plate.heat / before - 1)).toBeLessThan(1e-9);
    }
  });
});

describe('wait longer or bake longer', () => {
  const run = simulateEvening(northAmerican({ pizzas: { count: 3 } }));
  it('a curve for each later pizza: the longer the wait, the hotter the plate and the shorter the bake', () => {
    const curves = waitCurves(run);
    expect(curves.map(({ pizza }) => pizza)).toEqual([2, 3]);
    for (const { points } of curves) {
      const [soon, late] = [points[0]!, points.at(-1)!];
      expect(soon.wait).toBe(shortestTurn);
      expect(late.plateTop).toBeGreaterThan(soon.plateTop);
      expect(late.bake).toBeLessThan(soon.bake);
      // A minute of waiting saves less than a minute of bake.
      expect(late.total).toBeGreaterThan(soon.total);
      for (const { wait, bake, total } of points) expect(total).toBeCloseTo(wait + bake, 9);
    }
  });
  it('the curve holds the bake that the evening has, at the wait that it gives', () => {
    const [second] = run.bakes.slice(1);
    const wait = second!.inAt - run.bakes[0]!.outAt;
    // The wait of the plan runs from the door shut behind one pizza to its opening for the next.
    const [curve] = waitCurves(run, [wait - 14]);
    expect(Math.abs(curve!.points[0]!.bake - secondsOf(second!))).toBeLessThan(5);
  });
  it('a wait that the plan gives is kept', () => {
    const { bakes } = simulateEvening(northAmerican({ pizzas: { count: 2, wait: '6 min' } }));
    expect(bakes[1]!.inAt - bakes[0]!.outAt).toBeCloseTo(360 + 14, 6);
  });
});

describe('a pizza loaded before the plate is ready', () => {
  it('goes in when the plan says, on a colder plate, and bakes longer', () => {
    const ready = simulateEvening(northAmerican());
    const early = simulateEvening(northAmerican({ pizzas: { loadAt: '20 min' } }));
    expect(early.bakes[0]!.inAt).toBeCloseTo(20 * 60 + 8, 6);
    expect(early.preheat.plateReady).toBe(ready.preheat.plateReady);
    expect(early.bakes[0]!.plateTopAtLoad).toBeLessThan(ready.bakes[0]!.plateTopAtLoad - 10);
    expect(secondsOf(early.bakes[0]!)).toBeGreaterThan(secondsOf(ready.bakes[0]!));
    const { seconds } = early.trace;
    for (let i = 1; i < seconds.length; i++) expect(seconds[i]!).toBeGreaterThan(seconds[i - 1]!);
  });
  it('or long after', () => {
    const late = simulateEvening(northAmerican({ pizzas: { loadAt: '3 h' } }));
    expect(late.bakes[0]!.inAt).toBeCloseTo(3 * 3600 + 8, 6);
    const { seconds } = late.trace;
    for (let i = 1; i < seconds.length; i++) expect(seconds[i]! - seconds[i - 1]!).toBeLessThan(20);
  });
});

describe('the plan file refuses what its pizzas cannot be', () => {
  const problem = (pizzas: Record<string, unknown>) => {
    const read = readPlanObject({ format: 'hearthclock/evening', version: 1, pizzas }, { now: 0 });
    return read.ok ? undefined : read.problems[0]!.path;
  };
  it.each([
    ['pizzas.each', { count: 1, each: [{}, {}] }],
    ['pizzas.each.0.diameter', { each: [{ diameter: '90 cm' }] }],
    ['pizzas.each.0.diameter', { each: [{ diameter: '39 cm', ballMass: '400 g' }] }],
    ['pizzas.each.0.ballMass', { each: [{ ballMass: '1.9 kg' }] }],
    ['pizzas.each.0.topping', { each: [{ topping: 'ham' }] }],
    ['pizzas.each.0.cheese.0.waterShare', { each: [{ cheese: [{ kind: 'custom', mass: '50 g' }] }] }],
    ['pizzas.steps.pullParchment', { bench: 'flour', steps: { pullParchment: true } }],
    ['pizzas.steps.lookAfter', { steps: { lookAfter: '3 cm' } }],
    ['pizzas.steps.flip', { steps: { flip: true } }],
    ['pizzas.loadAt', { loadAt: '7 h' }],
    ['pizzas.wait', { wait: '2 h' }],
    ['pizzas.parBake.keep', { parBake: { keep: 'cellar' } }],
    ['pizzas.browningLaw', { browningLaw: 'guess' }],
  ])('%s', (path, pizzas) => {
    expect(problem(pizzas)).toBe(path);
  });
  it('and takes what they can', () => {
    expect(
      problem({
        count: 2,
        bench: 'parchment',
        each: [{}, { bench: 'flour', shade: 'lightness 55' }],
        steps: { turnAtHalfTime: true, pullParchment: true, topElementAtEnd: '45 s' },
        loadAt: '35 min',
        wait: '2 min',
        parBake: { keep: 'freezer', shade: 'pale' },
        browningLaw: 'purlis-2009',
      }),
    ).toBeUndefined();
  });
});

describe('rules for the wait', () => {
  // A thin plate that one pizza cools a lot.
  const thin = (waitRule?: string) =>
    simulateEvening(
      northAmerican({ plate: { thickness: '4 mm' }, pizzas: { count: 4, ...(waitRule && { waitRule }) } }),
    );
  const usual = thin();
  const runs = Object.fromEntries(waitRuleIds.map((rule) => [rule, thin(rule)]));
  const times = (rule: string): readonly number[] => runs[rule]!.bakes.map(secondsOf);
  const waits = (rule: string): readonly number[] =>
    runs[rule]!.bakes.slice(1).map(({ inAt }, i) => inAt - runs[rule]!.bakes[i]!.outAt);
  const longest = (list: readonly number[]): number => Math.max(...list);
  // The door stands open for some seconds after an unload and before a load.
  const turn = shortestTurn + 15;

  it('a quarter longer is the usual one', () => {
    expect(times('quarter-longer')).toEqual(usual.bakes.map(secondsOf));
    expect(longest(times('quarter-longer'))).toBeLessThanOrEqual(
      longerBake * times('quarter-longer')[0]! + 1,
    );
  });
  it('alike waits longer, and every bake is as the first within 4 %', () => {
    const [first, ...later] = times('alike');
    for (const time of later) expect(time / first!).toBeLessThan(alike + 0.005);
    expect(longest(waits('alike'))).toBeGreaterThan(longest(waits('quarter-longer')));
  });
  it('fastest never waits longer than hands need, and no other evening is over sooner', () => {
    expect(longest(waits('fastest'))).toBeLessThan(turn);
    const ends = waitRuleIds.map((rule) => runs[rule]!.bakes.at(-1)!.outAt);
    expect(Math.min(...ends)).toBe(runs['fastest']!.bakes.at(-1)!.outAt);
  });
  it('in pairs: the second of two follows at once, the third finds the plate as the first did', () => {
    const [second, third, fourth] = waits('in-pairs');
    expect(longest([second!, fourth!])).toBeLessThan(turn);
    expect(third).toBeGreaterThan(turn);
    expect(times('in-pairs')[2]! / times('in-pairs')[0]!).toBeLessThan(alike + 0.005);
  });
  it('is not used where the wait is given, and the plan says so', () => {
    const plan = { format: 'hearthclock/evening', version: 1, pizzas: { wait: '3 min', waitRule: 'alike' } };
    const read = readPlanObject(plan, { now: 0 });
    expect(read.ok && read.warnings.map(({ code }) => code)).toContain('wait-rule-unused');
    const wrong = readPlanObject({ ...plan, pizzas: { waitRule: 'slow' } }, { now: 0 });
    expect(wrong).toMatchObject({ ok: false, problems: [{ path: 'pizzas.waitRule' }] });
  });
});
