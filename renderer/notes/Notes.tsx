/** Below the clock: what limits the evening, what a late start costs, the cautions, and what was assumed. */
import { memo } from 'react';
import { lateStartLines, slackNames, slackText } from '../words/answers.ts';
import { inUnits } from '../words/inUnits.ts';
import { assumptionTexts } from '../words/assumed.ts';
import type { Forecast } from '../state/forecastStore.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

const parts = ['plate', 'dough', 'hands'] as const;

interface NotesProps {
  readonly forecast: Forecast;
  readonly units: UnitSystem;
}

/** Not drawn again while the pointer moves. */
export const Notes = memo(function Notes({ forecast, units }: NotesProps) {
  const { answer } = forecast;
  const others = parts.filter((part) => part !== answer.limitedBy);
  const late = lateStartLines(answer, units);
  const assumed = assumptionTexts(answer.assumed);
  return (
    <div className="notes">
      <section>
        <h2>What sets the pace</h2>
        <p>
          {slackNames[answer.limitedBy].replace(/^./u, (first) => first.toUpperCase())}{' '}
          {answer.limitedBy === 'hands' ? 'set' : 'sets'} it.
        </p>
        <ul>
          {others.map((part) => (
            <li key={part}>
              {slackNames[part].replace(/^./u, (first) => first.toUpperCase())}{' '}
              {part === 'hands'
                ? slackText(answer.slackMinutes[part])
                    .replace(/^has/u, 'have')
                    .replace(/^comes/u, 'come')
                : slackText(answer.slackMinutes[part])}
              .
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h2>A late start of the oven costs</h2>
        {late.length === 0 ? (
          <p>Nothing was computed for a later start.</p>
        ) : (
          <ul>
            {late.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
      </section>
      <section className="mind">
        <h2>Mind</h2>
        <ul>
          {answer.warnings.map(({ code, message }) => (
            <li key={code + message}>{inUnits(message, units)}</li>
          ))}
        </ul>
      </section>
      <section>
        <h2>Assumed</h2>
        {assumed.length === 0 ? (
          <p>Nothing: the plan says everything itself.</p>
        ) : (
          <ul>
            {assumed.map((text) => (
              <li key={text}>{inUnits(text, units)}</li>
            ))}
          </ul>
        )}
      </section>
    </div>
  );
});
