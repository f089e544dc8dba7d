/** How wet the dough really is, how warm the liquid goes in and what that does, and yeast for the time there is. */
import { useMemo } from 'react';
import { NamedCell } from './Cell.tsx';
import { massText, readIn, readPercent } from './entries.ts';
import { takeFields } from './take.ts';
import { Field } from '../inputs/Field.tsx';
import { doughFields, kitchenFields, type FieldSpec } from '../inputs/fields.ts';
import { clockText, spanText } from '../words/clock.ts';
import { temperatureK } from '../words/figures.ts';
import { inUnits } from '../../physics/quantities/sentences.ts';
import { yeastNames } from '../words/names.ts';
import { unbroken } from '../words/unbroken.ts';
import { doughTemperatureWith, hottestForYeast } from '../../physics/dough/liquidTemperature.ts';
import { attempt } from '../../physics/evening/attempt.ts';
import { whyNotTheRule } from '../../physics/evening/doughAnswer.ts';
import { planDough, type DoughPlan } from '../../physics/evening/planDough.ts';
import { liquidEffects, yeastForTime } from '../../physics/evening/yeastForTime.ts';
import type { DoughForTime } from '../../physics/evening/answer.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import { fromCelsius, type UnitSystem } from '../../physics/quantities/index.ts';

interface WaterProps {
  readonly evening: Evening;
  readonly dough: DoughPlan;
  readonly units: UnitSystem;
}

/** The dough of an evening, or undefined for one that cannot be made: the plan's own notice says why. */
export function useDough(evening: Evening): DoughPlan | undefined {
  return useMemo(() => attempt(() => planDough(evening)), [evening]);
}

function specOf(path: string): FieldSpec {
  const spec = [...doughFields.first, ...doughFields.more, ...kitchenFields].find((one) => one.path === path);
  if (spec === undefined) throw new RangeError(`field: found ${path}; allowed one of dough or kitchen`);
  return spec;
}
function Fields({ paths }: { readonly paths: readonly string[] }) {
  return paths.map((path) => <Field key={path} spec={specOf(path)} />);
}

const freezing = 273.15;
/** Liquids around the one to pour, K: what a few degrees more or less, in steps of the unit shown, would do. */
function around(poured: number, units: UnitSystem): readonly number[] {
  const step = units === 'us' ? 10 / 1.8 : 5;
  return [-2, -1, 0, 1, 2]
    .map((by) => poured + by * step)
    .filter((at) => at >= freezing && at <= hottestForYeast);
}

function degree(kelvin: number): number {
  return Math.round((kelvin - freezing) * 10) / 10;
}

export function Water({ evening, dough, units }: WaterProps) {
  const { liquid, batch } = dough;
  const effects = useMemo(
    () => liquidEffects(evening, dough, around(liquid.temperature, units)),
    [evening, dough, liquid.temperature, units],
  );
  const ice = Math.round(1000 * liquid.ice);
  const takePoured = (text: string): string | undefined => {
    const read = readIn(text, 'temperature', units === 'us' ? 'degF' : 'degC');
    if (!read.ok) return read.reason;
    if (read.value > hottestForYeast || read.value < freezing)
      return `Found ${text.trim()}; allowed ${temperatureK(freezing, units)} to ${temperatureK(hottestForYeast, units)}, which yeast survives.`;
    const wanted = degree(doughTemperatureWith(batch, read.value));
    return takeFields({ 'dough.wantedTemperature': `${String(wanted)} degC` });
  };
  return (
    <section className="amounts-part" aria-labelledby="amounts-water">
      <h2 id="amounts-water">Water and warmth</h2>
      <p>
        {unbroken(
          `Hydration as written ${dough.nominalHydrationPercent.toFixed(1)} %; true hydration ${dough.trueHydrationPercent.toFixed(1)} %: as wet as plain water would make flour that holds 14 % itself.`,
        )}
      </p>
      <Fields paths={['dough.flourMoisture']} />
      <NamedCell
        label="Pour the liquid at"
        note={
          ice > 0
            ? `${massText(liquid.ice, units)} of the water as ice`
            : `the dough then is at ${temperatureK(liquid.doughTemperature, units)}`
        }
        shown={temperatureK(liquid.temperature, units)}
        step={1}
        onTake={takePoured}
      />
      <Fields
        paths={[
          'dough.wantedTemperature',
          'dough.flourTemperature',
          'kitchen.roomTemperature',
          'kitchen.tapTemperature',
          'dough.mixing',
        ]}
      />
      <table className="small-table">
        <caption>What the liquid does</caption>
        <thead>
          <tr>
            <th scope="col">Liquid</th>
            <th scope="col">Dough</th>
            <th scope="col">Ready after</th>
          </tr>
        </thead>
        <tbody>
          {effects.map((effect) => (
            <tr
              key={effect.liquid}
              className={Math.abs(effect.liquid - liquid.temperature) < 0.6 ? 'chosen' : undefined}
            >
              <th scope="row">{temperatureK(effect.liquid, units)}</th>
              <td>{temperatureK(effect.dough, units)}</td>
              <td>{effect.rise === undefined ? 'never' : spanText(effect.rise / 60)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small muted">{unbroken(inUnits(whyNotTheRule(dough), units))}</p>
    </section>
  );
}

interface YeastProps extends WaterProps {
  readonly forTimes: readonly DoughForTime[];
  /** min from the end of mixing to the balls shaped, if mixing began now; undefined where that is not ahead */
  readonly fromNow: number | undefined;
  readonly shapedAt: { readonly at: number; readonly offset: number };
}

function tidy(percent: number): number {
  return Number(percent.toPrecision(2));
}

function takePercent(percent: number): string | undefined {
  return takeFields({ 'dough.yeast.percent': tidy(percent) });
}

export function Yeast({ evening, dough, units, forTimes, fromNow, shapedAt }: YeastProps) {
  const { yeast } = evening.dough;
  const flour = dough.batch.flour;
  const nowPercent = fromNow === undefined ? undefined : yeastForTime(evening, dough, 60 * fromNow);
  const [low, high] = dough.rise.range;
  const rows = [
    ...(fromNow === undefined || nowPercent === undefined
      ? []
      : [{ name: `begun now: ${spanText(fromNow)}`, percent: nowPercent, place: undefined }]),
    ...forTimes.map(({ minutes, yeastPercent, placeC }) => ({
      name: spanText(minutes),
      percent: yeastPercent,
      place: placeC,
    })),
  ];
  return (
    <section className="amounts-part" aria-labelledby="amounts-yeast">
      <h2 id="amounts-yeast">Yeast for the time there is</h2>
      <p>
        {unbroken(
          `Shaped at ${clockText(shapedAt.at, shapedAt.offset)}; ready between ${spanText(low / 60)} and ${spanText(high / 60)} after mixing.`,
        )}
      </p>
      <NamedCell
        label="Ready after"
        note="the yeast follows"
        shown={spanText(dough.rise.seconds / 60)}
        onTake={(text) => {
          const read = readIn(text, 'duration', 'h');
          if (!read.ok) return read.reason;
          const percent = yeastForTime(evening, dough, read.value);
          return percent === undefined
            ? `Found ${text.trim()}; allowed a time that the equal of at most five percent fresh yeast can do.`
            : takePercent(percent);
        }}
      />
      <Fields paths={['dough.yeast.kind']} />
      <NamedCell
        label="Dose"
        note={`${massText((flour * yeast.percent) / 100, units)} ${yeastNames[yeast.kind].toLowerCase()}`}
        shown={`${String(yeast.percent)} %`}
        step={0.05}
        onTake={(text) => {
          const read = readPercent(text);
          return read.ok ? takeFields({ 'dough.yeast.percent': read.value }) : read.reason;
        }}
      />
      <Fields paths={['dough.riseTemperature']} />
      <table className="small-table">
        <caption>Other times, from the end of mixing: either yeast or place</caption>
        <thead>
          <tr>
            <th scope="col">Ready after</th>
            <th scope="col">Yeast</th>
            <th scope="col">or rising at</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, percent, place }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>
                {percent === undefined
                  ? '–'
                  : unbroken(`${String(tidy(percent))} %, ${massText((flour * percent) / 100, units)}`)}
              </td>
              <td>{place === undefined ? '–' : temperatureK(fromCelsius(place), units)}</td>
              <td>
                {percent !== undefined && (
                  <button
                    type="button"
                    className="key framed try-key"
                    aria-label={`Take the yeast for ${name}`}
                    onClick={() => {
                      takePercent(percent);
                    }}
                  >
                    Take
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
