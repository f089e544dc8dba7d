/** Watches a pizza while it lies on the plate: browning of base and rim, starch of the crumb, what is done and what not. */
import type { BrowningLaw } from '../bake/browning.ts';
import { browningLaw, rawLightness } from '../bake/browning.ts';
import { gelatinisationRate } from '../bake/crumb.ts';
import { zeroCelsius } from '../materials/constants.ts';
import type { PizzaColumn } from '../bake/column.ts';
import type { LoadedOven } from './loadedOven.ts';
import type { KeptBase } from './parBake.ts';
import type { BakeTrace, LayerSample } from './run.ts';

/** share of the starch of the coldest place that must be gelatinised for the crumb to count as done; our definition */
const crumbDone = 0.98;
const starchDone = -Math.log(1 - crumbDone);

/** m of dough above the plate that must be set before paper comes off it; our definition */
const setDepth = 1.5e-3;

interface Watch {
  /** integrals of the browning rate of base and rim */
  base: number;
  rim: number;
  /** -ln(1 - share of starch gelatinised) of each dough cell, as far as it counts */
  readonly starch: Float64Array;
}

/** s; `full` is the step of the middle of a bake, `branch` for what is only looked at and not gone on from */
function stepAt(sinceLoad: number, full: number, branch: boolean): number {
  // Contact with a hot plate changes the base by tens of kelvin in the first seconds; later the crust moves slowly.
  if (sinceLoad < 2) return full / 5;
  if (sinceLoad < 20) return full / 2;
  if (sinceLoad < 120) return full;
  return branch ? 4 * full : 2 * full;
}

/** A pizza on the plate and how far it is. It begins with the load. */
export class BakeWatcher {
  readonly oven: LoadedOven;
  readonly law: BrowningLaw;
  readonly loadedAt: number;
  readonly #watch: Watch;
  readonly #firstCheese: number;
  /** dough cells from the plate upwards whose starch has gone */
  #starchSet = 0;
  readonly #baseWanted: number;
  readonly #rimWanted: number;
  /** rates at the last step, 1/s, and K/s of the coldest cheese and crumb */
  #baseRate = 0;
  #rimRate = 0;
  #cheeseRate = 0;
  #crumbRate = 0;
  readonly #trace = {
    seconds: [] as number[],
    base: [] as number[],
    crumb: [] as number[],
    cheeseTop: [] as number[],
    rimTop: [] as number[],
    baseLightness: [] as number[],
    rimLightness: [] as number[],
    layers: [] as LayerSample[][],
  };

  constructor(oven: LoadedOven) {
    const { evening, kept, pizza, model } = oven;
    this.oven = oven;
    this.loadedAt = oven.run.time;
    this.law = browningLaw(evening.pizzas.browningLaw ?? model.bake.browningLaw);
    this.#firstCheese = pizza.centre.cells.findIndex(({ material }) => material.name === 'cheese');
    const { shadeLightness } = evening.pizzas;
    const wanted = (lightness: number): number => this.law.integralFor(Math.min(lightness, rawLightness));
    this.#baseWanted = wanted(shadeLightness);
    this.#rimWanted = wanted(shadeLightness + model.bake.rimLighter);
    this.#watch = {
      base: kept?.base ?? 0,
      rim: kept?.rim ?? 0,
      // A base that was baked ahead has its starch behind it.
      starch: new Float64Array(pizza.centre.doughCells).fill(kept ? Infinity : 0),
    };
  }

  /**
   * Takes one step of the bake and lets base, rim and crumb get on.
   *
   * @param limit s, the longest step; @param branch for what is only looked at
   */
  step(limit = Infinity, branch = false): number {
    const { oven, law } = this;
    const { browningFactor } = oven.model.bake;
    const watch = this.#watch;
    const before = { base: oven.centre.baseFace, rim: oven.rimTop, cheese: this.cheese, crumb: this.crumb };
    const full = stepAt(oven.run.time - this.loadedAt, oven.model.resolution.bakeStep, branch);
    const dt = oven.run.step(Math.min(full, limit));
    const baseActivity = oven.centre.activity(0);
    const rimActivity = oven.rim.activity(oven.rim.size - 1);
    // A base from the freezer does not brown before it has thawed.
    const rate = (T: number, activity: number): number => (T < zeroCelsius ? 0 : law.rate(T, activity));
    const mean = (a: number, b: number, activity: number): number =>
      (browningFactor * (rate(a, activity) + rate(b, activity))) / 2;
    this.#baseRate = mean(before.base, oven.centre.baseFace, baseActivity);
    watch.base += dt * this.#baseRate;
    this.#rimRate = mean(before.rim, oven.rimTop, rimActivity);
    watch.rim += dt * this.#rimRate;
    for (let i = 0; i < watch.starch.length; i++)
      if (watch.starch[i]! < starchDone)
        watch.starch[i]! += dt * gelatinisationRate(oven.centre.temperature[i]!);
    this.#cheeseRate = (this.cheese - before.cheese) / dt;
    this.#crumbRate = (this.crumb - before.crumb) / dt;
    return dt;
  }

  /** s until everything is done if it goes on as in the last step: bakes end at their end, not at the next step's. */
  get untilDone(): number {
    const { meltTemperature } = this.oven.model.bake;
    const after = (left: number, rate: number): number => (left <= 0 ? 0 : rate > 0 ? left / rate : Infinity);
    let longest = Math.max(
      after(this.#baseWanted - this.#watch.base, this.#baseRate),
      after(meltTemperature - this.cheese, this.#cheeseRate),
    );
    if (this.oven.kept) return Math.max(longest, after(meltTemperature - this.crumb, this.#crumbRate));
    this.#watch.starch.forEach((integral, i) => {
      const left = starchDone - integral;
      if (left > 0) longest = Math.max(longest, left / gelatinisationRate(this.oven.centre.temperature[i]!));
    });
    return longest;
  }

  /** s until the rim has its shade if it goes on as in the last step; not less than a tenth */
  get untilRim(): number {
    const left = this.#rimWanted - this.#watch.rim;
    return this.#rimRate > 0 ? Math.max(left / this.#rimRate, 0.1) : Infinity;
  }

  /** Integrals of the browning rate, and the water left, of base and rim: what a base baked ahead brings along. */
  get baked(): Omit<KeptBase, 'temperature'> {
    const { centre, rim, pizza } = this.oven;
    const moisture = (column: PizzaColumn, cells: number): number => {
      let [water, solids] = [0, 0];
      for (let i = 0; i < cells; i++) {
        water += column.water[i]!;
        solids += column.setting.cells[i]!.solids;
      }
      return water / solids;
    };
    return {
      base: this.#watch.base,
      rim: this.#watch.rim,
      centreMoisture: moisture(centre, pizza.centre.doughCells),
      rimMoisture: moisture(rim, rim.size),
    };
  }

  /** Whether the lowest part of the dough has set, so that paper comes off it. */
  get baseSet(): boolean {
    const { cells } = this.oven.pizza.centre;
    let height = 0;
    for (let i = 0; i < this.#watch.starch.length && height < setDepth; i++) {
      if (this.#watch.starch[i]! < starchDone) return false;
      height += cells[i]!.thickness;
    }
    return true;
  }

  get seconds(): number {
    return this.oven.run.time - this.loadedAt;
  }
  get baseLightness(): number {
    return this.law.lightness(this.#watch.base);
  }
  get rimLightness(): number {
    return this.law.lightness(this.#watch.rim);
  }
  get crumbDone(): boolean {
    // What was baked ahead has only to get hot through.
    if (this.oven.kept) return this.crumb >= this.oven.model.bake.meltTemperature;
    const { starch } = this.#watch;
    // What is done stays done: only the rest is looked through again.
    while (this.#starchSet < starch.length && starch[this.#starchSet]! >= starchDone) this.#starchSet += 1;
    return this.#starchSet === starch.length;
  }
  /** K, coldest place of the dough in the middle and of the cheese (or of the top where there is none) */
  get crumb(): number {
    return coldest(this.oven.centre, 0, this.oven.pizza.centre.doughCells);
  }
  get cheese(): number {
    const { cells } = this.oven.pizza.centre;
    if (cells.at(-1)!.material.name !== 'cheese') return this.oven.centreTop;
    return coldest(this.oven.centre, this.#firstCheese, cells.length);
  }

  /** Which conditions are met; the bake is over when all are. */
  done(): { readonly base: boolean; readonly crumb: boolean; readonly top: boolean } {
    return {
      base: this.#watch.base >= this.#baseWanted,
      crumb: this.crumbDone,
      top: this.cheese >= this.oven.model.bake.meltTemperature,
    };
  }

  rimIsDone(): boolean {
    return this.#watch.rim >= this.#rimWanted;
  }

  /** kg of free water in sauce and cheese */
  get waterOnTop(): number {
    const { centre, pizza } = this.oven;
    let sum = 0;
    for (let i = pizza.centre.doughCells; i < centre.size; i++) sum += centre.water[i]!;
    return sum * pizza.centre.area;
  }

  save(): { readonly watch: Watch } {
    return { watch: { ...this.#watch, starch: this.#watch.starch.slice() } };
  }

  restore({ watch }: { readonly watch: Watch }): void {
    this.#watch.base = watch.base;
    this.#watch.rim = watch.rim;
    this.#watch.starch.set(watch.starch);
    this.#starchSet = 0;
  }

  record(force = false): void {
    const t = this.#trace;
    const now = this.oven.run.time;
    const last = t.seconds.at(-1) ?? -Infinity;
    // Close samples while the base shoots up, then one every five seconds.
    if (!force && now - last < (this.seconds < 30 ? 1 : 5)) return;
    if (now <= last) return;
    t.seconds.push(now);
    t.base.push(this.oven.centre.baseFace);
    t.crumb.push(this.crumb);
    t.cheeseTop.push(this.oven.centreTop);
    t.rimTop.push(this.oven.rimTop);
    t.baseLightness.push(this.baseLightness);
    t.rimLightness.push(this.rimLightness);
    t.layers.push(this.#layers());
  }

  #layers(): LayerSample[] {
    const { centre } = this.oven;
    const { cells } = this.oven.pizza.centre;
    const samples: LayerSample[] = [];
    for (let i = 0; i < cells.length;) {
      const { name } = cells[i]!.material;
      let [thickness, heat, water, solids] = [0, 0, 0, 0];
      const first = i;
      for (; i < cells.length && cells[i]!.material.name === name; i++) {
        thickness += cells[i]!.thickness;
        heat += centre.temperature[i]! * cells[i]!.thickness;
        water += centre.water[i]!;
        solids += cells[i]!.solids;
      }
      samples.push({
        layer: name,
        thickness,
        bottom: first === 0 ? centre.baseFace : centre.temperature[first]!,
        mean: heat / thickness,
        top: i === cells.length ? this.oven.centreTop : centre.temperature[i - 1]!,
        moisture: water / solids,
      });
    }
    return samples;
  }

  get trace(): BakeTrace {
    const { layers, ...numbers } = this.#trace;
    const take = (name: keyof typeof numbers): Float64Array => Float64Array.from(numbers[name]);
    return {
      seconds: take('seconds'),
      base: take('base'),
      crumb: take('crumb'),
      cheeseTop: take('cheeseTop'),
      rimTop: take('rimTop'),
      baseLightness: take('baseLightness'),
      rimLightness: take('rimLightness'),
      layers: layers.slice(),
    };
  }
}

/** K, of the cells from `first` up to `end` */
function coldest({ temperature }: PizzaColumn, first: number, end: number): number {
  let lowest = Infinity;
  for (let i = first; i < end; i++) if (temperature[i]! < lowest) lowest = temperature[i]!;
  return lowest;
}
