/** The pizza cut through and enlarged: layers with temperature and water, base and rim in the colour computed. */
import { crustColour, cssColour } from '../../physics/bake/colour.ts';
import { textWidth } from '../clock/measure.ts';
import { spreadApart } from '../clock/placing.ts';
import { shortDegrees, temperatureK } from '../words/figures.ts';
import { spanText } from '../words/clock.ts';
import { shadeWord } from '../words/names.ts';
import type { BakeMoment } from '../clock/moment.ts';
import type { LayerSample } from '../../physics/evening/run.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface SliceProps {
  readonly bake: BakeMoment;
  readonly units: UnitSystem;
  readonly width: number;
  readonly height: number;
}

const crustShare = 0.16;
const layerNames: Record<LayerSample['layer'], string> = { dough: 'dough', sauce: 'sauce', cheese: 'cheese' };

/** Water as the share of the layer's mass: kg per kg dry matter said the way a kitchen says it. */
function waterText(moisture: number): string {
  return `${String(Math.round((moisture / (1 + moisture)) * 100))} % water`;
}

export function sliceTexts(bake: BakeMoment, units: UnitSystem): readonly string[] {
  const layers = [...bake.layers]
    .reverse()
    .map(
      ({ layer, mean, moisture }) =>
        `${layerNames[layer].replace(/^./u, (first) => first.toUpperCase())} ${temperatureK(mean, units)}, ${waterText(moisture)}`,
    );
  const browned = (name: string, kelvin: number, lightness: number): string =>
    `${name} ${temperatureK(kelvin, units)}, lightness ${lightness.toFixed(0)}, ${shadeWord(lightness)}`;
  return [
    `Pizza ${String(bake.pizza)} after ${spanText(bake.elapsed / 60)} in the oven`,
    ...layers,
    browned('Base', bake.base, bake.baseLightness),
    browned('Rim', bake.rimTop, bake.rimLightness),
  ];
}

export function Slice({ bake, units, width, height }: SliceProps) {
  const total = bake.layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const scale = (height - 12) / Math.max(total, 1e-6);
  const floor = height - 4;
  const drawn = bake.layers.map((layer, index) => {
    const below = bake.layers.slice(0, index + 1).reduce((sum, { thickness }) => sum + thickness, 0);
    return { layer, y: floor - below * scale, height: layer.thickness * scale };
  });
  const dough = drawn.find(({ layer }) => layer.layer === 'dough');
  const crust = (dough?.height ?? 0) * crustShare;
  const labels = [
    ...drawn.map(({ layer, y, height: tall }) => ({
      text: `${layerNames[layer.layer]} ${shortDegrees(layer.mean, units)}, ${waterText(layer.moisture)}`,
      y: y + (layer.layer === 'dough' ? tall * 0.4 : tall / 2),
    })),
    {
      text: `base ${shortDegrees(bake.base, units)}, ${shadeWord(bake.baseLightness)}`,
      y: floor - crust / 2,
    },
  ];
  const font = `13px ${getComputedStyle(document.body).fontFamily}`;
  const labelWidth = Math.max(...labels.map(({ text }) => textWidth(text, font)));
  const cutWidth = width - labelWidth - 24;
  const rimWidth = cutWidth * 0.2;
  const rows = spreadApart(
    labels.map(({ y }) => y),
    18,
    9,
    height - 8,
  );
  const rimColour = cssColour(crustColour(bake.rimLightness));
  const baseColour = cssColour(crustColour(bake.baseLightness));
  const rimTop = floor - (dough?.height ?? 0) * 1.25;
  return (
    <svg className="slice" width={width} height={height} aria-hidden="true">
      {dough === undefined ? null : (
        <path
          d={`M 2 ${String(floor)} C 0 ${String(rimTop)}, ${String(rimWidth * 0.5)} ${String(rimTop - 6)}, ${String(rimWidth)} ${String(dough.y)} V ${String(floor)} Z`}
          fill="#efe3c6"
          stroke={rimColour}
          strokeWidth={4}
        />
      )}
      {drawn.map(({ layer, y, height: tall }) => (
        <rect
          key={layer.layer}
          className={`layer layer-${layer.layer}`}
          x={rimWidth}
          y={y}
          width={cutWidth - rimWidth}
          height={tall}
        />
      ))}
      <rect
        className="crust"
        x={2}
        y={floor - crust}
        width={cutWidth - 2}
        height={crust + 2}
        fill={baseColour}
      />
      {labels.map(({ text, y }, index) => (
        <g key={text}>
          <polyline
            className="leader"
            points={`${String(cutWidth)},${String(y)} ${String(cutWidth + 10)},${String(rows[index]!)} ${String(cutWidth + 18)},${String(rows[index]!)}`}
          />
          <text className="section-label" x={cutWidth + 22} y={rows[index]! + 4.5}>
            {text}
          </text>
        </g>
      ))}
    </svg>
  );
}
