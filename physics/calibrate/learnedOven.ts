/**
 * An oven as it was learned, under a name and with its earlier versions: the file `hearthclock/oven` that can be kept
 * and shared, and how its numbers go into a plan. The plate it was learned with belongs to it: the readings were taken
 * on that plate. What is set anew each evening (setpoint, temperature at the start) does not.
 */
import * as v from 'valibot';
import { saturday } from '../evening/demos.ts';
import { instant, line } from '../evening/field.ts';
import type { PlanFile } from '../evening/planFile.ts';
import {
  check,
  describe,
  headProblem,
  hostileProblems,
  shapeProblems,
  type Node,
} from '../evening/planShape.ts';
import { parsePlanText, writeInOrder } from '../evening/planText.ts';
import type { Problem } from '../evening/problem.ts';
import { planSchema } from '../evening/schema.ts';

export const ovenFormat = 'hearthclock/oven';
export const ovenVersion = 1;
/** How the file of a shared oven is called. */
export const ovenEnding = '.oven.json';
/** Older ones than these are dropped. */
export const mostVersions = 20;

const { oven: planOven, plate, pizzas, known } = planSchema.entries;

const versionSchema = v.object(
  {
    learnedAt: instant(),
    oven: v.omit(planOven.wrapped, ['setpoint', 'startTemperature']),
    plate,
    browningRate: pizzas.wrapped.entries.browningRate,
    known,
  },
  'learnedAt and oven for every version',
);

export const ovenName = line(60);

export const ovenSchema = v.object(
  {
    format: v.literal(ovenFormat, `"${ovenFormat}"`),
    version: v.literal(ovenVersion, String(ovenVersion)),
    name: ovenName,
    versions: v.pipe(
      v.array(versionSchema, 'a list of versions, the one in use first'),
      v.check(
        (versions) => versions.length >= 1 && versions.length <= mostVersions,
        `1 to ${mostVersions} versions`,
      ),
    ),
  },
  'name and versions',
);

/** What was learned at one time, in the words of a plan file. */
export interface LearnedVersion {
  /** RFC 3339 */
  readonly learnedAt: string;
  readonly oven: Omit<NonNullable<PlanFile['oven']>, 'setpoint' | 'startTemperature'>;
  readonly plate?: PlanFile['plate'];
  /** times the usual rate */
  readonly browningRate?: number | undefined;
  readonly known?: PlanFile['known'];
}

export interface LearnedOven {
  readonly format: typeof ovenFormat;
  readonly version: typeof ovenVersion;
  readonly name: string;
  /** the one in use first */
  readonly versions: readonly LearnedVersion[];
}

export type Read<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Reads a text as a file of ours other than a plan, with the same guards as a plan has. Never throws.
 *
 * @param what how messages name the whole
 * @returns the value as it was written, units and all
 */
export function readOwnFormat(
  text: string,
  what: string,
  schema: Node,
  format: string,
  version: number,
): Read<unknown> {
  const parsed = parsePlanText(text, what);
  if (!parsed.ok) return parsed;
  const { file } = parsed;
  const hostile = hostileProblems(file, what);
  if (hostile.length > 0) return { ok: false, problems: hostile };
  if (typeof file !== 'object' || file === null || Array.isArray(file))
    return { ok: false, problems: [{ path: what, found: describe(file), allowed: 'an object' }] };
  const head = headProblem(file, format, version);
  if (head !== undefined) return { ok: false, problems: [head] };
  const shape = shapeProblems(file, schema, what);
  const checked = check(schema, file);
  const named = new Set(shape.map(({ path }) => path));
  const values = checked.ok ? [] : checked.problems.filter(({ path }) => !named.has(path));
  const problems = [...shape, ...values];
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: file };
}

/** The text of a shared oven: at most 1 MB, JSON, then the schema. Never throws. */
export function readOven(text: string): Read<LearnedOven> {
  const read = readOwnFormat(text, 'oven', ovenSchema, ovenFormat, ovenVersion);
  // The schema has seen every field of it.
  return read.ok ? { ok: true, value: read.value as LearnedOven } : read;
}

/** The text of the file that `readOven` takes, fields in the order of the schema. */
export function writeOven(oven: LearnedOven): string {
  return writeInOrder(oven, ovenSchema);
}

function without<T extends object, K extends keyof T & string>(block: T, ...names: readonly K[]): Omit<T, K> {
  const left = Object.entries(block).filter(([name]) => !(names as readonly string[]).includes(name));
  // What is left has every other field of it.
  return Object.fromEntries(left) as Omit<T, K>;
}

/**
 * What a plan with the learned numbers in it says of its oven.
 *
 * @param learnedAt RFC 3339
 */
export function versionOf(plan: PlanFile, learnedAt: string): LearnedVersion {
  const oven: NonNullable<PlanFile['oven']> = plan.oven ?? saturday.oven;
  const browningRate = plan.pizzas?.browningRate;
  return {
    learnedAt,
    oven: without(oven, 'setpoint', 'startTemperature'),
    plate: plan.plate ?? saturday.plate,
    ...(browningRate === undefined ? {} : { browningRate }),
    ...(plan.known === undefined ? {} : { known: plan.known }),
  };
}

/**
 * The blocks of a plan that a learned oven changes. Setpoint and temperature at the start stay the plan's own; a
 * browning rate or a knowledge that the oven does not have goes, since it was another's.
 */
export function blocksWith(
  plan: PlanFile,
  { oven, plate: own, browningRate, known: knows }: LearnedVersion,
): { readonly [K in 'oven' | 'plate' | 'pizzas' | 'known']: PlanFile[K] } {
  // A block that a plan leaves out is the built-in evening's; one with a single field in it would not be.
  const { setpoint, startTemperature }: NonNullable<PlanFile['oven']> = plan.oven ?? saturday.oven;
  const before: NonNullable<PlanFile['pizzas']> = plan.pizzas ?? saturday.pizzas;
  const others = without(before, 'browningRate');
  return {
    oven: {
      ...oven,
      ...(setpoint === undefined ? {} : { setpoint }),
      ...(startTemperature === undefined ? {} : { startTemperature }),
    },
    plate: own ?? plan.plate ?? saturday.plate,
    pizzas: browningRate === undefined ? others : { ...others, browningRate },
    known: knows,
  };
}

/** Figures of a version to show, SI; undefined where it does not say. */
export interface OvenFigures {
  /** W */
  readonly power: { readonly bottom?: number | undefined; readonly top?: number | undefined };
  /** K */
  readonly thermostatOffset: number | undefined;
  /** m */
  readonly plateThickness: number | undefined;
  readonly browningRate: number | undefined;
}

/** @param version as `readOven` or `versionOf` gave it */
export function figuresOf(version: LearnedVersion): OvenFigures {
  const read = v.parse(versionSchema, version);
  return {
    power: read.oven.power ?? {},
    thermostatOffset: read.oven.thermostatOffset,
    plateThickness: read.plate?.thickness,
    browningRate: read.browningRate,
  };
}
