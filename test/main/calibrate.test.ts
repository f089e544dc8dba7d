import { beforeAll, describe, expect, it } from 'vitest';
import { FileProblem } from '../../main/files/readText.ts';
import { calibrationText, runCalibrate } from '../../main/terminal/calibrate.ts';
import type { Calibration } from '../../physics/calibrate/calibrate.ts';
import { planFromFile } from '../../physics/evening/planEvening.ts';
import { sampleAt } from '../../physics/numerics/samples.ts';
import { morning, type Ran } from './planCommand.ts';

const one = ['--set', 'pizzas.count=1'];

async function calibrate(
  argv: readonly string[],
  files: Readonly<Record<string, string>> = {},
): Promise<Ran> {
  let out = '';
  let err = '';
  const status = await runCalibrate(argv, {
    readFile: (path) => {
      const text = files[path];
      if (text === undefined) return Promise.reject(new FileProblem(path, 'nothing there', 'a file'));
      return Promise.resolve(text);
    },
    stdout: (text) => (out += text),
    stderr: (text) => (err += text),
    now: morning,
    offsetMinutes: 60,
    planFromFile,
  });
  return { status, out, err };
}

/** What a thermometer shows in the plan's own kitchen with an oven a quarter weaker and 10 K too hot. */
function rowsOf(minutes: readonly number[]): { readonly csv: string; readonly preheatMinutes: number } {
  const real = planFromFile(
    {
      format: 'hearthclock/evening',
      version: 1,
      oven: {
        preset: 'european',
        setpoint: '250 degC',
        power: { bottom: '0.975 kW', top: '0.825 kW' },
        thermostatOffset: '10 K',
      },
      pizzas: { count: 1 },
    },
    { now: morning, band: false, advice: false },
  );
  if (!real.ok) throw new Error(JSON.stringify(real.problems));
  const { trace, plateReady } = real.run.preheat;
  const rows = minutes.map(
    (minute) =>
      `${minute} min,plateTop,${(sampleAt(trace.seconds, trace.plateTop, 60 * minute) - 273.15).toFixed(1)} degC`,
  );
  return { csv: ['time,place,temperature', ...rows, ''].join('\n'), preheatMinutes: plateReady / 60 };
}

let real: ReturnType<typeof rowsOf>;
let done: Ran;
let answer: Calibration;

beforeAll(async () => {
  real = rowsOf([10, 20, 30, 40, 50, 60]);
  const csv = `${real.csv}70 min,pizza 1 in,\n72 min,plateTop pizza 1,238 degC\n75 min,pizza 1 out,golden\n31 min,chimney,20 degC\n73 min,plateTop pizza 2,230 degC\n`;
  done = await calibrate(['--readings', 'r.csv', '--json', ...one], { 'r.csv': csv });
  answer = JSON.parse(done.out) as Calibration;
}, 60_000);

describe('what calibrate answers', () => {
  it('estimates with their ranges, only of what the readings tell', () => {
    expect(done.status).toBe(0);
    const { power, thermostatOffset, browningRate } = answer.estimates;
    expect(power).toMatchObject({ unit: 'kW' });
    expect(Math.abs(power!.value - 1.8)).toBeLessThan(0.1);
    expect(power!.p10).toBeLessThan(power!.value);
    expect(power!.p90).toBeGreaterThan(power!.value);
    expect(Math.abs(thermostatOffset!.value - 10)).toBeLessThan(4);
    expect(browningRate!.value).toBeGreaterThan(0.3);
    for (const name of answer.notTold) expect(answer.estimates).not.toHaveProperty(name);
  });

  it('the plan before and after, with the keys of plan, and the range narrower', () => {
    expect(Math.abs(answer.after.preheat.minutes - real.preheatMinutes)).toBeLessThan(2);
    expect(Math.abs(answer.before.preheat.minutes - real.preheatMinutes)).toBeGreaterThan(4);
    expect(Object.keys(answer.after).sort()).toEqual(Object.keys(answer.before).sort());
    const width = ([low, high]: readonly [number, number]): number => high / low;
    expect(width(answer.after.range!.preheatMinutes)).toBeLessThan(
      width(answer.before.range!.preheatMinutes),
    );
    expect(width(answer.after.range!.bakeMinutes)).toBeLessThan(width(answer.before.range!.bakeMinutes));
  });

  it('residuals, the next reading, what was left out, and the plan that was learned', () => {
    expect(answer.residuals.map(({ minute, place, pizza }) => [minute, place, pizza])).toEqual([
      ...[10, 20, 30, 40, 50, 60].map((minute) => [minute, 'plateTop', undefined]),
      [72, 'plateTop', 1],
    ]);
    const { minutes, plateTopC } = answer.asRun!;
    expect(minutes.at(-1)).toBeCloseTo(85, 6);
    // The plate of minute 72 lies under a pizza.
    const at = (minute: number): number => plateTopC[minutes.findIndex((m) => m >= minute)]!;
    expect(at(72)).toBeLessThan(at(69) - 10);
    expect(answer.bakes).toHaveLength(1);
    expect(answer.bakes[0]).toMatchObject({ pizza: 1, seconds: 300 });
    for (const { residualK, readingC, modelC } of answer.residuals)
      expect(residualK).toBeCloseTo(readingC - modelC, 9);
    if (answer.nextReading !== null) expect(answer.nextReading.narrowsMinutes).toBeGreaterThan(0);
    expect(answer.dropped).toHaveLength(1);
    expect(done.err).toContain('line 11: left out place "chimney"; ovenAir, plateTop, plateCore, dough');
    expect(done.err).toContain('line 12: left out a reading with pizza 2 on the plate');
    const again = planFromFile(answer.learned, {
      now: morning,
      offsetMinutes: 60,
      band: false,
      advice: false,
    });
    expect(again.ok && again.answer.preheat.minutes).toBeCloseTo(answer.after.preheat.minutes, 9);
  });

  it('for a reader: what was learned, before and after, the readings beside the model', async () => {
    const { status, out } = await calibrate(['--readings', 'r.csv', ...one], { 'r.csv': real.csv });
    expect(status).toBe(0);
    expect(out).toContain('power of the elements: 1.');
    expect(out).toMatch(/preheat: 35 min .*, now \d\d min/u);
    expect(out).toContain('\n  not told: ');
    const cold =
      'time,place,temperature\n40 min,plateTop,215 degC\n60 min,plateTop,232 degC\n70 min,plateTop,233 degC\n';
    const colder = await calibrate(['--readings', 'r.csv', ...one], { 'r.csv': cold });
    expect(colder.out).toMatch(/oven colder than its dial by: \d+(\.\d)? K \(\d/u);
    const baked = `${real.csv}70 min,pizza 1 in,\n72 min,plateTop pizza 1,238 degC\n75 min,pizza 1 out,golden\n`;
    const withBake = await calibrate(['--readings', 'r.csv', ...one], { 'r.csv': baked });
    expect(withBake.out).toMatch(/72 min {2}plate top under pizza 1 {2}read 238 °C/u);
    expect(withBake.out).toMatch(/pizza 1, 5\.0 min: base seen at L\* \d\d, the plan gave \d\d, now \d\d/u);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });
});

describe('for a reader', () => {
  it('is told what to read next, or that there is nothing, in the units asked for', () => {
    const next = { place: 'ovenAir', minute: 12, narrowsMinutes: 1.5 } as const;
    const told = calibrationText({ ...answer, nextReading: next, notTold: [] }, 'us');
    expect(told).toContain('pizzas brown times the usual rate: ');
    expect(told).toContain(
      'most would be learned from the air at 12 min: the range of the preheat narrows by 1.5',
    );
    expect(told).toContain('°F');
    expect(told).not.toContain('not told');
    expect(calibrationText({ ...answer, nextReading: null }, 'metric')).toContain(
      'no single reading would narrow the preheat by much',
    );
  });

  it('readings that told nothing are said to have told nothing', () => {
    const { before } = answer;
    const bare = { ...before, range: null };
    const warnings = [{ code: 'x', message: 'They disagree.', source: 'a test' }];
    const text = calibrationText({ ...answer, estimates: {}, before: bare, after: bare, warnings }, 'metric');
    expect(text).toContain('  nothing that was not believed before\n');
    expect(text).toContain(`preheat: ${before.preheat.minutes.toFixed(0)} min, now`);
    expect(text).toContain('Mind\n  They disagree.');
  });
});

describe('instants count from when the plan switches the oven on', () => {
  it('gives the same as minutes', async () => {
    const on = Date.parse(answer.before.ovenOnAt);
    const csv = real.csv.replaceAll(/^(\d+) min/gmu, (_, minute: string) =>
      new Date(on + 60_000 * Number(minute)).toISOString(),
    );
    const { out } = await calibrate(['--readings', 'r.csv', '--json', ...one], { 'r.csv': csv });
    const other = JSON.parse(out) as Calibration;
    expect(other.residuals.map(({ minute }) => Math.round(minute))).toEqual([10, 20, 30, 40, 50, 60]);
    // The minutes also have a reading under a pizza, which moves the power by a hundredth.
    expect(Math.abs(other.estimates.power!.value - answer.estimates.power!.value)).toBeLessThan(0.03);
  });
});

describe('refusals: exit status 2, what was found and what is allowed, nothing printed', () => {
  it('a spread that a thermometer may have is none', async () => {
    const { err } = await calibrate(['--readings', 'none.csv', '--spread', '2 K']);
    expect(err).toBe('none.csv: found nothing there; allowed a file\n');
  });

  const csv = 'time,place,temperature\n20 min,plateTop,150 degC\n';
  it.each([
    [[], '--readings'],
    [['--readings', 'none.csv'], 'none.csv'],
    [['--readings', 'r.csv', 'none.hearthclock'], 'none.hearthclock'],
    [['--readings', 'empty.csv'], 'readings'],
    [['--readings', 'words.csv'], 'readings line 1'],
    [['--readings', 'dough.csv'], 'the dough'],
    [['--readings', 'r.csv', '--spread', '3 mm'], '--spread'],
    [['--readings', 'r.csv', '--spread', '0.05 K'], '--spread'],
    [['--readings', 'r.csv', '--spread', '51 K'], '--spread'],
    [['--readings', ''], '--readings'],
    [['--readings', 'r.csv', '--set', 'plate.thicknes=3 mm'], 'plate.thicknes'],
    [['--readings', 'r.csv', '--set', 'plate.width=90 cm'], 'plate.width'],
    [['--readings', 'r.csv', 'broken.hearthclock'], 'plan'],
    [['--readings', 'r.csv', '--vary', 'pizzas.count=1,2'], '--vary'],
  ] as const)('%j', async (argv, named) => {
    const { status, out, err } = await calibrate([...argv], {
      'r.csv': csv,
      'empty.csv': '',
      'words.csv': 'hello\nworld\n',
      'dough.csv': '20 min,dough,25 degC\n',
      'broken.hearthclock': '[1]',
    });
    expect(err).toContain(named);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).not.toMatch(/\n\s+at /u);
  });

  it('--help tells the format', async () => {
    const { status, out } = await calibrate(['--help']);
    expect(status).toBe(0);
    expect(out).toContain('20 min,plateTop,212 degC');
  });
});
