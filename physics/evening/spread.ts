/**
 * How sure an answer is before anything was measured: what the model does not know is drawn at random, within what it
 * may be, and preheat and first bake are simulated again. P10 to P90 of the answers is the range that is shown.
 */
import { bakeParameters } from '../bake/parameters.ts';
import { plateMaterial } from '../materials/plates.ts';
import { SeededRandom } from '../numerics/random.ts';
import { parametersOf } from '../oven/parameters.ts';
import type { Range } from './answer.ts';
import type { Evening } from './evening.ts';
import { prepareModel } from './model.ts';
import type { EveningModel, ModelOptions } from './model.ts';
import { runPreheat } from './preheat.ts';
import type { EveningRun } from './run.ts';
import { firstBakeAt, preparedFor } from './simulate.ts';

/**
 * One standard deviation of each input: a share of the value, or kelvin and W/(m2 K) where said. Our estimates, from
 * the spread of published values named with the parameters; the dial after two consumer laboratories (17 % of ovens
 * more than 20 K too hot would be 21 K; a cook who plans with an oven thermometer knows better, so 8 K).
 */
export const inputSpread = {
  topShare: 0.3,
  power: 0.1,
  wallEmissivity: 0.1 / 0.88,
  convection: 0.3,
  /** absolute */
  plateEmissivity: 0.1,
  /** K */
  thermostatOffset: 8,
  thickness: 0.05,
  vent: 0.5,
  liner: 0.15,
  contact: 0.3,
  browning: 0.4,
  density: 0.1,
  crust: 0.25,
} as const;

/** Emissivities stay physical: a draw beyond 0.98 or below 0.03 is taken to be that. */
const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

interface Sample {
  readonly evening: Evening;
  readonly options: ModelOptions;
}

function draw(evening: Evening, model: EveningModel, random: SeededRandom): Sample {
  const factor = (spread: number): number => Math.exp(spread * random.normal());
  const oven = parametersOf(evening.oven);
  const power = factor(inputSpread.power);
  const top = factor(inputSpread.topShare);
  const { plate } = evening;
  const emissivity = plateMaterial(plate.material, plate.surface, plate.custom).emissivity;
  const thickness = plate.thickness * factor(inputSpread.thickness);
  return {
    evening: {
      ...evening,
      oven: {
        ...evening.oven,
        thermostatOffset: evening.oven.thermostatOffset + inputSpread.thermostatOffset * random.normal(),
        power: { bottom: evening.oven.power.bottom * power, top: evening.oven.power.top * power },
      },
      plate: { ...plate, thickness },
    },
    options: {
      oven: {
        preheatShare: { ...oven.preheatShare, top: within(oven.preheatShare.top * top, 0, 1) },
        wallEmissivity: within(
          oven.wallEmissivity * (1 + inputSpread.wallEmissivity * random.normal()),
          0.3,
          0.98,
        ),
        convectionFactor: factor(inputSpread.convection),
        ventFlow: oven.ventFlow * factor(inputSpread.vent),
        linerCapacity: oven.linerCapacity * factor(inputSpread.liner),
      },
      bake: {
        contactConductance: bakeParameters.contactConductance * factor(inputSpread.contact),
        browningFactor: bakeParameters.browningFactor * factor(inputSpread.browning),
        baseDensity: bakeParameters.baseDensity * factor(inputSpread.density),
        crustConductivityFactor: bakeParameters.crustConductivityFactor * factor(inputSpread.crust),
      },
      plateEmissivity: within(emissivity + inputSpread.plateEmissivity * random.normal(), 0.03, 0.98),
      // The shadow of a plate does not change with a twentieth of its thickness.
      views: { emptyView: model.context.emptyView, plateView: model.context.plateView },
      dial: model.dial,
      resolution: { ...model.resolution, ...coarse },
    },
  };
}

/** A spread of a fifth needs no fine steps: ready time within 0.3 min, bake within 4 s of the standard ones. */
const coarse = {
  preheatStep: 10,
  bakeStep: 4,
  mesh: { dough: 12, sauce: 2, cheese: 2, firstCell: 0.12e-3 },
} as const;

export interface Spread {
  readonly preheatMinutes: Range;
  readonly bakeMinutes: Range;
}

/** The value below which a share of the sorted values lies, by straight lines between them. */
export function quantile(sorted: readonly number[], share: number): number {
  const place = share * (sorted.length - 1);
  const i = Math.min(Math.floor(place), sorted.length - 2);
  return sorted[i]! + (place - i) * (sorted[i + 1]! - sorted[i]!);
}

/**
 * @param options.samples how many evenings are drawn, at least 2; @param options.seed the same seed, the same answer
 * @returns ranges that hold the nominal answer inside
 */
export function spreadOf(
  evening: Evening,
  run: EveningRun,
  options: { readonly samples: number; readonly seed: number },
): Spread {
  const { model } = preparedFor(evening, run);
  const random = new SeededRandom(options.seed);
  const preheats: number[] = [];
  const bakes: number[] = [];
  for (let i = 0; i < options.samples; i++) {
    const sample = draw(evening, model, random);
    const varied = prepareModel(sample.evening, sample.options);
    const preheat = runPreheat(varied, 3600);
    const { plateReady } = preheat.preheat;
    // A draw too weak to hold its setting has no ready plate; the range speaks of ovens that do.
    if (!Number.isFinite(plateReady)) continue;
    preheats.push(plateReady / 60);
    bakes.push(firstBakeAt(varied, preheat, plateReady).seconds / 60);
  }
  const range = (values: number[], nominal: number): Range => {
    if (values.length < 2) return [nominal, nominal];
    const sorted = values.sort((a, b) => a - b);
    return [Math.min(quantile(sorted, 0.1), nominal), Math.max(quantile(sorted, 0.9), nominal)];
  };
  const first = run.bakes[0]!;
  return {
    preheatMinutes: range(preheats, run.preheat.plateReady / 60),
    bakeMinutes: range(bakes, (first.outAt - first.inAt) / 60),
  };
}
