import { describe, expect, it } from 'vitest';
import { ovenPresetIds } from '../../../physics/evening/ids.ts';
import { prepareModel, readyTolerance } from '../../../physics/evening/model.ts';
import type { ModelOptions } from '../../../physics/evening/model.ts';
import { runPreheat, startPreheat } from '../../../physics/evening/preheat.ts';
import { sampleAt } from '../../../physics/numerics/samples.ts';
import type { EnergyBalance } from '../../../physics/evening/run.ts';
import { bottomElementNode, topElementNode } from '../../../physics/oven/networkParts.ts';
import { evening, northAmerican, plateFor } from '../../support/evenings.ts';

const plate = { width: '40 cm', depth: '35 cm' };

function unaccounted(balance: EnergyBalance): number {
  const { supplied, stored, lostToRoom, lostByVentAndDoor, lostBySteam } = balance;
  return (supplied - stored - lostToRoom - lostByVentAndDoor - lostBySteam) / supplied;
}

describe.each(ovenPresetIds)('a preheat of the oven %s', (preset) => {
  const { preheat } = runPreheat(prepareModel(evening(preset, { plate: plateFor(preset, plate) })));

  it('accounts for every joule: in = stored + lost, to 1e-9 of what came in', () => {
    const { balance } = preheat;
    expect(Math.abs(unaccounted(balance))).toBeLessThan(1e-9);
    for (const part of [balance.supplied, balance.stored, balance.lostToRoom, balance.lostByVentAndDoor])
      expect(part).toBeGreaterThan(0);
  });

  it('signals before the plate is ready, which is settled then, top and core, and stays so', () => {
    const { airReady, plateReady, plateTop, plateCore, settledPlateTop, trace } = preheat;
    expect(airReady).toBeLessThan(plateReady);
    expect(Math.abs(plateTop - settledPlateTop)).toBeLessThan(readyTolerance + 0.5);
    expect(Math.abs(plateCore - settledPlateTop)).toBeLessThan(readyTolerance + 0.5);
    const later = sampleAt(trace.seconds, trace.plateTop, plateReady + 900);
    // an instant, with the ripple of the thermostat in it
    expect(Math.abs(later - settledPlateTop)).toBeLessThan(readyTolerance + 4);
    expect(trace.seconds.at(-1)!).toBeGreaterThanOrEqual(7200);
    for (let i = 1; i < trace.seconds.length; i++)
      expect(trace.seconds[i]! - trace.seconds[i - 1]!).toBeLessThanOrEqual(20);
  });
});

describe('nothing gets warmer than what heats it, nor colder than the kitchen', () => {
  it.each(['european', 'north-american', 'small', 'strong'] as const)('in the oven %s', (preset) => {
    const model = prepareModel(evening(preset, { plate: plateFor(preset, plate) }));
    const run = startPreheat(model);
    const T = run.network.temperature;
    const { roomTemperature } = model.evening.kitchen;
    // Once on, the elements are the hottest nodes as long as they are on.
    while (run.time < 5400) {
      run.step(5);
      const hottest = Math.max(T[bottomElementNode]!, T[topElementNode]!);
      if (run.bottomShare > 0) expect(Math.max(...T)).toBeLessThanOrEqual(hottest + 1e-9);
      expect(Math.min(...T)).toBeGreaterThan(roomTemperature - 1e-9);
      for (const { stack } of run.network.setting.stacks)
        expect(Math.min(...stack.temperature)).toBeGreaterThan(roomTemperature - 1e-9);
    }
  });
});

describe('a plate of steel', () => {
  const ready = (options: ModelOptions): number =>
    runPreheat(prepareModel(northAmerican(), options)).preheat.plateReady;
  it('lumped is ready with the same plate in four layers, within 1 %: its Biot number is below 0.1', () => {
    const model = prepareModel(northAmerican());
    expect(model.biotNumber).toBeLessThan(0.1);
    expect(model.plateModel).toBe('lumped');
    const [lumped, slab] = [ready({ plateModel: 'lumped' }), ready({ plateModel: 'slab' })];
    expect(Math.abs(slab / lumped - 1)).toBeLessThan(0.01);
  });
  it('takes more than twice as long where nothing radiates', () => {
    expect(ready({ effects: { radiation: false } })).toBeGreaterThan(2 * ready({}));
  });
});

describe('a stone', () => {
  it('is computed through its thickness when its Biot number is 0.1 or more', () => {
    const stone = { material: 'cordierite', surface: 'bare', thickness: '15 mm' };
    const model = prepareModel(northAmerican({ plate: stone }));
    expect(model.biotNumber).toBeGreaterThan(0.1);
    expect(model.plateModel).toBe('slab');
    const { trace } = runPreheat(model).preheat;
    // While the plate warms from both sides its core lags behind its faces.
    const at = (values: Float64Array): number => sampleAt(trace.seconds, values, 900);
    expect(at(trace.plateUnder) - at(trace.plateCore)).toBeGreaterThan(1);
    expect(at(trace.plateTop) - at(trace.plateCore)).toBeGreaterThan(0);
  });
  it('needs longer the thicker it is, though its top settles colder than its under-face', () => {
    const stones = ['15 mm', '20 mm', '25 mm', '30 mm', '40 mm'].map((thickness) =>
      runPreheat(
        prepareModel(northAmerican({ plate: { material: 'fired-clay', surface: 'bare', thickness } })),
        3600,
      ),
    );
    for (let i = 1; i < stones.length; i++)
      expect(stones[i]!.preheat.plateReady).toBeGreaterThan(stones[i - 1]!.preheat.plateReady + 120);
  });
});
