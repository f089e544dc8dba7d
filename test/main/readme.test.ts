/** What the README says: its examples run, its links lead somewhere, its figures are those of the validation. */
import { existsSync, readFileSync } from 'node:fs';
import { lexer, type Token, type Tokens } from 'marked';
import { describe, expect, it } from 'vitest';
import { readArguments, type Command } from '../../main/terminal/arguments.ts';
import { runCalibrate } from '../../main/terminal/calibrate.ts';
import { demos } from '../../physics/evening/demos.ts';
import {
  anchorIds,
  goalIds,
  ovenPresetIds,
  plateMaterialIds,
  waitRuleIds,
} from '../../physics/evening/ids.ts';
import { planFromFile } from '../../physics/evening/planEvening.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';
import { parsePlanText } from '../../physics/evening/planText.ts';
import { sourceOf } from '../support/bundle.ts';

const text = readFileSync(sourceOf('README.md'), 'utf8');
const developers = readFileSync(sourceOf('DEVELOPERS.md'), 'utf8');
const tokens = lexer(text);

/** Every token of that type, however deep. */
function all<T extends Token>(type: T['type'], from: readonly Token[] = tokens): readonly T[] {
  return from.flatMap((token) => [
    ...(token.type === type ? [token as T] : []),
    ...('tokens' in token ? all<T>(type, token.tokens) : []),
    ...(token.type === 'list' ? all<T>(type, (token as Tokens.List).items) : []),
  ]);
}
const code = all<Tokens.Code>('code');
const lines = code.filter(({ lang }) => lang === 'sh').flatMap(({ text: block }) => block.split('\n'));

/** Words as a shell would split them: quotes hold together and go. */
function words(line: string): readonly string[] {
  return (line.match(/(?:[^\s"]|"[^"]*")+/gu) ?? []).map((word) => word.replaceAll('"', ''));
}

describe('the README', () => {
  it('opens with the job in one paragraph, then the two command lines', () => {
    const [title, job, heading] = tokens.filter(({ type }) => type !== 'space');
    expect([title?.type, job?.type, heading?.type]).toEqual(['heading', 'paragraph', 'heading']);
    expect((job as Tokens.Paragraph).text).toMatch(
      /^Hearthclock tells a home pizza baker when to switch the oven on\./u,
    );
    expect(code.slice(0, 2).map(({ text: block }) => block)).toEqual([
      'npm ci && npm run --silent plan',
      'npm ci && npm test',
    ]);
  });

  it('shows commands that exist, with options that they take', () => {
    const scripts = (JSON.parse(readFileSync(sourceOf('package.json'), 'utf8')) as { scripts: object })
      .scripts;
    const named = [...text.matchAll(/npm run (?:--silent )?([a-z:]+)/gu)].map(([, name]) => name!);
    expect(named.length).toBeGreaterThan(5);
    for (const name of named) expect(scripts).toHaveProperty(name);
    const read = (['plan', 'compare', 'calibrate', 'handout'] as const satisfies readonly Command[]).flatMap(
      (command) =>
        lines
          .filter((line) => line.startsWith(`npm run --silent ${command} -- `))
          .map((line) => [command, words(line).slice(5)] as const),
    );
    expect(read.length).toBeGreaterThan(3);
    for (const [command, argv] of read)
      expect(readArguments(argv, command), argv.join(' ')).toMatchObject({ ok: true });
  });

  it('shows a plan that can be read', () => {
    const plans = code.filter(
      ({ lang, text: block }) => lang === 'json' && block.includes('hearthclock/evening'),
    );
    expect(plans).not.toHaveLength(0);
    for (const { text: block } of plans) {
      const parsed = parsePlanText(block);
      expect(parsed.ok && readPlanObject(parsed.file, { now: Date.UTC(2026, 0, 31) }).ok).toBe(true);
    }
  });

  it.each([
    ['Plates', plateMaterialIds],
    ['Ovens', ovenPresetIds],
  ])('names all %s that a plan can have', (what, ids) => {
    const [, named] = new RegExp(`${what}: ([^.]*)\\.`, 'u').exec(text)!;
    expect(named).toBe(ids.map((id) => `\`${id}\``).join(', '));
  });

  it('names every goal and every rule for the wait', () => {
    for (const id of [...goalIds, ...waitRuleIds, ...anchorIds])
      expect(text).toMatch(new RegExp(`\`(--\\w+ )?${id}\``, 'u'));
  });

  it('gives as example the range that the built-in evening has', () => {
    const planned = planFromFile(demos.saturday, { now: Date.UTC(2026, 0, 30) });
    if (!planned.ok) throw new Error(JSON.stringify(planned.problems));
    const { preheat, bakes, range } = planned.answer;
    const span = ([low, high]: readonly [number, number]): string =>
      `${low.toFixed(0)} to ${high.toFixed(0)} min`;
    expect(text).toContain(
      `${span(range!.preheatMinutes)} of preheat around ${preheat.minutes.toFixed(0)}, and ${span(range!.bakeMinutes)} of bake`,
    );
    expect(bakes[0]!.minutes).toBeGreaterThan(6);
    expect(bakes[0]!.minutes).toBeLessThan(7);
  });

  it('shows readings that go with its plan: nothing to mind about them', async () => {
    const files: Readonly<Record<string, string>> = {
      plan: code.find(({ lang }) => lang === 'json')!.text,
      readings: code.find(({ lang }) => lang === 'csv')!.text,
    };
    let printed = '';
    const status = await runCalibrate(['plan', '--readings', 'readings'], {
      readFile: (path) => Promise.resolve(files[path]!),
      stdout: (part) => (printed += part),
      stderr: (part) => (printed += part),
      now: Date.UTC(2026, 10, 27),
      offsetMinutes: 60,
      planFromFile,
    });
    expect(status, printed).toBe(0);
    expect(printed).toContain('power of the elements');
    expect(printed).not.toContain('\nMind');
  });

  it('leads to files, pictures and headings that are there', () => {
    const targets = [...all<Tokens.Link>('link'), ...all<Tokens.Image>('image')].map(({ href }) => href);
    expect(targets.length).toBeGreaterThan(5);
    for (const target of targets) {
      const [file, anchor] = target.split('#');
      expect(existsSync(sourceOf(file!)), target).toBe(true);
      if (anchor === undefined) continue;
      const headings = [...developers.matchAll(/^#+ (.*)$/gmu)].map(([, heading]) =>
        heading!
          .toLowerCase()
          .replaceAll(/[^\p{L}\p{N} -]/gu, '')
          .replaceAll(' ', '-'),
      );
      expect(headings, target).toContain(anchor);
    }
  });

  it('counts as the validation in the developers’ notes does', () => {
    const [, met] = /meets (\d+ of \d+) published figures/u.exec(developers)!;
    expect(text).toContain(`it meets ${met!}`);
    const table = all<Tokens.Table>('table').find(({ header }) => header[2]?.text === 'met')!;
    const said = Object.fromEntries(
      table.rows.map(([what, , count]) => [what!.text.split(/[:,]/u)[0]!, count!.text]),
    );
    const counted = (name: string): string =>
      new RegExp(`${name}: (\\d+ of \\d+)`, 'u').exec(developers)?.[1] ?? 'no such row';
    expect(said).toEqual({
      radiation: counted('standards, handbooks and textbooks'),
      bakes: counted('bakes'),
      dough: counted('dough'),
      ovens: counted('ovens'),
    });
  });

  it('is as careful as the program', () => {
    const safety = text.slice(text.indexOf('## Safety first'));
    for (const phrase of ['makers', 'local rules', 'Baking paper', 'burns', 'crack', 'gas', 'raw flour'])
      expect(safety).toContain(phrase);
  });
});
