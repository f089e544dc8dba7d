/** A reading in two keystrokes: the figure, and the key of the place. What it does to the forecast stands beside it. */
import { useState } from 'react';
import { degreeUnit, temperatureK } from '../words/figures.ts';
import { clockText, spanRangeText } from '../words/clock.ts';
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

interface ReadingProps {
  readonly units: Units;
  readonly offset: number;
  readonly preheat: CourseStep | undefined;
  readonly forecast: PreheatForecast | undefined;
  /** minutes, of the plan */
  readonly planned: Range | undefined;
  /** what the thermometer of a rehearsal shows; undefined otherwise */
  readonly shown: string | undefined;
  readonly onRead: (temperature: number, where: Where) => void;
}

function Ready({ preheat, forecast, planned, offset }: Omit<ReadingProps, 'units' | 'onRead' | 'shown'>) {
  if (preheat === undefined) return null;
  const [low, high]: Range =
    forecast === undefined ? (planned ?? [0, 0]) : [forecast.ready.p10 / 60, forecast.ready.p90 / 60];
  return (
    <>
      <p className="plate-ready">
        Plate ready <strong>{clockText(preheat.to, offset)}</strong>
      </p>
      {high > 0 && (
        <p className="muted">
          {spanRangeText(low, high)} after the oven goes on
          {forecast === undefined
            ? ', as planned'
            : planned === undefined
              ? ''
              : `; before the readings ${spanRangeText(planned[0], planned[1])}`}
        </p>
      )}
      {forecast?.agrees === false && (
        <p className="reason">Readings and forecast disagree by more than chance: look at the thermometer.</p>
      )}
    </>
  );
}

export function PlateReading({ units, shown, onRead, ...ready }: ReadingProps) {
  const [text, setText] = useState('');
  const [reason, setReason] = useState('');
  const take = (where: Where): void => {
    const read = readQuantity(text, 'temperature', { bareUnit: units === 'us' ? 'degF' : 'degC' });
    if (!read.ok) setReason(`Found ${read.problem.found}; allowed ${read.problem.allowed}.`);
    else if (read.value < 253 || read.value > 1073)
      setReason(
        `Found ${text.trim()}; allowed ${temperatureK(253.15, units)} to ${temperatureK(1073.15, units)}.`,
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
        {wheres.map((where) => (
          <button
            key={where.key}
            type="button"
            className="key framed tonight-key"
            onClick={() => {
              take(where);
            }}
          >
            {where.name} <kbd>{where.key.toUpperCase()}</kbd>
          </button>
        ))}
        <p id="reading-help" className={reason === '' ? 'small muted' : 'reason'}>
          {reason === '' ? 'Figure, then the key of the place; Enter takes the probe on the plate.' : reason}
        </p>
        {shown !== undefined && <p className="small">The thermometer of this rehearsal shows {shown}.</p>}
      </div>
    </section>
  );
}
