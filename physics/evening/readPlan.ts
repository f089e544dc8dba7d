/** A plan file to an evening in SI: guards first, then the schema, then what is left out, then whether it fits. */
import * as v from 'valibot';
import { showQuantity } from '../quantities/index.ts';
import type { Warning } from './answer.ts';
import type { Assumption, Evening } from './evening.ts';
import { fillPlan, type ReadContext } from './planDefaults.ts';
import { planFormat, planVersion, type PlanFile } from './planFile.ts';
import { fitProblems } from './planFits.ts';
import { check, describe, headProblem, hostileProblems, shapeProblems } from './planShape.ts';
import { parBakedLightness, usualKept } from './parBake.ts';
import { parsePlanText } from './planText.ts';
import type { Problem } from './problem.ts';
import { fullSchema, planSchema, type FullPlanSI } from './schema.ts';
import { durationText } from './steps.ts';

export type PlanRead =
  | {
      readonly ok: true;
      readonly evening: Evening;
      readonly assumed: readonly Assumption[];
      readonly warnings: readonly Warning[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

function toEvening(plan: FullPlanSI): Evening {
  const { shade, each, parBake, ...pizzas } = plan.pizzas;
  return {
    title: plan.title,
    anchor: plan.anchor,
    kitchen: { ...plan.kitchen, energyPrice: plan.kitchen.energyPrice },
    oven: plan.oven,
    // The schema leaves out what an evening names as undefined.
    plate: { ...plan.plate, custom: plan.plate.custom },
    pizzas: {
      ...pizzas,
      shadeLightness: shade,
      each: each?.map(({ shade: own, cheese, ...pizza }) => ({
        ...pizza,
        shadeLightness: own,
        cheese: cheese?.map((part) => ({ ...part, waterShare: part.waterShare })),
      })),
      parBake: parBake && {
        keep: parBake.keep,
        shadeLightness: parBake.shade ?? parBakedLightness,
        kept: parBake.kept ?? usualKept[parBake.keep],
      },
    },
    dough: {
      ...plan.dough,
      flourMoisture: plan.dough.flourMoisture / 100,
      liquid: plan.dough.liquid.map((part) => ({ ...part, waterShare: part.waterShare })),
      // Temperature and cover have been filled in by now.
      phases: plan.dough.phases.map(({ temperature, cover, duration, ...phase }) => ({
        ...phase,
        temperature: temperature!,
        duration,
        cover: cover!,
      })),
    },
    toppings: {
      ...plan.toppings,
      cheese: plan.toppings.cheese.map((part) => ({ ...part, waterShare: part.waterShare })),
    },
    known: plan.known,
  };
}

function startWarnings({ oven }: Evening): readonly Warning[] {
  const reached = oven.setpoint + oven.thermostatOffset;
  if (oven.startTemperature < reached) return [];
  const show = (kelvin: number): string => showQuantity(kelvin, 'temperature', 'metric');
  return [
    {
      code: 'oven-starts-hotter',
      message: `The oven starts at ${show(oven.startTemperature)}, hotter than the ${show(reached)} it is set to: it gives its signal at once and only cools, and the plate is ready when it has come down.`,
    },
  ];
}

/** A plate is round or it has sides; what the plan says of the other shape is kept and not used. */
function shapeWarnings({ plate: file }: PlanFile, { plate }: Evening): readonly Warning[] {
  const other = plate.shape === 'round' ? (['width', 'depth'] as const) : (['diameter'] as const);
  const given = other.flatMap((name) => (file?.[name] === undefined ? [] : [`${name} ${file[name]}`]));
  if (given.length === 0) return [];
  return [
    {
      code: 'plate-shape-ignores',
      message: `The plate is ${plate.shape}: its ${given.join(' and ')} ${given.length === 1 ? 'is' : 'are'} not used.`,
    },
  ];
}

/** A wait that is given needs no rule. */
function waitWarnings({ pizzas: { wait, waitRule } }: Evening): readonly Warning[] {
  if (wait === undefined || waitRule === undefined) return [];
  return [
    {
      code: 'wait-rule-unused',
      message: `The plan waits ${durationText(wait)} between two pizzas: its rule for the wait, ${waitRule}, is not used.`,
    },
  ];
}

function warningsOf(file: PlanFile, evening: Evening): readonly Warning[] {
  return [
    ...highestWarnings(evening),
    ...startWarnings(evening),
    ...shapeWarnings(file, evening),
    ...waitWarnings(evening),
  ];
}

function highestWarnings({ oven }: Evening): readonly Warning[] {
  // Half a thousandth of a kelvin: 482 degF and 250 degC on one dial are no contradiction.
  if (oven.setpoint <= oven.highestSetting + 0.5e-3) return [];
  const show = (kelvin: number): string => showQuantity(kelvin, 'temperature', 'metric');
  return [
    {
      code: 'setpoint-above-highest',
      message: `This oven goes to ${show(oven.highestSetting)}; set to ${show(oven.setpoint)}, the plan shows what a stronger oven would do.`,
    },
  ];
}

/** Reads a plan that has already been parsed. Never throws on what it is given. */
export function readPlanObject(file: unknown, context: ReadContext): PlanRead {
  const hostile = hostileProblems(file);
  if (hostile.length > 0) return { ok: false, problems: hostile };
  if (typeof file !== 'object' || file === null || Array.isArray(file))
    return { ok: false, problems: [{ path: 'plan', found: describe(file), allowed: 'an object' }] };
  const head = headProblem(file, planFormat, planVersion);
  if (head !== undefined) return { ok: false, problems: [head] };

  const shape = shapeProblems(file);
  const checked = check(planSchema, file);
  const named = new Set(shape.map(({ path }) => path));
  const values = checked.ok ? [] : checked.problems.filter(({ path }) => !named.has(path));
  if (shape.length + values.length > 0) return { ok: false, problems: [...shape, ...values] };

  // The schema has seen every field of it.
  const plan = file as PlanFile;
  const filled = fillPlan(plan, context);
  // What was filled in is within the limits, whatever the file says.
  const full = v.parse(fullSchema, filled.plan);
  const misfits = fitProblems(plan, filled.plan, full);
  if (misfits.length > 0) return { ok: false, problems: misfits };
  const evening = toEvening(full);
  return { ok: true, evening, assumed: filled.assumed, warnings: warningsOf(plan, evening) };
}

/** Reads the text of a plan file: at most 1 MB, JSON, then as `readPlanObject`. Never throws. */
export function readPlanText(text: string, context: ReadContext): PlanRead {
  const parsed = parsePlanText(text);
  return parsed.ok ? readPlanObject(parsed.file, context) : parsed;
}
