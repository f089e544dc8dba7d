/** The oven from the first pizza on: the plate bare or with a pizza, pizza after pizza, each of its own size. */
import { PizzaColumn } from '../bake/column.ts';
import type { ColumnState } from '../bake/column.ts';
import { buildPizza } from '../bake/pizza.ts';
import type { PizzaColumns } from '../bake/pizza.ts';
import { OvenRun } from '../oven/ovenRun.ts';
import type { OvenState } from '../oven/ovenRun.ts';
import { firstPlateNode } from '../oven/networkParts.ts';
import type { OvenNetwork } from '../oven/network.ts';
import type { PlateLayout, PlateNodes } from '../plate/plateNodes.ts';
import { arrange, carryPlate } from './arrangement.ts';
import type { Arrangement } from './arrangement.ts';
import type { Evening } from './evening.ts';
import type { EveningModel } from './model.ts';
import { withPizza } from './onePizza.ts';
import { asKept } from './parBake.ts';
import type { KeptBase } from './parBake.ts';

export interface LoadedState {
  readonly oven: OvenState;
  readonly centre: ColumnState;
  readonly rim: ColumnState;
}

/** An oven in use: load, bake, unload, recover, and back to any state taken before. */
export class LoadedOven {
  readonly model: EveningModel;
  readonly run: OvenRun;
  /** the evening as if all pizzas were the one that is next or lies there */
  evening: Evening;
  pizza: PizzaColumns;
  /** a base baked ahead, when the pizza is one */
  kept: KeptBase | undefined;
  /** K, uppermost layer of the plate when the last pizza was laid down */
  plateTopAtLoad = NaN;
  centre: PizzaColumn;
  rim: PizzaColumn;
  #place: Arrangement;
  readonly #places = new Map<string, Arrangement>();

  /** @param from the oven in preheat, whose state is taken over; the first pizza is next */
  constructor(model: EveningModel, from: OvenRun) {
    this.model = model;
    this.evening = withPizza(model.evening, 1);
    this.pizza = this.#build(undefined);
    this.#place = this.#placeFor();
    this.run = new OvenRun(model.context, this.#place.bare, this.#place.plate, model.dial.target);
    from.plate!.sharpen(from.network);
    this.#takeOver(from.save(), from.plate!.layout);
    this.run.signalledAt = from.signalledAt;
    this.run.switchedOn.push(...from.switchedOn);
    [this.centre, this.rim] = this.#fresh();
  }

  /**
   * The bare oven made ready for another pizza, whose size may be another.
   *
   * @param evening as if all pizzas were that one; @param kept when its base was baked ahead
   */
  prepare(evening: Evening, kept?: KeptBase): void {
    if (evening === this.evening && kept === this.kept) return;
    this.evening = evening;
    this.kept = kept;
    this.pizza = this.#build(kept);
    const place = this.#placeFor();
    if (place === this.#place) return;
    const before = this.#place.layout;
    this.#place = place;
    this.run.plate!.sharpen(this.run.network);
    const state = this.run.save();
    this.run.network = place.bare;
    this.run.plate = place.plate;
    this.#takeOver(state, before);
  }

  #build(kept: KeptBase | undefined): PizzaColumns {
    const { bake, resolution, context } = this.model;
    const fresh = buildPizza(this.evening, bake, resolution.mesh, context.effects);
    return kept ? asKept(fresh, kept) : fresh;
  }

  #placeFor(): Arrangement {
    const { diameter } = this.evening.pizzas;
    const topped = this.pizza.centre.cells.length > this.pizza.centre.doughCells;
    const key = `${diameter} ${topped}`;
    const known = this.#places.get(key);
    if (known) return known;
    const made = arrange(this.model, diameter, this.pizza);
    this.#places.set(key, made);
    return made;
  }

  #takeOver(state: OvenState, layout: PlateLayout): void {
    const old = state.network.temperature;
    const shared = old.slice(0, firstPlateNode);
    const { bare, plate } = this.#place;
    this.run.load({ ...state, network: { ...state.network, temperature: shared } });
    carryPlate(this.model.material, layout, old, this.#place.layout, bare.temperature);
    plate.take(bare);
  }

  #fresh(): [PizzaColumn, PizzaColumn] {
    const { bake, context } = this.model;
    const { effects } = context;
    const { layout, plate, centreNode, rimNode, faces } = this.#place;
    const common = {
      plateNode: layout.columns[0]!.layers.at(-1)!,
      pressure: context.pressure,
      evaporation: effects.evaporation,
      vapourInside: effects.vapourInside,
      cavityHumidity: effects.cavityHumidity,
      contactResistance: this.contactResistance + 1 / plate.topHalfConductance(0, this.run.network),
    };
    const covered = effects.fatCover && this.evening.toppings.cheese.some((part) => part.mass > 0);
    return [
      new PizzaColumn({
        ...common,
        cells: this.pizza.centre.cells,
        area: this.pizza.centre.area,
        surfaceNode: centreNode,
        convectingFace: faces.centre,
        evaporationFactor: covered ? bake.fatCover : 1,
      }),
      new PizzaColumn({
        ...common,
        cells: this.pizza.rim.cells,
        area: this.pizza.rim.area,
        surfaceNode: rimNode,
        convectingFace: faces.rim,
        evaporationFactor: 1,
      }),
    ];
  }

  /** m2 K/W between dough and plate, beyond half a layer of the plate */
  get contactResistance(): number {
    const { bake } = this.model;
    return 1 / bake.contactConductance + bake.benchResistance[this.evening.pizzas.bench];
  }

  /** A new pizza on the plate. */
  load(): void {
    this.plateTopAtLoad = this.plateTop;
    [this.centre, this.rim] = this.#fresh();
    const { covered, centreNode, rimNode } = this.#place;
    this.#switchTo(covered);
    const T = covered.temperature;
    T[centreNode] = this.centre.temperature.at(-1)!;
    T[rimNode] = this.rim.temperature.at(-1)!;
    covered.columns = [this.centre, this.rim];
    covered.allowedStrain = this.model.resolution.allowedStrain;
  }

  /** The paper pulled out from under the pizza: what is left between is the bare contact. */
  pullParchment(): void {
    const gone = this.model.bake.benchResistance.parchment;
    for (const column of [this.centre, this.rim]) column.setting.contactResistance -= gone;
  }

  /** The pizza off the plate. */
  unload(): void {
    const { covered, bare, layout } = this.#place;
    covered.columns = [];
    const T = covered.temperature;
    const under = layout.columns[0]!;
    T[under.top] = T[under.layers.at(-1)!]!;
    this.#switchTo(bare);
  }

  #switchTo(network: OvenNetwork): void {
    if (this.run.network === network) return;
    network.load(this.run.network.save());
    this.run.network = network;
  }

  get plate(): PlateNodes {
    return this.#place.plate;
  }

  /** K, uppermost layer of the plate under the pizza */
  get plateTop(): number {
    return this.run.network.temperature[this.#place.layout.columns[0]!.layers.at(-1)!]!;
  }

  /** K, top of the rim and of the middle */
  get rimTop(): number {
    return this.run.network.temperature[this.#place.rimNode]!;
  }
  get centreTop(): number {
    return this.run.network.temperature[this.#place.centreNode]!;
  }

  get covered(): boolean {
    return this.run.network === this.#place.covered;
  }

  save(): LoadedState {
    return { oven: this.run.save(), centre: this.centre.save(), rim: this.rim.save() };
  }

  /** Takes up a saved state of the same arrangement (bare, or with the pizza that lies there now). */
  restore(state: LoadedState): void {
    this.run.load(state.oven);
    this.centre.load(state.centre);
    this.rim.load(state.rim);
  }

  /** Takes up a state saved while the plate was bare and this pizza next, whatever lies there now. */
  restoreBare(state: OvenState): void {
    this.#place.covered.columns = [];
    this.run.network = this.#place.bare;
    this.run.load(state);
  }
}
