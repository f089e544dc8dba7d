/** The line through both panels: follows the pointer, or the arrow keys when it has the focus. */
import { clockText } from '../words/clock.ts';
import { degreesOfK, temperatureK } from '../words/figures.ts';
import { pointAt } from '../state/momentStore.ts';
import { xOf, yOf, type ChartFrame } from './frame.ts';
import type { ClockModel, SeriesId } from './model.ts';
import type { Moment } from './moment.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface PointerProps {
  readonly frame: ChartFrame;
  readonly model: ClockModel;
  readonly at: number;
  readonly moment: Moment;
  readonly units: UnitSystem;
}

const minute = 60_000;

export function momentText(at: number, model: ClockModel, moment: Moment, units: UnitSystem): string {
  const said = [
    clockText(at, model.offset),
    `oven air ${temperatureK(moment.air, units)}`,
    `plate ${temperatureK(moment.plateTop, units)}`,
  ];
  if (moment.bake !== undefined) {
    const { pizza, base, crumb } = moment.bake;
    said.push(
      `base of pizza ${String(pizza)} ${temperatureK(base, units)}`,
      `crumb ${temperatureK(crumb, units)}`,
    );
  }
  return said.join(', ');
}

function keyTarget(key: string, shift: boolean, at: number, model: ClockModel): number | undefined {
  const step = (shift ? 10 : 1) * minute;
  const on = Math.round(at / minute) * minute;
  if (key === 'ArrowRight' || key === 'ArrowUp') return on + step;
  if (key === 'ArrowLeft' || key === 'ArrowDown') return on - step;
  if (key === 'PageUp') return on + 10 * minute;
  if (key === 'PageDown') return on - 10 * minute;
  if (key === 'Home') return model.whole.from;
  if (key === 'End') return model.whole.to;
  return undefined;
}

export function Pointer({ frame, model, at, moment, units }: PointerProps) {
  const x = xOf(frame, at);
  const shown = at >= frame.view.from && at <= frame.view.to;
  const dots: readonly (readonly [SeriesId, number])[] =
    moment.phase === 'before'
      ? []
      : [
          ['air', moment.air],
          ['top', moment.plateTop],
          ...(moment.bake === undefined
            ? []
            : ([
                ['base', moment.bake.base],
                ['crumb', moment.bake.crumb],
              ] as const)),
        ];
  return (
    <>
      {shown &&
        dots.map(([id, kelvin]) => (
          <span
            key={id}
            className={`dot dot-${id}`}
            style={{ left: x, top: yOf(frame, degreesOfK(kelvin, units)) }}
          />
        ))}
      <div
        className="pointer"
        data-outside={shown ? undefined : true}
        style={{
          left: Math.min(Math.max(x, 0), frame.width),
          top: frame.top,
          height: frame.lanesTop + frame.lanesHeight - frame.top,
        }}
        role="slider"
        tabIndex={0}
        aria-label="Moment on the clock"
        aria-orientation="horizontal"
        aria-valuemin={Math.round(model.whole.from / minute)}
        aria-valuemax={Math.round(model.whole.to / minute)}
        aria-valuenow={Math.round(at / minute)}
        aria-valuetext={momentText(at, model, moment, units)}
        onKeyDown={(event) => {
          const target = keyTarget(event.key, event.shiftKey, at, model);
          if (target === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
          event.preventDefault();
          pointAt(Math.min(Math.max(target, model.whole.from), model.whole.to));
        }}
      >
        {/* Two pieces: the row of clock times between the panels stays readable. */}
        <span className="pointer-line" style={{ top: 0, height: frame.panelHeight }} />
        <span
          className="pointer-line"
          style={{ top: frame.lanesTop - frame.top, height: frame.lanesHeight }}
        />
      </div>
    </>
  );
}
