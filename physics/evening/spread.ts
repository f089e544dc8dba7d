/**
 * How sure an answer is before anything was measured: what the model does not know is varied within what it may be,
 * and preheat and first bake are simulated again. P10 to P90 of the answers is the range that is shown.
 */
import { bakeParameters } from '../bake/parameters.ts';
import type { BakeParameters } from '../bake/parameters.ts';
import { SeededRandom } from '../numerics/random.ts';
import { parametersOf } from '../oven/parameters.ts';
import type { OvenParameters } from '../oven/parameters.ts';
import type { Range } from './answer.ts';
import type { Evening } from './evening.ts';
import { prepareModel } from './model.ts';
import type { EveningModel, ModelOptions } from './model.ts';
import { runPreheat } from './preheat.ts';
import type { PreheatRun } from './preheat.ts';
import type { EveningRun } from './run.ts';
import { bakeAsFirst } from './series.ts';
import { preparedFor } from './simulate.ts';
import { uncertainWords, usualSpread } from './uncertain.ts';
import type { Spread, SpreadPart, UncertainName } from './uncertain.ts';

/** Emissivities stay physical: a draw beyond 0.98 or below 0.03 is taken to be that. */
const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

interface Varied {
  readonly evening: Evening;
  readonly options: ModelOptions;
}

/** What an input is when it lies `z` standard deviations off; the bake's own inputs leave the preheat as it is. */
interface UncertainInput {
  readonly name: UncertainName;
  readonly bakeOnly: boolean;
  /** acts straight enough on ln t that one deviation up tells as much as both */
  readonly straight: boolean;
  vary(
    evening: Evening,
    model: EveningModel,
    z: number,
  ): Partial<ModelOptions> & { readonly evening?: Evening };
}

const factor = (name: UncertainName, z: number): number => Math.exp(usualSpread[name] * z);

const inputs: readonly UncertainInput[] = [
  ovenInput('topShare', (oven, z) => ({
    preheatShare: {
      ...oven.preheatShare,
      top: within(oven.preheatShare.top * factor('topShare', z), 0, 1),
    },
  })),
  {
    name: 'power',
    bakeOnly: false,
    straight: false,
    vary: (evening, _model, z) => {
      const { power } = evening.oven;
      const f = factor('power', z);
      const oven = { ...evening.oven, power: { bottom: power.bottom * f, top: power.top * f } };
      return { evening: { ...evening, oven } };
    },
  },
  ovenInput('wallEmissivity', (oven, z) => ({
    wallEmissivity: within(oven.wallEmissivity * (1 + (usualSpread.wallEmissivity / 0.88) * z), 0.3, 0.98),
  })),
  ovenInput('convection', (_oven, z) => ({ convectionFactor: factor('convection', z) })),
  {
    name: 'plateEmissivity',
    bakeOnly: false,
    straight: false,
    vary: (_evening, { material }, z) => ({
      plateEmissivity: within(material.emissivity + usualSpread.plateEmissivity * z, 0.03, 0.98),
    }),
  },
  {
    name: 'thermostatOffset',
    bakeOnly: false,
    straight: false,
    vary: (evening, _model, z) => {
      const thermostatOffset = evening.oven.thermostatOffset + usualSpread.thermostatOffset * z;
      return { evening: { ...evening, oven: { ...evening.oven, thermostatOffset } } };
    },
  },
  {
    name: 'thickness',
    bakeOnly: false,
    straight: true,
    vary: (evening, _model, z) => {
      const thickness = evening.plate.thickness * factor('thickness', z);
      return { evening: { ...evening, plate: { ...evening.plate, thickness } } };
    },
  },
  ovenInput('vent', (oven, z) => ({ ventFlow: oven.ventFlow * factor('vent', z) })),
  ovenInput('liner', (oven, z) => ({ linerCapacity: oven.linerCapacity * factor('liner', z) })),
  bakeInput('contact', (z) => ({
    contactConductance: bakeParameters.contactConductance * factor('contact', z),
  })),
  bakeInput('browning', (z) => ({ browningFactor: bakeParameters.browningFactor * factor('browning', z) })),
  bakeInput('density', (z) => ({ baseDensity: bakeParameters.baseDensity * factor('density', z) })),
  bakeInput('crust', (z) => ({
    crustConductivityFactor: bakeParameters.crustConductivityFactor * factor('crust', z),
  })),
];

function ovenInput(
  name: UncertainName,
  change: (oven: OvenParameters, z: number) => Partial<OvenParameters>,
): UncertainInput {
  return {
    name,
    bakeOnly: false,
    straight: true,
    vary: (evening, _model, z) => ({ oven: change(parametersOf(evening.oven), z) }),
  };
}

function bakeInput(name: UncertainName, change: (z: number) => Partial<BakeParameters>): UncertainInput {
  return {
    name,
    bakeOnly: true,
    straight: name !== 'contact' && name !== 'browning',
    vary: (_evening, _model, z) => ({ bake: change(z) }),
  };
}

/** A spread of a fifth needs no fine steps: ready time within 0.3 min, bake within 4 s of the standard ones. */
const coarse = {
  preheatStep: 10,
  allowedStrain: 4,
  bakeStep: 4,
  mesh: { dough: 12, rim: 10, sauce: 2, cheese: 2, firstCell: 0.12e-3 },
} as const;

function varied(evening: Evening, model: EveningModel, input?: UncertainInput, z = 0): Varied {
  const change = input?.vary(evening, model, z) ?? {};
  const { evening: changed = evening, ...options } = change;
  return {
    evening: changed,
    options: {
      // The shadow of a plate does not change with a twentieth of its thickness, nor the dial's lag with its offset.
      views: { emptyView: model.context.emptyView, plateView: model.context.plateView },
      dial: model.dial,
      resolution: { ...model.resolution, ...coarse },
      ...options,
    },
  };
}

/**
 * ln of preheat and first bake, s; undefined for an oven too weak to hold its setting.
 *
 * @param lookFor s of preheat that will do for most variations; those that need more get it
 */
function logTimes(
  { evening, options }: Varied,
  lookFor: number,
  kept?: PreheatRun,
): { readonly preheat: number; readonly bake: number; readonly run: PreheatRun } | undefined {
  const model = prepareModel(evening, options);
  const run = kept ?? runPreheat(model, lookFor);
  const { plateReady } = run.preheat;
  if (!(plateReady > 0 && plateReady < Infinity)) return undefined;
  const load = evening.pizzas.loadAt ?? plateReady;
  return { preheat: Math.log(plateReady), bake: Math.log(bakeAsFirst(model, run, 1, load).seconds), run };
}

/** The value below which a share of the sorted values lies, by straight lines between them. */
export function quantile(sorted: ArrayLike<number>, share: number): number {
  const place = share * (sorted.length - 1);
  const i = Math.min(Math.floor(place), sorted.length - 2);
  return sorted[i]! + (place - i) * (sorted[i + 1]! - sorted[i]!);
}

/** What an input does to ln t: a parabola through its values at -1, 0 and +1 standard deviations. */
interface Parabola {
  readonly slope: number;
  readonly bend: number;
}

const flat: Parabola = { slope: 0, bend: 0 };

function parabola(minus: number, centre: number, plus: number): Parabola {
  return { slope: (plus - minus) / 2, bend: (plus + minus) / 2 - centre };
}

/** The same input known better: its standard deviation is `ratio` of the usual one. */
function narrowed({ slope, bend }: Parabola, ratio: number): Parabola {
  return { slope: slope * ratio, bend: bend * ratio ** 2 };
}

/** Variance of slope z + bend z2 for z of the standard normal distribution. */
function variance({ slope, bend }: Parabola): number {
  return slope ** 2 + 2 * bend ** 2;
}

function partsOf(parabolas: readonly Parabola[]): readonly SpreadPart[] {
  const variances = parabolas.map(variance);
  const whole = variances.reduce((sum, v) => sum + v, 0);
  return inputs
    .map(({ name }, i) => ({ input: name, words: uncertainWords[name], share: variances[i]! / whole }))
    .filter(({ share }) => share >= 0.05)
    .sort((one, other) => other.share - one.share);
}

interface LogTimes {
  readonly preheat: number;
  readonly bake: number;
}

/** What one deviation down gives when ln t goes straight through the centre. */
function mirrored(plus: LogTimes, centre: LogTimes): LogTimes {
  return { preheat: 2 * centre.preheat - plus.preheat, bake: 2 * centre.bake - plus.bake };
}

export interface SpreadOptions {
  /** draws, at least 100 */
  readonly samples: number;
  /** the same seed, the same answer */
  readonly seed: number;
}

/**
 * P10 to P90 of the preheat and of the first bake, minutes; each range holds the nominal answer inside.
 * See `spreadRatios`.
 */
export function spreadOf(evening: Evening, run: EveningRun, options: SpreadOptions): Spread {
  return scaledSpread(spreadRatios(evening, preparedFor(evening, run).model, options), run);
}

/** Ranges in minutes from ranges as shares of the nominal answers. */
function scaledSpread(ratios: Spread, { preheat, bakes }: EveningRun): Spread {
  const times = ([low, high]: Range, minutes: number): Range => [low * minutes, high * minutes];
  const [first] = bakes;
  return {
    ...ratios,
    preheatMinutes: times(ratios.preheatMinutes, preheat.plateReady / 60),
    bakeMinutes: times(ratios.bakeMinutes, (first!.outAt - first!.inAt) / 60),
  };
}

/**
 * P10 to P90 of the preheat and of the first bake, as shares of what the plan says.
 *
 * Each input is simulated one standard deviation up, and down where ln t bends; ln t is taken as a sum of parabolas, and
 * `samples` draws of all inputs together give the quantiles. Inputs are taken to act one by one: what two of them do
 * together beyond that is left out. What the plan knows better than usual (`known`) is narrowed along its parabola.
 *
 * @param model of the evening itself, whose geometry and dial are shared
 */
function spreadRatios(evening: Evening, model: EveningModel, options: SpreadOptions): Spread {
  const centre = logTimes(varied(evening, model), 3600);
  if (!centre) return { preheatMinutes: [1, 1], bakeMinutes: [1, 1], preheatFrom: [], bakeFrom: [] };
  // Ten minutes more: the means about the moment at which a plate is ready take a thermostat cycle on either side.
  const lookFor = 1.1 * Math.exp(centre.preheat) + 600;
  const preheat: Parabola[] = [];
  const bake: Parabola[] = [];
  for (const input of inputs) {
    const ratio = (evening.known[input.name] ?? usualSpread[input.name]) / usualSpread[input.name];
    if (ratio === 0) {
      preheat.push(flat);
      bake.push(flat);
      continue;
    }
    const kept = input.bakeOnly ? centre.run : undefined;
    // A variation too weak to hold the setting counts as no change: the range speaks of ovens that do.
    const plus = logTimes(varied(evening, model, input, 1), lookFor, kept) ?? centre;
    const minus = input.straight
      ? mirrored(plus, centre)
      : (logTimes(varied(evening, model, input, -1), lookFor, kept) ?? centre);
    preheat.push(narrowed(parabola(minus.preheat, centre.preheat, plus.preheat), ratio));
    bake.push(narrowed(parabola(minus.bake, centre.bake, plus.bake), ratio));
  }
  const random = new SeededRandom(options.seed);
  const preheats = new Float64Array(options.samples);
  const bakes = new Float64Array(options.samples);
  for (let k = 0; k < options.samples; k++)
    for (let i = 0; i < inputs.length; i++) {
      const z = random.normal();
      preheats[k]! += (preheat[i]!.slope + preheat[i]!.bend * z) * z;
      bakes[k]! += (bake[i]!.slope + bake[i]!.bend * z) * z;
    }
  const range = (logs: Float64Array): Range => {
    const sorted = logs.sort();
    return [Math.min(Math.exp(quantile(sorted, 0.1)), 1), Math.max(Math.exp(quantile(sorted, 0.9)), 1)];
  };
  return {
    preheatMinutes: range(preheats),
    bakeMinutes: range(bakes),
    preheatFrom: partsOf(preheat),
    bakeFrom: partsOf(bake),
  };
}
