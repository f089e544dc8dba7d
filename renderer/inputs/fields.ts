/** Every field of a plan, in the groups the cook sees. Kind, units and choices come from the schema itself. */
import { fieldAt } from '../../physics/evening/planPath.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';
import {
  benchNames,
  bottomElementNames,
  browningLawNames,
  fuelNames,
  keepNames,
  materialNames,
  mixingNames,
  presetNames,
  surfaceNames,
  flourNames,
  plateModelNames,
  shapeNames,
  tomatoNames,
  yeastNames,
  waitRuleNames,
} from '../words/names.ts';

export interface FieldSpec {
  readonly path: string;
  readonly label: string;
  /** what an arrow key adds to the number shown; where the units differ much in size, in either habit */
  readonly step?: number | Readonly<Record<UnitSystem, number>>;
  readonly names?: Readonly<Record<string, string>>;
  /** written behind a plain number */
  readonly unit?: string;
  /** may be left empty: what the empty field says */
  readonly optional?: string;
}

/** Steps of a mass, g and oz. */
const byTen = { metric: 10, us: 0.25 } as const;
const byFive = { metric: 5, us: 0.25 } as const;

export function stepOf({ step }: FieldSpec, units: UnitSystem): number | undefined {
  return typeof step === 'object' ? step[units] : step;
}

/** The fields of a group, and those that stand behind a fold of their own. */
export interface FieldGroup {
  readonly first: readonly FieldSpec[];
  readonly more: readonly FieldSpec[];
}

export const ovenFields: FieldGroup = {
  first: [
    { path: 'oven.preset', label: 'Kind', names: presetNames },
    { path: 'oven.setpoint', label: 'Set to', step: 5 },
    { path: 'oven.highestSetting', label: 'Highest setting', step: 5 },
  ],
  more: [
    { path: 'oven.fuel', label: 'Heated by', names: fuelNames },
    { path: 'oven.bottomElement', label: 'Bottom element', names: bottomElementNames },
    { path: 'oven.fan', label: 'Fan' },
    { path: 'oven.power.bottom', label: 'Bottom power', step: 0.1 },
    { path: 'oven.power.top', label: 'Top power', step: 0.1 },
    { path: 'oven.cavity.width', label: 'Inside width', step: 1 },
    { path: 'oven.cavity.depth', label: 'Inside depth', step: 1 },
    { path: 'oven.cavity.height', label: 'Inside height', step: 0.5 },
    { path: 'oven.thermostatOffset', label: 'Hotter than its dial', step: 1 },
    { path: 'oven.startTemperature', label: 'Warm at the start', step: 1 },
  ],
};
export const plateFields: FieldGroup = {
  first: [
    { path: 'plate.material', label: 'Material', names: materialNames },
    { path: 'plate.thickness', label: 'Thickness', step: { metric: 0.5, us: 0.05 } },
    { path: 'plate.rackHeight', label: 'Rack' },
  ],
  more: [
    { path: 'plate.shape', label: 'Shape', names: shapeNames },
    { path: 'plate.diameter', label: 'Across', step: 1 },
    { path: 'plate.width', label: 'Width', step: 1 },
    { path: 'plate.depth', label: 'Depth', step: 1 },
    { path: 'plate.surface', label: 'Surface', names: surfaceNames },
    { path: 'plate.model', label: 'Computed', names: plateModelNames },
  ],
};
export const customPlateFields: readonly FieldSpec[] = [
  { path: 'plate.density', label: 'Density', step: { metric: 50, us: 5 } },
  { path: 'plate.specificHeat', label: 'Specific heat', step: { metric: 10, us: 0.005 } },
  { path: 'plate.thermalConductivity', label: 'Conductivity', step: 1 },
  { path: 'plate.emissivity', label: 'Emissivity', step: 0.05 },
];
/** A start for the cook's own plate: round figures of plain steel, to be replaced by the maker's. */
export const customPlateStart: Readonly<Record<string, unknown>> = {
  'plate.density': '7850 kg/m3',
  'plate.specificHeat': '480 J/(kg K)',
  'plate.thermalConductivity': '50 W/(m K)',
  'plate.emissivity': 0.8,
};
export const pizzaFields: FieldGroup = {
  first: [
    { path: 'pizzas.count', label: 'How many', step: 1 },
    { path: 'pizzas.diameter', label: 'Across', step: 1 },
    { path: 'pizzas.ballMass', label: 'Dough ball', step: byTen },
    { path: 'pizzas.shade', label: 'Base' },
    { path: 'pizzas.bench', label: 'Baked on', names: benchNames },
    { path: 'toppings.sauce', label: 'Sauce each', step: byFive },
  ],
  more: [
    { path: 'toppings.tomatoes', label: 'Tomatoes', names: tomatoNames },
    { path: 'toppings.can', label: 'One can holds', step: { metric: 50, us: 1 } },
  ],
};
/** What is done to a bake beside loading and unloading, and how the pizzas follow one another. */
export const bakingFields: readonly FieldSpec[] = [
  { path: 'pizzas.loadAt', label: 'First one in, after oven on', step: 5, optional: 'when ready' },
  { path: 'pizzas.wait', label: 'Wait between two', step: 1, optional: 'as needed' },
  { path: 'pizzas.waitRule', label: 'Where no wait is set', names: waitRuleNames, optional: 'Usual' },
  { path: 'pizzas.steps.lookAfter', label: 'A look after', step: 1, optional: 'no look' },
  { path: 'pizzas.steps.turnAtHalfTime', label: 'Turn at half time' },
  { path: 'pizzas.steps.pullParchment', label: 'Pull the parchment out' },
  { path: 'pizzas.steps.topElementBefore', label: 'Top heat before the load', step: 1, optional: 'none' },
  { path: 'pizzas.steps.topElementAfter', label: 'Top heat from, after the load', step: 1, optional: 'none' },
  { path: 'pizzas.steps.topElementAtEnd', label: 'Top heat at the end', step: 1, optional: 'none' },
  { path: 'pizzas.parBake.keep', label: 'Bases baked ahead', names: keepNames, optional: 'No' },
  { path: 'pizzas.browningLaw', label: 'Browning after', names: browningLawNames, optional: 'Usual' },
  { path: 'pizzas.browningRate', label: 'Browns times the usual rate', step: 0.1, optional: 'usual' },
];
/** Asked only of bases that are baked ahead. */
export const parBakeFields: readonly FieldSpec[] = [
  { path: 'pizzas.parBake.shade', label: 'Their first shade', optional: 'barely' },
  { path: 'pizzas.parBake.kept', label: 'Kept', step: 1, optional: 'as usual' },
];

const asOthers = 'as all';
/** What one pizza may have of its own; cheese has a list. */
export function onePizzaFields(index: number): readonly FieldSpec[] {
  const at = `pizzas.each.${String(index)}`;
  return [
    { path: `${at}.diameter`, label: 'Across', step: 1, optional: asOthers },
    { path: `${at}.ballMass`, label: 'Dough ball', step: byTen, optional: asOthers },
    { path: `${at}.shade`, label: 'Base', optional: asOthers },
    { path: `${at}.bench`, label: 'Baked on', names: benchNames, optional: 'As all' },
    { path: `${at}.sauce`, label: 'Sauce', step: byFive, optional: asOthers },
  ];
}
export const doughFields: FieldGroup = {
  first: [
    { path: 'dough.yeast.kind', label: 'Yeast', names: yeastNames },
    { path: 'dough.yeast.percent', label: 'Yeast dose', step: 0.05, unit: '%' },
    { path: 'dough.mixing', label: 'Mixing', names: mixingNames },
    { path: 'dough.restBeforeShaping', label: 'Rest of the balls', step: 5 },
  ],
  more: [
    { path: 'dough.salt', label: 'Salt', step: 0.1, unit: '%' },
    { path: 'dough.sugar', label: 'Sugar', step: 0.1, unit: '%' },
    { path: 'dough.oil', label: 'Oil', step: 0.5, unit: '%' },
    { path: 'dough.flour', label: 'Flour', names: flourNames },
    { path: 'dough.flourMoisture', label: 'Water in the flour', step: 0.5, unit: '%' },
    { path: 'dough.flourTemperature', label: 'Flour is at', step: 1 },
    { path: 'dough.wantedTemperature', label: 'Dough wanted at', step: 1 },
    { path: 'dough.riseTemperature', label: 'Rises at', step: 1 },
  ],
};
export const kitchenFields: readonly FieldSpec[] = [
  { path: 'kitchen.roomTemperature', label: 'Room', step: 1 },
  { path: 'kitchen.altitude', label: 'Above the sea', step: { metric: 50, us: 100 } },
  { path: 'kitchen.tapTemperature', label: 'Cold tap', step: 1 },
  { path: 'kitchen.scaleStep', label: 'Scale shows', step: { metric: 0.1, us: 0.005 } },
  { path: 'kitchen.energyPrice', label: 'Energy price', optional: 'not said' },
];

/** The schema's facts of a field; a path that the schema does not know is our own slip. */
export function factsOf(path: string): NonNullable<ReturnType<typeof fieldAt>> {
  const facts = fieldAt(path);
  if (facts === undefined) throw new RangeError(`field: found ${path}; allowed a path of the plan file`);
  return facts;
}
