/** Says what a change did, at most once a second, for whoever does not see it. */
import { useEffect, useRef, useState } from 'react';
import { useForecast, type Forecast } from '../state/forecastStore.ts';
import { changesBetween } from '../words/announce.ts';
import { useDocument } from '../state/documentStore.ts';
import { sameValue } from '../state/path.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';

const pause = 1000;

/** What is planned: what happened on the evening says itself what it moved. */
function planned({ file }: Forecast): PlanFile {
  return { ...file, tonight: {} };
}

interface Said {
  readonly forecast: Forecast | undefined;
  readonly opened: number;
}
function now(): Said {
  return { forecast: useForecast.getState().forecast, opened: useDocument.getState().opened };
}

export function LiveRegion() {
  const [text, setText] = useState('');
  const said = useRef<Said>(undefined);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    said.current = now();
    const speak = (): void => {
      const before = said.current;
      const after = now();
      said.current = after;
      if (before?.forecast === undefined || after.forecast === undefined) return;
      if (before.opened !== after.opened || sameValue(planned(before.forecast), planned(after.forecast)))
        return;
      setText(changesBetween(before.forecast.answer, after.forecast.answer));
    };
    const unsubscribe = useForecast.subscribe((state, before) => {
      if (state.forecast === before.forecast) return;
      // The first forecast is what a first change is told against, however soon that follows.
      if (said.current?.forecast === undefined) said.current = now();
      clearTimeout(timer);
      timer = setTimeout(speak, pause);
    });
    return () => {
      clearTimeout(timer);
      unsubscribe();
    };
  }, []);
  return (
    <p className="hidden" role="status" aria-live="polite">
      {text}
    </p>
  );
}
