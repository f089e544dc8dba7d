import { describe, expect, it } from 'vitest';
import { readText } from '../../main/files/readText.ts';
import { runCompare, type CompareIo, type CompareRow } from '../../main/terminal/compare.ts';
import { planFromFile } from '../../physics/evening/planEvening.ts';
import { morning, quickPlan, type Ran } from './planCommand.ts';

async function compare(argv: readonly string[], other: Partial<CompareIo> = {}): Promise<Ran> {
  let out = '';
  let err = '';
  const status = await runCompare(argv, {
    readFile: async (path) => (await readText(path)).text,
    stdout: (text) => (out += text),
    stderr: (text) => (err += text),
    now: morning,
    offsetMinutes: 60,
    planFromFile: quickPlan,
    pause: () => Promise.resolve(false),
    ...other,
  });
  return { status, out, err };
}

const rowsOf = (out: string): readonly CompareRow[] => (JSON.parse(out) as { rows: CompareRow[] }).rows;

describe('the grid', () => {
  it('has every combination once, the last field changing fastest', async () => {
    const { status, out } = await compare([
      '--vary',
      'oven.setpoint=230 degC,250 degC',
      '--vary',
      'plate.thickness=6 mm, 9.5 mm',
      '--json',
    ]);
    expect(status).toBe(0);
    expect(rowsOf(out).map(({ values }) => Object.values(values).join(' / '))).toEqual([
      '230 degC / 6 mm',
      '230 degC / 9.5 mm',
      '250 degC / 6 mm',
      '250 degC / 9.5 mm',
    ]);
    expect(Object.keys(rowsOf(out)[0]!)).toEqual(['values', 'preheat', 'bakes', 'evening']);
  });

  it('is planned on the clock of the reader', async () => {
    const clocks: unknown[] = [];
    const readersClock = (): number => 60;
    await compare(['--vary', 'pizzas.count=1'], {
      readersClock,
      planFromFile: (file, context) => {
        clocks.push(context.readersClock);
        return quickPlan(file, context);
      },
    });
    expect(clocks).toEqual([readersClock]);
  });

  it('bakes faster the hotter the setting, on steel and on stone, and slower on stone (simulated)', async () => {
    const { status, out } = await compare(
      [
        '--vary',
        'oven.setpoint=230 degC,250 degC,275 degC,288 degC',
        '--vary',
        'plate.material=carbon-steel,cordierite',
        ...['--set', 'plate.thickness=12 mm', '--set', 'plate.surface=bare', '--set', 'pizzas.count=1'],
        ...['--set', 'oven.preset=north-american', '--set', 'oven.highestSetting=300 degC'],
        '--json',
      ],
      { planFromFile },
    );
    expect(status).toBe(0);
    const rows = rowsOf(out);
    expect(rows).toHaveLength(8);
    for (const material of ['carbon-steel', 'cordierite']) {
      const bakes = rows
        .filter(({ values }) => values['plate.material'] === material)
        .map(({ bakes: [first] }) => first!.minutes);
      expect(bakes).toEqual(bakes.toSorted((a, b) => b - a));
    }
    for (let i = 0; i < rows.length; i += 2)
      expect(rows[i]!.bakes[0]!.minutes).toBeLessThan(rows[i + 1]!.bakes[0]!.minutes);
    for (const { evening, preheat, bakes } of rows) {
      // From switching on to the cut: at least what it is made of.
      expect(evening.minutes).toBeGreaterThan(preheat.minutes + bakes[0]!.minutes);
      expect(evening.energyKWh).toBeGreaterThan(preheat.energyKWh);
    }
  });
});

describe('what it prints', () => {
  it('a table with a head and one line a row', async () => {
    const { out } = await compare(['--vary', 'pizzas.count=1,2,3']);
    const lines = out.split('\n');
    expect(lines[0]).toMatch(/^pizzas\.count +preheat +signal +plate +bake +last +evening +kWh$/u);
    expect(lines.slice(1, 4).map((line) => line.split(' ', 1)[0])).toEqual(['1', '2', '3']);
    const us = await compare(['--vary', 'pizzas.count=1', '--units', 'us']);
    expect(us.out).toContain('°F');
    expect(us.out).not.toContain('°C');
  });

  it('RFC 4180 with --csv: CRLF, the same number of fields in each record, quotes doubled', async () => {
    const { out } = await compare(['--vary', 'title=a"b,=1+1', '--csv']);
    const lines = out.split('\r\n');
    expect(lines.at(-1)).toBe('');
    expect(lines[0]).toBe(
      'title,preheat_min,oven_signal_min,plate_top_degC,first_bake_min,last_bake_min,evening_min,energy_kWh',
    );
    expect(lines[1]).toMatch(/^"a""b",/u);
    // Nothing that a spreadsheet would take for a formula (OWASP, CSV injection, from memory).
    expect(lines[2]).toMatch(/^'=1\+1,/u);
    expect(lines.slice(0, -1).map((line) => line.split(',').length)).toEqual([8, 8, 8]);
  });
});

describe('refusals: exit status 2, the field named, nothing printed', () => {
  it.each([
    [[], '--vary'],
    [['--vary', 'plate.thicknes=3 mm'], 'plate.thicknes'],
    [['--vary', 'plate.thickness=3 mm,9 s'], 'plate.thickness'],
    [['--vary', 'plate.thickness='], '--vary'],
    [['--vary', 'plate.thickness=3 mm,,4 mm'], '--vary'],
    [['--vary', '=3'], '--vary'],
    [['--vary', 'pizzas.count=1,21'], 'pizzas.count'],
    [['--vary', 'plate.width=30 cm,90 cm'], 'plate.width'],
    [['--vary', '__proto__.a=1,2'], '__proto__'],
    [['--vary', 'pizzas.count=1', '--json', '--csv'], '--csv'],
    [['--vary', 'pizzas.count=1', '--nonsense'], '--nonsense'],
    [['--vary', 'pizzas.count=1', '--advice'], '--advice'],
    [['--vary', 'pizzas.count=1', '--set', 'plate.width=1 s'], 'plate.width'],
    [['--vary', 'pizzas.count=1', 'no-such-file.hearthclock'], 'no-such-file.hearthclock'],
    [['--vary', `pizzas.count=${new Array(2001).fill('1').join(',')}`], '--vary'],
  ] as const)('%j', async (argv, named) => {
    const { status, out, err } = await compare([...argv]);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(named);
    expect(err).not.toMatch(/\n\s+at /u);
  });
  it('a file that is no plan', async () => {
    for (const [text, named] of [
      ['[1]', 'plan: found a list'],
      ['{', 'plan: found text that ends too early'],
    ] as const) {
      const { status, out, err } = await compare(['--vary', 'pizzas.count=1', 'x'], {
        readFile: () => Promise.resolve(text),
      });
      expect([status, out]).toEqual([2, '']);
      expect(err).toContain(named);
    }
  });
  it('--help tells how values are listed, and is no refusal', async () => {
    const { status, out } = await compare(['--help']);
    expect(status).toBe(0);
    expect(out).toContain('--vary plate.material=carbon-steel,cordierite');
  });
  it('plan does not know --vary', async () => {
    const { plan } = await import('./planCommand.ts');
    const { status, err } = await plan(['--vary', 'pizzas.count=1']);
    expect(status).toBe(2);
    expect(err).toContain('--vary');
  });
});

describe('a long grid', () => {
  it('tells how far it is on standard error, and stops between two rows when asked to', async () => {
    let rows = 0;
    const { status, out, err } = await compare(['--vary', 'pizzas.count=1,2,3,4,5,6', '--json'], {
      pause: () => Promise.resolve((rows += 1) === 2),
    });
    expect(status).toBe(1);
    expect(out).toBe('');
    expect(err).toContain('1 of 6\n2 of 6\n');
    expect(err).toContain('stopped after 2 of 6 rows');
  });
});
