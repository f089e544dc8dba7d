/**
 * The oven's control: a sensor that follows what it sees with a first-order lag, and a switch with a band.
 *
 *     tau dT_s/dt = (1 - w) T_air + w T_wall - T_s;    on below target - band, off above target + band
 *
 * The driver of the simulation asks how long until the next switching and ends its step there, so that a switching is
 * located and never rounded to a step.
 */
export interface ThermostatSetting {
  /** s */
  readonly lag: number;
  /** K */
  readonly halfBand: number;
  /** K, the sensor's reading that the dial asks for */
  readonly target: number;
}

export interface ThermostatState {
  readonly sensor: number;
  readonly on: boolean;
  readonly signalled: boolean;
  readonly cutOut: boolean;
  readonly seenRate: number;
  readonly seen: number;
}

/** K within which a threshold counts as met: 0.01 K is a tenth of a second at the sensor's usual rate */
const met = 0.01;

/** Sensor and switch of one run. */
export class Thermostat {
  readonly setting: ThermostatSetting;
  /** K */
  sensor: number;
  on: boolean;
  /** the sensor has reached the target once: the oven has given its signal */
  signalled: boolean;
  /** it has switched off once: the preheat stage of the control is over */
  cutOut = false;
  #seenRate = 0;
  #seen: number;

  constructor(setting: ThermostatSetting, start: number) {
    this.setting = setting;
    this.sensor = start;
    this.#seen = start;
    this.on = start < setting.target + setting.halfBand;
    this.signalled = start >= setting.target;
    this.cutOut = !this.on;
  }

  #threshold(): number {
    const { target, halfBand } = this.setting;
    if (!this.on) return target - halfBand;
    return this.signalled ? target + halfBand : target;
  }

  /** What the sensor will read `t` seconds on, when what it sees goes on changing at the rate of the last step. */
  #forecast(t: number): number {
    const { lag } = this.setting;
    // Exact answer of a first-order lag to a ramp.
    const behind = this.sensor - this.#seen + this.#seenRate * lag;
    return this.#seen + this.#seenRate * (t - lag) + behind * Math.exp(-t / lag);
  }

  /** Seconds until the next switching as far as can be told, at most `limit`. */
  untilSwitch(limit: number): number {
    const threshold = this.#threshold();
    const side = (t: number): number =>
      this.on ? threshold - this.#forecast(t) : this.#forecast(t) - threshold;
    if (side(limit) > 0) return limit;
    let low = 0;
    let high = limit;
    for (let i = 0; i < 30 && high - low > 1e-3; i++) {
      const middle = (low + high) / 2;
      if (side(middle) > 0) low = middle;
      else high = middle;
    }
    return Math.max(high, 0.02);
  }

  /** Ends a step of `dt` seconds in which what the sensor sees went (straight) to `seen`. Tells what happened. */
  follow(seen: number, dt: number): 'signal' | 'off' | 'on' | undefined {
    const { lag } = this.setting;
    this.#seenRate = (seen - this.#seen) / dt;
    const behind = this.sensor - this.#seen + this.#seenRate * lag;
    this.sensor = seen - this.#seenRate * lag + behind * Math.exp(-dt / lag);
    this.#seen = seen;
    const threshold = this.#threshold();
    if (this.on) {
      if (this.sensor < threshold - met) return undefined;
      if (!this.signalled) {
        this.signalled = true;
        return 'signal';
      }
      this.on = false;
      this.cutOut = true;
      return 'off';
    }
    if (this.sensor > threshold + met) return undefined;
    this.on = true;
    return 'on';
  }

  save(): ThermostatState {
    return {
      sensor: this.sensor,
      on: this.on,
      signalled: this.signalled,
      cutOut: this.cutOut,
      seenRate: this.#seenRate,
      seen: this.#seen,
    };
  }

  load(state: ThermostatState): void {
    this.sensor = state.sensor;
    this.on = state.on;
    this.signalled = state.signalled;
    this.cutOut = state.cutOut;
    this.#seenRate = state.seenRate;
    this.#seen = state.seen;
  }
}
