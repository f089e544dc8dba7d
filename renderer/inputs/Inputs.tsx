/** The inputs: six groups that fold. */
import { Field } from './Field.tsx';
import { Group } from './Group.tsx';
import { PartList, type Part } from './PartList.tsx';
import { WhenFields } from './WhenFields.tsx';
import {
  customPlateFields,
  doughFields,
  kitchenFields,
  ovenFields,
  pizzaFields,
  plateFields,
  type FieldSpec,
} from './fields.ts';
import { summaries, type GroupName } from './summaries.ts';
import { cheeseNames, liquidNames } from '../words/names.ts';
import { usePlan, type PlanState } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { useUnits } from '../state/settingsStore.ts';
import { showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';

function Fields({ specs }: { specs: readonly FieldSpec[] }) {
  return specs.map((spec) => <Field key={spec.path} spec={spec} />);
}

function liquids(evening: Evening): readonly Part[] {
  return evening.dough.liquid.map(({ kind, percent, waterShare }) => ({
    kind,
    amount: percent,
    si: percent,
    waterShare,
  }));
}
function cheeses(evening: Evening, file: PlanFile, units: UnitSystem): readonly Part[] {
  return evening.toppings.cheese.map(({ kind, mass, waterShare }, index) => ({
    kind,
    amount: file.toppings?.cheese?.[index]?.mass ?? showQuantity(mass, 'mass', units),
    si: mass,
    waterShare,
  }));
}

const blocks: Record<GroupName, readonly string[]> = {
  When: ['anchor'],
  Oven: ['oven'],
  Plate: ['plate'],
  Pizzas: ['pizzas', 'toppings'],
  Dough: ['dough'],
  Kitchen: ['kitchen'],
};
function holdsWrong(name: GroupName, drafts: PlanState['drafts']): boolean {
  return Object.keys(drafts).some((path) => blocks[name].includes(path.split('.')[0]!));
}

export function Inputs() {
  const file = usePlan((state) => state.file);
  const drafts = usePlan((state) => state.drafts);
  const units = useUnits();
  const reading = readingOf(file);
  if (!reading.ok) return null;
  const { evening } = reading;
  const said = summaries(evening, units);
  const group = (name: GroupName) => ({ name, summary: said[name], wrong: holdsWrong(name, drafts) });
  return (
    <>
      <Group {...group('When')}>
        <WhenFields />
      </Group>
      <Group {...group('Oven')} startsOpen>
        <Fields specs={ovenFields} />
      </Group>
      <Group {...group('Plate')} startsOpen>
        <Fields specs={plateFields} />
        {evening.plate.material === 'custom' && <Fields specs={customPlateFields} />}
      </Group>
      <Group {...group('Pizzas')}>
        <Fields specs={pizzaFields} />
        <PartList
          path="toppings.cheese"
          label="Cheese"
          names={cheeseNames}
          amountName="mass"
          parts={cheeses(evening, file, units)}
          fresh={{ kind: 'hard', mass: units === 'us' ? '0.5 oz' : '15 g' }}
          mayBeEmpty
        />
      </Group>
      <Group {...group('Dough')}>
        <PartList
          path="dough.liquid"
          label="Liquid"
          names={liquidNames}
          amountName="percent"
          parts={liquids(evening)}
          fresh={{ kind: 'milk', percent: 5 }}
          mayBeEmpty={false}
        />
        <Fields specs={doughFields} />
      </Group>
      <Group {...group('Kitchen')}>
        <Fields specs={kitchenFields} />
      </Group>
    </>
  );
}
