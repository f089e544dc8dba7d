/** A hand-made run of the oven, so that plans can be tested without a simulation. Figures invented. */
import type { Engine } from '../../physics/evening/engine.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { Bake, EnergyBalance, EveningRun, OvenTrace } from '../../physics/evening/run.ts';

export interface SampleRunShape {
  /** s */
  readonly plateReady: number;
  readonly bakeSeconds: number;
  readonly waitSeconds: number;
  readonly count: number;
}

const usual: SampleRunShape = { plateReady: 48 * 60, bakeSeconds: 380, waitSeconds: 480, count: 4 };
const nothing: EnergyBalance = {
  supplied: 0,
  stored: 0,
  lostToRoom: 0,
  lostByVentAndDoor: 0,
  lostBySteam: 0,
};

/** A trace to `end` that rises to 523 K; with `loads` the plate's top drops by 40 K at each and comes back in 10 min. */
function trace(end: number, loads: readonly number[] = []): OvenTrace {
  const seconds = Float64Array.from({ length: Math.floor(end / 10) + 1 }, (_, i) => i * 10);
  const warming = (tau: number): Float64Array => seconds.map((t) => 523 - 229 * Math.exp(-t / tau));
  const drop = (t: number): number => {
    const last = loads.filter((load) => load <= t).at(-1);
    return last === undefined ? 0 : 40 * Math.exp(-(t - last) / 600);
  };
  const plateTop = warming(1000).map((value, i) => value - drop(seconds[i]!));
  const idle = seconds.map(() => 0.4);
  const walls = warming(900);
  return {
    seconds,
    ovenAir: warming(400),
    floor: walls,
    ceiling: walls,
    sides: walls,
    door: walls,
    plateTop,
    plateCore: warming(1050),
    plateUnder: warming(1100),
    plateAround: warming(1000),
    bottomElement: idle,
    topElement: idle,
  };
}

function bake(pizza: number, inAt: number, outAt: number): Bake {
  const seconds = Float64Array.from({ length: Math.floor(outAt - inAt) + 1 }, (_, i) => inAt + i);
  const flat = (value: number): Float64Array => seconds.map(() => value);
  return {
    pizza,
    inAt,
    outAt,
    plateTopAtLoad: 520,
    plateTopAtUnload: 480,
    baseLightness: 60,
    rimLightness: 64,
    crumb: 370,
    cheese: 368,
    waterLeftOnTop: 0.012,
    waterLost: 0.03,
    decidedBy: 'base',
    secondsToLightness: new Map([
      [70, 250],
      [60, outAt - inAt],
      [50, undefined],
    ]),
    finish: 0,
    trace: {
      seconds,
      base: flat(430),
      crumb: flat(360),
      cheeseTop: flat(365),
      rimTop: flat(400),
      baseLightness: flat(60),
      rimLightness: flat(64),
      layers: Array.from(seconds, () => []),
    },
    balance: nothing,
    water: { before: 0.2, after: 0.17, evaporated: 0.03 },
  };
}

export function sampleRun(shape: Partial<SampleRunShape> = {}): EveningRun {
  const { plateReady, bakeSeconds, waitSeconds, count } = { ...usual, ...shape };
  const bakes = Array.from({ length: count }, (_, i) => {
    const inAt = plateReady + i * (bakeSeconds + waitSeconds);
    return bake(i + 1, inAt, inAt + bakeSeconds);
  });
  const end = bakes.at(-1)!.outAt + 600;
  return {
    preheat: {
      airReady: plateReady / 3,
      plateReady,
      settledPlateTop: 528,
      settledOvenAir: 523,
      idlePower: 700,
      plateTop: 521,
      plateCore: 520.5,
      ovenAir: 523,
      energy: 4.5e6,
      biotNumber: 0.002,
      plateModel: 'lumped',
      trace: trace(2 * 3600),
      balance: nothing,
    },
    bakes,
    trace: trace(
      end,
      bakes.map(({ inAt }) => inAt),
    ),
    energy: 7e6,
    coolInOven: 4 * 3600,
  };
}

/** An engine that gives the sample run, with as many pizzas as the evening has. */
export function sampleEngine(shape: Partial<SampleRunShape> = {}): Engine {
  return {
    simulateEvening: (evening: Evening) => sampleRun({ count: evening.pizzas.count, ...shape }),
    spreadOf: () => ({ preheatMinutes: [40, 58], bakeMinutes: [4.8, 8.4], preheatFrom: [], bakeFrom: [] }),
    lateStart: (_evening, _run, lateMinutes) =>
      lateMinutes.map((late) => ({ lateMinutes: late, plateTopC: 247 - late, bakeMinutes: 6 + late / 10 })),
  };
}
