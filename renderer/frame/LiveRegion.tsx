/** Says what a change did, at most once a second, for whoever does not see it. */
import { useEffect, useRef, useState } from 'react';
import { useForecast, type Forecast } from '../state/forecastStore.ts';
import { changesBetween } from '../words/announce.ts';
import { useDocument } from '../state/documentStore.ts';
import { sameValue } from '../state/path.ts';

const pause = 1000;

export function LiveRegion() {
  const [text, setText] = useState('');
  const said = useRef<Forecast>(undefined);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const speak = (): void => {
      const { forecast } = useForecast.getState();
      const before = said.current;
      said.current = forecast;
      if (forecast === undefined || before === undefined || sameValue(before.file, forecast.file)) return;
      setText(changesBetween(before.answer, forecast.answer));
    };
    const unsubscribe = useForecast.subscribe((state, before) => {
      if (state.forecast === before.forecast) return;
      said.current ??= state.forecast;
      clearTimeout(timer);
      timer = setTimeout(speak, pause);
    });
    // Another plan is not a change of this one.
    const forget = useDocument.subscribe((state, before) => {
      if (state.base !== before.base) said.current = undefined;
    });
    return () => {
      clearTimeout(timer);
      unsubscribe();
      forget();
    };
  }, []);
  return (
    <p className="hidden" role="status" aria-live="polite">
      {text}
    </p>
  );
}
