/** Handouts of planned evenings, each evening simulated once for all tests of a file. */
import { demos } from '../../physics/evening/demos.ts';
import { planFromFile } from '../../physics/evening/planEvening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import { factsOf, type HandoutFacts, type HandoutOptions } from '../../physics/handout/facts.ts';
import { handouts, type HandoutId } from '../../physics/handout/files.ts';
import type { OffsetAt } from '../../physics/evening/clock.ts';

/** 2026-01-20T12:00Z, before every built-in evening */
export const madeAt = Date.UTC(2026, 0, 20, 12);

export function facts(file: PlanFile, options: Partial<HandoutOptions> = {}): HandoutFacts {
  const { readersClock } = options;
  const planned = planFromFile(file, { now: madeAt, advice: false, ...(readersClock && { readersClock }) });
  if (!planned.ok) throw new Error(JSON.stringify(planned.problems));
  return factsOf(planned, file, { units: 'metric', paper: 'a4', now: madeAt, ...options });
}

export function made(id: HandoutId, from: HandoutFacts): string {
  return handouts[id].make(from);
}

/** Text that would be markup, a formula or a line of its own wherever it is not taken for text. */
export const hostileTitle = '=1+1 </script><b>*Bold*</b> | a\\, b; "c" & `d` _e_ [f](g)';

/** The demo evening with that title, and figures of other handouts as they are. */
export const hostile: PlanFile = { ...demos.saturday, title: hostileTitle };

/** The offset of a zone at a moment, by the tables of the engine (IANA time zone database). */
export function zoneOffset(timeZone: string): OffsetAt {
  const format = new Intl.DateTimeFormat('en-US', { timeZone, timeZoneName: 'longOffset' });
  return (epoch) => {
    const name = format.formatToParts(epoch).find(({ type }) => type === 'timeZoneName')?.value ?? '';
    const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)/u.exec(name) ?? [];
    const size = 60 * Number(hours ?? 0) + Number(minutes ?? 0);
    return sign === '-' ? -size : size;
  };
}

/**
 * Supper on the evening of the last Sunday of March, the dough begun the day before: in the European Union the clocks
 * go forward in between, at 01:00 UTC (Directive 2000/84/EC).
 */
export const acrossSummerTime: PlanFile = {
  ...demos.saturday,
  title: 'Dough over night',
  anchor: { kind: 'eatAt', time: '2026-03-29T19:30:00+02:00' },
  pizzas: { ...demos.saturday.pizzas, count: 2 },
  dough: {
    ...demos.saturday.dough,
    phases: [
      { where: 'refrigerator', duration: '24 h', as: 'bulk' },
      { where: 'room', duration: '4 h', as: 'balls' },
    ],
  },
};
