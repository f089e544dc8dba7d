/**
 * Below the clock: what sets the pace, what a late start costs, what can be done about both and about the bake, the
 * cautions, and what was assumed.
 */
import { memo, useId } from 'react';
import { GoalAdvice } from './GoalAdvice.tsx';
import { TryKey } from './TryKey.tsx';
import { WaitOrBake } from './WaitOrBake.tsx';
import { FoldKey } from '../inputs/FoldKey.tsx';
import { useFold } from '../state/lookStore.ts';
import { apartText, paceLines, remedyWords } from '../words/advice.ts';
import { lateStartLines } from '../words/answers.ts';
import { assumptionTexts } from '../words/assumed.ts';
import { unbroken } from '../words/unbroken.ts';
import type { Forecast } from '../state/forecastStore.ts';
import type { Theme } from '../state/settingsStore.ts';
import type { PlanAnswer } from '../../physics/evening/answer.ts';
import { inUnits, type UnitSystem } from '../../physics/quantities/index.ts';

interface NotesProps {
  readonly forecast: Forecast;
  readonly units: UnitSystem;
  readonly theme: Theme;
}

function Lines({ lines, className }: { readonly lines: readonly string[]; readonly className?: string }) {
  return (
    <ul className={className}>
      {lines.map((line) => (
        <li key={line}>{unbroken(line)}</li>
      ))}
    </ul>
  );
}

function Bake({ forecast, units }: Omit<NotesProps, 'theme'>) {
  const { bakeAdvice } = forecast.answer;
  if (bakeAdvice === undefined) return null;
  const remedies = remedyWords(forecast.answer, units);
  return (
    <section className="base-and-top">
      <h2>Base and top</h2>
      <p>{unbroken(apartText(bakeAdvice))}</p>
      <ul>
        {remedies.slice(0, 4).map(({ what, gives, change }) => (
          <li key={what} className="advice">
            <span>{unbroken(`${what}: ${gives}.`)}</span>
            <TryKey change={change} what={what} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Meeting({ answer, units }: { readonly answer: PlanAnswer; readonly units: UnitSystem }) {
  // That all is in time, and with how much room, stands under what sets the pace.
  const others = answer.suggestions.filter(({ id }) => id !== 'in-time');
  if (others.length === 0) return null;
  return (
    <section className="across">
      <h2>{others.length < answer.suggestions.length ? 'To be surer' : 'So that dough and plate meet'}</h2>
      <ul className="two-columns">
        {others.map(({ id, message, change }) => (
          <li key={id + message} className="advice">
            <span>{unbroken(inUnits(message, units))}</span>
            <TryKey change={change} what={inUnits(message, units)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** A long list says first how long it is. */
const shortList = 4;

function Assumed({ texts }: { readonly texts: readonly string[] }) {
  const [open, toggle] = useFold('Assumed');
  const id = useId();
  const short = texts.length <= shortList;
  return (
    <section className="across">
      <h2>Assumed</h2>
      {texts.length === 0 && <p>Nothing: the plan says everything itself.</p>}
      {!short && (
        <FoldKey className="more-key small" open={open} controls={id} onToggle={toggle}>
          {texts.length} figures that the plan does not say
        </FoldKey>
      )}
      <ul id={id} className="three-columns" hidden={!short && !open}>
        {texts.map((text) => (
          <li key={text}>{unbroken(text)}</li>
        ))}
      </ul>
    </section>
  );
}

/** Not drawn again while the pointer moves. */
export const Notes = memo(function Notes({ forecast, units, theme }: NotesProps) {
  const { answer } = forecast;
  const late = lateStartLines(answer, units);
  return (
    <div className="notes">
      <section>
        <h2>What sets the pace</h2>
        <Lines lines={paceLines(answer)} />
      </section>
      <section>
        <h2>A late start of the oven costs</h2>
        {late.length === 0 ? <p>Nothing was computed for a later start.</p> : <Lines lines={late} />}
      </section>
      <Bake forecast={forecast} units={units} />
      <WaitOrBake curves={answer.bakeAdvice?.waitOrBake ?? []} units={units} theme={theme} />
      <section className="across">
        <h2>If guests are {answer.guestsLate.minutes} min late</h2>
        <Lines lines={answer.guestsLate.hold.map((line) => inUnits(line, units))} className="two-columns" />
      </section>
      <Meeting answer={answer} units={units} />
      <GoalAdvice file={forecast.file} units={units} />
      <section className="mind across">
        <h2>Mind</h2>
        <ul className="two-columns">
          {answer.warnings.map(({ code, message, source }) => (
            <li key={code + message}>
              {unbroken(inUnits(message, units))}
              {source !== undefined && (
                <span className="caution-source">
                  {unbroken(inUnits(source, units)).replace(/^\p{Ll}/u, (first) => first.toUpperCase())}.
                </span>
              )}
            </li>
          ))}
        </ul>
      </section>
      <Assumed texts={assumptionTexts(answer.assumed).map((text) => inUnits(text, units))} />
    </div>
  );
});
