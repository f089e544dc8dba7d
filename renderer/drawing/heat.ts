/** Colours for temperatures, and ink that can be read on them. */
import type { Theme } from '../state/settingsStore.ts';

type Rgb = readonly [number, number, number];

/** Degrees Celsius and the colour there, between which it is mixed; the same stops in both themes. */
const ramps: Record<Theme, readonly (readonly [celsius: number, colour: Rgb])[]> = {
  flour: [
    [20, [228, 231, 232]],
    [100, [241, 228, 214]],
    [200, [240, 207, 178]],
    [300, [230, 163, 125]],
    [450, [196, 99, 60]],
  ],
  iron: [
    [20, [58, 63, 68]],
    [100, [74, 66, 59]],
    [200, [107, 74, 54]],
    [300, [148, 86, 47]],
    [450, [217, 128, 69]],
  ],
};

function hex([red, green, blue]: Rgb): string {
  return `#${[red, green, blue].map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`;
}

/** The ramp's colour at a temperature; its ends beyond 20 and 450 degC. */
export function heatColour(kelvin: number, theme: Theme): string {
  const celsius = kelvin - 273.15;
  const ramp = ramps[theme];
  const above = ramp.findIndex(([stop]) => stop >= celsius);
  if (above === 0) return hex(ramp[0]![1]);
  if (above === -1) return hex(ramp.at(-1)![1]);
  const [low, from] = ramp[above - 1]!;
  const [high, to] = ramp[above]!;
  const share = (celsius - low) / (high - low);
  return hex([0, 1, 2].map((i) => from[i]! + share * (to[i]! - from[i]!)) as unknown as Rgb);
}
