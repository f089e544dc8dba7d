/** The map: two fields and their values, every combination an evening of its own. */
import { factsOf } from '../inputs/fields.ts';
import { entryOf } from '../inputs/shown.ts';
import { rackCount, rackHeightOf, rackPositionOf } from '../words/names.ts';
import { specOf, valueText, withDifferences, type Difference } from './differences.ts';
import type { MapSide } from './compareStore.ts';
import type { StudyJob } from '../state/study.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

const racks = Array.from({ length: rackCount }, (_, i) => String(rackHeightOf(i + 1)));
/** Usual values of what a map is drawn over; a choice takes all there are. */
const usual: Readonly<Record<string, Readonly<Record<UnitSystem, readonly string[]>>>> = {
  'plate.thickness': {
    metric: ['4 mm', '6 mm', '8 mm', '10 mm', '13 mm', '16 mm'],
    us: ['3/16 in', '1/4 in', '3/8 in', '1/2 in', '5/8 in'],
  },
  'plate.rackHeight': { metric: racks, us: racks },
  'oven.setpoint': {
    metric: ['220 °C', '230 °C', '240 °C', '250 °C', '275 °C', '300 °C'],
    us: ['450 °F', '475 °F', '500 °F', '525 °F', '550 °F'],
  },
  'pizzas.diameter': {
    metric: ['24 cm', '26 cm', '28 cm', '30 cm', '32 cm'],
    us: ['9 in', '10 in', '11 in', '12 in', '13 in'],
  },
  'pizzas.ballMass': {
    metric: ['180 g', '210 g', '240 g', '270 g', '300 g'],
    us: ['6 oz', '7 oz', '8 oz', '9 oz', '10 oz'],
  },
  'pizzas.shade': { metric: ['pale', 'golden', 'dark'], us: ['pale', 'golden', 'dark'] },
  'toppings.sauce': {
    metric: ['30 g', '50 g', '70 g', '90 g', '110 g'],
    us: ['1 oz', '2 oz', '3 oz', '4 oz'],
  },
};
const chosen = ['plate.material', 'oven.preset', 'pizzas.bench'];
export const mapPaths: readonly string[] = [...Object.keys(usual), ...chosen];
export const mostValues = 8;

export function mapSideName(path: string): string {
  const { label } = specOf(path);
  return path.startsWith('pizzas.') && label === 'Across' ? 'Pizza across' : label;
}

export type SideValues =
  | { readonly ok: true; readonly values: readonly Difference[] }
  | { readonly ok: false; readonly reason: string };

/** The values as they stand in their field: `4 mm, 6 mm`. */
export function typedOf({ path, typed }: MapSide, units: UnitSystem): string {
  return typed ?? (usual[path]?.[units] ?? []).join(', ');
}
/** Whether its values can be typed. */
export function isTyped(path: string): boolean {
  return !chosen.includes(path) && path !== 'pizzas.shade' && path !== 'plate.rackHeight';
}

export function valuesOf(side: MapSide, units: UnitSystem): SideValues {
  const { path } = side;
  if (chosen.includes(path)) {
    const ids = (factsOf(path).choices ?? []).filter((id) => id !== 'custom');
    return { ok: true, values: ids.map((value) => ({ path, value })) };
  }
  // A comma between digits is a decimal one.
  const texts = isTyped(path)
    ? typedOf(side, units)
        .split(/;|,\s+|(?<=\D),/u)
        .map((text) => text.trim())
        .filter((text) => text !== '')
    : (usual[path]?.[units] ?? []);
  if (texts.length < 2 || texts.length > mostValues)
    return {
      ok: false,
      reason: `Found ${String(texts.length)} ${texts.length === 1 ? 'value' : 'values'}; allowed 2 to ${String(mostValues)}, with commas between them.`,
    };
  if (path === 'pizzas.shade') return { ok: true, values: texts.map((value) => ({ path, value })) };
  const values: Difference[] = [];
  for (const text of texts) {
    const entry = entryOf(text, path, units);
    if (!entry.ok) return entry;
    values.push({ path, value: entry.value as Difference['value'] });
  }
  return { ok: true, values };
}

export interface MapCell {
  readonly differences: readonly Difference[];
  readonly job: StudyJob;
}

/** Rows from the top, each with its cells from the left. */
export function cellsOf(
  file: PlanFile,
  across: readonly Difference[],
  down: readonly Difference[],
): readonly (readonly MapCell[])[] {
  return down.map((row) =>
    across.map((column) => {
      const differences = [row, column];
      return { differences, job: { kind: 'evening', file: withDifferences(file, differences) } };
    }),
  );
}

/** The heading of a row or column: `8 mm`, `rack 2 of 5`, `Cordierite`. */
export function valueName(difference: Difference, units: UnitSystem): string {
  const { path, value } = difference;
  if (path === 'plate.rackHeight') {
    const position = rackPositionOf(Number(value));
    return position === undefined
      ? `${String(value)} up`
      : `rack ${String(position)} of ${String(rackCount)}`;
  }
  return specOf(path).names?.[String(value)] ?? valueText(difference, units);
}

/** Where a value lies between the lowest and the highest of a map, 0 to 1. */
export function shareOf(value: number, values: readonly number[]): number {
  const low = Math.min(...values);
  const high = Math.max(...values);
  return high - low < 1e-9 ? 0.5 : (value - low) / (high - low);
}
