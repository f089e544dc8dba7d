/** The view Amounts: what to weigh, pour and buy. Every figure can be typed in; what follows from it is worked out. */
import { DoughTable } from './DoughTable.tsx';
import { Shopping } from './Shopping.tsx';
import { Toppings } from './Toppings.tsx';
import { useDough, Water, Yeast } from './WaterAndYeast.tsx';
import { Held } from '../Held.tsx';
import { useNow } from '../clock/useNow.ts';
import { useForecast, type Forecast } from '../state/forecastStore.ts';
import { usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { useUnits } from '../state/settingsStore.ts';
import { epochOf, offsetOf } from '../words/clock.ts';
import { shoppingList } from '../../physics/evening/shopping.ts';
import type { Evening } from '../../physics/evening/evening.ts';

const minute = 60_000;

/** When the balls are shaped, and how long the dough would have if it were mixed now. */
function times({ answer }: Forecast, now: number) {
  const rise = answer.dough.phases.at(-1);
  const shaped = rise === undefined ? epochOf(answer.eatAt) : epochOf(rise.to);
  const mix = answer.tasks.find(({ id }) => id === 'mix');
  const mixing = mix === undefined ? 0 : epochOf(mix.to) - epochOf(mix.from);
  const fromNow = (shaped - now - mixing) / minute;
  // Beyond two days nobody asks what beginning now would take.
  const asked = answer.dough.phases.length > 0 && fromNow > 30 && fromNow < 2 * 24 * 60;
  return { shapedAt: { at: shaped, offset: offsetOf(answer.eatAt) }, fromNow: asked ? fromNow : undefined };
}

function Shown({ evening, forecast }: { readonly evening: Evening; readonly forecast: Forecast }) {
  const units = useUnits();
  const now = useNow();
  const dough = useDough(evening);
  const { shapedAt, fromNow } = times(forecast, now);
  return (
    <div className="amounts">
      <div className="amounts-column">
        <DoughTable evening={evening} units={units} />
        {dough !== undefined && (
          <Yeast
            evening={evening}
            dough={dough}
            units={units}
            forTimes={forecast.answer.dough.forTimes}
            fromNow={fromNow}
            shapedAt={shapedAt}
          />
        )}
      </div>
      {dough !== undefined && (
        <div className="amounts-column">
          <Water evening={evening} dough={dough} units={units} />
        </div>
      )}
      <div className="amounts-column">
        <Toppings evening={evening} units={units} />
        {dough !== undefined && <Shopping items={shoppingList(evening, dough.grams)} units={units} />}
      </div>
    </div>
  );
}

export function AmountsView() {
  const file = usePlan((state) => state.file);
  const forecast = useForecast((state) => state.forecast);
  const reading = readingOf(file);
  if (!reading.ok || forecast === undefined) return <p className="muted">Working out the evening …</p>;
  return (
    <>
      <Held />
      <Shown evening={reading.evening} forecast={forecast} />
    </>
  );
}
