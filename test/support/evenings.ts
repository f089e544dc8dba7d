/** Evenings for tests of the simulation: from plan files, as a cook would write them. Figures invented. */
import type { Evening } from '../../physics/evening/evening.ts';
import type { OvenPresetId } from '../../physics/evening/ids.ts';
import { ovenPresets } from '../../physics/oven/presets.ts';
import { readQuantity } from '../../physics/quantities/index.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';

type Block = Readonly<Record<string, unknown>>;

type PlateSize = Readonly<Record<'width' | 'depth', string>>;

export interface Changes {
  readonly kitchen?: Block;
  readonly oven?: Block;
  readonly plate?: Block;
  readonly pizzas?: Block;
  readonly dough?: Block;
  readonly toppings?: Block;
}

function read(plan: Block): Evening {
  const answer = readPlanObject(
    { format: 'hearthclock/evening', version: 1, title: 'test', ...plan },
    { now: Date.UTC(2026, 0, 31, 10) },
  );
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.evening;
}

/**
 * The oven of the North American preset at 288 degC with a seasoned steel of 9.5 mm, 41 x 36 cm at one third, and
 * one dark pizza of 300 g and 30.5 cm on a floured bench.
 */
export function northAmerican(changes: Changes = {}): Evening {
  return evening('north-american', { ...changes, oven: { setpoint: '288 degC', ...changes.oven } });
}

function centimetres(text: string): number {
  const read = readQuantity(text, 'length');
  if (!read.ok) throw new Error(`${text}: allowed ${read.problem.allowed}`);
  return 100 * read.value;
}

/** A plate for tests that walk every preset: of the wanted size, or of what leaves a centimetre of air on each side. */
export function plateFor(preset: OvenPresetId, wanted: PlateSize): PlateSize {
  const { cavity } = ovenPresets[preset].typePlate;
  const side = (name: keyof PlateSize): string =>
    centimetres(wanted[name]) <= centimetres(cavity[name]) - 2 + 1e-9
      ? wanted[name]
      : `${Math.floor(centimetres(cavity[name]) - 2 + 1e-9)} cm`;
  return { width: side('width'), depth: side('depth') };
}

/** The same plate and pizza in the oven of any preset, at its highest setting unless said otherwise. */
export function evening(preset: OvenPresetId, changes: Changes = {}): Evening {
  const { setpoint } = ovenPresets[preset].typePlate;
  return read({
    kitchen: { roomTemperature: '21 degC', altitude: '0 m', ...changes.kitchen },
    oven: { preset, setpoint, ...changes.oven },
    plate: {
      material: 'carbon-steel',
      width: '41 cm',
      depth: '36 cm',
      thickness: '9.5 mm',
      rackHeight: 0.33,
      surface: 'seasoned',
      ...changes.plate,
    },
    pizzas: {
      count: 1,
      diameter: '30.5 cm',
      ballMass: '300 g',
      shade: 'dark',
      bench: 'flour',
      ...changes.pizzas,
    },
    dough: { ...changes.dough },
    toppings: {
      sauce: '80 g',
      cheese: [{ kind: 'low-moisture-mozzarella', mass: '120 g' }],
      ...changes.toppings,
    },
  });
}
