/** Watches a pizza while it lies on the plate: browning of base and rim, starch of the crumb, what is done and what not. */
import type { BrowningLaw } from '../bake/browning.ts';
import { zanoni1995 } from '../bake/browning.ts';
import { gelatinisationRate } from '../bake/crumb.ts';
import type { PizzaColumn } from '../bake/column.ts';
import type { LoadedOven } from './loadedOven.ts';
import type { BakeTrace, LayerSample } from './run.ts';

/** share of the starch of the coldest place that must be gelatinised for the crumb to count as done; our definition */
const crumbDone = 0.98;

interface Watch {
  /** integrals of the browning rate of base and rim, each with its rate at the last step */
  base: number;
  rim: number;
  /** -ln(1 - share of starch gelatinised) of each dough cell */
  readonly starch: Float64Array;
}

const law: BrowningLaw = zanoni1995;

/** s; steps that end a bake are no shorter */
const shortest = 0.05;

/** What each condition still lacks: browning integral, -ln of raw starch, kelvin of the cheese; 0 or less when met. */
interface Lacking {
  readonly base: number;
  readonly crumb: number;
  readonly top: number;
}

/** s; `full` is the step of the middle of a bake, `branch` for what is only looked at and not gone on from */
function stepAt(sinceLoad: number, full: number, branch: boolean): number {
  // Contact with a hot plate changes the base by tens of kelvin in the first seconds; later the crust moves slowly.
  if (sinceLoad < 2) return full / 5;
  if (sinceLoad < 20) return full / 2;
  if (sinceLoad < 120) return full;
  return branch ? 4 * full : 2 * full;
}

export class BakeWatcher {
  readonly oven: LoadedOven;
  readonly #watch: Watch;
  readonly loadedAt: number;
  readonly #shadeIntegral: number;
  #lacking: Lacking | undefined;
  /** s until all is done, by the rates of the last step */
  #left = Infinity;
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
    this.oven = oven;
    this.loadedAt = oven.run.time;
    this.#watch = { base: 0, rim: 0, starch: new Float64Array(oven.pizza.centre.doughCells) };
    this.#shadeIntegral = law.integralFor(oven.model.evening.pizzas.shadeLightness);
  }

  /** Takes one step of the bake, to its end where that comes sooner, and lets base, rim and crumb get on. */
  step(branch = false): number {
    const { oven } = this;
    const { browningFactor } = oven.model.bake;
    const watch = this.#watch;
    const before = { base: oven.centre.baseFace, rim: oven.rimTop };
    const usual = stepAt(oven.run.time - this.loadedAt, oven.model.resolution.bakeStep, branch);
    const dt = oven.run.step(Math.min(usual, Math.max(this.#left, shortest)));
    const baseActivity = oven.centre.activity(0);
    const rimActivity = oven.rim.activity(oven.rim.size - 1);
    const mean = (a: number, b: number, activity: number): number =>
      (browningFactor * (law.rate(a, activity) + law.rate(b, activity))) / 2;
    watch.base += dt * mean(before.base, oven.centre.baseFace, baseActivity);
    watch.rim += dt * mean(before.rim, oven.rimTop, rimActivity);
    for (let i = 0; i < watch.starch.length; i++)
      watch.starch[i]! += dt * gelatinisationRate(oven.centre.temperature[i]!);
    this.#forecast(dt);
    return dt;
  }

  #forecast(dt: number): void {
    const before = this.#lacking;
    const now = this.#whatLacks();
    this.#lacking = now;
    this.#left = Infinity;
    if (before === undefined) return;
    let left = 0;
    for (const name of ['base', 'crumb', 'top'] as const) {
      if (now[name] <= 0) continue;
      const gained = before[name] - now[name];
      left = Math.max(left, gained > 0 ? (now[name] / gained) * dt : Infinity);
    }
    // What is done may lie on: then nothing ends the steps.
    if (left > 0) this.#left = left;
  }

  #whatLacks(): Lacking {
    const { meltTemperature } = this.oven.model.bake;
    let rawest = Infinity;
    for (const integral of this.#watch.starch) rawest = Math.min(rawest, integral);
    return {
      base: this.#shadeIntegral - this.#watch.base,
      crumb: -Math.log(1 - crumbDone) - rawest,
      top: meltTemperature - this.cheese,
    };
  }

  get seconds(): number {
    return this.oven.run.time - this.loadedAt;
  }
  get baseLightness(): number {
    return law.lightness(this.#watch.base);
  }
  get rimLightness(): number {
    return law.lightness(this.#watch.rim);
  }
  /** K, coldest place of the dough in the middle and of the cheese (or of the top where there is none) */
  get crumb(): number {
    return coldest(this.oven.centre, (i) => i < this.oven.pizza.centre.doughCells);
  }
  get cheese(): number {
    const { cells } = this.oven.pizza.centre;
    if (cells.at(-1)!.material.name !== 'cheese') return this.oven.centreTop;
    return coldest(this.oven.centre, (i) => cells[i]!.material.name === 'cheese');
  }

  /** Which conditions are met; the bake is over when all are. */
  done(): { readonly base: boolean; readonly crumb: boolean; readonly top: boolean } {
    const { base, crumb, top } = this.#whatLacks();
    return { base: base <= 0, crumb: crumb <= 0, top: top <= 0 };
  }

  rimIsDone(): boolean {
    const { evening, bake } = this.oven.model;
    return this.rimLightness <= evening.pizzas.shadeLightness + bake.rimLighter;
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
    this.#lacking = undefined;
    this.#left = Infinity;
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

function coldest(column: PizzaColumn, belongs: (cell: number) => boolean): number {
  let lowest = Infinity;
  for (let i = 0; i < column.size; i++) if (belongs(i)) lowest = Math.min(lowest, column.temperature[i]!);
  return lowest;
}
