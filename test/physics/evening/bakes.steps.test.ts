import { describe, expect, it } from 'vitest';
import { disagreement, remediesFor } from '../../../physics/evening/remedies.ts';
import { simulateEvening } from '../../../physics/evening/simulate.ts';
import { evening, northAmerican } from '../../support/evenings.ts';
import { firstBake, heated, secondsOf } from '../../support/bakes.ts';

const steel = heated(northAmerican());
const plain = firstBake(steel);
const withSteps = (steps: Record<string, unknown>, pizzas: Record<string, unknown> = {}) =>
  firstBake(steel, northAmerican({ pizzas: { ...pizzas, steps } }));

describe('what the cook does at the oven', () => {
  it('a turn comes at half the time that the bake takes without, and lets heat out of the door', () => {
    const turned = withSteps({ turnAtHalfTime: true });
    const [turn] = turned.steps!;
    expect(turn!.what).toBe('turn');
    expect(turn!.at - turned.inAt).toBeCloseTo(secondsOf(plain) / 2, 6);
    expect(secondsOf(turned)).toBeGreaterThan(secondsOf(plain));
    expect(turned.balance.lostByVentAndDoor).toBeGreaterThan(plain.balance.lostByVentAndDoor + 5e3);
  });
  it('a look opens the door at its time', () => {
    const looked = withSteps({ lookAfter: '2 min' });
    expect(looked.steps!.map(({ what }) => what)).toEqual(['look']);
    expect(looked.steps![0]!.at - looked.inAt).toBeCloseTo(120, 6);
  });
  it('paper pulled once the base has set: sooner done than with it, later than without', () => {
    const paper = firstBake(steel, northAmerican({ pizzas: { bench: 'parchment' } }));
    const pulled = withSteps({ pullParchment: true }, { bench: 'parchment' });
    const [pull] = pulled.steps!;
    expect(pull!.what).toBe('pull-parchment');
    // Common practice pulls it after one to two minutes.
    expect(pull!.at - pulled.inAt).toBeGreaterThan(20);
    expect(pull!.at - pulled.inAt).toBeLessThan(150);
    expect(secondsOf(pulled)).toBeLessThan(secondsOf(paper));
    expect(secondsOf(pulled)).toBeGreaterThan(secondsOf(plain));
  });
  it('the top element at the end darkens the rim by what was asked for', () => {
    expect(plain.finish).toBeGreaterThan(0);
    const finished = withSteps({ topElementAtEnd: `${plain.finish} s` });
    expect(secondsOf(finished)).toBeCloseTo(secondsOf(plain) + plain.finish, 1);
    expect(finished.finish).toBeLessThan(3);
    expect(finished.rimLightness).toBeLessThan(58.5);
    expect(finished.baseLightness).toBeLessThan(plain.baseLightness);
  });
  it('the top element before the load, or on with it, browns the rim sooner', () => {
    expect(withSteps({ topElementBefore: '5 min' }).rimLightness).toBeLessThan(plain.rimLightness - 2);
    const during = withSteps({ topElementAfter: '0 s' });
    expect(during.rimLightness).toBeLessThan(plain.rimLightness - 10);
    expect(during.steps!.at(-1)).toMatchObject({ what: 'top-element', lasts: secondsOf(during) });
  });
});

describe('a base baked ahead and finished later', () => {
  const finished = ['room', 'refrigerator', 'freezer'].map((keep) =>
    simulateEvening(northAmerican({ pizzas: { count: 1, shade: 'golden', parBake: { keep } } })),
  );
  it('was set and hardly coloured, and comes with the water that its first bake left', () => {
    for (const { bakes } of finished) {
      const { baseAhead } = bakes[0]!;
      expect(baseAhead!.baseLightness).toBeLessThanOrEqual(78.05);
      expect(baseAhead!.seconds).toBeGreaterThan(60);
      expect(baseAhead!.waterLost).toBeGreaterThan(5e-3);
    }
  });
  it('takes longer from the refrigerator than from the bench, longest from the freezer', () => {
    const [room, cold, frozen] = finished.map(({ bakes }) => bakes[0]!);
    expect(secondsOf(cold!)).toBeGreaterThan(secondsOf(room!));
    expect(secondsOf(frozen!)).toBeGreaterThan(secondsOf(cold!));
    for (const bake of [room!, cold!, frozen!]) {
      expect(bake.baseLightness).toBeCloseTo(60, 0);
      // Hot through: the coldest place of crumb and cheese at 65 degC at least.
      expect(bake.crumb).toBeGreaterThan(338);
      expect(bake.cheese).toBeGreaterThan(338);
    }
  });
  it('starts with less water than fresh dough', () => {
    const fresh = simulateEvening(northAmerican({ pizzas: { count: 1, shade: 'golden' } })).bakes[0]!;
    const kept = finished[1]!.bakes[0]!;
    expect(kept.water.before).toBeCloseTo(fresh.water.before - kept.baseAhead!.waterLost, 9);
  });
});

describe('when base and top are not done together', () => {
  it('on steel the rim is last; every remedy comes with its own bake, the top element in time meets both shades', () => {
    const asked = northAmerican();
    const run = simulateEvening(asked);
    expect(disagreement(run.bakes[0]!)).toMatchObject({ first: 'base', last: 'rim' });
    const remedies = remediesFor(asked, run);
    const named = new Map(remedies.map((one) => [one.what, one]));
    expect([...named.keys()].sort()).toEqual(
      ['rack-higher', 'semolina', 'top-element-after', 'top-element-at-end', 'top-element-before'].sort(),
    );
    for (const { finish, bake } of remedies) {
      expect(finish).toBeLessThan(run.bakes[0]!.finish);
      expect(bake).toBeGreaterThan(60);
    }
    const met = named.get('top-element-after')!;
    expect(met.finish).toBe(0);
    expect(Math.abs(met.baseLightness - 50)).toBeLessThan(0.2);
    expect(Math.abs(met.rimLightness - 58)).toBeLessThan(1.5);
    expect(remedies[0]!.finish).toBe(0);
  });
  it('a remedy says what to set, and setting it gives the bake that was promised', () => {
    const asked = northAmerican();
    const remedies = remediesFor(asked, simulateEvening(asked));
    const bench = remedies.find(({ what }) => what === 'semolina')!;
    expect(bench.change).toEqual([{ path: 'pizzas.bench', value: 'semolina' }]);
    const done = simulateEvening(northAmerican({ pizzas: { bench: 'semolina' } })).bakes[0]!;
    expect(secondsOf(done)).toBeCloseTo(bench.bake, 0);
    const rack = remedies.find(({ what }) => what === 'rack-higher')!;
    const higher = simulateEvening(northAmerican({ plate: { rackHeight: Number(rack.change[0]!.value) } }));
    expect(secondsOf(higher.bakes[0]!)).toBeCloseTo(rack.bake, 0);
  });
  it('offers paper only where the oven stays below what is printed on it', () => {
    const at = (setpoint: string): readonly string[] => {
      const asked = northAmerican({ oven: { setpoint }, pizzas: { shade: 'golden' } });
      return remediesFor(asked, simulateEvening(asked)).map(({ what }) => what);
    };
    expect(at('215 degC')).toContain('parchment');
    expect(at('220 degC')).not.toContain('parchment');
  });
  it('on thick clay the rim is done first: lower, not higher', () => {
    const asked = northAmerican({ plate: { material: 'fired-clay', surface: 'bare', thickness: '20 mm' } });
    const run = simulateEvening(asked);
    expect(disagreement(run.bakes[0]!)).toMatchObject({ first: 'rim', last: 'base' });
    const remedies = remediesFor(asked, run);
    expect(remedies.map(({ what }) => what)).toContain('rack-lower');
    expect(remedies[0]!.bake).toBeLessThan(secondsOf(run.bakes[0]!));
  });
});

describe('a cooler oven', () => {
  it('knows the same steps', () => {
    const small = firstBake(heated(evening('small', { pizzas: { steps: { topElementAtEnd: '60 s' } } })));
    expect(small.steps!.at(-1)!.lasts).toBeCloseTo(60, 6);
  });
});
