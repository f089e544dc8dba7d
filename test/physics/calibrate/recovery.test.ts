import { beforeAll, describe, expect, it } from 'vitest';
import { fitOven, type OvenFit } from '../../../physics/calibrate/fit.ts';
import { nextReading } from '../../../physics/calibrate/nextReading.ts';
import { saturday } from '../../../physics/evening/demos.ts';
import type { Evening } from '../../../physics/evening/evening.ts';
import { prepareModel } from '../../../physics/evening/model.ts';
import { runPreheat } from '../../../physics/evening/preheat.ts';
import { sampleAt } from '../../../physics/numerics/samples.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import type { Preheat } from '../../../physics/evening/run.ts';
import { SeededRandom } from '../../../physics/numerics/random.ts';

/**
 * An oven 30 % weaker than the plan's, 12 K hotter than its dial says; a thermometer that is off by 2 K (one standard
 * deviation) and reads the plate as it is at that instant, thermostat cycles included. Invented.
 */
const minutes = [10, 20, 30, 40, 50, 60];
const noise = 2;
const trials = 100;

let planned: Evening;
let truth: Preheat;
const fits: OvenFit[] = [];

function readingsAt(times: readonly number[], random: SeededRandom | undefined) {
  return times.map((minute) => ({
    seconds: 60 * minute,
    place: 'plateTop' as const,
    temperature:
      sampleAt(truth.trace.seconds, truth.trace.plateTop, 60 * minute) +
      (random ? noise * random.normal() : 0),
  }));
}

beforeAll(() => {
  const read = readPlanObject(saturday, { now: 0 });
  if (!read.ok) throw new Error('the built-in evening');
  planned = read.evening;
  const { oven } = planned;
  truth = runPreheat(
    prepareModel({
      ...planned,
      oven: {
        ...oven,
        power: { bottom: 0.7 * oven.power.bottom, top: 0.7 * oven.power.top },
        thermostatOffset: 12,
      },
    }),
  ).preheat;
  for (let seed = 1; seed <= trials; seed++)
    fits.push(fitOven(planned, readingsAt(minutes, new SeededRandom(seed)), noise, seed)!);
}, 180_000);

describe('six readings of an oven that is not the planned one, a hundred times', () => {
  it('give the ready time within 2 min in at least 80', () => {
    const off = fits.map(({ ready }) => Math.abs(ready.value - truth.plateReady) / 60);
    expect(off.filter((error) => error <= 2).length).toBeGreaterThanOrEqual(80);
  });

  it('hold the true ready time between P10 and P90 in 70 to 90: neither narrow nor idle', () => {
    const inside = fits.filter(({ ready }) => ready.p10 <= truth.plateReady && truth.plateReady <= ready.p90);
    expect(inside.length).toBeGreaterThanOrEqual(70);
    expect(inside.length).toBeLessThanOrEqual(90);
  });

  it('find the weak oven and the dial that lies', () => {
    const mean = (of: (fit: OvenFit) => number): number =>
      fits.reduce((sum, fit) => sum + of(fit), 0) / trials;
    expect(Math.abs(mean(({ numbers }) => numbers.power.value) - 0.7)).toBeLessThan(0.05);
    expect(Math.abs(mean(({ numbers }) => numbers.thermostatOffset.value) - 12)).toBeLessThan(2);
  });

  it('rarely call a thermometer that is as good as said a bad one', () => {
    // Called so at the 5 % point: some 5 of 100, fewer than 15 all but certainly.
    expect(fits.filter(({ agrees }) => !agrees).length).toBeLessThan(15);
  });
});

describe('what the readings do not say', () => {
  it('of the dial, while the thermostat has not switched yet: it stays as unsure as it was', () => {
    const fit = fitOven(planned, readingsAt([10, 15, 20, 25, 30], undefined), noise)!;
    const { value, p10, p90 } = fit.numbers.thermostatOffset;
    expect(Math.abs(value)).toBeLessThan(1);
    expect((p90 - p10) / (2 * 1.2816 * 11)).toBeGreaterThan(0.95);
    expect(Math.abs(fit.numbers.power.value - 0.7)).toBeLessThan(0.03);
  });

  it('and the next reading that is named narrows the answer about as much as was said', () => {
    const early = [10, 15, 20, 25, 30];
    const fit = fitOven(planned, readingsAt(early, undefined), noise)!;
    const next = nextReading(fit, 60 * 30, noise)!;
    expect(next.minute).toBeGreaterThan(30);
    const more = fitOven(planned, readingsAt([...early, next.minute], undefined), noise)!;
    const width = ({ ready }: OvenFit): number => (ready.p90 - ready.p10) / 60;
    expect(width(more)).toBeLessThan(width(fit));
    expect(Math.abs(width(fit) - width(more) - next.narrowsMinutes)).toBeLessThan(0.4 * next.narrowsMinutes);
    // Any other reading at hand narrows it less, or hardly more.
    for (const minute of [35, 90]) {
      const other = fitOven(planned, readingsAt([...early, minute], undefined), noise)!;
      expect(width(other)).toBeGreaterThan(width(more) - 0.5);
    }
  });

  it('is said when they contradict the model: the range widens and the worst reading stands out', () => {
    const readings = readingsAt(minutes, undefined).map((reading, i) =>
      i === 2 ? { ...reading, temperature: reading.temperature + 60 } : reading,
    );
    const fit = fitOven(planned, readings, noise)!;
    expect(fit.agrees).toBe(false);
    const worst = fit.residuals.reduce((a, b) => (Math.abs(b.residual) > Math.abs(a.residual) ? b : a));
    expect(worst.reading.seconds).toBe(1800);
    // The mistyped figure does not bend the oven, and the range stays honest.
    expect(worst.residual).toBeGreaterThan(45);
    expect(Math.abs(fit.numbers.power.value - 0.7)).toBeLessThan(0.05);
    expect(fit.ready.p90 - fit.ready.p10).toBeGreaterThan(fits[0]!.ready.p90 - fits[0]!.ready.p10);
    expect(fit.ready.p10).toBeLessThan(truth.plateReady);
    expect(fit.ready.p90).toBeGreaterThan(truth.plateReady);
  });
});
