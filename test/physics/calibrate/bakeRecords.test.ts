import { describe, expect, it } from 'vitest';
import { bakesOf, type BakeEvent } from '../../../physics/calibrate/bakeRecords.ts';
import { readReadings } from '../../../physics/calibrate/readings.ts';
import { usable } from '../../../physics/calibrate/usable.ts';

const event = (line: number, pizza: number, what: 'in' | 'out', minutes: number): BakeEvent => ({
  line,
  pizza,
  what,
  seconds: 60 * minutes,
  lightness: what === 'out' ? 55 : undefined,
});

describe('rows of pizzas going in and out', () => {
  it('pair by the hour, in whatever order they were written', () => {
    const { bakes, dropped, knownUntil } = bakesOf([
      event(4, 2, 'out', 68),
      event(1, 1, 'in', 50),
      event(3, 2, 'in', 60),
      event(2, 1, 'out', 57),
    ]);
    expect(bakes.map(({ pizza, inAt, outAt }) => [pizza, inAt / 60, outAt! / 60])).toEqual([
      [1, 50, 57],
      [2, 60, 68],
    ]);
    expect(dropped).toEqual([]);
    expect(knownUntil).toBe(Infinity);
  });

  it('leave the last one where it lies', () => {
    const { bakes } = bakesOf([event(1, 1, 'in', 50)]);
    expect(bakes).toEqual([{ pizza: 1, inAt: 3000, outAt: undefined, lightness: undefined }]);
  });

  it('may come out and go in in the same minute', () => {
    const { bakes } = bakesOf([
      event(1, 1, 'in', 50),
      event(2, 2, 'in', 57),
      event(3, 1, 'out', 57),
      event(4, 2, 'out', 64),
    ]);
    expect(bakes.map(({ pizza }) => pizza)).toEqual([1, 2]);
    const handedOver = [event(1, 1, 'in', 50), event(2, 1, 'out', 57), event(3, 2, 'in', 57)];
    expect(bakesOf(handedOver).bakes.map(({ pizza }) => pizza)).toEqual([1, 2]);
  });

  it.each([
    [[event(7, 1, 'out', 57)], 7, 'pizza 1 out, which never went in', 57],
    [
      [event(1, 1, 'in', 50), event(2, 2, 'in', 52), event(3, 2, 'out', 60)],
      1,
      'pizza 1 in, and pizza 2 in before it came out',
      50,
    ],
    [[event(1, 1, 'in', 50), event(2, 1, 'out', 95)], 1, 'pizza 1 in the oven for 45 min', 50],
    [[event(1, 1, 'in', 50), event(2, 1, 'out', 50.01)], 1, 'pizza 1 out the moment it went in', 50],
    [[event(1, 1, 'in', 50), event(2, 1, 'out', 50)], 2, 'pizza 1 out, which never went in', 50],
  ] as const)('%j are named', (events, line, found, known) => {
    const read = bakesOf([...events]);
    expect(read.dropped[0]).toMatchObject({ line, found });
    expect(read.knownUntil).toBe(60 * known);
  });
});

describe('which readings say something of the oven', () => {
  const rows = (...lines: readonly string[]) =>
    usable(readReadings(lines.join('\n'), { ovenOn: 0, offsetMinutes: 0 }));
  const bake = ['50 min,pizza 1 in,', '57 min,pizza 1 out,golden'];

  it('a row that names a pizza was read under it, one that names none beside it or on the bare plate', () => {
    const { readings, aside } = rows(
      '20 min,plateTop,150 degC',
      ...bake,
      '52 min,plateTop pizza 1,228 degC',
      '53 min,plateTop,240 degC',
      '53 min,ovenAir,230 degC',
      '54 min,plateCore pizza 1,231 degC',
      '60 min,plateTop,235 degC',
    );
    expect(aside).toEqual([]);
    expect(readings.map(({ seconds, place, pizza }) => [seconds / 60, place, pizza])).toEqual([
      [20, 'plateTop', undefined],
      [52, 'plateTop', 1],
      [53, 'plateAround', undefined],
      [53, 'ovenAir', undefined],
      [54, 'plateCore', 1],
      [60, 'plateTop', undefined],
    ]);
  });

  it.each([
    [['20 min,dough,25 degC', '21 min,plateTop,150 degC'], 'a reading of the dough'],
    [
      ['55 min,plateTop pizza 1,228 degC', '21 min,plateTop,150 degC'],
      'a reading with pizza 1 on the plate, and no rows say that it lay there then',
    ],
    [[...bake, '60 min,plateTop pizza 1,228 degC', '21 min,plateTop,150 degC'], 'a reading with pizza 1'],
    [[...bake, '90 min,plateTop,150 degC'], 'a reading 33 min after the last pizza: the oven may be off'],
    [['50 min,pizza 1 out,golden', '55 min,plateTop,150 degC'], 'a reading after 50 min: what lay'],
  ] as const)('%j', (lines, found) => {
    const { readings, aside } = rows(...lines);
    expect(aside).toHaveLength(1);
    expect(aside[0]!.found).toContain(found);
    expect(aside[0]!.allowed).not.toBe('');
    expect(readings.every(({ seconds }) => seconds < 58 * 60)).toBe(true);
  });
});
