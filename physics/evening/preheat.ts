/** The oven with its plate from switching on until both have settled: when the oven signals, when the plate is ready. */
import { sampleAt } from '../numerics/samples.ts';
import { assemble } from '../oven/assembly.ts';
import { OvenRun } from '../oven/ovenRun.ts';
import type { OvenState } from '../oven/ovenRun.ts';
import { plateArea } from '../plate/geometry.ts';
import { PlateNodes, lumpedLayout, slabLayout } from '../plate/plateNodes.ts';
import { firstPlateNode } from '../oven/networkParts.ts';
import type { EveningModel } from './model.ts';
import { readyTolerance } from './model.ts';
import type { EnergyBalance, OvenTrace, Preheat } from './run.ts';
import { TraceRecorder } from './trace.ts';

export interface PreheatRun {
  readonly preheat: Preheat;
  readonly recorder: TraceRecorder;
  /** states by the minute, from which an evening can go on */
  readonly states: readonly { readonly state: OvenState; readonly plateHeat: number }[];
  readonly run: OvenRun;
  /** J above 0 K of oven and plate at the start */
  readonly startHeat: number;
}

/** At least this long, so that the curve shows the plate settled, s. */
const shown = 2 * 3600;
const longest = 8 * 3600;

/** An oven with the plate in one column, cold, as it is switched on. */
export function startPreheat(model: EveningModel): OvenRun {
  const { context, material, plateModel, resolution, dial } = model;
  const { plate } = model.evening;
  const area = plateArea(plate);
  const layout = plateModel === 'lumped' ? lumpedLayout(area) : slabLayout([area], resolution.plateLayers);
  const nodes = new PlateNodes(layout, material, plate.thickness, 0);
  const network = assemble(context, { material, layout, nodes }, undefined, 0);
  return new OvenRun(context, network, nodes, dial.target);
}

/** J above 0 K (walls, air, elements) and 0 degC (plate): differences of it are the heat stored. */
export function ovenHeat(run: OvenRun): number {
  return run.network.heat(firstPlateNode) + run.plate!.heat;
}

/**
 * Mean of a sampled quantity over one thermostat cycle around each sample; before the first cycle and where there is
 * none, the sample itself (there is no ripple to smooth).
 */
function cycleMeans(trace: OvenTrace, values: Float64Array, switchedOn: readonly number[]): Float64Array {
  const t = trace.seconds;
  const n = t.length;
  const integral = new Float64Array(n);
  for (let i = 1; i < n; i++)
    integral[i] = integral[i - 1]! + ((values[i]! + values[i - 1]!) / 2) * (t[i]! - t[i - 1]!);
  const at = (time: number): number => {
    let low = 0;
    let high = n - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (t[middle]! <= time) low = middle;
      else high = middle;
    }
    const share = (time - t[low]!) / (t[high]! - t[low]!);
    const value = values[low]! + share * (values[high]! - values[low]!);
    return integral[low]! + ((values[low]! + value) / 2) * (time - t[low]!);
  };
  return values.map((value, i) => {
    const now = t[i]!;
    let k = 0;
    while (k < switchedOn.length && switchedOn[k]! <= now) k++;
    const [before, after] = [switchedOn[k - 1], switchedOn[k]];
    if (before === undefined || after === undefined) return value;
    const half = (after - before) / 2;
    if (now - half < switchedOn[0]! - (after - before) || now + half > t[n - 1]!) return value;
    return (at(now + half) - at(now - half)) / (2 * half);
  });
}

/** Samples in the middle of the last and of the last but two whole cycles. */
function lastCycle(
  seconds: Float64Array,
  switchedOn: readonly number[],
): { readonly start: number; readonly end: number } | undefined {
  if (switchedOn.length < 5) return undefined;
  const middle = (k: number): number => {
    const time = (switchedOn.at(k)! + switchedOn.at(k - 1)!) / 2;
    return seconds.findIndex((s) => s >= time);
  };
  return { start: middle(-3), end: middle(-1) };
}

/** Once the oven has been hot as long as it took to get there, only its cycles and a slow plate go on. */
function onlyCycles({ signalledAt, time }: OvenRun): boolean {
  return signalledAt !== undefined && time > 2 * signalledAt;
}

/** Runs the preheat for `shown` seconds and on until the oven has signalled and the plate is ready. */
export function runPreheat(model: EveningModel, atLeast = shown): PreheatRun {
  const { settled, resolution } = model;
  const run = startPreheat(model);
  const recorder = new TraceRecorder(10);
  const startHeat = ovenHeat(run);
  const states: { state: OvenState; plateHeat: number }[] = [];
  recorder.record(run, true);
  let until = atLeast;
  for (;;) {
    while (until - run.time > 1e-6) {
      const late = onlyCycles(run);
      run.advance(Math.min(until, run.time + 60), (late ? 3 : 1) * resolution.preheatStep, () => {
        recorder.record(run, late);
        if (run.time >= states.length * 60) states.push({ state: run.save(), plateHeat: run.plate!.heat });
      });
      recorder.record(run, true);
    }
    const trace = recorder.trace();
    const top = cycleMeans(trace, trace.plateTop, run.switchedOn);
    const core = cycleMeans(trace, trace.plateCore, run.switchedOn);
    const air = cycleMeans(trace, trace.ovenAir, run.switchedOn);
    let settledTop = settled.plate;
    let settledCore = settled.plateCore;
    let settledAir = settled.ovenAir;
    let ready = firstWithin(trace.seconds, [top, core], [settledTop, settledCore]);
    // An oven at the end of its power may settle before its sensor comes to the target.
    if ((ready === undefined || run.signalledAt === undefined) && until < longest) {
      until = Math.min(until + Math.max(atLeast / 4, 300), longest);
      continue;
    }
    if (ready === undefined) {
      // Bursts so strong that no mean power stands for them: the run itself shows where its cycles end.
      const cycle = lastCycle(trace.seconds, run.switchedOn);
      if (cycle !== undefined && Math.abs(top[cycle.end]! - top[cycle.start]!) < readyTolerance / 5) {
        [settledTop, settledCore, settledAir] = [top[cycle.end]!, core[cycle.end]!, air[cycle.end]!];
        ready = firstWithin(trace.seconds, [top, core], [settledTop, settledCore]);
      }
    }
    const readyAt = ready ?? Infinity;
    const at = (values: Float64Array): number => sampleAt(trace.seconds, values, Math.min(readyAt, run.time));
    const ledger = run.network.ledger;
    const balance: EnergyBalance = {
      supplied: ledger.supplied,
      stored: ovenHeat(run) - startHeat,
      lostToRoom: ledger.lostToRoom,
      lostByVentAndDoor: ledger.lostByVentAndDoor,
      lostBySteam: ledger.lostBySteam,
    };
    const energy = energyUntil(states, readyAt, run);
    const preheat: Preheat = {
      airReady: run.signalledAt ?? Infinity,
      plateReady: readyAt,
      settledPlateTop: settledTop,
      settledOvenAir: settledAir,
      idlePower: settled.power,
      plateTop: at(top),
      plateCore: at(core),
      ovenAir: at(air),
      energy,
      biotNumber: model.biotNumber,
      plateModel: model.plateModel,
      trace,
      balance,
    };
    return { preheat, recorder, states, run, startHeat };
  }
}

/** s for which a plate must stay within the tolerance: a thin one rushes through it while the elements are still on */
const staying = 180;

/** First moment from which top and core stay within the tolerance of where each of them settles. */
function firstWithin(
  seconds: Float64Array,
  [top, core]: readonly [Float64Array, Float64Array],
  [settledTop, settledCore]: readonly [number, number],
): number | undefined {
  const away = (i: number): number =>
    Math.max(Math.abs(top[i]! - settledTop), Math.abs(core[i]! - settledCore)) - readyTolerance;
  let since: number | undefined;
  for (let i = 0; i < seconds.length; i++) {
    const here = away(i);
    if (here > 0) {
      since = undefined;
      continue;
    }
    if (since === undefined) {
      const before = i === 0 ? 0 : away(i - 1);
      since = i === 0 ? 0 : seconds[i - 1]! + ((seconds[i]! - seconds[i - 1]!) * before) / (before - here);
    }
    if (seconds[i]! - since >= staying) return since;
  }
  return undefined;
}

function energyUntil(states: readonly { readonly state: OvenState }[], time: number, run: OvenRun): number {
  if (time >= run.time) return run.network.ledger.supplied;
  const later = states.findIndex(({ state }) => state.time >= time);
  if (later <= 0) return 0;
  const a = states[later - 1]!.state;
  const b = states[later]!.state;
  const share = (time - a.time) / (b.time - a.time);
  return a.network.ledger.supplied + share * (b.network.ledger.supplied - a.network.ledger.supplied);
}
