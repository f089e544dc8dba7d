import { describe, expect, it } from 'vitest';
import { ovenPresetIds } from '../../../physics/evening/ids.ts';
import { prepareModel } from '../../../physics/evening/model.ts';
import { startPreheat } from '../../../physics/evening/preheat.ts';
import { assemble } from '../../../physics/oven/assembly.ts';
import { airNode } from '../../../physics/oven/networkParts.ts';
import { OvenRun } from '../../../physics/oven/ovenRun.ts';
import { evening, northAmerican, plateFor } from '../../support/evenings.ts';

/** Means over six whole thermostat cycles after `hours`; values weighted by the length of their steps. */
function cycleMeans(run: OvenRun, hours: number, dt: number, values: () => readonly number[]) {
  run.advance(hours * 3600, dt);
  const cycle = run.switchedOn.length;
  while (run.switchedOn.length === cycle && run.time < (hours + 2) * 3600) run.step(dt);
  const first = run.switchedOn.length;
  const supplied = run.network.ledger.supplied;
  const start = run.time;
  let sums: number[] = [];
  while (run.switchedOn.length < first + 6) {
    const length = run.step(dt);
    sums = values().map((value, i) => (sums[i] ?? 0) + value * length);
  }
  const span = run.time - start;
  return { means: sums.map((sum) => sum / span), power: (run.network.ledger.supplied - supplied) / span };
}

describe.each(ovenPresetIds)('the oven %s', (preset) => {
  const wanted = evening(preset, { plate: plateFor(preset, { width: '40 cm', depth: '35 cm' }) });
  const model = prepareModel(wanted);

  it('empty, holds the setting as the mean of its air over whole cycles, within 1.5 K: what the dial means', () => {
    const network = assemble(model.context, undefined, undefined, 0);
    const run = new OvenRun(model.context, network, undefined, model.dial.target);
    const { means } = cycleMeans(run, 3, 2, () => [network.temperature[airNode]!]);
    expect(Math.abs(means[0]! - wanted.oven.setpoint)).toBeLessThan(1.5);
  });

  it('settles with its plate where five hours of simulation end, within 2 K, at the same mean power within 3 %', () => {
    const run = startPreheat(model);
    const top = run.plate!.layout.columns[0]!.top;
    const T = run.network.temperature;
    const { means, power } = cycleMeans(run, 5, 5, () => [T[top]!, T[airNode]!]);
    expect(Math.abs(means[0]! - model.settled.plate)).toBeLessThan(2);
    expect(Math.abs(means[1]! - model.settled.ovenAir)).toBeLessThan(2);
    expect(Math.abs(power / model.settled.power - 1)).toBeLessThan(0.03);
  });
});

describe.each([
  ['cordierite', '15 mm'],
  ['fired-clay', '25 mm'],
] as const)(
  'a stone of %s, %s, through whose thickness heat flows even when settled',
  (material, thickness) => {
    it('settles where five hours of simulation end, within 2 K', () => {
      const model = prepareModel(northAmerican({ plate: { material, thickness, surface: 'bare' } }));
      const run = startPreheat(model);
      const { top } = run.plate!.layout.columns[0]!;
      const T = run.network.temperature;
      const { means } = cycleMeans(run, 5, 5, () => [T[top]!, run.plate!.core(0, T)]);
      expect(Math.abs(means[0]! - model.settled.plate)).toBeLessThan(2);
    });
  },
);

describe('an oven whose dial lies', () => {
  it('holds what it really stands at: the setting and the offset', () => {
    const model = prepareModel(northAmerican({ oven: { thermostatOffset: '-15 K' } }));
    const network = assemble(model.context, undefined, undefined, 0);
    const run = new OvenRun(model.context, network, undefined, model.dial.target);
    const { means } = cycleMeans(run, 3, 2, () => [network.temperature[airNode]!]);
    expect(Math.abs(means[0]! - (273.15 + 288 - 15))).toBeLessThan(1.5);
  });
});
