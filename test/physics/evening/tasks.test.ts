/** Evenings as tasks, 200 of them drawn: one pair of hands, nothing before what it waits for, a chain as long as the evening. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanAnswer, Task } from '../../../physics/evening/answer.ts';
import { readInstant } from '../../../physics/evening/clock.ts';
import { chainText, movedTexts, spareTexts } from '../../../physics/evening/chainWords.ts';
import { demos } from '../../../physics/evening/demos.ts';
import type { Engine } from '../../../physics/evening/engine.ts';
import type { Evening } from '../../../physics/evening/evening.ts';
import {
  anchorIds,
  benchIds,
  mixingIds,
  ovenPresetIds,
  plateMaterialIds,
  waitRuleIds,
} from '../../../physics/evening/ids.ts';
import { planFromFile } from '../../../physics/evening/planEvening.ts';
import type { PlanFile } from '../../../physics/evening/planFile.ts';
import { planWith } from '../../../physics/evening/planWith.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import { simulateEvening } from '../../../physics/evening/simulate.ts';
import type { Bake, DoneStep } from '../../../physics/evening/run.ts';
import { durationText } from '../../../physics/evening/steps.ts';
import { plateFor } from '../../support/evenings.ts';
import { sampleEngine, sampleRun } from '../../support/sampleRun.ts';

const read = readPlanObject(demos.saturday, { now: 0 });
if (!read.ok) throw new Error('the demo evening does not read');
const saturday = read.evening;

interface BakeShape {
  readonly bake: number;
  readonly wait: number;
  readonly steps: readonly { readonly what: DoneStep['what']; readonly share: number }[];
}

/** The sample run with bakes of any length, waits and steps between them. */
function engineWith(plateReady: number, bakes: readonly BakeShape[]): Engine {
  return {
    ...sampleEngine(),
    simulateEvening: () => {
      const run = sampleRun({ plateReady, count: bakes.length });
      let at = plateReady;
      const placed = bakes.map(({ bake, wait, steps }, index): Bake => {
        const inAt = at;
        at += bake + wait;
        return {
          ...run.bakes[index]!,
          inAt,
          outAt: inAt + bake,
          steps: steps.map(({ what, share }) => ({ what, at: inAt + share * bake, lasts: 6 })),
        };
      });
      return { ...run, bakes: placed };
    },
  };
}

function plan(evening: Evening, engine: Engine): PlanAnswer {
  const planned = planWith(evening, { assumed: [], warnings: [], band: false }, engine);
  if (!planned.ok) throw new Error(JSON.stringify(planned.problems));
  return planned.answer;
}
function seconds(text: string): number {
  const instant = readInstant(text);
  if (!instant.ok) throw new Error(`${text} is no instant`);
  return instant.instant.epochMilliseconds / 1000;
}

/** Where in an answer a number is not finite. */
function notFinite(answer: PlanAnswer): readonly string[] {
  const found: string[] = [];
  JSON.stringify(answer, (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) found.push(key);
    return value;
  });
  return found;
}

const bakeShape: fc.Arbitrary<BakeShape> = fc.record({
  bake: fc.integer({ min: 60, max: 1500 }),
  wait: fc.integer({ min: 0, max: 1200 }),
  steps: fc.array(
    fc.record({
      what: fc.constantFrom<DoneStep['what']>('turn', 'look', 'pull-parchment', 'top-element'),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
    }),
    { maxLength: 3 },
  ),
});
const uniqueSteps = (bakes: readonly BakeShape[]): readonly BakeShape[] =>
  bakes.map((one) => ({
    ...one,
    steps: one.steps.filter(({ what }, i) => one.steps.findIndex((step) => step.what === what) === i),
  }));
const evenings = fc
  .record({
    plateReady: fc.integer({ min: 300, max: 7200 }),
    bakes: fc.array(bakeShape, { minLength: 1, maxLength: 12 }).map(uniqueSteps),
    kind: fc.constantFrom(...anchorIds),
    mixing: fc.constantFrom(...mixingIds),
    rest: fc.integer({ min: 0, max: 240 }),
    yeast: fc.double({ min: 0.05, max: 2, noNaN: true }),
    chill: fc.option(fc.integer({ min: 1, max: 72 })),
    topBefore: fc.integer({ min: 0, max: 400 }),
    minute: fc.integer({ min: 0, max: 365 * 1440 }),
  })
  .map(({ plateReady, bakes, kind, mixing, rest, yeast, chill, topBefore, minute }) => {
    const { dough } = saturday;
    const place = { where: 'room', temperature: 294.15, cover: 'covered' } as const;
    const evening: Evening = {
      ...saturday,
      anchor: {
        kind,
        time: { epochMilliseconds: 1_767_225_600_000 + minute * 60_000, offsetMinutes: 60 },
      },
      pizzas: { ...saturday.pizzas, count: bakes.length, steps: { topElementBefore: topBefore } },
      dough: {
        ...dough,
        mixing,
        restBeforeShaping: rest * 60,
        yeast: { kind: 'instant', percent: yeast },
        phases:
          chill === null
            ? []
            : [
                { ...place, duration: undefined, as: 'bulk' },
                { ...place, where: 'refrigerator', temperature: 277.15, duration: chill * 3600, as: 'bulk' },
                { ...place, duration: rest * 60, as: 'balls' },
              ],
      },
    };
    return { evening, engine: engineWith(plateReady, bakes) };
  });

/** One pair of hands, one oven, nothing before what it waits for, a chain that is the evening, all finite. */
function expectTasks(answer: PlanAnswer): void {
  const { tasks, criticalChain } = answer;
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const find = (id: string): Task => byId.get(id) ?? expect.fail(`${id} is no task`);
  expect(byId.size).toBe(tasks.length);

  const hands = tasks.filter(({ lane }) => lane === 'hands');
  for (const [i, task] of hands.entries()) {
    expect(task.needs).toContain('hands');
    if (i > 0) expect(seconds(task.from)).toBeGreaterThanOrEqual(seconds(hands[i - 1]!.to));
  }
  const baking = tasks.filter(({ lane }) => lane === 'oven');
  for (const [i, task] of baking.entries())
    if (i > 0) expect(seconds(task.from)).toBeGreaterThanOrEqual(seconds(baking[i - 1]!.to));
  for (const task of tasks) {
    expect(seconds(task.to)).toBeGreaterThanOrEqual(seconds(task.from));
    for (const id of task.waitsFor) expect(seconds(task.from)).toBeGreaterThanOrEqual(seconds(find(id).to));
    if (task.slackMinutes !== undefined) expect(task.slackMinutes).toBeGreaterThanOrEqual(0);
    if (task.moved !== undefined) {
      find(task.moved.for);
      expect(Number.isFinite(task.moved.minutes)).toBe(true);
    }
  }

  // The chain is the evening: from what begins first to what ends last, without slack and without a gap.
  const chained = criticalChain.map(find);
  const done = tasks.filter(({ slackMinutes }) => slackMinutes !== undefined);
  expect(seconds(chained[0]!.from)).toBe(Math.min(...done.map(({ from }) => seconds(from))));
  expect(seconds(chained.at(-1)!.to)).toBe(Math.max(...done.map(({ to }) => seconds(to))));
  for (const [i, { id, from }] of chained.entries()) {
    const before = chained[i - 1];
    if (before === undefined) continue;
    // The element goes on so long before a load, and a turn comes while the pizza bakes.
    if (/^(load|turn|look|pull|top)-/u.test(id))
      expect(seconds(from)).toBeGreaterThanOrEqual(seconds(before.from));
    else expect(seconds(from)).toBe(seconds(before.to));
  }
  for (const { slackMinutes } of chained) expect(slackMinutes).toBe(0);

  expect(notFinite(answer)).toEqual([]);
}

describe('200 evenings as tasks', () => {
  it('no hands are asked for two things at once, nothing begins before what it waits for, all is finite', () => {
    fc.assert(
      fc.property(evenings, ({ evening, engine }) => {
        expectTasks(plan(evening, engine));
      }),
      { seed: 20260131, numRuns: 200 },
    );
  }, 60_000);
});

/** As a cook would write them; with count and waits, own pizzas and steps the oven finds its own times. */
const files = fc
  .record({
    preset: fc.constantFrom(...ovenPresetIds),
    material: fc.constantFrom(...plateMaterialIds.filter((id) => id !== 'custom')),
    thickness: fc.integer({ min: 4, max: 20 }),
    setpoint: fc.integer({ min: 180, max: 300 }),
    count: fc.integer({ min: 1, max: 3 }),
    bench: fc.constantFrom(...benchIds),
    waitRule: fc.constantFrom(...waitRuleIds),
    kind: fc.constantFrom(...anchorIds),
    across: fc.integer({ min: 20, max: 30 }),
    turnAtHalfTime: fc.boolean(),
    before: fc.integer({ min: 0, max: 5 }),
  })
  .map((drawn): PlanFile => ({
    ...demos.saturday,
    anchor: { kind: drawn.kind, time: '2026-01-31T19:30:00+01:00' },
    oven: { preset: drawn.preset, setpoint: `${drawn.setpoint} degC`, highestSetting: '300 degC' },
    plate: {
      material: drawn.material,
      ...plateFor(drawn.preset, { width: '36 cm', depth: '32 cm' }),
      thickness: `${drawn.thickness} mm`,
      rackHeight: 0.3,
    },
    pizzas: {
      count: drawn.count,
      diameter: '30 cm',
      ballMass: '250 g',
      bench: drawn.bench,
      waitRule: drawn.waitRule,
      each: [{ diameter: `${drawn.across} cm`, ballMass: `${Math.round(0.28 * drawn.across ** 2)} g` }],
      steps: { turnAtHalfTime: drawn.turnAtHalfTime, topElementBefore: `${drawn.before} min` },
    },
  }));

describe('simulated evenings as tasks', () => {
  it('are no different', () => {
    fc.assert(
      fc.property(files, (file) => {
        const planned = planFromFile(
          file,
          { now: 0, band: false, advice: false },
          { ...sampleEngine(), simulateEvening },
        );
        if (!planned.ok) throw new Error(JSON.stringify(planned.problems));
        expectTasks(planned.answer);
      }),
      { seed: 20260131, numRuns: 25 },
    );
  }, 60_000);
});

describe('what the plan asks of a bake', () => {
  const shape = { bake: 400, wait: 200 };

  it('is handwork at its moment, with its words', () => {
    const evening: Evening = {
      ...saturday,
      pizzas: {
        ...saturday.pizzas,
        count: 1,
        steps: { turnAtHalfTime: true, topElementBefore: 300, pullParchment: true },
      },
    };
    const steps = [
      { what: 'pull-parchment', share: 0.25 },
      { what: 'turn', share: 0.5 },
      { what: 'top-element', share: 0.8 },
    ] as const;
    const answer = plan(evening, engineWith(3000, [{ ...shape, steps }]));
    const inAt = seconds(answer.bakes[0]!.inAt);
    const said = answer.tasks
      .filter(({ lane, from }) => lane === 'hands' && seconds(from) > inAt - 400)
      .filter(({ id }) => /^(top|turn|pull)/u.test(id))
      .map(({ id, from, step }) => [id, seconds(from) - inAt, step]);
    expect(said).toEqual([
      ['top-before-1', -300, 'Top element to full, 5 min before pizza 1 goes in'],
      ['pull-1', 100, 'The base of pizza 1 has set: pull the paper out from under it'],
      ['turn-1', 200, 'Turn pizza 1 half round, and be quick with the door'],
      ['top-1', 320, 'Top element to full until pizza 1 comes out, 1 min 20 s'],
    ]);
  });

  it('gives way to a load, and says to which', () => {
    const bakes = [
      { ...shape, wait: 30, steps: [] },
      { ...shape, steps: [] },
    ];
    const answer = plan({ ...saturday, pizzas: { ...saturday.pizzas, count: 2 } }, engineWith(3000, bakes));
    const cut = answer.tasks.find(({ id }) => id === 'cut-1')!;
    expect(cut.moved).toEqual({ minutes: 0.5, for: 'load-2' });
    // The meal begins when the first pizza is cut, also where that comes late.
    expect(answer.eatAt).toBe(cut.to);
  });

  it('a pizza that has no time to be shaped between is shaped before, and says why', () => {
    const bakes = [
      { bake: 100, wait: 90, steps: [] },
      { bake: 100, wait: 90, steps: [] },
    ];
    const answer = plan({ ...saturday, pizzas: { ...saturday.pizzas, count: 2 } }, engineWith(3000, bakes));
    const shape = answer.tasks.find(({ id }) => id === 'shape-2')!;
    expect(shape.moved!.for).toBe('load-1');
    expect(shape.moved!.minutes).toBeCloseTo(-190 / 60, 6);
  });
});

describe('in words', () => {
  const none = { wait: 200, steps: [] };
  const answer = plan(
    { ...saturday, pizzas: { ...saturday.pizzas, count: 2 } },
    engineWith(3000, [
      { bake: 150, ...none },
      { bake: 150, ...none },
    ]),
  );

  it('names the chain, what has time, and what gave way', () => {
    expect(chainText(answer)).toBe(
      'Mix, rise, ball, rest as balls, shape 1, shape 2, load 1, then pizza after pizza: each waits for the one before it, none may be late.',
    );
    const single = plan(
      { ...saturday, pizzas: { ...saturday.pizzas, count: 1 } },
      engineWith(3000, [{ bake: 400, ...none }]),
    );
    expect(chainText(single)).toContain('shape 1, load 1, then the bake: each');
    const spare = spareTexts(answer);
    expect(spare).toHaveLength(2);
    const preheat = answer.tasks.find(({ id }) => id === 'preheat')!;
    expect(spare).toContain(`Preheat may take ${durationText(60 * preheat.slackMinutes!)} longer.`);
    expect(movedTexts(answer)).toEqual([
      'Shape 2 comes 5 min 50 s sooner than it would, because hands are needed for load 1.',
    ]);
  });
});
