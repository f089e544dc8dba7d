import { describe, expect, it } from 'vitest';
import type { PlanAnswer } from '../../physics/evening/answer.ts';
import { readInstant } from '../../physics/evening/clock.ts';
import { demoIds, demos } from '../../physics/evening/demos.ts';
import { planFromFile, type Planned } from '../../physics/evening/planEvening.ts';
import type { TerminalIo } from '../../main/terminal/plan.ts';
import { plan } from './planCommand.ts';

const at = (text: string): number => {
  const read = readInstant(text);
  return read.ok ? read.instant.epochMilliseconds : NaN;
};

/** The simulation, kept for a second look at the same plan. */
function once(band: boolean): TerminalIo['planFromFile'] {
  let kept: Planned | undefined;
  return (file, context) => (kept ??= planFromFile(file, { ...context, band }));
}

const always = [
  'plate-stays-hot',
  'raw-flour',
  'glass-door',
  'self-cleaning',
  'maker-instructions-first',
  'figures-are-estimates',
] as const;
/** What each built-in evening has to be warned of. */
const cautionsOf: Readonly<Record<(typeof demoIds)[number], readonly string[]>> = {
  saturday: [...always, 'plate-heavy-for-rack', 'little-air-round-plate', 'seasoned-film-smokes'],
  'same-evening': [...always, 'stone-thermal-shock', 'gas-ventilation', 'oil-near-smoke-point'],
  clay: [...always, 'stone-thermal-shock'],
};

describe('the built-in evenings, simulated', () => {
  it.each(demoIds)('%s: one JSON object and a page, in a believable order', async (id) => {
    const io = { planFromFile: once(id === 'saturday') };
    const json = await plan(['--example', id, '--json'], io);
    expect([json.status, json.err]).toEqual([0, '']);
    const answer = JSON.parse(json.out) as PlanAnswer;
    // JSON writes what is not finite as null; only what a part never reaches and a band not asked for may be null.
    const rest = json.out.replaceAll(
      /"(?:minutesToLightness|partsDoneMinutes)":\{[^}]*\}|"range":null/gu,
      '',
    );
    expect(rest).not.toContain('null');
    expect(answer.title).toBe(demos[id].title);
    expect(answer.bakes.length).toBe(demos[id].pizzas.count);
    const { kind, time } = demos[id].anchor;
    if (kind === 'eatAt') expect(at(answer.eatAt)).toBe(at(time));
    else expect(at(answer.eatAt)).toBeGreaterThan(at(time));
    const first = answer.bakes[0]!;
    const clocks = [answer.ovenOnAt, answer.airReadyAt, answer.plateReadyAt, first.outAt, answer.eatAt].map(
      at,
    );
    expect(clocks).toEqual([...clocks].sort((a, b) => a - b));
    expect(at(answer.lastEatAt)).toBeGreaterThanOrEqual(at(answer.eatAt));
    if (id === 'saturday') {
      const [low, high] = answer.range?.preheatMinutes ?? [];
      expect(low).toBeLessThan(answer.preheat.minutes);
      expect(high).toBeGreaterThan(answer.preheat.minutes);
    }

    // Every caution says where its limit comes from, and no warning has a source that says nothing.
    const sources = new Map(answer.warnings.map(({ code, source }) => [code, source]));
    for (const code of cautionsOf[id]) expect(sources.get(code), code).toMatch(/\w{3}/u);
    for (const [code, source] of sources) expect(source, code).not.toBe('');

    const page = await plan(['--example', id], io);
    expect([page.status, page.err]).toEqual([0, '']);
    expect(page.out).toContain('Switch the oven on at ');
    const words = page.out.replaceAll(/\s+/gu, ' ');
    expect(words).toContain('local rules');
    expect(words).toContain('estimates');
    const lines = page.out.split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
  });
  it('follows a field that is set, and gives the same answer twice', async () => {
    const printed = async (thickness: string): Promise<string> =>
      (await plan(['--json', '--set', `plate.thickness=${thickness}`], { planFromFile: once(false) })).out;
    const [thin, again, thick] = [await printed('6 mm'), await printed('6 mm'), await printed('12 mm')];
    expect(again).toBe(thin);
    const [a, b] = [thin, thick].map((text) => JSON.parse(text) as PlanAnswer) as [PlanAnswer, PlanAnswer];
    expect(b.preheat.plateMassKg / a.preheat.plateMassKg).toBeCloseTo(2, 9);
    expect(b.preheat.minutes).toBeGreaterThan(a.preheat.minutes);
  });
});
