import { describe, expect, it } from 'vitest';
import { Thermostat } from '../../../physics/oven/thermostat.ts';

const setting = { lag: 600, halfBand: 5, target: 288 };

function at(sensor: number, on: boolean, seen: number): Thermostat {
  const thermostat = new Thermostat(setting, 250);
  thermostat.load({ sensor, on, signalled: true, cutOut: true, seenRate: 0, seen });
  return thermostat;
}

/** Seconds to the next switching while the sensor sees `seen`, in steps of at most `dt`. */
function untilSwitched(thermostat: Thermostat, seen: number, dt: number): number {
  let time = 0;
  for (let i = 0; i < 10_000; i++) {
    const step = thermostat.untilSwitch(dt);
    time += step;
    if (thermostat.follow(seen, step) !== undefined) return time;
  }
  return NaN;
}

describe('switching of a lag of 600 s that sees 400 when on and 20 when off, off at 293, on at 283 (closed form)', () => {
  // The sensor's lag is the exponential here: T' = (seen - T)/tau.
  it.each([0.5, 5, 20, 200])('in steps of %d s: on 53.607 s, off 22.391 s, within 0.1 s', (dt) => {
    const on = 600 * Math.log(117 / 107);
    const off = 600 * Math.log(273 / 263);
    expect(on).toBeCloseTo(53.607, 3);
    expect(off).toBeCloseTo(22.391, 3);
    expect(Math.abs(untilSwitched(at(283, true, 400), 400, dt) - on)).toBeLessThan(0.1);
    expect(Math.abs(untilSwitched(at(293, false, 20), 20, dt) - off)).toBeLessThan(0.1);
  });
});

describe('the sensor', () => {
  it('follows a ramp exactly: T = a (t - tau) + a tau exp(-t/tau) (closed form), whatever the steps', () => {
    const slope = 0.4;
    for (const dt of [1, 30]) {
      const thermostat = new Thermostat({ ...setting, lag: 60, target: 1000 }, 0);
      for (let t = dt; t <= 300; t += dt) {
        thermostat.follow(slope * t, dt);
        const exact = slope * (t - 60) + slope * 60 * Math.exp(-t / 60);
        expect(Math.abs(thermostat.sensor - exact)).toBeLessThan(1e-9);
      }
    }
  });
  it('forecasts a ramp that goes on, so that the switching falls on the end of a step', () => {
    const thermostat = new Thermostat({ lag: 60, halfBand: 4, target: 523 }, 293);
    let time = 0;
    let signalled = NaN;
    let off = NaN;
    while (Number.isNaN(off)) {
      const step = thermostat.untilSwitch(10);
      time += step;
      const happened = thermostat.follow(293 + 0.25 * time, step);
      if (happened === 'signal') signalled = time;
      if (happened === 'off') off = time;
    }
    const reading = (t: number): number => 293 + 0.25 * (t - 60 * (1 - Math.exp(-t / 60)));
    expect(Math.abs(reading(signalled) - 523)).toBeLessThan(0.02);
    expect(Math.abs(reading(off) - 527)).toBeLessThan(0.02);
  });
});

describe('what it tells', () => {
  it('signals once, at the target, stays on to the upper edge, and never tells of a signal again', () => {
    const thermostat = new Thermostat({ lag: 1, halfBand: 4, target: 500 }, 293);
    expect(thermostat.on).toBe(true);
    const told: string[] = [];
    for (const seen of [400, 501, 503, 510, 505, 497, 490, 503, 510]) {
      const happened = thermostat.follow(seen, 600);
      if (happened !== undefined) told.push(`${happened} at ${seen}`);
    }
    expect(told).toEqual(['signal at 501', 'off at 510', 'on at 490', 'off at 510']);
    expect(thermostat.cutOut).toBe(true);
  });
  it('is off and has signalled when the oven starts hotter than its band', () => {
    const thermostat = new Thermostat({ lag: 60, halfBand: 4, target: 400 }, 450);
    expect([thermostat.on, thermostat.signalled, thermostat.cutOut]).toEqual([false, true, true]);
  });
  it('goes on from a saved state as if nothing had been between', () => {
    const one = at(290, true, 350);
    const saved = one.save();
    const first = untilSwitched(one, 350, 5);
    one.load(saved);
    expect(untilSwitched(one, 350, 5)).toBe(first);
  });
});
