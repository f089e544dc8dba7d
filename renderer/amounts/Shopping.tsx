/** What has to be in the house, with a tick for what is there. */
import { massText } from './entries.ts';
import { tick, useTicked } from './ticks.ts';
import { inUnits } from '../../physics/quantities/sentences.ts';
import { unbroken } from '../words/unbroken.ts';
import type { ShoppingItem } from '../../physics/evening/answer.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface ShoppingProps {
  readonly items: readonly ShoppingItem[];
  readonly units: UnitSystem;
}

export function Shopping({ items, units }: ShoppingProps) {
  const ticked = useTicked();
  const there = items.filter(({ item }) => ticked.has(item)).length;
  return (
    <section className="amounts-part" aria-labelledby="amounts-shopping">
      <h2 id="amounts-shopping">Shopping list</h2>
      <p className="muted small" role="status">
        {items.length === 0
          ? 'Nothing is needed.'
          : there === items.length
            ? 'All of it is there.'
            : `${String(items.length - there)} of ${String(items.length)} still to get.`}
      </p>
      <ul className="shopping">
        {items.map(({ item, grams, note }) => (
          <li key={item}>
            <label className={ticked.has(item) ? 'there' : undefined}>
              <input
                type="checkbox"
                checked={ticked.has(item)}
                onChange={(event) => {
                  tick(item, event.currentTarget.checked);
                }}
              />
              <span>
                <b>{massText(grams / 1000, units)}</b> {item}
                {note !== '' && <span className="source"> {unbroken(inUnits(note, units))}</span>}
              </span>
            </label>
          </li>
        ))}
      </ul>
    </section>
  );
}
