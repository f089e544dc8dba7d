/** Which readings say something of the oven, and of the others why they do not. */
import type { BakeRecord } from './bakeRecords.ts';
import type { OvenReading } from './mostProbable.ts';
import { preheatPlaces } from './forecast.ts';
import type { DroppedRow, Reading, ReadingsRead } from './readings.ts';

export interface Usable {
  readonly readings: readonly OvenReading[];
  readonly bakes: readonly BakeRecord[];
  /** rows that were understood and are set aside */
  readonly aside: readonly DroppedRow[];
}

/** s after the last pizza that the oven is taken to be on; our choice */
const staysOn = 20 * 60;
const minutes = (seconds: number): string => (seconds / 60).toFixed(0);

/**
 * A row that names a pizza was read at the plate under it; one that names none, while a pizza lies there, beside it.
 *
 * @returns the place of the simulation, or why the reading is set aside
 */
function placeOf(
  { place, pizza, seconds }: Reading,
  { bakes, knownUntil }: ReadingsRead,
): OvenReading['place'] | { readonly found: string; readonly allowed: string } {
  const known = preheatPlaces.find((one) => one === place);
  if (known === undefined)
    return {
      found: 'a reading of the dough: it tells nothing of the oven',
      allowed: preheatPlaces.join(', '),
    };
  if (seconds > knownUntil)
    return {
      found: `a reading after ${minutes(knownUntil)} min: what lay on the plate since is not known`,
      allowed: 'an "in" and an "out" of every pizza',
    };
  const lying = bakes.find(({ inAt, outAt }) => seconds >= inAt && (outAt === undefined || seconds <= outAt));
  if (pizza !== undefined && lying?.pizza !== pizza)
    return {
      found: `a reading with pizza ${pizza} on the plate, and no rows say that it lay there then`,
      allowed: `such as 50 min,pizza ${pizza} in, before it and 57 min,pizza ${pizza} out, after it`,
    };
  const lastOut = bakes.at(-1)?.outAt;
  if (lastOut !== undefined && seconds > lastOut + staysOn)
    return {
      found: `a reading ${minutes(seconds - lastOut)} min after the last pizza: the oven may be off by then`,
      allowed: `up to ${minutes(staysOn)} min after it`,
    };
  return known === 'plateTop' && pizza === undefined && lying ? 'plateAround' : known;
}

/** Sorts readings into those that tell something of the oven and those set aside, each with its reason. Never throws. */
export function usable(read: ReadingsRead): Usable {
  const readings: OvenReading[] = [];
  const aside: DroppedRow[] = [];
  for (const reading of read.readings) {
    const { line, seconds, temperature, pizza } = reading;
    const place = placeOf(reading, read);
    if (typeof place === 'string') readings.push({ seconds, place, temperature, pizza });
    else aside.push({ line, ...place });
  }
  return { readings, bakes: read.bakes, aside };
}
