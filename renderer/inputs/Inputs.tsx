/** The inputs: six groups that fold. */
import { Field } from './Field.tsx';
import { Group } from './Group.tsx';
import { knownFields } from './known.ts';
import { MoreFields } from './MoreFields.tsx';
import { ovenPhysicsFields } from './ovenPhysics.ts';
import { PhaseList } from './PhaseList.tsx';
import { OwnPizzas } from './OwnPizzas.tsx';
import { cheeseParts, freshCheese } from './parts.ts';
import { PartList, type Part } from './PartList.tsx';
import { WhenFields } from './WhenFields.tsx';
import {
  bakingFields,
  customPlateFields,
  doughFields,
  kitchenFields,
  ovenFields,
  parBakeFields,
  pizzaFields,
  plateFields,
  type FieldSpec,
} from './fields.ts';
import { summaries, type GroupName } from './summaries.ts';
import { cheeseNames, liquidNames } from '../words/names.ts';
import { usePlan, type PlanState } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { useUnits } from '../state/settingsStore.ts';
import type { Evening } from '../../physics/evening/evening.ts';

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
  const wrongIn = (specs: readonly FieldSpec[]) => specs.some(({ path }) => drafts[path] !== undefined);
  const round = evening.plate.shape === 'round';
  const plateMore = plateFields.more.filter(({ path }) =>
    round ? path !== 'plate.width' && path !== 'plate.depth' : path !== 'plate.diameter',
  );
  const group = (name: GroupName) => ({ name, summary: said[name], wrong: holdsWrong(name, drafts) });
  return (
    <>
      <Group {...group('When')}>
        <WhenFields />
      </Group>
      <Group {...group('Oven')} startsOpen>
        <Fields specs={ovenFields.first} />
        <MoreFields name="More of the oven" wrong={wrongIn(ovenFields.more)}>
          <Fields specs={ovenFields.more} />
        </MoreFields>
        <MoreFields name="Its physics" wrong={wrongIn(ovenPhysicsFields)}>
          <Fields specs={ovenPhysicsFields} />
        </MoreFields>
      </Group>
      <Group {...group('Plate')} startsOpen>
        <Fields specs={plateFields.first} />
        {evening.plate.material === 'custom' && <Fields specs={customPlateFields} />}
        <MoreFields name="More of the plate" wrong={wrongIn(plateMore)}>
          <Fields specs={plateMore} />
        </MoreFields>
      </Group>
      <Group {...group('Pizzas')}>
        <Fields specs={pizzaFields.first} />
        <PartList
          path="toppings.cheese"
          label="Cheese"
          names={cheeseNames}
          amountName="mass"
          parts={cheeseParts(evening.toppings.cheese, file.toppings?.cheese, units)}
          fresh={freshCheese(units)}
          mayBeEmpty
        />
        <MoreFields name="Baking, step by step" wrong={wrongIn(bakingFields)}>
          <Fields specs={bakingFields} />
          {evening.pizzas.parBake !== undefined && <Fields specs={parBakeFields} />}
        </MoreFields>
        <OwnPizzas evening={evening} />
        <MoreFields name="More of the toppings" wrong={wrongIn(pizzaFields.more)}>
          <Fields specs={pizzaFields.more} />
        </MoreFields>
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
        <Fields specs={doughFields.first} />
        <MoreFields name="More of the dough" wrong={wrongIn(doughFields.more)}>
          <Fields specs={doughFields.more} />
        </MoreFields>
        <PhaseList evening={evening} />
      </Group>
      <Group {...group('Kitchen')}>
        <Fields specs={kitchenFields} />
        <MoreFields name="Known better than usual, to within" wrong={wrongIn(knownFields)}>
          <Fields specs={knownFields} />
        </MoreFields>
      </Group>
    </>
  );
}
