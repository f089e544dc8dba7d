/**
 * Where an oven settles: the state that nothing changes any more, and the dial.
 *
 * The dial is defined so that the empty cavity's mean air equals the setting. So the sensor's target is found in two
 * moves: the steady empty oven whose air stands at the setting tells what the sensor reads there; a run of the
 * thermostat from that state tells how far the sensor's mean lies from the middle of its band (elements go on giving
 * heat after they are switched off), and the target is moved by as much the other way.
 */
import { findRoot } from '../numerics/root.ts';
import { plateArea } from '../plate/geometry.ts';
import { PlateNodes, lumpedLayout, slabLayout } from '../plate/plateNodes.ts';
import type { PlateMaterial } from '../materials/plates.ts';
import { assemble } from './assembly.ts';
import type { OvenContext, PlateInOven } from './assembly.ts';
import { airNode, floorNode } from './networkParts.ts';
import { OvenRun } from './ovenRun.ts';
import type { OvenParameters } from './parameters.ts';

export interface Dial {
  /** K, the sensor's target */
  readonly target: number;
  /** K, by which the sensor's mean over a cycle exceeds its target */
  readonly overshoot: number;
  /** K, by which the target lies below the sensor's reading in the steady empty oven at the setting */
  readonly correction: number;
  /** K, the overshoot with the plate in the oven, once that is known */
  readonly plateOvershoot?: number;
}

export interface Settled {
  /** K */
  readonly ovenAir: number;
  /** K, top face and mid-thickness: heat flows through a stone from below even when nothing changes any more */
  readonly plate: number;
  readonly plateCore: number;
  /** W */
  readonly power: number;
  /** K, by which the sensor's mean over a cycle exceeds its target with the plate in the oven */
  readonly overshoot: number;
}

type Shares = OvenParameters['holdShare'];

function fullPower(run: OvenRun, share: Shares): number {
  const { power } = run.context.evening.oven;
  return share.bottom * power.bottom + share.top * power.top;
}

/** Marches to rest under a mean power (W): ever repeated, very long implicit steps are a Newton iteration. */
function settle(run: OvenRun, power: number, share: Shares): void {
  const rated = run.context.evening.oven.power;
  const full = fullPower(run, share);
  const bottom = (power * share.bottom * rated.bottom) / full;
  const top = (power * share.top * rated.top) / full;
  const T = run.network.temperature;
  for (let i = 0; i < 15; i++) {
    const [air, floor] = [T[airNode]!, T[floorNode]!];
    run.holdStep(1e7, bottom, top);
    if (i > 3 && Math.abs(T[airNode]! - air) + Math.abs(T[floorNode]! - floor) < 1e-3) return;
  }
}

/** Puts every node and layer at one temperature: a march to rest that begins near its end does not go astray. */
function fill(run: OvenRun, temperature: number): void {
  run.network.temperature.fill(temperature);
  for (const { stack } of run.network.setting.stacks) stack.temperature.fill(temperature);
  run.plate?.take(run.network);
}

/** The mean power (W) under which `reading` comes to rest at `wanted`, with the run left in that state. */
function steady(run: OvenRun, reading: () => number, wanted: number): number {
  const share = run.context.parameters.holdShare;
  const { room } = run.network.setting;
  const { width, depth, height } = run.context.evening.oven.cavity;
  const walls = 2 * (width * depth + width * height + depth * height);
  fill(run, wanted);
  const miss = (power: number): number => {
    settle(run, power, share);
    return reading() - wanted;
  };
  // 0.8 W/(m2 K) is less than any oven loses: begin below and go up.
  let low = 0.8 * walls * Math.max(wanted - room, 1);
  let atLow = miss(low);
  while (atLow > 0) {
    low /= 2;
    atLow = miss(low);
  }
  let [high, atHigh] = [low, atLow];
  while (atHigh < 0) {
    [low, atLow] = [high, atHigh];
    const times = (wanted - room) / Math.max(wanted + atHigh - room, 1);
    high *= Math.min(Math.max(1.02 * times, 1.05), 2);
    atHigh = miss(high);
  }
  const power = findRoot(miss, low, high, 0.05, atLow, atHigh);
  settle(run, power, share);
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
export function readDial(context: OvenContext, dt: number, known?: Omit<Dial, 'target'>): Dial {
  const { oven } = context.evening;
  const wanted = oven.setpoint + oven.thermostatOffset;
  const network = assemble(context, undefined, undefined, 0);
  const run = new OvenRun(context, network, undefined, wanted);
  steady(run, () => network.temperature[airNode]!, wanted);
  const target = run.seen;
  if (known) return { ...known, target: target - known.correction };
  const cycling = cyclingFrom(run, target);
  const mean = cycleMean(cycling, dt, 3);
  // An oven that cannot hold the setting never switches: nothing to correct.
  if (!mean) return { target, overshoot: 0, correction: 0 };
  const correction = mean.air - wanted;
  return { target: target - correction, overshoot: mean.sensor - target, correction };
}

/** The plate in the oven, in one column. @param layers 1 for a lumped plate */
function withPlate(context: OvenContext, material: PlateMaterial, target: number, layers: number): OvenRun {
  const { thickness } = context.evening.plate;
  const area = plateArea(context.evening.plate);
  const layout = layers > 1 ? slabLayout([area], layers) : lumpedLayout(area);
  const nodes = new PlateNodes(layout, material, thickness, 0);
  const plate: PlateInOven = { material, layout, nodes };
  return new OvenRun(context, assemble(context, plate, undefined, 0), nodes, target);
}

/** A run of the thermostat that starts in a settled state. */
function cyclingFrom(run: OvenRun, target: number): OvenRun {
  const cycling = new OvenRun(run.context, run.network, run.plate, target);
  cycling.thermostat.load({
    sensor: target,
    on: true,
    signalled: true,
    cutOut: true,
    seenRate: 0,
    seen: target,
  });
  return cycling;
}

/**
 * Where this plate settles in the cavity. As a rule the thermostat holds its sensor's mean; an oven too weak for that
 * comes to rest under all the power it has: that of preheat when it never switches off, that of holding when it does.
 *
 * @param layers of the plate, 1 for a lumped one; @param dt s, step of the cycling run
 * @param known the sensor's overshoot in an oven that differs little
 */
export function settledWithPlate(
  context: OvenContext,
  material: PlateMaterial,
  dial: Dial,
  layers: number,
  dt: number,
  known?: number,
): Settled {
  const { holdShare, preheatShare, thermostat } = context.parameters;
  const run = withPlate(context, material, dial.target, layers);
  const plate = run.plate!;
  const T = run.network.temperature;
  const state = (power: number, overshoot: number): Settled => ({
    ovenAir: T[airNode]!,
    plate: T[plate.layout.columns[0]!.top]!,
    plateCore: plate.core(0, T),
    power,
    overshoot,
  });
  const overshoot = known ?? dial.overshoot;
  const power = steady(run, () => run.seen, dial.target + overshoot);
  const most = fullPower(run, holdShare);
  if (power < most) {
    if (known !== undefined) return state(power, overshoot);
    const rest = T.slice();
    const mean = cycleMean(cyclingFrom(run, dial.target), dt, 3);
    if (!mean) {
      T.set(rest);
      return state(power, overshoot);
    }
    const own = mean.sensor - dial.target;
    return state(
      steady(run, () => run.seen, dial.target + own),
      own,
    );
  }
  const preheat = fullPower(run, preheatShare);
  settle(run, preheat, preheatShare);
  if (run.seen < dial.target + thermostat.halfBand) return state(preheat, 0);
  settle(run, most, holdShare);
  return state(most, 0);
}

/** K, the highest setting at which this oven's sensor still comes to its target with the plate in the cavity. */
export function highestReachable(context: OvenContext, material: PlateMaterial, dial: Dial): number {
  const { preheatShare } = context.parameters;
  // The sensor sees air and walls: a lumped plate does.
  const run = withPlate(context, material, dial.target, 1);
  fill(run, dial.target);
  settle(run, fullPower(run, preheatShare), preheatShare);
  const most = run.seen;
  const { oven } = context.evening;
  let { setpoint } = oven;
  let { target } = dial;
  // A kelvin on the dial is about a kelvin of the target.
  for (let i = 0; i < 6 && Math.abs(target - most) > 0.1; i++) {
    setpoint -= target - most;
    const evening = { ...context.evening, oven: { ...oven, setpoint } };
    ({ target } = readDial({ ...context, evening }, 10, dial));
  }
  return setpoint;
}
