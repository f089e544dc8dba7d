/** The same evening with other values, side by side: which evenings that makes, and what is compared of each. */
import type { PlanAnswer } from './answer.ts';
import { minutesBetween } from './clock.ts';
import type { PlanFile } from './planFile.ts';
import { setPath } from './planPath.ts';
import type { Problem } from './problem.ts';

/** One field and the texts it takes, as they were typed. */
export interface Varied {
  readonly path: string;
  readonly texts: readonly string[];
}

/** Every combination, the last field changing fastest. */
export function combinations(varied: readonly Varied[]): readonly Readonly<Record<string, string>>[] {
  return varied.reduce<readonly Readonly<Record<string, string>>[]>(
    (rows, { path, texts }) => rows.flatMap((row) => texts.map((text) => ({ ...row, [path]: text.trim() }))),
    [{}],
  );
}

export type Filled =
  | { readonly ok: true; readonly file: PlanFile }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A plan file with these fields set. */
export function filled(file: PlanFile, values: Readonly<Record<string, string>>): Filled {
  const problems: Problem[] = [];
  let result = file;
  for (const [path, text] of Object.entries(values)) {
    const set = setPath(result, path, text);
    if (set.ok) result = set.file;
    else problems.push(set.problem);
  }
  return problems.length === 0 ? { ok: true, file: result } : { ok: false, problems };
}

export interface Compared {
  readonly preheat: PlanAnswer['preheat'];
  readonly bakes: PlanAnswer['bakes'];
  /** from switching the oven on to the last pizza cut, and what it took */
  readonly evening: { readonly minutes: number; readonly energyKWh: number };
}

/** Picks out of an answer what is compared. */
export function comparedOf(answer: PlanAnswer): Compared {
  return {
    preheat: answer.preheat,
    bakes: answer.bakes,
    evening: {
      minutes: minutesBetween(answer.ovenOnAt, answer.lastEatAt),
      energyKWh: answer.energyKWh,
    },
  };
}

/** What is compared, by the name it has in tables for other programs. */
export const measures = {
  preheat_min: (row) => row.preheat.minutes,
  oven_signal_min: (row) => row.preheat.airReadyMinutes,
  plate_top_degC: (row) => row.preheat.plateTopC,
  first_bake_min: (row) => row.bakes[0]!.minutes,
  /** under the top element, until the rim of the first pizza has its shade */
  rim_finish_min: (row) => row.bakes[0]!.finishMinutes,
  water_left_g: (row) => row.bakes[0]!.waterLeftOnTopG,
  /** before the second pizza; 0 where there is none */
  recovery_min: (row) => row.bakes[1]?.waitBeforeMinutes ?? 0,
  last_bake_min: (row) => row.bakes.at(-1)!.minutes,
  evening_min: (row) => row.evening.minutes,
  energy_kWh: (row) => row.evening.energyKWh,
  plate_mass_kg: (row) => row.preheat.plateMassKg,
} as const satisfies Readonly<Record<string, (row: Compared) => number>>;
export type MeasureId = keyof typeof measures;
