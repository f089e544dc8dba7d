import { describe, expect, it } from 'vitest';
import type { PlanAnswer } from '../../../physics/evening/answer.ts';
import { demoIds, demos } from '../../../physics/evening/demos.ts';
import type { Engine } from '../../../physics/evening/engine.ts';
import { planFromFile } from '../../../physics/evening/planEvening.ts';
import type { PlanFile } from '../../../physics/evening/planFile.ts';
import { setPath } from '../../../physics/evening/planPath.ts';
import { durationText } from '../../../physics/evening/steps.ts';
import { wording } from '../../../physics/evening/problem.ts';
import { sampleEngine, sampleRun } from '../../support/sampleRun.ts';

const early = Date.parse('2026-01-30T08:00:00+01:00');
const saturday: PlanFile = demos.saturday;

function plan(
  file: PlanFile,
  options: { readonly now?: number; readonly engine?: Engine; readonly band?: boolean } = {},
): PlanAnswer {
  const { now = early, engine = sampleEngine(), band = false } = options;
  const planned = planFromFile(file, { now, band }, engine);
  if (!planned.ok) throw new Error(planned.problems.map(wording).join('\n'));
  return planned.answer;
}
function changed(
  file: PlanFile,
  changes: readonly { readonly path: string; readonly value: string }[],
): PlanFile {
  return changes.reduce<PlanFile>((before, { path, value }) => {
    const set = setPath(before, path, value);
    if (!set.ok) throw new Error(wording(set.problem));
    return set.file;
  }, file);
}
const dough = (more: PlanFile['dough'], file = saturday): PlanFile => ({
  ...file,
  dough: { ...file.dough, ...more },
});
const instant = (percent: number) => ({ kind: 'instant', percent }) as const;
const minutesBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 60_000;
const codes = ({ warnings }: PlanAnswer): readonly string[] => warnings.map(({ code }) => code);
const message = ({ warnings }: PlanAnswer, code: string): string =>
  warnings.find((warning) => warning.code === code)!.message;
const sum = (grams: Readonly<Record<string, number>>): number =>
  Object.values(grams).reduce((a, b) => a + b, 0);
const suggestion = (answer: PlanAnswer, id: string) => answer.suggestions.find((one) => one.id === id)!;
const startNow: PlanFile['anchor'] = { kind: 'startAt', time: '2026-01-31T17:00:00+01:00' };

describe('the dough of a plan', () => {
  it.each(demoIds)('%s: ingredients add up to count times ball within the scale step', (id) => {
    for (const step of ['0.1 g', '1 g', '5 g']) {
      const file: PlanFile = demos[id];
      const kitchen = { ...file.kitchen, scaleStep: step };
      const planned = planFromFile({ ...file, kitchen }, { now: early, band: false }, sampleEngine());
      if (!planned.ok) throw new Error('does not read');
      const { count, ballMass } = planned.evening.pizzas;
      const off = Math.abs(sum(planned.answer.dough.ingredientsG) - 1000 * count * ballMass);
      expect(off).toBeLessThanOrEqual(Number.parseFloat(step) / 2 + 1e-6);
    }
  });

  it('doubled yeast shortens the rise by more than a quarter and less than half', () => {
    const once = plan(saturday).dough.riseMinutes;
    const twice = plan(dough({ yeast: instant(0.4) })).dough.riseMinutes;
    expect(twice / once).toBeGreaterThan(0.5);
    expect(twice / once).toBeLessThan(0.75);
  });

  it('five kelvin warmer, as dough, place or kitchen, shorten it', () => {
    const here = plan(saturday).dough.riseMinutes;
    expect(plan(dough({ wantedTemperature: '30 degC' })).dough.riseMinutes).toBeLessThan(here);
    expect(plan(dough({ riseTemperature: '26 degC' })).dough.riseMinutes).toBeLessThan(here);
    const kitchen = { ...saturday.kitchen, roomTemperature: '26 degC' };
    expect(plan({ ...saturday, kitchen }).dough.riseMinutes).toBeLessThan(here);
  });

  it('true hydration follows flour moisture and liquid: 2 % drier flour takes 2.4 % more water or so', () => {
    const at = (flourMoisture: number) => plan(dough({ flourMoisture })).dough.trueHydrationPercent;
    expect(at(14)).toBeCloseTo(62, 9);
    // By hand: (62 + 12)/88 = 0.8409 g per g dry; at 14 %: 0.8409 x 86 - 14.
    expect(at(12)).toBeCloseTo((74 / 88) * 86 - 14, 9);
    const honeyed = plan(
      dough({
        liquid: [
          { kind: 'water', percent: 60 },
          { kind: 'honey', percent: 4 },
        ],
      }),
    ).dough;
    expect(honeyed.nominalHydrationPercent).toBe(60);
    // USDA SR 19296: honey holds 17.1 % of water.
    expect(honeyed.trueHydrationPercent).toBeCloseTo(60 + 4 * 0.171, 9);
  });

  it('takes ice from a warm tap and says so where it is weighed', () => {
    const file: PlanFile = {
      ...dough({ mixing: 'food-processor', wantedTemperature: '20 degC' }),
      kitchen: { roomTemperature: '30 degC', tapTemperature: '26 degC' },
    };
    const answer = plan(file);
    expect(answer.dough.iceG).toBeGreaterThan(50);
    expect(answer.dough.liquidC).toBeLessThan(26);
    expect(message(answer, 'liquid-below-tap')).toContain(`${answer.dough.iceG} g of the`);
    expect(answer.tasks.find(({ id }) => id === 'hands-mix')!.step).toContain(
      `${answer.dough.iceG} g crushed ice`,
    );
  });

  it("sets the bakers' rule beside the balance and says why they differ", () => {
    const { dough: parts } = plan(dough({ flourTemperature: '10 degC' }));
    // 3 x 25 - 10 - 21 - 12/1.8
    expect(parts.liquidByRuleC).toBeCloseTo(75 - 31 - 12 / 1.8, 9);
    expect(parts.liquidWhy).toMatch(/a degree of flour counts as 0\.68 of a degree of liquid/);
  });

  it('answers how much yeast and which place for other times; each put back gives that time within 1 %', () => {
    const { forTimes } = plan(saturday).dough;
    expect(forTimes.map(({ minutes }) => minutes / 60)).toEqual(expect.arrayContaining([4, 8, 12]));
    for (const { minutes, yeastPercent, yeastG, placeC } of forTimes) {
      if (yeastPercent !== undefined) {
        const again = plan(dough({ yeast: instant(yeastPercent) })).dough.riseMinutes;
        expect(Math.abs(again / minutes - 1)).toBeLessThan(0.01);
        expect(yeastG! / yeastPercent).toBeGreaterThan(5.9);
      }
      if (placeC === undefined) continue;
      const moved = plan(dough({ riseTemperature: `${placeC} degC` })).dough.riseMinutes;
      expect(Math.abs(moved / minutes - 1)).toBeLessThan(0.01);
    }
    const doses = forTimes.flatMap(({ yeastPercent }) => (yeastPercent === undefined ? [] : [yeastPercent]));
    expect(doses).toEqual([...doses].sort((a, b) => b - a));
    expect(doses.length).toBeGreaterThan(5);
  });

  it.each([
    [{ flour: 'gluten-free' }, 'flour-without-gluten'],
    [{ flour: 'rye' }, 'flour-drinks-more'],
    [{ flour: 'weak' }, 'flour-too-weak'],
    [{ wantedTemperature: '35 degC', riseTemperature: '45 degC' }, 'dough-too-warm'],
  ] satisfies [PlanFile['dough'], string][])('%j: a word of %s', (more, code) => {
    expect(codes(plan(dough(more)))).toContain(code);
    expect(codes(plan(saturday))).not.toContain(code);
  });
});

describe('a rise in phases', () => {
  const cold = dough({
    yeast: instant(0.2),
    phases: [
      { where: 'room', duration: '1 h', as: 'bulk' },
      { where: 'refrigerator', temperature: '4 degC', duration: '24 h', as: 'balls', cover: 'boxed' },
      { where: 'room', as: 'balls' },
    ],
  });
  const answer = plan(cold);

  it('keeps what is fixed and gives the open phase what the dough needs', () => {
    const [room, fridge, last] = answer.dough.phases;
    expect(minutesBetween(room!.from, room!.to)).toBeCloseTo(60, 1);
    expect(minutesBetween(fridge!.from, fridge!.to)).toBeCloseTo(24 * 60, 1);
    expect(fridge!.placeC).toBeCloseTo(4, 9);
    expect(minutesBetween(last!.from, last!.to)).toBeGreaterThan(30);
    expect(Date.parse(answer.dough.readyWindow.from)).toBe(Date.parse(last!.to));
    expect(minutesBetween(room!.from, last!.to)).toBeCloseTo(answer.dough.riseMinutes, 1);
  });

  it('asks for hands at every change, in order, and shapes when the last phase is over', () => {
    const ids = answer.tasks.filter(({ lane }) => lane === 'hands').map(({ id }) => id);
    expect(ids.slice(0, 3)).toEqual(['hands-mix', 'hands-ball', 'move-2']);
    const step = (id: string) => answer.tasks.find((task) => task.id === id)!;
    expect(step('hands-ball').step).toContain('put into the refrigerator for 24 h');
    expect(step('move-2').step).toMatch(/^Take the balls out of the refrigerator/);
    expect(Date.parse(step('shape-1').from)).toBeGreaterThanOrEqual(
      Date.parse(answer.dough.readyWindow.from),
    );
    expect(new Set(answer.tasks.map(({ id }) => id)).size).toBe(answer.tasks.length);
  });

  it('says when fixed phases end too soon or too late, with the yeast that fits them', () => {
    const fixed = (percent: number): PlanFile =>
      dough({
        yeast: instant(percent),
        phases: [
          { where: 'refrigerator', duration: '24 h', as: 'bulk' },
          { where: 'room', duration: '2 h', as: 'balls' },
        ],
      });
    const slow = plan(fixed(0.05));
    const dose = Number(/with ([\d.]+) %/.exec(message(slow, 'dough-not-ready-after-phases'))![1]);
    const right = plan(fixed(dose));
    expect(codes(right)).not.toContain('dough-past-after-phases');
    expect(Math.abs(right.dough.riseMinutes / (26 * 60) - 1)).toBeLessThan(0.05);
    expect(codes(plan(fixed(2)))).toContain('dough-past-after-phases');
  });

  it('calls cold balls cold, and a step in the small hours by its time', () => {
    const night = plan(
      dough({
        phases: [
          { where: 'refrigerator', duration: '14 h', as: 'bulk' },
          { where: 'refrigerator', duration: '24 h', as: 'balls' },
        ],
      }),
    );
    expect(codes(night)).toContain('cold-dough');
    const early = plan(
      dough({
        yeast: instant(1),
        phases: [
          { where: 'room', duration: '2 h', as: 'bulk' },
          { where: 'refrigerator', duration: '17 h', as: 'balls' },
        ],
      }),
    );
    expect(codes(early)).toContain('step-in-the-night');
  });

  it.each([
    [
      [
        { where: 'room', as: 'bulk' },
        { where: 'room', as: 'balls' },
      ],
      'dough.phases.1.duration',
    ],
    [
      [
        { where: 'room', as: 'balls', duration: '1 h' },
        { where: 'room', as: 'bulk', duration: '1 h' },
      ],
      'dough.phases.1.as',
    ],
    [[{ where: 'cellar', as: 'bulk' }], 'dough.phases.0.where'],
    [[{ where: 'room', as: 'bulk', duration: '200 h' }], 'dough.phases.0.duration'],
    [[{ where: 'room', as: 'bulk', cover: 'open' }], 'dough.phases.0.cover'],
    [[{ where: 'refrigerator', as: 'bulk', temperature: '60 degC' }], 'dough.phases.0.temperature'],
  ])('refuses %j', (phases, path) => {
    const file = { ...saturday, dough: { ...saturday.dough, phases } };
    const planned = planFromFile(file, { now: early, band: false }, sampleEngine());
    expect(planned).toMatchObject({ ok: false, problems: [{ path }] });
  });
});

describe('suggestions, each put into the plan and planned anew', () => {
  it('say how much room there is where everything is in time, and nothing once it is too late', () => {
    const answer = plan(saturday);
    const [only, ...others] = answer.suggestions;
    expect(others).toEqual([]);
    const left = (Date.parse(answer.beginBy.dough) - early) / 1000;
    expect(only).toMatchObject({ id: 'in-time', change: [], meets: true });
    expect(only!.message).toContain(`the dough is mixed first, ${durationText(left)} from now`);
    expect(only!.message).toContain(
      `the oven can wait ${durationText(60 * answer.slackMinutes.plate)} longer`,
    );
    expect(only!.gainsMinutes).toBe(Math.max(...Object.values(answer.slackMinutes)));
    expect(plan(saturday, { now: Date.parse('2026-02-02T08:00:00+01:00') }).suggestions).toEqual([]);
  });

  it('in time, the oven on sooner by what nine of ten preheats take longer', () => {
    const answer = plan(saturday, { band: true });
    const sooner = answer.range!.preheatMinutes[1] - answer.preheat.minutes;
    const safer = suggestion(answer, 'oven-earlier');
    expect(safer.gainsMinutes).toBeCloseTo(sooner, 9);
    expect(safer.message).toContain(`${durationText(60 * sooner)} sooner than planned`);
    expect(safer.message).toContain(`${((answer.preheat.idlePowerW * sooner) / 60_000).toFixed(2)} kWh`);
  });

  it('late for a fixed supper: yeast that makes a dough mixed now ready in time', () => {
    const now = Date.parse('2026-01-31T15:30:00+01:00');
    const late = plan(saturday, { now });
    const yeast = suggestion(late, 'yeast');
    expect(yeast.meets).toBe(true);
    const again = plan(changed(saturday, yeast.change), { now });
    expect(Date.parse(again.beginBy.dough)).toBeGreaterThanOrEqual(now - 60_000);
    expect(minutesBetween(late.beginBy.dough, again.beginBy.dough)).toBeCloseTo(yeast.gainsMinutes, 1);
    expect(codes(again)).not.toContain('starts-in-the-past');
  });

  it('every change of the dough gains what it says, and those that meet come first, by what they cost', () => {
    const now = Date.parse('2026-01-31T14:15:00+01:00');
    const late = plan(saturday, { now });
    const tried = late.suggestions.filter(({ change }) => change.length > 0);
    expect(tried.map(({ id }) => id)).toEqual(expect.arrayContaining(['yeast', 'liquid', 'place']));
    for (const { change, gainsMinutes, meets } of tried) {
      const again = plan(changed(saturday, change), { now });
      expect(minutesBetween(late.beginBy.dough, again.beginBy.dough)).toBeCloseTo(gainsMinutes, 1);
      if (meets) expect(Date.parse(again.beginBy.dough)).toBeGreaterThanOrEqual(now - 60_000);
    }
    const meeting = late.suggestions.map(({ meets }) => meets);
    expect(meeting).toEqual([...meeting].sort((a, b) => Number(b) - Number(a)));
    expect(late.suggestions[0]!.id).toBe('yeast');
    const later = suggestion(late, 'later');
    expect(later.gainsMinutes).toBeCloseTo((now - Date.parse(late.beginBy.dough)) / 60_000, 1);
  });

  it('late with a dough that was to lie cold for days: the stay in the refrigerator is cut first', () => {
    const file = dough({
      phases: [
        { where: 'refrigerator', duration: '48 h', as: 'bulk' },
        { where: 'room', as: 'balls' },
      ],
    });
    const now = Date.parse('2026-01-29T22:00:00+01:00');
    const late = plan(file, { now });
    const phase = late.suggestions[0]!;
    expect(phase).toMatchObject({ id: 'phase', meets: true });
    const again = plan(changed(file, phase.change), { now });
    expect(Date.parse(again.beginBy.dough)).toBeGreaterThanOrEqual(now - 60_000);
    expect(minutesBetween(late.beginBy.dough, again.beginBy.dough)).toBeCloseTo(phase.gainsMinutes, 1);
  });

  it('begun now: the dough is made to meet the plate, alone or by several changes together', () => {
    const file: PlanFile = { ...saturday, anchor: startNow };
    const engine = sampleEngine({ plateReady: 4 * 3600 });
    const waiting = plan(file, { engine });
    expect(waiting.limitedBy).toBe('dough');
    const yeast = suggestion(waiting, 'yeast');
    expect(yeast.meets).toBe(true);
    const again = plan(changed(file, yeast.change), { engine });
    expect(Math.max(again.slackMinutes.plate, again.slackMinutes.dough)).toBeLessThan(10);
    expect(minutesBetween(again.eatAt, waiting.eatAt)).toBeGreaterThan(0);

    const hot = sampleEngine({ plateReady: 90 * 60 });
    const far = plan(file, { engine: hot });
    const together = suggestion(far, 'together');
    expect(together.change.length).toBeGreaterThan(1);
    const joined = plan(changed(file, together.change), { engine: hot });
    expect(minutesBetween(joined.eatAt, far.eatAt)).toBeCloseTo(together.gainsMinutes, 0);
  });

  it('begun now with a slow plate: the oven goes on sooner, or the plate is thinner', () => {
    // ready as fast as it is thin
    const engine: Engine = {
      ...sampleEngine(),
      simulateEvening: ({ plate, pizzas }) =>
        sampleRun({ count: pizzas.count, plateReady: plate.thickness * 1000 * 3600 }),
    };
    const slow = plan({ ...saturday, anchor: startNow }, { engine, band: true });
    expect(slow.limitedBy).toBe('plate');
    expect(slow.suggestions[0]).toMatchObject({ id: 'oven-earlier', meets: true });
    expect(slow.suggestions[0]!.gainsMinutes).toBeCloseTo(slow.slackMinutes.dough, 9);
    const thinner = suggestion(slow, 'plate');
    expect(thinner.meets).toBe(true);
    const again = plan(changed({ ...saturday, anchor: startNow }, thinner.change), { engine });
    expect(minutesBetween(again.eatAt, slow.eatAt)).toBeGreaterThan(slow.slackMinutes.dough - 1);
  });

  it('plate late as well: what it costs to load it colder, and no single change meets but a later supper', () => {
    const now = Date.parse('2026-01-31T18:45:00+01:00');
    const both = plan(saturday, { now });
    expect(suggestion(both, 'load-colder').message).toMatch(/\d+ K colder/);
    expect(both.suggestions.filter(({ meets }) => meets).map(({ id }) => id)).toEqual(['later']);
  });

  it('a dough that will not last takes less yeast', () => {
    const file = dough({ yeast: instant(3) });
    const engine = sampleEngine({ waitSeconds: 1200 });
    const short = plan(file, { engine });
    expect(codes(short)).toContain('dough-past-its-best');
    const less = suggestion(short, 'yeast');
    expect(less.meets).toBe(true);
    expect(codes(plan(changed(file, less.change), { engine }))).not.toContain('dough-past-its-best');
  });

  it('hands that have no pause for sauce and cheese do them before', () => {
    const file: PlanFile = {
      ...dough({
        yeast: instant(6),
        wantedTemperature: '33 degC',
        riseTemperature: '36 degC',
        restBeforeShaping: '0 min',
      }),
      anchor: startNow,
      pizzas: { ...saturday.pizzas, count: 20 },
    };
    const busy = plan(file, { engine: sampleEngine({ plateReady: 600 }) });
    expect(busy.limitedBy).toBe('hands');
    expect(suggestion(busy, 'ahead').meets).toBe(true);
    // Also when there is time for all of it.
    const inTime = plan({ ...file, anchor: saturday.anchor! }, { engine: sampleEngine({ plateReady: 600 }) });
    expect(suggestion(inTime, 'in-time').message).toContain('your hands begin first');
    expect(suggestion(inTime, 'ahead').gainsMinutes).toBe(suggestion(busy, 'ahead').gainsMinutes);
  });
});
