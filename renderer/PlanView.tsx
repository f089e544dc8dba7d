/** The view Plan: drawing, inputs, answers, clock, notes. */
import { useEffect, useMemo, useRef } from 'react';
import { X } from 'lucide-react';
import { Answers } from './answers/Answers.tsx';
import { Held } from './Held.tsx';
import { useNow } from './clock/useNow.ts';
import { Clock } from './clock/Clock.tsx';
import { clockModel, restingMoment, withNow } from './clock/model.ts';
import { momentAt } from './clock/moment.ts';
import { Drawing } from './drawing/Drawing.tsx';
import { Inputs } from './inputs/Inputs.tsx';
import { Notes } from './notes/Notes.tsx';
import { useDocument } from './state/documentStore.ts';
import { useForecast, type Forecast } from './state/forecastStore.ts';
import { useMoment } from './state/momentStore.ts';
import { usePlan } from './state/planStore.ts';
import { readingOf } from './state/reading.ts';
import { useUnits, type Theme } from './state/settingsStore.ts';
import { threeAnswers } from './words/answers.ts';
import { assumptionTexts } from './words/assumed.ts';
import { inUnits } from '../physics/quantities/index.ts';

interface PlanViewProps {
  readonly theme: Theme;
  readonly drawer: boolean;
  readonly onDrawerClose: () => void;
}

function useMoments(forecast: Forecast) {
  const now = useNow();
  const model = useMemo(() => withNow(clockModel(forecast), now), [forecast, now]);
  const pointed = useMoment((state) => state.moment);
  const view = useMoment((state) => state.view) ?? model.usual;
  const at = pointed ?? restingMoment(model);
  const moment = useMemo(() => momentAt(forecast, at), [forecast, at]);
  return { model, view, at, moment };
}

function Shown({ forecast, theme }: { readonly forecast: Forecast; readonly theme: Theme }) {
  const units = useUnits();
  const { model, view, at, moment } = useMoments(forecast);
  const answers = useMemo(() => threeAnswers(forecast, units), [forecast, units]);
  const assumed = useMemo(
    () => assumptionTexts(forecast.answer.assumed).map((text) => inUnits(text, units)),
    [forecast, units],
  );
  const held = usePlan(({ drafts }) => Object.keys(drafts).length > 0);
  const stuck = useForecast(({ problems, fault }) => problems.length > 0 || fault !== undefined);
  const busy = useForecast((state) => state.busy);
  const file = usePlan((state) => state.file);
  const reading = readingOf(file);
  // The plate follows the hand at once; its temperatures follow as soon as they are computed.
  const evening = reading.ok ? reading.evening : forecast.evening;
  const dim = held || stuck ? 'dims dimmed' : 'dims';
  const main = useRef<HTMLDivElement>(null);
  const opened = useDocument((state) => state.opened);
  useEffect(() => {
    // Another plan begins at its answers, wherever the one before was read.
    main.current?.scrollTo(0, 0);
  }, [opened]);
  return (
    <>
      <div className="drawing-area">
        <div className={dim}>
          <Drawing
            evening={evening}
            moment={moment}
            at={at}
            offset={model.offset}
            units={units}
            theme={theme}
          />
        </div>
      </div>
      <div className="main-area" ref={main} aria-busy={busy !== undefined}>
        <Held />
        <div className={dim}>
          <Answers answers={answers} assumed={assumed} />
        </div>
        <div className={`clock-place ${dim}`}>
          <Clock
            forecast={forecast}
            model={model}
            view={view}
            at={at}
            moment={moment}
            units={units}
            theme={theme}
          />
        </div>
        <div className={dim}>
          <Notes forecast={forecast} units={units} theme={theme} />
        </div>
      </div>
    </>
  );
}

export function PlanView({ theme, drawer, onDrawerClose }: PlanViewProps) {
  const forecast = useForecast((state) => state.forecast);
  const opened = useDocument((state) => state.opened);
  useEffect(() => {
    if (!drawer) return;
    const close = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') onDrawerClose();
    };
    window.addEventListener('keydown', close);
    return () => {
      window.removeEventListener('keydown', close);
    };
  }, [drawer, onDrawerClose]);
  return (
    <>
      {forecast === undefined ? (
        <div className="main-area" aria-busy>
          <Held />
          <p className="muted">Working out the evening …</p>
        </div>
      ) : (
        <Shown forecast={forecast} theme={theme} />
      )}
      <section className={drawer ? 'inputs-area open' : 'inputs-area'} aria-label="Inputs">
        <h2 className="hidden">Inputs</h2>
        <button type="button" className="key framed inputs-close" onClick={onDrawerClose}>
          <X aria-hidden="true" /> Back to the plan
        </button>
        {/* Another plan begins with its folds as they were at first. */}
        <Inputs key={opened} />
      </section>
    </>
  );
}
