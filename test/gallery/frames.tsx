/** How the gallery shows a component: its name, and each of its states under a line that names it. */
import type { ReactNode } from 'react';
import type { Forecast } from '../../renderer/state/forecastStore.ts';
import type { Units } from '../../renderer/state/settingsStore.ts';

export function State({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div className="state">
      <p className="small muted">{name}</p>
      {children}
    </div>
  );
}

export function Component({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <section className="component">
      <h2>{name}</h2>
      <div className="states">{children}</div>
    </section>
  );
}

/** A component of an evening: the plain one, and the extreme one in the other units. */
export function PlainAndExtreme({
  plain,
  extreme,
  draw,
}: {
  readonly plain: Forecast;
  readonly extreme: Forecast;
  readonly draw: (forecast: Forecast, units: Units) => ReactNode;
}) {
  return (
    <>
      <State name="typical">{draw(plain, 'metric')}</State>
      <State name="extreme values, °F and oz">{draw(extreme, 'us')}</State>
    </>
  );
}
