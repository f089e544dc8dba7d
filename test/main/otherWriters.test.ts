/** Files that somebody else writes, too: another start of the program, an editor, a hostile hand. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { wording } from '../../physics/evening/problem.ts';
import { readPlanText } from '../../physics/evening/readPlan.ts';
import { places, type Places } from '../../main/files/places.ts';
import { readText } from '../../main/files/readText.ts';
import { browserPlatform } from '../../main/platform.ts';
import { openServices, type Services } from '../../main/services.ts';
import { checkedText, numberOf } from '../support/checkedText.ts';
import { tempFolder } from '../support/tempFolder.ts';

interface Opened extends Services {
  readonly own: Places;
  readonly warnings: string[];
}

async function open(data = tempFolder()): Promise<Opened> {
  const own = places('linux', { HEARTHCLOCK_DATA: data }, data);
  const warnings: string[] = [];
  const warn = (message: string): void => void warnings.push(message);
  const platform = browserPlatform('serve');
  const services = await openServices({
    platform,
    places: own,
    version: '0.0.0-test',
    push: () => undefined,
    warn,
  });
  return { ...services, own, warnings };
}

describe('a plan that was changed on disk', () => {
  async function friday(): Promise<Opened & { document: string; path: string }> {
    const opened = await open();
    const saved = await opened.bridge.savePlanAs({ name: 'Friday', text: 'mine' });
    return { ...opened, document: saved!.document, path: join(opened.own.plans, 'Friday.hearthclock') };
  }
  /** Writes and sets the date back, as copying programs do. */
  function sameDate(path: string, text: string): void {
    const { atime, mtime } = statSync(path);
    writeFileSync(path, text);
    utimesSync(path, atime, mtime);
  }

  it.each([
    ['of another length', 'longer than mine'],
    ['of the same length and date', 'your'],
    ['too large by now', 'x'.repeat(1_000_001)],
    ['no text any more', Buffer.from([0xff]).toString('latin1') + '\u0000'],
    ['empty by now', ''],
  ])('is noticed: one %s', async (_what, text) => {
    const { bridge, document, path } = await friday();
    sameDate(path, text);
    await expect(bridge.savePlan({ document, text: 'again' })).rejects.toThrow(
      `${path} was changed by another program since it was opened here.`,
    );
    expect(readFileSync(path, 'utf8')).toBe(text);
    await bridge.savePlan({ document, text: 'again', evenIfChanged: true });
    expect(readFileSync(`${path}.bak`, 'utf8')).toBe(text);
  });

  it('is not supposed where only its date changed, or where it is gone', async () => {
    const { bridge, document, path } = await friday();
    utimesSync(path, 1_700_000_000, 1_700_000_000);
    await bridge.savePlan({ document, text: 'again' });
    rmSync(path);
    await bridge.savePlan({ document, text: 'back' });
    expect(readFileSync(path, 'utf8')).toBe('back');
  });

  it('is told from its own save by another start of the program', async () => {
    const first = await friday();
    const second = await open(first.own.root);
    const [listed] = await second.bridge.listPlans(null);
    await second.bridge.openPlan({ document: listed!.document });
    await second.bridge.savePlan({ document: listed!.document, text: 'theirs' });
    await expect(first.bridge.savePlan({ document: first.document, text: 'mine' })).rejects.toThrow(
      'changed',
    );
    expect(readFileSync(first.path, 'utf8')).toBe('theirs');
  });
});

it('two programs that save one file at once leave a whole one of either, and a whole one before it', async () => {
  const data = tempFolder();
  const [a, b] = [await open(data), await open(data)];
  const text = (n: number): string => checkedText(n, 50_000 + n);
  const { document } = (await a.bridge.savePlanAs({ name: 'plan', text: text(0) }))!;
  const [listed] = await b.bridge.listPlans(null);
  const theirs = listed!.document;
  const saves = Array.from({ length: 15 }, (_, n) => [
    a.bridge.savePlan({ document, text: text(2 * n + 1), evenIfChanged: true }),
    b.bridge.savePlan({ document: theirs, text: text(2 * n + 2), evenIfChanged: true }),
  ]);
  await Promise.all(saves.flat());
  const path = join(a.own.plans, 'plan.hearthclock');
  expect([29, 30]).toContain(numberOf(readFileSync(path, 'utf8')));
  expect(numberOf(readFileSync(`${path}.bak`, 'utf8'))).toBeGreaterThanOrEqual(0);
  expect(readdirSync(a.own.plans).sort()).toEqual(['plan.hearthclock', 'plan.hearthclock.bak']);
});

describe('a file that no plan of this version is', () => {
  const plan = (head: string): string => `{"format":"hearthclock/evening",${head},"title":"x"}`;
  const deep = '['.repeat(2000) + ']'.repeat(2000);

  it.each<[string, string, RegExp]>([
    ['a newer version', plan('"version":2'), /^version: found 2, written by a newer program; allowed 1$/],
    [
      'a far newer one',
      plan('"version":1e300'),
      /^version: found 1e\+300, written by a newer program; allowed 1$/,
    ],
    // Version 1 is the first there is: nothing older was ever written, so nothing is migrated.
    ['an older version', plan('"version":0'), /^version: found 0; allowed 1$/],
    ['a version between', plan('"version":1.5'), /^version: found 1\.5.*; allowed 1$/],
    ['a version as text', plan('"version":"1"'), /^version: found "1"; allowed 1$/],
    ['no version', '{"format":"hearthclock/evening"}', /^version: found nothing; allowed 1$/],
    [
      'another format',
      '{"format":"other","version":1}',
      /^format: found "other"; allowed "hearthclock\/evening"$/,
    ],
    ['an unknown field', plan('"version":1,"more":{}'), /^more: found an unknown field; allowed/],
    [
      'an unknown field far down',
      plan('"version":1,"oven":{"power":{"x":1}}'),
      /^oven\.power\.x: found an unknown/,
    ],
    [
      'a reach for the prototype',
      plan('"version":1,"__proto__":{"x":1}'),
      /^__proto__: found a key that no plan/,
    ],
    [
      'one far down',
      plan('"version":1,"oven":{"constructor":{"prototype":{}}}'),
      /^oven\.constructor: found a key/,
    ],
    [
      'deep nesting',
      plan(`"version":1,"oven":${deep}`),
      /^plan: found nesting deeper than 32; allowed at most 32/,
    ],
    ['no JSON', '{"format":', /^plan: found text that ends too early/],
    ['nothing', '', /^plan: found nothing; allowed a plan in JSON$/],
  ])('%s is refused with the reason, and not touched', async (_what, text, reason) => {
    const folder = tempFolder();
    const path = join(folder, 'plan.hearthclock');
    writeFileSync(path, text);
    utimesSync(path, 1_700_000_000, 1_700_000_000);
    const { bridge, openFromOutside } = await open();
    const opened = await openFromOutside(path);
    await bridge.greet(null);
    const read = readPlanText(opened.text, { now: 0 });
    if (read.ok) throw new Error('it was read as a plan');
    expect(wording(read.problems[0]!)).toMatch(reason);
    expect(readFileSync(path, 'utf8')).toBe(text);
    expect(statSync(path).mtimeMs).toBe(1_700_000_000_000);
    expect(readdirSync(folder)).toEqual(['plan.hearthclock']);
    expect(({} as Record<string, unknown>)['x']).toBeUndefined();
  });

  it('a named pipe is refused and not waited for', async () => {
    const path = join(tempFolder(), 'pipe');
    execFileSync('mkfifo', [path]);
    await expect(readText(path)).rejects.toThrow(`${path}: found no plain file`);
  });
});

describe("the program's own files in a hostile form", () => {
  it.each([
    '{"theme":"iron","units":"us","__proto__":{"letterKeys":false}}',
    '{"__proto__":{"theme":"iron","units":"us"}}',
    '{"theme":{"toString":1},"units":"us"}',
    `${'['.repeat(100_000)}${']'.repeat(100_000)}`,
    '\ufeff{"theme":"iron","units":"us"',
    'null',
  ])('settings (%#) are reported, and the first ones used', async (text) => {
    const data = tempFolder();
    writeFileSync(join(data, 'settings.json'), text);
    const { bridge, own, warnings } = await open(data);
    expect((await bridge.greet(null)).settings).toEqual({ theme: 'system', units: 'metric' });
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toContain(`${own.settings}: `);
    expect(({} as Record<string, unknown>)['letterKeys']).toBeUndefined();
  });

  it('a folder where a file should be is reported, and the window comes up', async () => {
    const data = tempFolder();
    for (const name of ['settings.json', 'recent.json']) mkdirSync(join(data, name));
    mkdirSync(join(data, 'unsaved', '99999999.hearthclock'), { recursive: true });
    const { bridge, warnings } = await open(data);
    expect(await bridge.greet(null)).toMatchObject({ recovered: null, opened: null });
    expect(await bridge.listPlans(null)).toEqual([]);
    expect(warnings).toHaveLength(3);
    for (const warning of warnings) expect(warning).toContain('found a folder');
  });
});
