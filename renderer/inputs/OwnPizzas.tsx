/** Pizzas that differ from the others, one by one: each behind a fold that says in one line what is its own. */
import { RotateCcw } from 'lucide-react';
import { Field } from './Field.tsx';
import { onePizzaFields } from './fields.ts';
import { MoreFields } from './MoreFields.tsx';
import { cheeseParts, freshCheese } from './parts.ts';
import { PartList } from './PartList.tsx';
import { change, usePlan } from '../state/planStore.ts';
import { useUnits } from '../state/settingsStore.ts';
import { benchNames, cheeseNames, shadeWord } from '../words/names.ts';
import { showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';
import type { Evening, OnePizza } from '../../physics/evening/evening.ts';

/** `33 cm, dark`, or `as the others`. */
export function ownText(own: OnePizza | undefined, units: UnitSystem): string {
  const said = [
    ...(own?.diameter === undefined ? [] : [showQuantity(own.diameter, 'length', units)]),
    ...(own?.ballMass === undefined ? [] : [`ball ${showQuantity(own.ballMass, 'mass', units)}`]),
    ...(own?.shadeLightness === undefined ? [] : [shadeWord(own.shadeLightness)]),
    ...(own?.bench === undefined ? [] : [benchNames[own.bench].toLowerCase()]),
    ...(own?.sauce === undefined ? [] : [`sauce ${showQuantity(own.sauce, 'mass', units)}`]),
    ...(own?.cheese === undefined ? [] : ['its own cheese']),
  ];
  return said.length === 0 ? 'as the others' : said.join(', ');
}

function OwnCheese({ evening, index }: { readonly evening: Evening; readonly index: number }) {
  const file = usePlan((state) => state.file);
  const units = useUnits();
  const path = `pizzas.each.${String(index)}.cheese`;
  const own = evening.pizzas.each?.[index]?.cheese;
  if (own === undefined) {
    const common = cheeseParts(evening.toppings.cheese, file.toppings?.cheese, units);
    return (
      <button
        type="button"
        className="key add-part"
        onClick={() => {
          change({
            [path]: common.map(({ kind, amount, waterShare }) => ({
              kind,
              mass: amount,
              ...(waterShare === undefined ? {} : { waterShare }),
            })),
          });
        }}
      >
        Cheese of its own
      </button>
    );
  }
  return (
    <>
      <PartList
        path={path}
        label="Cheese"
        names={cheeseNames}
        amountName="mass"
        parts={cheeseParts(own, file.pizzas?.each?.[index]?.cheese, units)}
        fresh={freshCheese(units)}
        mayBeEmpty
      />
      <button
        type="button"
        className="key add-part"
        onClick={() => {
          change({ [path]: undefined });
        }}
      >
        <RotateCcw aria-hidden="true" /> Cheese as all
      </button>
    </>
  );
}

export function OwnPizzas({ evening }: { readonly evening: Evening }) {
  const drafts = usePlan((state) => state.drafts);
  const units = useUnits();
  const { count, each } = evening.pizzas;
  const wrong = (index: number): boolean =>
    Object.keys(drafts).some((path) => path.startsWith(`pizzas.each.${String(index)}.`));
  if (count < 2) return null;
  return (
    <MoreFields name="Pizzas one by one" wrong={Array.from({ length: count }, (_, i) => i).some(wrong)}>
      {Array.from({ length: count }, (_, index) => (
        <div key={index} role="group" aria-label={`Pizza ${String(index + 1)}`} className="part">
          <MoreFields
            name={`Pizza ${String(index + 1)}: ${ownText(each?.[index], units)}`}
            fold={`Pizza ${String(index + 1)}`}
            wrong={wrong(index)}
          >
            {onePizzaFields(index).map((spec) => (
              <Field key={spec.path} spec={spec} />
            ))}
            <OwnCheese evening={evening} index={index} />
          </MoreFields>
        </div>
      ))}
    </MoreFields>
  );
}
