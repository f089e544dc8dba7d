/** The formula both ways: percent and weight of each ingredient, one ball, all the dough, dough by area. */
import { Lock } from 'lucide-react';
import { Cell, NamedCell } from './Cell.tsx';
import { massText, massUnit, perAreaText, readCount, readIn, readPercent, readPerArea } from './entries.ts';
import { heldOf, pizzasDiffer } from './held.ts';
import { useHold } from './holdStore.ts';
import { takeEdit } from './take.ts';
import { Choice, type Options } from '../inputs/Choice.tsx';
import { entryOf, shownQuantity } from '../inputs/shown.ts';
import { usePlan } from '../state/planStore.ts';
import { liquidNames } from '../words/names.ts';
import { amountsOf, type Cell as CellId, type Edit } from '../../physics/dough/amounts.ts';
import { doughMass } from '../../physics/evening/onePizza.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { LiquidId } from '../../physics/evening/ids.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface DoughTableProps {
  readonly evening: Evening;
  readonly units: UnitSystem;
}

const otherNames: Readonly<Record<string, string>> = {
  flour: 'Flour',
  yeast: 'Yeast',
  salt: 'Salt',
  sugar: 'Sugar',
};
function ingredientName(name: string): string {
  return otherNames[name] ?? liquidNames[name as LiquidId];
}

/** What arrows add to a percentage. */
function percentStep(name: string): number {
  if (name === 'yeast') return 0.05;
  return name === 'salt' || name === 'sugar' || name === 'oil' ? 0.1 : 1;
}

function MeansChoice({ differ }: { readonly differ: boolean }) {
  const { means, gives } = useHold();
  const choice = means === 'recipe' ? 'recipe' : gives;
  const choose = (next: string): void => {
    useHold.setState(
      next === 'recipe' ? { means: 'recipe' } : { means: 'have', gives: next === 'count' ? 'count' : 'ball' },
    );
  };
  const options: Options = [
    ['recipe', 'changes the formula'],
    ['ball', 'is what there is: the balls follow'],
    ...(differ ? [] : ([['count', 'is what there is: the number of pizzas follows']] as const)),
  ];
  return (
    <label className="means">
      A weight typed in <Choice options={options} value={choice} onChoose={choose} />
    </label>
  );
}

export function DoughTable({ evening, units }: DoughTableProps) {
  const file = usePlan((state) => state.file);
  const { scale, means } = useHold();
  const { pizzas, kitchen } = evening;
  const differ = pizzasDiffer(evening);
  const held = heldOf(evening, scale);
  const amounts = amountsOf(held, kitchen.scaleStep);
  // Where pizzas differ the ball of the others is held, and all of the dough follows.
  const isHeld = (cell: CellId): boolean =>
    differ
      ? ['count', 'diameter', 'ballMass'].includes(cell) || cell.startsWith('percent:')
      : amounts.held.includes(cell);
  const take = (edit: Edit, path?: string, text?: string): string | undefined => {
    const entry = path === undefined || text === undefined ? undefined : entryOf(text, path, units);
    const asTyped = entry?.ok === true && path !== undefined ? { [path]: entry.value } : {};
    return takeEdit(edit, evening, units, asTyped);
  };
  const massCell = (text: string, make: (value: number) => Edit, path?: string): string | undefined => {
    const read = readIn(text, 'mass', massUnit(units));
    return read.ok ? take(make(read.value), path, text) : read.reason;
  };
  const area = differ ? pizzas.ballMass / ((Math.PI / 4) * pizzas.diameter ** 2) : amounts.massPerArea;
  return (
    <section className="amounts-part" aria-labelledby="amounts-dough">
      <h2 id="amounts-dough">Dough</h2>
      <p className="legend small muted">
        <Lock className="lock" aria-hidden="true" /> held: it stays when another figure changes. The rest
        follows.
      </p>
      <div className="cells">
        <NamedCell
          label="Pizzas"
          held={isHeld('count')}
          shown={String(pizzas.count)}
          step={1}
          onTake={(text) => {
            const read = readCount(text);
            return read.ok ? take({ cell: 'count', value: read.value }) : read.reason;
          }}
        />
        <NamedCell
          label="Across"
          held={isHeld('diameter')}
          shown={shownQuantity(file.pizzas?.diameter, pizzas.diameter, 'pizzas.diameter', units)}
          step={1}
          onTake={(text) => {
            const read = readIn(text, 'length', units === 'us' ? 'in' : 'cm');
            return read.ok
              ? take({ cell: 'diameter', value: read.value }, 'pizzas.diameter', text)
              : read.reason;
          }}
        />
        <NamedCell
          label="Dough by area"
          held={isHeld('massPerArea')}
          shown={perAreaText(area, units)}
          step={units === 'us' ? 0.005 : 0.01}
          onTake={(text) => {
            const read = readPerArea(text, units);
            return read.ok ? take({ cell: 'massPerArea', value: read.value }) : read.reason;
          }}
        />
        <NamedCell
          label="One ball"
          held={isHeld('ballMass')}
          shown={massText(pizzas.ballMass, units)}
          step={units === 'us' ? 0.25 : 5}
          onTake={(text) => massCell(text, (value) => ({ cell: 'ballMass', value }), 'pizzas.ballMass')}
        />
        <NamedCell
          label="All the dough"
          held={isHeld('total')}
          shown={massText(differ ? doughMass(evening) : amounts.total, units)}
          step={units === 'us' ? 1 : 50}
          onTake={(text) => massCell(text, (value) => ({ cell: 'total', value }))}
        />
      </div>
      {differ && (
        <p className="small">
          Some pizzas have a ball or a size of their own (see Plan, Pizzas one by one): they keep it, the
          others take what is typed here.
        </p>
      )}
      {amounts.leftOver > kitchen.scaleStep && (
        <p className="small">
          {massText(amounts.leftOver, units)} of dough make no whole ball and are left over.
        </p>
      )}
      <MeansChoice differ={differ} />
      <table className="formula">
        <caption className="hidden">Formula in baker&apos;s percentages, with weights</caption>
        <thead>
          <tr>
            <th scope="col">Ingredient</th>
            <th scope="col">Percent of flour</th>
            <th scope="col">Weight</th>
          </tr>
        </thead>
        <tbody>
          {Object.entries(amounts.lines).map(([name, { percent, grams }]) => (
            <tr key={name}>
              <th scope="row">{ingredientName(name)}</th>
              <td>
                {name === 'flour' ? (
                  <span className="fixed-figure">100 %</span>
                ) : (
                  <Cell
                    label={`${ingredientName(name)}, percent of flour`}
                    held={isHeld(`percent:${name}`)}
                    shown={`${String(Number(percent.toPrecision(4)))} %`}
                    step={percentStep(name)}
                    onTake={(text) => {
                      const read = readPercent(text);
                      return read.ok ? take({ cell: 'percent', name, value: read.value }) : read.reason;
                    }}
                  />
                )}
              </td>
              <td>
                <Cell
                  label={`${ingredientName(name)}, weight`}
                  held={isHeld(`mass:${name}`)}
                  shown={massText(grams / 1000, units)}
                  step={units === 'us' ? 0.25 : grams < 30 ? 0.5 : 5}
                  onTake={(text) => massCell(text, (value) => ({ cell: 'mass', name, value, means }))}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
