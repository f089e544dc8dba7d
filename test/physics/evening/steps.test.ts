import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import type { Evening } from '../../../physics/evening/evening.ts';
import type { RiseStage } from '../../../physics/evening/planDough.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import {
  ballStep,
  cutStep,
  durationText,
  mixStep,
  moveStep,
  shapeStep,
} from '../../../physics/evening/steps.ts';

function saturday(): Evening {
  const read = readPlanObject(demos.saturday, { now: 0 });
  if (!read.ok) throw new Error('the demo evening does not read');
  return read.evening;
}

describe('durations as a cook says them', () => {
  it.each([
    [0, '0 s'],
    [44, '40 s'],
    [380, '6 min 20 s'],
    [598, '10 min'],
    [600, '10 min'],
    [2880, '48 min'],
    [5400, '1 h 30 min'],
    [7190, '2 h'],
  ])('%i s: %s', (seconds, words) => {
    expect(durationText(seconds)).toBe(words);
  });
});

describe('steps', () => {
  const evening = saturday();
  const balls: RiseStage = {
    where: 'room',
    temperature: 294.15,
    duration: 5400,
    as: 'balls',
    cover: 'covered',
  };

  it('name every ingredient once, liquids with their temperature', () => {
    const grams = { flour: 600, water: 200, beer: 172, salt: 15, yeast: 4 };
    const dough = { ...evening.dough, yeast: { kind: 'fresh' as const, percent: 0.67 } };
    expect(mixStep({ ...evening, dough }, grams, 297.15, 298.15)).toBe(
      'Mix 600 g flour with 200 g water and 172 g beer at 24 °C, 15 g salt and 4 g fresh yeast, and knead by hand until smooth; the dough should come out at 25 °C',
    );
  });

  it('say how much of the water is ice', () => {
    expect(mixStep(evening, { flour: 600, water: 372, yeast: 1.2 }, 273.15, 291.15, 150)).toContain(
      '222 g tap water and 150 g crushed ice in place of water at 0 °C',
    );
  });

  it('lead the dough from place to place', () => {
    const cold = { ...balls, where: 'refrigerator' as const, temperature: 277.15, duration: 86_400 };
    expect(ballStep(evening, cold)).toMatch(/cover, and put into the refrigerator for 24 h at 4 °C$/);
    expect(ballStep(evening, { ...balls, cover: 'oiled' })).toMatch(/oil thinly, and let rest 1 h 30 min/);
    expect(moveStep(balls, cold)).toBe(
      'Take the balls out of the refrigerator and let stand in the room for 1 h 30 min at 21 °C',
    );
    expect(moveStep({ ...cold, as: 'bulk' }, balls)).toBe(
      'Put the dough into the refrigerator for 24 h at 4 °C',
    );
  });

  it('speak of one pizza as one', () => {
    const one = { ...evening, pizzas: { ...evening.pizzas, count: 1 } };
    expect(ballStep(one, balls)).toMatch(/^Shape the dough into a ball of 250 g/);
    expect(ballStep(evening, balls)).toMatch(/^Divide the dough into 4 balls/);
    expect(shapeStep(evening, 2)).toContain('30 cm');
  });

  it('mention the top element only when the rim needs it', () => {
    expect(cutStep(1, 0)).toBe('Take pizza 1 out and cut it');
    expect(cutStep(1, 150)).toContain('2 min 30 s under the top element');
  });
});
