/** Reading between the samples of a trace. */

/** Index of the last sample at or before `second`; -1 before the first. */
export function indexAt(seconds: Float64Array, second: number): number {
  let low = 0;
  let high = seconds.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (seconds[middle]! <= second) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Linear between samples; the end values outside them. NaN when there are none. */
export function sampleAt(seconds: Float64Array, values: Float64Array, second: number): number {
  const before = indexAt(seconds, second);
  if (before < 0) return values[0] ?? Number.NaN;
  if (before >= seconds.length - 1) return values[seconds.length - 1] ?? Number.NaN;
  const share = (second - seconds[before]!) / (seconds[before + 1]! - seconds[before]!);
  return values[before]! + share * (values[before + 1]! - values[before]!);
}
