/** Contrast of two colours written as #rrggbb or #rgb: WCAG 2.2, definitions of relative luminance and contrast ratio. */
export function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const long = colour.replace(/^#([\da-f])([\da-f])([\da-f])$/i, '#$1$1$2$2$3$3');
  const match = /^#([\da-f]{2})([\da-f]{2})([\da-f]{2})$/i.exec(long);
  if (match === null) throw new Error(`colour: found ${colour}; allowed #rrggbb or #rgb`);
  const [red, green, blue] = match.slice(1).map((part) => {
    const share = Number.parseInt(part, 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
