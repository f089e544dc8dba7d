import { describe, expect, it } from 'vitest';
import type { OvenPresetId } from '../../../physics/evening/ids.ts';
import { ovenPresetIds } from '../../../physics/evening/ids.ts';
import { prepareModel, standardResolution } from '../../../physics/evening/model.ts';
import type { ModelOptions } from '../../../physics/evening/model.ts';
import { runPreheat } from '../../../physics/evening/preheat.ts';
import { sampleAt } from '../../../physics/numerics/samples.ts';
import type { Evening } from '../../../physics/evening/evening.ts';
import { parametersOf } from '../../../physics/oven/parameters.ts';
import { ovenPresets } from '../../../physics/oven/presets.ts';
import { evening, plateFor } from '../../support/evenings.ts';

const small = { width: '36 cm', depth: '32 cm' } as const;
const pizza = { diameter: '28 cm' } as const;
const stone = { material: 'cordierite', surface: 'bare', thickness: '15 mm' } as const;

function inPreset(preset: OvenPresetId, plate: Readonly<Record<string, unknown>> = {}): Evening {
  return evening(preset, { plate: { ...plateFor(preset, small), ...plate }, pizzas: pizza });
}

function preheat(what: Evening, options: ModelOptions = {}) {
  return runPreheat(prepareModel(what, options), 5400).preheat;
}

describe('every preset with a steel of 9.5 mm', () => {
  it.each(ovenPresetIds)('%s: air ready in 10 to 26 min, the plate 8 to 30 min later', (preset) => {
    const { airReady, plateReady, settledPlateTop, settledOvenAir } = preheat(inPreset(preset));
    expect(airReady / 60).toBeGreaterThan(10);
    expect(airReady / 60).toBeLessThan(26);
    expect((plateReady - airReady) / 60).toBeGreaterThan(8);
    expect((plateReady - airReady) / 60).toBeLessThan(30);
    // Common practice, no source: a plate over a bottom element settles somewhat above the air.
    expect(settledPlateTop - settledOvenAir).toBeGreaterThan(3);
    expect(settledPlateTop - settledOvenAir).toBeLessThan(20);
  });
});

describe('halving every step and doubling every layer', () => {
  it.each(ovenPresetIds)('%s: a stone moves by less than 0.5 K and 0.2 min', (preset) => {
    const what = inPreset(preset, stone);
    const usual = preheat(what);
    const fine = preheat(what, {
      resolution: {
        preheatStep: standardResolution.preheatStep / 2,
        plateLayers: 2 * standardResolution.plateLayers,
      },
    });
    const minutes = Math.abs(usual.plateReady - fine.plateReady) / 60;
    let kelvin = 0;
    for (let t = 0; t <= usual.airReady; t += 60)
      for (const of of ['plateTop', 'plateCore'] as const)
        kelvin = Math.max(
          kelvin,
          Math.abs(
            sampleAt(usual.trace.seconds, usual.trace[of], t) -
              sampleAt(fine.trace.seconds, fine.trace[of], t),
          ),
        );
    // After the first switching the two runs are at different points of their cycles: means are compared.
    kelvin = Math.max(
      kelvin,
      Math.abs(usual.settledPlateTop - fine.settledPlateTop),
      Math.abs(usual.plateTop - fine.plateTop),
    );
    console.info(`${preset}: ${kelvin.toFixed(3)} K, ready ${minutes.toFixed(3)} min`);
    expect(kelvin).toBeLessThan(0.5);
    expect(minutes).toBeLessThan(0.2);
  });
});

describe('lumped or slab', () => {
  it.each(ovenPresetIds)('%s: no matter for steel, about its Biot number for a thick stone', (preset) => {
    const both = (plate: Readonly<Record<string, unknown>>) => {
      const what = inPreset(preset, plate);
      return {
        biot: prepareModel(what).biotNumber,
        lumped: preheat(what, { plateModel: 'lumped' }).plateReady,
        slab: preheat(what, { plateModel: 'slab' }).plateReady,
      };
    };
    const steel = both({});
    expect(steel.biot).toBeLessThan(0.1);
    expect(Math.abs(steel.slab / steel.lumped - 1)).toBeLessThan(0.01);
    const clay = both({ material: 'fired-clay', surface: 'bare', thickness: '30 mm' });
    console.info(
      `${preset}: Bi ${clay.biot.toFixed(2)}, slab ${((clay.slab / clay.lumped - 1) * 100).toFixed(1)} %`,
    );
    expect(clay.biot).toBeGreaterThan(0.3);
    // One term of the plane wall: its time constant is 1 + Bi/3 of the lump's while Bi is small (Incropera and DeWitt,
    // section 5.5); the oven's own warming takes part in the ready time, so somewhat less of it.
    const later = clay.slab / clay.lumped - 1;
    expect(later).toBeGreaterThan((0.6 * clay.biot) / 3);
    expect(later).toBeLessThan((1.1 * clay.biot) / 3);
  });
  it('the plan decides when it says so', () => {
    expect(prepareModel(inPreset('european', { model: 'slab' })).plateModel).toBe('slab');
    expect(prepareModel(inPreset('european', { ...stone, model: 'lumped' })).plateModel).toBe('lumped');
    expect(prepareModel(inPreset('european', { ...stone, model: 'auto' })).plateModel).toBe('slab');
  });
});

describe('rack height, from lowest to highest', () => {
  const heights = [0.1, 0.3, 0.5, 0.75] as const;
  it.each(ovenPresetIds)('%s: heat comes less from below and more from above', (preset) => {
    // What flows upwards through a settled stone: its middle is hotter than its top by as much.
    const balance = heights.map((rackHeight) => {
      const { settled } = prepareModel(inPreset(preset, { ...stone, rackHeight }));
      return settled.plateCore - settled.plate;
    });
    console.info(`${preset}: ${balance.map((kelvin) => kelvin.toFixed(2)).join(', ')} K`);
    for (let k = 1; k < heights.length; k++) expect(balance[k]).toBeLessThan(balance[k - 1]!);
  });
  it.each(['north-american', 'north-american-gas'] as const)(
    '%s holds its heat from below: the higher, the later ready and the colder',
    (preset) => {
      const runs = heights.map((rackHeight) => preheat(inPreset(preset, { rackHeight })));
      for (let k = 1; k < heights.length; k++) {
        expect(runs[k]!.plateReady).toBeGreaterThan(runs[k - 1]!.plateReady);
        expect(runs[k]!.settledPlateTop).toBeLessThan(runs[k - 1]!.settledPlateTop);
      }
    },
  );
  it.each(['european', 'small', 'strong'] as const)(
    '%s heats from both sides: hottest near the bottom element, and not coldest near the top one',
    (preset) => {
      const [lowest, , middle, highest] = heights.map((rackHeight) =>
        prepareModel(inPreset(preset, { rackHeight })),
      );
      expect(lowest!.settled.plate).toBeGreaterThan(middle!.settled.plate);
      expect(highest!.settled.plate).toBeGreaterThan(middle!.settled.plate);
    },
  );
});

describe('the figures of an oven', () => {
  it('grow with the cavity and the power, and are the preset’s own in its own cavity', () => {
    expect(parametersOf(evening('european', { plate: small, pizzas: pizza }).oven)).toEqual(
      ovenPresets.european.parameters,
    );
    const tiny = evening('european', {
      oven: { cavity: { width: '23 cm', depth: '20.5 cm', height: '17.75 cm' } },
      plate: { width: '20 cm', depth: '18 cm' },
      pizzas: { diameter: '15 cm', ballMass: '60 g' },
    });
    const { rackCapacity, seamConductance, ventFlow } = parametersOf(tiny.oven);
    const own = ovenPresets.european.parameters;
    expect(rackCapacity / own.rackCapacity).toBeCloseTo(1 / 4, 10);
    expect(seamConductance / own.seamConductance).toBeCloseTo(1 / 2, 10);
    expect(ventFlow / own.ventFlow).toBeCloseTo(1 / 8, 10);
  });
  it('are the plan’s, one by one, and are felt', () => {
    const thick = evening('european', {
      oven: { physics: { woolThickness: '60 mm', sensorHalfBand: '10 K', holdShareTop: 0.25 } },
      plate: small,
      pizzas: pizza,
    });
    const own = parametersOf(thick.oven);
    expect(own.woolThickness).toBeCloseTo(0.06, 12);
    expect(own.thermostat).toEqual({ ...ovenPresets.european.parameters.thermostat, halfBand: 10 });
    expect(own.holdShare).toEqual({ bottom: 1, top: 0.25 });
    const usual = preheat(inPreset('european'));
    expect(preheat(thick).idlePower).toBeLessThan(0.95 * usual.idlePower);
  });
});

describe('an oven that was hot before', () => {
  const started = (startTemperature: string) =>
    preheat(evening('european', { oven: { startTemperature }, plate: small, pizzas: pizza }));
  it('is ready the sooner the hotter it starts, up to its setting', () => {
    const ready = ['21 degC', '100 degC', '180 degC', '230 degC'].map((t) => started(t).plateReady);
    for (let k = 1; k < ready.length; k++) expect(ready[k]).toBeLessThan(ready[k - 1]!);
  });
  it('hotter than its setting, it signals at once, cools, and is ready when the plate has come down', () => {
    const { airReady, plateReady, trace, settledPlateTop, balance } = started('330 degC');
    expect(airReady).toBe(0);
    expect(plateReady).toBeGreaterThan(60);
    expect(trace.plateTop[0]).toBeCloseTo(603.15, 6);
    expect(Math.max(...trace.bottomElement.subarray(0, 12))).toBe(0);
    expect(sampleAt(trace.seconds, trace.plateTop, plateReady) - settledPlateTop).toBeGreaterThan(-6);
    const out = balance.lostToRoom + balance.lostByVentAndDoor + balance.lostBySteam;
    expect(Math.abs(balance.supplied - balance.stored - out)).toBeLessThan(1e-6 * out);
  });
});

describe('settings from 60 to 500 degC, plates from 0.5 to 80 mm', () => {
  it.each([60, 90, 150, 250, 350, 470])('%d degC settles where the run ends', (setpoint) => {
    for (const thickness of ['0.5 mm', '8 mm', '30 mm']) {
      const what = evening('strong', {
        oven: {
          setpoint: `${setpoint} degC`,
          highestSetting: '500 degC',
          power: { bottom: '3 kW', top: '3 kW' },
        },
        plate: { ...small, thickness },
        pizzas: pizza,
      });
      const { plateReady, airReady, plateTop, settledPlateTop } = preheat(what);
      expect(plateReady, thickness).toBeLessThan(8 * 3600);
      expect(airReady, thickness).toBeLessThan(3600);
      expect(Math.abs(plateTop - settledPlateTop), thickness).toBeLessThan(5.2);
    }
  });
  it('a plate of 80 mm in its eight hours', () => {
    const what = inPreset('north-american', { thickness: '80 mm' });
    expect(preheat(what).plateReady / 3600).toBeGreaterThan(2);
    expect(preheat(what).plateReady / 3600).toBeLessThan(8);
  });
});
