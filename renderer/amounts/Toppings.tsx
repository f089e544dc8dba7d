/** Sauce and cheese: for one pizza, by area, for all; tomatoes by the can, and what is left to freeze. */
import { NamedCell } from './Cell.tsx';
import { massText, massUnit, perAreaText, readCount, readIn, readPerArea, writtenMass } from './entries.ts';
import { commonShare } from './held.ts';
import { listAt, refusalOf, takeFields } from './take.ts';
import { Field } from '../inputs/Field.tsx';
import { pizzaFields } from '../inputs/fields.ts';
import { entryOf } from '../inputs/shown.ts';
import { cheeseNames } from '../words/names.ts';
import { unbroken } from '../words/unbroken.ts';
import { toppedArea } from '../../physics/dough/area.ts';
import { OutOfRange } from '../../physics/evening/problem.ts';
import { toppingsAnswer } from '../../physics/evening/toppings.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface ToppingsProps {
  readonly evening: Evening;
  readonly units: UnitSystem;
}

/** Sauce of the pizzas that have none of their own, so that all of them together come to a mass. */
function takeSauceInAll(kg: number, { pizzas }: Evening, units: UnitSystem): string | undefined {
  return refusalOf(() => {
    if (kg < 0) throw new OutOfRange('toppings.sauce', massText(kg, units), '0 g or more');
    const owns = Array.from({ length: pizzas.count }, (_, i) => pizzas.each?.[i]?.sauce);
    return takeFields({ 'toppings.sauce': writtenMass(commonShare(kg, owns, 'toppings.sauce'), units) });
  });
}

function Sauce({ evening, units }: ToppingsProps) {
  const { pizzas, toppings } = evening;
  const answer = toppingsAnswer(evening);
  const area = toppedArea(pizzas.diameter);
  const mass = (text: string, take: (kg: number) => string | undefined): string | undefined => {
    const read = readIn(text, 'mass', massUnit(units));
    return read.ok ? take(read.value) : read.reason;
  };
  const left =
    answer.leftSauceG < 1
      ? 'Nothing is left over.'
      : `${massText(answer.leftSauceG / 1000, units)} are left${
          answer.leftForPizzas > 0
            ? `: freeze them, enough for ${answer.leftForPizzas === 1 ? 'one pizza' : `${String(answer.leftForPizzas)} pizzas`} more`
            : ', too little for one pizza more'
        }.`;
  return (
    <section className="amounts-part" aria-labelledby="amounts-sauce">
      <h2 id="amounts-sauce">Sauce</h2>
      <NamedCell
        label="On one pizza"
        shown={massText(toppings.sauce, units)}
        step={units === 'us' ? 0.25 : 5}
        onTake={(text) =>
          mass(text, () => {
            const entry = entryOf(text, 'toppings.sauce', units);
            return entry.ok ? takeFields({ 'toppings.sauce': entry.value }) : entry.reason;
          })
        }
      />
      <NamedCell
        label="By area"
        note="inside the bare rim"
        shown={perAreaText(toppings.sauce / area, units)}
        step={units === 'us' ? 0.005 : 0.01}
        onTake={(text) => {
          const read = readPerArea(text, units);
          return read.ok
            ? takeFields({ 'toppings.sauce': writtenMass(read.value * area, units) })
            : read.reason;
        }}
      />
      <NamedCell
        label="For all"
        shown={massText(answer.sauceG / 1000, units)}
        step={units === 'us' ? 1 : 10}
        onTake={(text) => mass(text, (kg) => takeSauceInAll(kg, evening, units))}
      />
      <NamedCell
        label="Cans"
        note={`${massText(answer.canYieldG / 1000, units)} of sauce in each; a number typed in uses them up`}
        shown={String(answer.cans)}
        step={1}
        onTake={(text) => {
          const read = readCount(text);
          if (!read.ok) return read.reason;
          return takeSauceInAll((read.value * answer.canYieldG) / 1000, evening, units);
        }}
      />
      {pizzaFields.more.map((spec) => (
        <Field key={spec.path} spec={spec} />
      ))}
      <p>{unbroken(left)}</p>
    </section>
  );
}

function Cheese({ evening, units }: ToppingsProps) {
  const { pizzas, toppings } = evening;
  const answer = toppingsAnswer(evening);
  const takePart = (index: number, mass: string): string | undefined => {
    const parts = toppings.cheese.map(({ kind, mass: kg, waterShare }) => ({
      kind,
      mass: writtenMass(kg, units),
      ...(waterShare === undefined ? {} : { waterShare }),
    }));
    return takeFields({
      'toppings.cheese': listAt('toppings.cheese', parts).map((part, i) =>
        i === index ? { ...part, mass } : part,
      ),
    });
  };
  const area = toppedArea(pizzas.diameter);
  return (
    <section className="amounts-part" aria-labelledby="amounts-cheese">
      <h2 id="amounts-cheese">Cheese</h2>
      {toppings.cheese.length === 0 && <p>None: cheese is added in Plan, under Pizzas.</p>}
      {toppings.cheese.map(({ kind, mass }, index) => {
        const take = (text: string): string | undefined => {
          const read = readIn(text, 'mass', massUnit(units));
          return read.ok ? takePart(index, writtenMass(read.value, units)) : read.reason;
        };
        return (
          <div key={`${kind} ${String(index)}`}>
            <NamedCell
              label={`${cheeseNames[kind]}, on one pizza`}
              index={index}
              shown={massText(mass, units)}
              step={units === 'us' ? 0.25 : 5}
              onTake={take}
            />
            <NamedCell
              label={`${cheeseNames[kind]}, by area`}
              index={index}
              shown={perAreaText(mass / area, units)}
              step={units === 'us' ? 0.005 : 0.01}
              onTake={(text) => {
                const read = readPerArea(text, units);
                return read.ok ? takePart(index, writtenMass(read.value * area, units)) : read.reason;
              }}
            />
          </div>
        );
      })}
      <p>{unbroken(`${massText(answer.cheeseG / 1000, units)} for all the pizzas.`)}</p>
    </section>
  );
}

export function Toppings(props: ToppingsProps) {
  return (
    <>
      <Sauce {...props} />
      <Cheese {...props} />
    </>
  );
}
