/** The oven cut open, to scale: walls, elements, racks, plate, pizza, in the colours of their temperatures. */
import { heatColour } from './heat.ts';
import { PlateHandle } from './PlateHandle.tsx';
import { spreadApart } from '../clock/placing.ts';
import { rackCount, rackHeightOf } from '../words/names.ts';
import { shortDegrees } from '../words/figures.ts';
import type { Moment } from '../clock/moment.ts';
import type { OvenGeometry } from './geometry.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';
import type { Theme } from '../state/settingsStore.ts';

interface OvenSectionProps {
  readonly geometry: OvenGeometry;
  readonly evening: Evening;
  readonly moment: Moment;
  readonly units: UnitSystem;
  readonly theme: Theme;
  readonly width: number;
}

export function elementText(name: string, power: number | undefined): string {
  return (power ?? 0) > 0.01 ? `${name} on` : `${name} off`;
}

interface Label {
  readonly text: string;
  /** px: what it names */
  readonly x: number;
  readonly y: number;
}

function labelsOf({ geometry, evening, moment, units }: OvenSectionProps): readonly Label[] {
  const { cavity, plate, pizza, wall } = geometry;
  const right = cavity.x + cavity.width;
  const bottomName = evening.oven.fuel === 'gas' ? 'burner' : 'bottom';
  const topName = evening.oven.fuel === 'gas' ? 'grill' : 'top';
  const labels: Label[] = [
    { text: elementText(topName, moment.topElement), x: right - cavity.width * 0.14, y: cavity.y + 6 },
    { text: `ceiling ${shortDegrees(moment.ceiling, units)}`, x: right, y: cavity.y - wall / 2 },
    {
      text: `air ${shortDegrees(moment.air, units)}`,
      x: right - cavity.width * 0.06,
      y: cavity.y + cavity.height * 0.22,
    },
    {
      text: `plate ${shortDegrees(moment.plateTop, units)}`,
      x: plate.x + plate.width,
      y: plate.y + plate.height / 2,
    },
    { text: `floor ${shortDegrees(moment.floor, units)}`, x: right, y: cavity.y + cavity.height + wall / 2 },
    {
      text: elementText(bottomName, moment.bottomElement),
      x: right - cavity.width * 0.14,
      y: cavity.y + cavity.height + (evening.oven.bottomElement === 'exposed' ? -6 : wall + 5),
    },
  ];
  if (moment.bake !== undefined) {
    labels.push({
      text: `base ${shortDegrees(moment.bake.base, units)}`,
      x: pizza.x + pizza.width,
      y: pizza.y + pizza.height - 1,
    });
  }
  return labels;
}

function Element({ geometry, y, on }: { geometry: OvenGeometry; y: number; on: boolean }) {
  const { cavity } = geometry;
  return (
    <line
      className={on ? 'element element-on' : 'element'}
      x1={cavity.x + cavity.width * 0.14}
      x2={cavity.x + cavity.width * 0.86}
      y1={y}
      y2={y}
    />
  );
}

export function OvenSection(props: OvenSectionProps) {
  const { geometry, evening, moment, theme, width } = props;
  const { cavity, plate, pizza, wall } = geometry;
  const colour = (kelvin: number): string => heatColour(kelvin, theme);
  const bottom = cavity.y + cavity.height;
  const hidden = evening.oven.bottomElement === 'hidden';
  const height = geometry.height + 12;
  const labelX = geometry.width + 14;
  const labels = labelsOf(props);
  const rows = spreadApart(
    labels.map(({ y }) => y),
    18,
    9,
    height - 9,
  );
  return (
    <div className="section" style={{ width, height }}>
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${String(width)} ${String(height)}`}
        aria-hidden="true"
      >
        <rect
          className="cavity"
          x={cavity.x}
          y={cavity.y}
          width={cavity.width}
          height={cavity.height}
          fill={colour(moment.air)}
        />
        <rect
          x={cavity.x - wall}
          y={cavity.y - wall}
          width={cavity.width + 2 * wall}
          height={wall}
          fill={colour(moment.ceiling)}
        />
        <rect
          x={cavity.x - wall}
          y={bottom}
          width={cavity.width + 2 * wall}
          height={wall}
          fill={colour(moment.floor)}
        />
        <rect
          x={cavity.x - wall}
          y={cavity.y}
          width={wall}
          height={cavity.height}
          fill={colour(moment.sides)}
        />
        <rect
          x={cavity.x + cavity.width}
          y={cavity.y}
          width={wall}
          height={cavity.height}
          fill={colour(moment.sides)}
        />
        <rect
          className="outline"
          x={cavity.x - wall}
          y={cavity.y - wall}
          width={cavity.width + 2 * wall}
          height={cavity.height + 2 * wall}
        />
        {Array.from({ length: rackCount }, (_, index) => {
          const y = geometry.rowOf(rackHeightOf(index + 1));
          return (
            <g key={index}>
              <line className="rack" x1={cavity.x} x2={cavity.x + cavity.width} y1={y} y2={y} />
              <text className="rack-number" x={cavity.x - wall - 4} y={y + 4} textAnchor="end">
                {index + 1}
              </text>
            </g>
          );
        })}
        <Element geometry={geometry} y={cavity.y + 6} on={(moment.topElement ?? 0) > 0.01} />
        <Element
          geometry={geometry}
          y={hidden ? bottom + wall + 5 : bottom - 6}
          on={(moment.bottomElement ?? 0) > 0.01}
        />
        {moment.bake === undefined ? null : (
          <rect className="pizza" x={pizza.x} y={pizza.y} width={pizza.width} height={pizza.height} rx={2} />
        )}
        <rect
          className="plate"
          x={plate.x}
          y={plate.y}
          width={plate.width}
          height={plate.height}
          fill={colour(moment.plateTop)}
        />
        {labels.map(({ text, x, y }, index) => (
          <g key={text}>
            <polyline
              className="leader"
              points={`${String(x)},${String(y)} ${String(geometry.width + 4)},${String(rows[index]!)} ${String(labelX - 4)},${String(rows[index]!)}`}
            />
            <text className="section-label" x={labelX} y={rows[index]! + 4.5}>
              {text}
            </text>
          </g>
        ))}
      </svg>
      <PlateHandle geometry={geometry} evening={evening} />
    </div>
  );
}
