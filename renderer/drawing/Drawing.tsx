/** The drawing: the oven at the moment pointed at, and the pizza in it. */
import { useLayoutEffect, useRef, useState } from 'react';
import { ovenGeometry } from './geometry.ts';
import { elementText, OvenSection } from './OvenSection.tsx';
import { Slice, sliceTexts } from './Slice.tsx';
import { clockText } from '../words/clock.ts';
import { temperatureK } from '../words/figures.ts';
import { rackText } from '../words/names.ts';
import type { Moment } from '../clock/moment.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';
import type { Theme } from '../state/settingsStore.ts';

interface DrawingProps {
  readonly evening: Evening;
  readonly moment: Moment;
  readonly at: number;
  readonly offset: number;
  readonly units: UnitSystem;
  readonly theme: Theme;
}

const phases: Record<Moment['phase'], string> = {
  before: 'the oven is still off',
  running: 'no pizza in the oven',
  after: 'the evening is over',
};

/** Everything the drawing shows, in words: read out, and written below it where there is room. */
function description({ evening, moment, units }: DrawingProps): readonly string[] {
  const said = [
    `Plate ${rackText(evening.plate.rackHeight)}, top ${temperatureK(moment.plateTop, units)}, core ${temperatureK(moment.plateCore, units)}`,
    `Oven air ${temperatureK(moment.air, units)}`,
    `Ceiling ${temperatureK(moment.ceiling, units)}`,
    `Sides ${temperatureK(moment.sides, units)}`,
    `Floor ${temperatureK(moment.floor, units)}`,
    elementText('Top element', moment.topElement),
    elementText('Bottom element', moment.bottomElement),
  ];
  return moment.bake === undefined ? said : [...said, ...sliceTexts(moment.bake, units)];
}

/** `56 s`, `4 min 13 s`: to the second, so that it runs with the pointer. */
function elapsedText(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  return `${minutes === 0 ? '' : `${String(minutes)} min `}${String(Math.floor(seconds % 60))} s`;
}

export function Drawing(props: DrawingProps) {
  const { evening, moment, at, offset, units, theme } = props;
  const room = useRef<HTMLElement>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = room.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      setWidth(element.clientWidth);
    });
    setWidth(element.clientWidth);
    observer.observe(element);
    return () => {
      observer.disconnect();
    };
  }, []);
  const large = width > 400;
  const thickness = moment.bake?.layers.reduce((sum, layer) => sum + layer.thickness, 0) ?? 0;
  const geometry = ovenGeometry(
    evening,
    { width, height: large ? 304 : 160, labels: large ? 112 : 100 },
    thickness,
  );
  const sliceHeight = large ? 176 : 80;
  const what =
    moment.bake === undefined
      ? phases[moment.phase]
      : `pizza ${String(moment.bake.pizza)}, ${elapsedText(moment.bake.elapsed)} in`;
  return (
    <section className="drawing" ref={room} aria-label="The oven, cut open">
      <p className="drawing-moment">
        <strong>{clockText(at, offset)}</strong> <span className="muted">{what}</span>
      </p>
      {width > 0 && (
        <>
          <OvenSection
            geometry={geometry}
            evening={evening}
            moment={moment}
            units={units}
            theme={theme}
            width={width}
          />
          <div className="slice-room" style={{ height: sliceHeight }}>
            {moment.bake === undefined ? (
              <p className="small muted">
                While a pizza bakes, its cut stands here. Point at a bake on the clock.
              </p>
            ) : (
              <Slice bake={moment.bake} units={units} width={width} height={sliceHeight} />
            )}
          </div>
        </>
      )}
      <ul className={large ? 'drawing-words small muted' : 'hidden'}>
        {description(props).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
