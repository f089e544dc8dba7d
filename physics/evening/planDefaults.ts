/** Fills in what a plan file leaves out, and keeps a list of what was taken from where. */
import { toppedArea } from '../dough/area.ts';
import { convertYeast } from '../dough/ingredients.ts';
import { plateTable } from '../materials/plateTable.ts';
import { ovenPresets } from '../oven/presets.ts';
import { quantityOf } from '../quantities/index.ts';
import { nextRound, writeInstant, type OffsetAt } from './clock.ts';
import { demoTime, saturday } from './demos.ts';
import type { Assumption, Instant } from './evening.ts';
import { ovenPresetIds, type OvenPresetId, type PlateMaterialId } from './ids.ts';
import type { PlanFile } from './planFile.ts';
import { customFields, type FullPlan } from './schema.ts';

export interface ReadContext {
  /** ms since 1970-01-01T00:00Z, the clock of whoever asks */
  readonly now: number;
  /** what that clock keeps; the demo's offset unless told */
  readonly offsetMinutes?: number;
  /** the same at other moments, where its clock is put forward and back */
  readonly readersClock?: OffsetAt;
}

type Block<K extends keyof PlanFile> = NonNullable<PlanFile[K]>;
type From = Assumption['from'];
/** Gives the field if the file has it, otherwise notes what is taken instead. */
type Take = <T>(path: string, given: T | undefined, instead: T, from: From) => T;

/** m by which a round plate must be wider than the pizza: beside it the plate needs an edge to lie on. */
export const roundMargin = 0.01;

/** m of a text that the schema has already accepted, or of a table of ours. */
function metres(text: string): number {
  return quantityOf(text, 'length');
}

function volume(cavity: { width: string; depth: string; height: string }): number {
  return metres(cavity.width) * metres(cavity.depth) * metres(cavity.height);
}

/**
 * The preset most like an oven that names none: the same fuel (electric unless told), then the same bottom element,
 * then the nearest cavity volume (sizes that the file leaves out count as the preset's own).
 */
function nearestPreset(oven: Block<'oven'>): OvenPresetId {
  const distance = (id: OvenPresetId): readonly number[] => {
    const preset = ovenPresets[id].typePlate;
    const volumeThere = volume({ ...preset.cavity, ...oven.cavity });
    return [
      preset.fuel === (oven.fuel ?? 'electric') ? 0 : 1,
      oven.bottomElement === undefined || preset.bottomElement === oven.bottomElement ? 0 : 1,
      Math.abs(volumeThere - volume(preset.cavity)),
    ];
  };
  const before = (a: readonly number[], b: readonly number[]): boolean => {
    const place = a.findIndex((n, i) => n !== b[i]);
    return place !== -1 && a[place]! < b[place]!;
  };
  return ovenPresetIds.reduce((best, id) => (before(distance(id), distance(best)) ? id : best));
}

function fillAnchor(
  given: Block<'anchor'> | undefined,
  context: ReadContext,
  take: Take,
): FullPlan['anchor'] {
  const demo = saturday.anchor;
  const kind = take('anchor.kind', given?.kind, demo.kind, 'demo evening');
  const offsetMinutes = context.offsetMinutes ?? demoTime().offsetMinutes;
  // To begin, or to switch on, without a time is to do it now.
  if (kind !== 'eatAt' && given?.time === undefined) {
    const now: Instant = { epochMilliseconds: context.now, offsetMinutes };
    return { kind, time: take('anchor.time', undefined, writeInstant(now), 'common default') };
  }
  const supper = writeInstant(nextRound(demoTime(), context.now, offsetMinutes, context.readersClock));
  return { kind, time: take('anchor.time', given?.time, supper, 'demo evening') };
}

function fillOven(given: Block<'oven'> | undefined, room: string, take: Take): FullPlan['oven'] {
  const file: Block<'oven'> = given ?? {};
  const id = file.preset ?? nearestPreset(file);
  const preset = ovenPresets[id].typePlate;
  const from: From = given === undefined ? 'demo evening' : 'oven preset';
  const fill = <T>(name: string, value: T | undefined, instead: T): T =>
    take(`oven.${name}`, value, instead, from);
  take('oven.preset', file.preset, id, given === undefined ? 'demo evening' : 'common default');
  const highestSetting = fill('highestSetting', file.highestSetting, preset.highestSetting);
  return {
    preset: id,
    // Whoever says only how far the dial goes will turn it there.
    setpoint: fill('setpoint', file.setpoint, file.highestSetting ?? preset.setpoint),
    highestSetting,
    startTemperature: take('oven.startTemperature', file.startTemperature, room, 'kitchen'),
    fuel: fill('fuel', file.fuel, preset.fuel),
    fan: fill('fan', file.fan, preset.fan),
    bottomElement: fill('bottomElement', file.bottomElement, preset.bottomElement),
    power: {
      bottom: fill('power.bottom', file.power?.bottom, preset.power.bottom),
      top: fill('power.top', file.power?.top, preset.power.top),
    },
    cavity: {
      width: fill('cavity.width', file.cavity?.width, preset.cavity.width),
      depth: fill('cavity.depth', file.cavity?.depth, preset.cavity.depth),
      height: fill('cavity.height', file.cavity?.height, preset.cavity.height),
    },
    thermostatOffset: fill('thermostatOffset', file.thermostatOffset, preset.thermostatOffset),
    // Not listed when left out: the preset that is listed stands for them.
    physics: file.physics ?? {},
  };
}

/** The demo's size where it fits into what the cook has, otherwise the largest whole centimetres that do. */
function fitting(demo: string, limit: string, margin: number): { size: string; from: From } {
  const room = metres(limit) - margin;
  if (metres(demo) <= room) return { size: demo, from: 'demo evening' };
  return { size: `${Math.floor(room * 100 + 1e-9)} cm`, from: 'common default' };
}

function fillPlate(
  given: Block<'plate'> | undefined,
  cavity: FullPlan['oven']['cavity'],
  take: Take,
): FullPlan['plate'] {
  const demo = saturday.plate;
  const file: Block<'plate'> = given ?? {};
  const material = take<PlateMaterialId>('plate.material', file.material, 'carbon-steel', 'demo evening');
  const known = material === 'custom' ? undefined : plateTable[material];
  // A centimetre of air on each side, so that heat comes past the plate.
  const width = fitting(demo.width, cavity.width, 0.02);
  const depth = fitting(demo.depth, cavity.depth, 0.02);
  const shape = file.shape ?? 'rectangular';
  // A round plate has one size; the demo's depth is the larger that fits both ways.
  const round = metres(width.size) < metres(depth.size) ? width : depth;
  const across =
    shape === 'round' ? take('plate.diameter', file.diameter, round.size, round.from) : undefined;
  const { density, specificHeat, thermalConductivity, emissivity } = file;
  const custom =
    density !== undefined &&
    specificHeat !== undefined &&
    thermalConductivity !== undefined &&
    emissivity !== undefined
      ? { custom: { density, specificHeat, thermalConductivity, emissivity } }
      : {};
  return {
    material,
    shape,
    width: across ?? take('plate.width', file.width, width.size, width.from),
    depth: across ?? take('plate.depth', file.depth, depth.size, depth.from),
    // No home stone is as thin as a steel: 15 mm is common practice, no source.
    thickness:
      known?.metallic === false
        ? take('plate.thickness', file.thickness, '15 mm', 'common default')
        : take('plate.thickness', file.thickness, demo.thickness, 'demo evening'),
    rackHeight: take('plate.rackHeight', file.rackHeight, demo.rackHeight, 'demo evening'),
    surface: take(
      'plate.surface',
      file.surface,
      known?.usualSurface ?? 'bare',
      given === undefined ? 'demo evening' : 'plate material',
    ),
    model: file.model ?? 'auto',
    ...custom,
  };
}

/** What a plan says of its pizzas that nothing stands in for. */
function onPizzasGiven({
  each,
  steps,
  loadAt,
  wait,
  waitRule,
  parBake,
  browningLaw,
  browningRate,
}: Block<'pizzas'>): Partial<FullPlan['pizzas']> {
  return {
    ...(each && { each }),
    ...(steps && { steps }),
    ...(loadAt !== undefined && { loadAt }),
    ...(wait !== undefined && { wait }),
    ...(waitRule && { waitRule }),
    ...(parBake && { parBake }),
    ...(browningLaw && { browningLaw }),
    ...(browningRate !== undefined && { browningRate }),
  };
}

function fillPizzas(file: Block<'pizzas'>, plate: FullPlan['plate'], take: Take): FullPlan['pizzas'] {
  const demo = saturday.pizzas;
  const side = metres(plate.width) < metres(plate.depth) ? plate.width : plate.depth;
  const usual = fitting(demo.diameter, side, plate.shape === 'round' ? roundMargin : 0);
  const diameter = take('pizzas.diameter', file.diameter, usual.size, usual.from);
  // A larger pizza wants more dough, by its area.
  const grams = Math.round(250 * (metres(diameter) / metres(demo.diameter)) ** 2);
  return {
    count: take('pizzas.count', file.count, demo.count, 'demo evening'),
    diameter,
    ballMass:
      diameter === demo.diameter
        ? take('pizzas.ballMass', file.ballMass, demo.ballMass, 'demo evening')
        : take('pizzas.ballMass', file.ballMass, `${grams} g`, 'common default'),
    shade: take('pizzas.shade', file.shade, demo.shade, 'demo evening'),
    bench: take('pizzas.bench', file.bench, demo.bench, 'demo evening'),
    ...onPizzasGiven(file),
  };
}

/** A refrigerator as kept, and an oven with its light on or the like: common practice, no source. */
const usualPlace = { refrigerator: '4 degC', warm: '30 degC' } as const;

function fillDough(file: Block<'dough'>, room: string, take: Take): FullPlan['dough'] {
  const demo = saturday.dough;
  const fill = <T>(name: string, value: T | undefined, instead: T): T =>
    take(`dough.${name}`, value, instead, 'demo evening');
  const kind = fill('yeast.kind', file.yeast?.kind, demo.yeast.kind);
  const dose = Number(convertYeast(demo.yeast.percent, demo.yeast.kind, kind).toPrecision(2));
  const phases = file.phases ?? [];
  const flourTemperature = take('dough.flourTemperature', file.flourTemperature, room, 'kitchen');
  const riseTemperature = take('dough.riseTemperature', file.riseTemperature, room, 'kitchen');
  return {
    flour: fill('flour', file.flour, demo.flour),
    flourMoisture: fill('flourMoisture', file.flourMoisture, demo.flourMoisture),
    liquid: fill('liquid', file.liquid, demo.liquid),
    salt: fill('salt', file.salt, demo.salt),
    sugar: fill('sugar', file.sugar, demo.sugar),
    oil: fill('oil', file.oil, demo.oil),
    yeast: { kind, percent: fill('yeast.percent', file.yeast?.percent, dose) },
    flourTemperature,
    wantedTemperature: fill('wantedTemperature', file.wantedTemperature, demo.wantedTemperature),
    riseTemperature,
    mixing: fill('mixing', file.mixing, demo.mixing),
    // Where a phase says how the balls stand, the rest is not used and so not assumed.
    restBeforeShaping: phases.some((phase) => phase.as === 'balls')
      ? (file.restBeforeShaping ?? demo.restBeforeShaping)
      : fill('restBeforeShaping', file.restBeforeShaping, demo.restBeforeShaping),
    phases: phases.map((phase, index) => ({
      ...phase,
      temperature: take(
        `dough.phases.${index}.temperature`,
        phase.temperature,
        phase.where === 'room' ? riseTemperature : usualPlace[phase.where],
        phase.where === 'room' ? 'kitchen' : 'common default',
      ),
      cover: take(`dough.phases.${index}.cover`, phase.cover, 'covered', 'common default'),
    })),
  };
}

/** The demo's toppings, by area for a pizza of another size. */
function fillToppings(file: Block<'toppings'>, diameter: string, take: Take): FullPlan['toppings'] {
  const demo = saturday.toppings;
  const share = toppedArea(metres(diameter)) / toppedArea(metres(saturday.pizzas.diameter));
  const from: From = share === 1 ? 'demo evening' : 'common default';
  const scaled = (grams: string): string =>
    share === 1 ? grams : `${Math.round(Number.parseFloat(grams) * share)} g`;
  return {
    sauce: take('toppings.sauce', file.sauce, scaled(demo.sauce), from),
    cheese: take(
      'toppings.cheese',
      file.cheese,
      demo.cheese.map((part) => ({ ...part, mass: scaled(part.mass) })),
      from,
    ),
    can: take('toppings.can', file.can, demo.can, 'demo evening'),
    tomatoes: take('toppings.tomatoes', file.tomatoes, demo.tomatoes, 'demo evening'),
  };
}

/** A value as a plan file would write it, lists in words. */
function asTaken(value: unknown): string {
  if (!Array.isArray(value)) return String(value);
  const parts = value as readonly { kind: string; percent?: number; mass?: string }[];
  return parts.map(({ kind, percent, mass }) => `${kind} ${mass ?? `${String(percent)} %`}`).join(', ');
}

/** A plan with nothing left out, and what was taken for what the file does not say. */
export function fillPlan(
  file: PlanFile,
  context: ReadContext,
): { readonly plan: FullPlan; readonly assumed: readonly Assumption[] } {
  const assumed: Assumption[] = [];
  const take: Take = (path, given, instead, from) => {
    if (given !== undefined) return given;
    assumed.push({ path, taken: asTaken(instead), from });
    return instead;
  };
  const demo = saturday;
  // In the order of the file, so that the list of assumptions reads like one.
  const title = take('title', file.title, 'Pizza evening', 'common default');
  const anchor = fillAnchor(file.anchor, context, take);
  const room = take(
    'kitchen.roomTemperature',
    file.kitchen?.roomTemperature,
    demo.kitchen.roomTemperature,
    'demo evening',
  );
  const altitude = take('kitchen.altitude', file.kitchen?.altitude, demo.kitchen.altitude, 'demo evening');
  const tapTemperature = take(
    'kitchen.tapTemperature',
    file.kitchen?.tapTemperature,
    demo.kitchen.tapTemperature,
    'demo evening',
  );
  const scaleStep = take(
    'kitchen.scaleStep',
    file.kitchen?.scaleStep,
    demo.kitchen.scaleStep,
    'demo evening',
  );
  const oven = fillOven(file.oven, room, take);
  const plate = fillPlate(file.plate, oven.cavity, take);
  const pizzas = fillPizzas(file.pizzas ?? {}, plate, take);
  const plan: FullPlan = {
    title,
    anchor,
    kitchen: {
      roomTemperature: room,
      altitude,
      tapTemperature,
      scaleStep,
      ...(file.kitchen?.energyPrice === undefined ? {} : { energyPrice: file.kitchen.energyPrice }),
    },
    oven,
    plate,
    pizzas,
    dough: fillDough(file.dough ?? {}, room, take),
    toppings: fillToppings(file.toppings ?? {}, pizzas.diameter, take),
    known: file.known ?? {},
  };
  return { plan, assumed };
}

/** The own-material fields that a file gives, and those it does not. */
export function customGiven(file: PlanFile): {
  readonly given: readonly string[];
  readonly missing: readonly string[];
} {
  const given = customFields.filter((name) => file.plate?.[name] !== undefined);
  return { given, missing: customFields.filter((name) => !given.includes(name)) };
}
