/** A reading in two keystrokes: the figure, and the key of the place. What it does to the forecast stands beside it. */
import { useState } from 'react';
import { degreeUnit, shortDegrees, temperatureK } from '../words/figures.ts';
import type { Clock } from './said.ts';
import { spanRangeText } from '../words/clock.ts';
import { unbroken } from '../words/unbroken.ts';
import { readQuantity } from '../../physics/quantities/index.ts';
import type { Units } from '../state/settingsStore.ts';
import type { CourseStep } from '../../physics/tonight/course.ts';
import type { InstrumentId, PlaceId } from '../../physics/evening/ids.ts';
import type { PreheatForecast } from '../../physics/tonight/preheatForecast.ts';
import type { Range } from '../../physics/evening/answer.ts';

export interface Where {
  readonly key: string;
  readonly name: string;
  readonly place: PlaceId;
  readonly instrument: InstrumentId;
}
const wheres: readonly Where[] = [
  { key: 'p', name: 'Plate, probe', place: 'plateTop', instrument: 'probe' },
  { key: 'i', name: 'Plate, infrared', place: 'plateTop', instrument: 'infrared' },
  { key: 'a', name: 'Air', place: 'ovenAir', instrument: 'probe' },
];

/** K that a reading may have: a frozen plate and a glowing one */
const [coldest, hottest] = [253.15, 1073.15];

interface ReadingProps {
  readonly units: Units;
  readonly clock: Clock;
  readonly preheat: CourseStep | undefined;
  /** whether the first pizza went in: how the plate heats up is the past then */
  readonly loaded: boolean;
  readonly forecast: PreheatForecast | undefined;
  /** minutes, of the plan */
  readonly planned: Range | undefined;
  /** what the thermometer of a rehearsal shows; undefined otherwise */
  readonly shown: string | undefined;
  readonly onRead: (temperature: number, where: Where) => void;
}

function Ready({
  preheat,
  loaded,
  forecast,
  planned,
  clock,
}: Omit<ReadingProps, 'units' | 'onRead' | 'shown'>) {
  if (preheat === undefined) return null;
  if (loaded) return <p className="muted">It was ready at {clock(preheat.to)}.</p>;
  const range: Range | undefined =
    forecast === undefined ? planned : [forecast.ready.p10 / 60, forecast.ready.p90 / 60];
  const before = forecast === undefined ? undefined : planned;
  const texts = [
    ...(range === undefined ? [] : [`${spanRangeText(...range)} after the oven goes on`]),
    ...(forecast === undefined ? ['as planned'] : []),
  ].join(', ');
  return (
    <>
      <p className="plate-ready">
        Plate ready <strong>{clock(preheat.to)}</strong>
      </p>
      <p className="muted">
        {unbroken(before === undefined ? texts : `${texts}; before the readings ${spanRangeText(...before)}`)}
      </p>
      {forecast?.agrees === false && (
        <p className="reason">Readings and forecast disagree by more than chance: look at the thermometer.</p>
      )}
    </>
  );
}

export function PlateReading({ units, shown, onRead, ...ready }: ReadingProps) {
  const { loaded } = ready;
  const [text, setText] = useState('');
  const [reason, setReason] = useState('');
  const take = (where: Where): void => {
    const read = readQuantity(text, 'temperature', { bareUnit: units === 'us' ? 'degF' : 'degC' });
    if (!read.ok)
      setReason(
        `Found ${read.problem.found}; allowed a figure in ${degreeUnit(units)}, such as ${shortDegrees(500, units).slice(0, -1)}.`,
      );
    else if (read.value < coldest || read.value > hottest)
      setReason(
        `Found ${text.trim()}; allowed ${temperatureK(coldest, units)} to ${temperatureK(hottest, units)}.`,
      );
    else {
      onRead(read.value, where);
      setText('');
      setReason('');
    }
  };
  return (
    <section aria-labelledby="tonight-reading">
      <h2 id="tonight-reading">Plate</h2>
      <Ready {...ready} />
      <div className={reason === '' ? 'reading' : 'reading wrong'}>
        <label htmlFor="reading-figure">Reading, {degreeUnit(units)}</label>
        <input
          id="reading-figure"
          className="entry"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={reason !== ''}
          aria-describedby="reading-help"
          onChange={(event) => {
            setText(event.currentTarget.value);
          }}
          onKeyDown={(event) => {
            const where =
              event.key === 'Enter' ? wheres[0] : wheres.find(({ key }) => key === event.key.toLowerCase());
            if (where === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
            event.preventDefault();
            take(where);
          }}
        />
        <div className="reading-keys">
          {wheres.map((where) => (
            <button
              key={where.key}
              type="button"
              className="key framed tonight-key"
              onClick={() => {
                take(where);
              }}
            >
              {where.name} <kbd aria-hidden>{where.key.toUpperCase()}</kbd>
            </button>
          ))}
        </div>
        <p id="reading-help" className={reason === '' ? 'small muted' : 'reason'}>
          {reason !== ''
            ? reason
            : loaded
              ? 'Kept with the evening; only readings of the preheat move the forecast.'
              : 'Figure, then the key of the place; Enter takes the probe on the plate.'}
        </p>
        {shown !== undefined && <p className="small">The thermometer of this rehearsal shows {shown}.</p>}
      </div>
    </section>
  );
}
