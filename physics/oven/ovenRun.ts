/**
 * Drives a network through time: thermostat, elements, vent, door. It chooses the length of each step so that
 * switchings fall on step ends.
 */
import type { PlateNodes } from '../plate/plateNodes.ts';
import type { OvenContext } from './assembly.ts';
import {
  airNode,
  bottomElementNode,
  ceilingNode,
  floorNode,
  sidesNode,
  topElementNode,
} from './networkParts.ts';
import type { NetworkState, OvenNetwork } from './network.ts';
import type { Drive } from './networkParts.ts';
import { Thermostat } from './thermostat.ts';
import type { ThermostatState } from './thermostat.ts';

/**
 * kg/s of water vapour per W of burning natural gas, input by its higher heating value (what rating plates of gas
 * ranges give): 1/55.5 g/s of methane a kW makes 0.0405 g/s. The heat to condense it leaves by the vent.
 */
const burnerSteam = 0.0405e-6;
const latentShare = burnerSteam * 2.44e6;

/** s between two looks at the coefficients of convection and insulation */
const refreshEvery = 10;

/** s; far below what any column asks for */
const shortestStep = 1e-4;

const longerAtOnce = 1.4;
/** s; a limit beyond this limits nothing */
const longestOfColumn = 60;

/** How much longer or shorter the columns can bear a step to be: their strain goes with the square of its length. */
function borne(strain: number): number {
  return 0.8 / Math.sqrt(strain);
}

export interface OvenState {
  readonly time: number;
  readonly network: NetworkState;
  readonly thermostat: ThermostatState;
}

/** A network under way: `step` and `advance` move it on, `save` and `load` take it back. */
export class OvenRun {
  readonly context: OvenContext;
  network: OvenNetwork;
  plate: PlateNodes | undefined;
  readonly thermostat: Thermostat;
  /** s since the oven was switched on */
  time = 0;
  doorOpen = false;
  /** the cook has switched the top element to full, whatever the thermostat says */
  topElementForced = false;
  /** s when the oven gave its signal */
  signalledAt: number | undefined;
  /** s of each switching on, for means over a cycle */
  readonly switchedOn: number[] = [];
  /** share of rated power in the last step */
  bottomShare = 0;
  topShare = 0;
  readonly #drive: Drive;
  /** s, the longest step that a column is thought to take */
  #columnLimit = Infinity;
  #sinceRefresh = 0;
  #refreshed: OvenNetwork | undefined;

  constructor(context: OvenContext, network: OvenNetwork, plate: PlateNodes | undefined, target: number) {
    const { lag, halfBand } = context.parameters.thermostat;
    this.context = context;
    this.network = network;
    this.plate = plate;
    this.thermostat = new Thermostat({ lag, halfBand, target }, context.evening.oven.startTemperature);
    if (this.thermostat.signalled) this.signalledAt = 0;
    plate?.take(network);
    this.#drive = {
      sources: [
        { node: bottomElementNode, watt: 0 },
        { node: topElementNode, watt: 0 },
        { node: floorNode, watt: 0 },
        { node: airNode, watt: 0 },
      ],
      ventFlow: 0,
      burnerSteam: 0,
      latent: 0,
      doorOpen: false,
    };
  }

  /** K, what the thermostat's sensor sees now */
  get seen(): number {
    const T = this.network.temperature;
    const w = this.context.parameters.thermostat.wallShare;
    return (1 - w) * T[airNode]! + w * 0.5 * (T[ceilingNode]! + T[sidesNode]!);
  }

  #shares(): void {
    const { preheatShare, holdShare } = this.context.parameters;
    const { on, cutOut } = this.thermostat;
    const share = cutOut ? holdShare : preheatShare;
    this.bottomShare = on && !this.topElementForced ? share.bottom : 0;
    this.topShare = this.topElementForced ? 1 : on ? share.top : 0;
  }

  /** Sets sources, vent and door for a step under these powers (W). */
  #setDrive(bottom: number, top: number): void {
    const { burnerToFloor, ventFlow, burnerAir } = this.context.parameters;
    const gas = this.context.evening.oven.fuel === 'gas';
    const [bottomSource, topSource, floorSource, airSource] = this.#drive.sources;
    bottomSource!.watt = gas ? 0 : bottom;
    topSource!.watt = top;
    const sensible = gas ? (1 - latentShare) * bottom : 0;
    floorSource!.watt = burnerToFloor * sensible;
    airSource!.watt = (1 - burnerToFloor) * sensible;
    this.#drive.ventFlow = ventFlow + (gas ? burnerAir * bottom : 0);
    this.#drive.burnerSteam = gas ? burnerSteam * bottom : 0;
    this.#drive.latent = gas ? latentShare * bottom : 0;
    this.#drive.doorOpen = this.doorOpen;
  }

  /** Convection follows temperatures by a quarter to a third power, wool changes slowly: ten seconds do no harm. */
  #refreshCoefficients(dt: number): void {
    this.#sinceRefresh += dt;
    if (this.#sinceRefresh < refreshEvery && this.#refreshed === this.network) return;
    this.network.updateCoefficients();
    this.#refreshed = this.network;
    this.#sinceRefresh = 0;
  }

  /** Steps the network by `dt` or, where a column finds that too long, by as much as it will bear. */
  #stepNetwork(dt: number): number {
    this.#refreshCoefficients(dt);
    this.plate?.prepare(this.network);
    let length = Math.min(dt, this.#columnLimit);
    let most = longerAtOnce * Math.max(length, Math.min(this.#columnLimit, longestOfColumn));
    while (!this.network.step(length, this.#drive)) {
      length *= Math.min(Math.max(borne(this.network.strain), 0.2), 0.9);
      // What made this step too long is still there in the next one.
      most = length;
      if (length < shortestStep) throw new Error(`no step found at ${String(this.time)} s`);
    }
    this.#columnLimit = Math.min(Math.max(length * borne(this.network.strain), 0.2 * length), most);
    this.plate?.follow(this.network);
    return length;
  }

  /** Takes one step of at most `dt` seconds, ended early by a switching. Returns its length. */
  step(dt: number): number {
    const wanted = this.thermostat.untilSwitch(dt);
    const { power } = this.context.evening.oven;
    this.#shares();
    this.#setDrive(this.bottomShare * power.bottom, this.topShare * power.top);
    const length = this.#stepNetwork(wanted);
    this.time += length;
    const happened = this.thermostat.follow(this.seen, length);
    if (happened === 'signal') this.signalledAt ??= this.time;
    if (happened === 'on') this.switchedOn.push(this.time);
    return length;
  }

  /** Advances to `until` (s) in steps of at most `dt`, calling `after` behind each. */
  advance(until: number, dt: number, after?: () => void): void {
    while (until - this.time > 1e-9) {
      // Two equal last steps instead of a tiny one.
      const left = until - this.time;
      this.step(left > dt && left < 2 * dt ? left / 2 : Math.min(dt, left));
      after?.();
    }
  }

  /** One step under given mean powers (W), without thermostat: for settled states. */
  holdStep(dt: number, bottom: number, top: number): void {
    this.#setDrive(bottom, top);
    this.#stepNetwork(dt);
  }

  save(): OvenState {
    return { time: this.time, network: this.network.save(), thermostat: this.thermostat.save() };
  }

  load(state: OvenState): void {
    this.time = state.time;
    this.#refreshed = undefined;
    this.network.load(state.network);
    this.thermostat.load(state.thermostat);
    this.plate?.take(this.network);
  }
}
