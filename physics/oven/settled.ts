/**
 * Where an oven settles: the state that nothing changes any more, and the dial.
 *
 * The dial is defined so that the empty cavity's mean air equals the setting. So the sensor's target is found in two
 * moves: the steady empty oven whose air stands at the setting tells what the sensor reads there; a run of the
 * thermostat from that state tells how far the sensor's mean lies from the middle of its band (elements go on giving
 * heat after they are switched off), and the target is moved by as much the other way.
 */
import { findRoot } from '../numerics/root.ts';
import { PlateNodes, lumpedLayout } from '../plate/plateNodes.ts';
import type { PlateMaterial } from '../materials/plates.ts';
import { assemble } from './assembly.ts';
import type { OvenContext, PlateInOven } from './assembly.ts';
import { airNode } from './networkParts.ts';
import { OvenRun } from './ovenRun.ts';

export interface Dial {
  /** K, the sensor's target */
  readonly target: number;
  /** K, by which the sensor's mean over a cycle exceeds its target */
  readonly overshoot: number;
  /** K, by which the target lies below the sensor's reading in the steady empty oven at the setting */
  readonly correction: number;
}

export interface Settled {
  /** K */
  readonly ovenAir: number;
  readonly plate: number;
  /** W */
  readonly power: number;
}

/**
 * Marches to the steady state with a mean power such that `reading` equals `wanted`. Ever longer implicit steps are a
 * Newton iteration on the steady equations.
 */
function steady(run: OvenRun, reading: () => number, wanted: number): number {
  const { oven } = run.context.evening;
  const { holdShare } = run.context.parameters;
  const full = holdShare.bottom * oven.power.bottom + holdShare.top * oven.power.top;
  const settle = (power: number): number => {
    const bottom = (power * holdShare.bottom * oven.power.bottom) / full;
    const top = (power * holdShare.top * oven.power.top) / full;
    // 3 h steps first: the plate's own enthalpy keeps up; then steps so long that storage no longer counts.
    for (let i = 0; i < 2; i++) run.holdStep(1e4, bottom, top);
    for (let i = 0; i < 3; i++) run.holdStep(1e7, bottom, top);
    return reading() - wanted;
  };
  let [low, high] = [5, 600];
  let [atLow, atHigh] = [settle(low), settle(high)];
  while (atHigh < 0 && high < 1e5) {
    [low, atLow] = [high, atHigh];
    high *= 1.6;
    atHigh = settle(high);
  }
  const power = findRoot(settle, low, high, 0.05, atLow, atHigh);
  settle(power);
  return power;
}

/** Means over whole thermostat cycles, from a state that has settled already. */
function cycleMean(run: OvenRun, dt: number, cycles: number): { sensor: number; air: number } | undefined {
  const start = run.switchedOn.length;
  const limit = run.time + 3600;
  let [sum, sensorSum, span] = [0, 0, 0];
  let [sums, count] = [{ air: 0, sensor: 0, span: 0 }, 0];
  while (run.time < limit && count <= cycles) {
    const before = run.switchedOn.length;
    const length = run.step(dt);
    sum += run.network.temperature[airNode]! * length;
    sensorSum += run.thermostat.sensor * length;
    span += length;
    if (run.switchedOn.length > before) {
      // The first cycle is thrown away: it began at rest.
      if (run.switchedOn.length > start + 2)
        sums = { air: sums.air + sum, sensor: sums.sensor + sensorSum, span: sums.span + span };
      count += 1;
      [sum, sensorSum, span] = [0, 0, 0];
    }
  }
  if (sums.span === 0) return undefined;
  return { sensor: sums.sensor / sums.span, air: sums.air / sums.span };
}

/**
 * @param dt s, step of the cycling run
 * @param known correction and overshoot of an oven that differs little: only the steady part is then computed anew
 */
export function readDial(
  context: OvenContext,
  dt: number,
  known?: Pick<Dial, 'overshoot' | 'correction'>,
): Dial {
  const { oven } = context.evening;
  const wanted = oven.setpoint + oven.thermostatOffset;
  const network = assemble(context, undefined, undefined, 0);
  const run = new OvenRun(context, network, undefined, wanted);
  steady(run, () => network.temperature[airNode]!, wanted);
  const target = run.seen;
  if (known) return { ...known, target: target - known.correction };
  const cycling = new OvenRun(context, network, undefined, target);
  cycling.thermostat.load({
    sensor: target,
    on: true,
    signalled: true,
    cutOut: true,
    seenRate: 0,
    seen: target,
  });
  const mean = cycleMean(cycling, dt, 5);
  // An oven that cannot hold the setting never switches: nothing to correct.
  if (!mean) return { target, overshoot: 0, correction: 0 };
  const correction = mean.air - wanted;
  return { target: target - correction, overshoot: mean.sensor - target, correction };
}

/** The steady state with this plate in the cavity, the thermostat holding its sensor. */
export function settledWithPlate(context: OvenContext, material: PlateMaterial, dial: Dial): Settled {
  const { width, depth, thickness } = context.evening.plate;
  const layout = lumpedLayout(width * depth);
  const nodes = new PlateNodes(layout, material, thickness, 0);
  const plate: PlateInOven = { material, layout, nodes };
  const network = assemble(context, plate, undefined, 0);
  const run = new OvenRun(context, network, nodes, dial.target);
  const power = steady(run, () => run.seen, dial.target + dial.overshoot);
  return {
    ovenAir: network.temperature[airNode]!,
    plate: network.temperature[layout.columns[0]!.top]!,
    power,
  };
}
