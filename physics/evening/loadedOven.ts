/**
 * The oven from the first pizza on: the plate as a slab in two columns, under the pizza and around it, bare or with a
 * pizza. Both arrangements share their nodes, so that one state serves both.
 */
import { PizzaColumn } from '../bake/column.ts';
import type { ColumnState } from '../bake/column.ts';
import { buildPizza } from '../bake/pizza.ts';
import type { PizzaColumns } from '../bake/pizza.ts';
import { assemble } from '../oven/assembly.ts';
import { OvenRun } from '../oven/ovenRun.ts';
import type { OvenState } from '../oven/ovenRun.ts';
import { firstPlateNode } from '../oven/networkParts.ts';
import type { OvenNetwork } from '../oven/network.ts';
import { plateArea } from '../plate/geometry.ts';
import { PlateNodes, slabLayout } from '../plate/plateNodes.ts';
import type { PlateLayout } from '../plate/plateNodes.ts';
import type { EveningModel } from './model.ts';

/** a pizza has two columns, each with a surface node of its own behind those of the plate */
const spareNodes = 2;

export interface LoadedState {
  readonly oven: OvenState;
  readonly centre: ColumnState;
  readonly rim: ColumnState;
}

export class LoadedOven {
  readonly model: EveningModel;
  readonly run: OvenRun;
  readonly pizza: PizzaColumns;
  centre: PizzaColumn;
  rim: PizzaColumn;
  readonly #bare: OvenNetwork;
  readonly #covered: OvenNetwork;
  readonly #plate: PlateNodes;
  readonly #layout: PlateLayout;
  readonly #faces: { centre: number; rim: number };
  readonly #centreNode: number;
  readonly #rimNode: number;

  /** @param from the oven in preheat, whose state is taken over: each layer of both columns as warm as its depth was */
  constructor(model: EveningModel, from: OvenRun) {
    const { context, material, resolution, bake, evening, plateModel } = model;
    const { thickness } = evening.plate;
    this.model = model;
    this.pizza = buildPizza(evening, bake, resolution.mesh);
    const whole = plateArea(evening.plate);
    const radius = evening.pizzas.diameter / 2;
    const covered = Math.PI * radius ** 2;
    // A stone conducts so poorly that its uppermost millimetres set the pace.
    const layers = (plateModel === 'slab' ? 3 : 1) * resolution.plateLayers;
    this.#layout = slabLayout([covered, whole - covered], layers);
    // Heat flows from the middle of the disc (its mean radius is two thirds) to the middle of the ring around it.
    const outerRadius = Math.sqrt(whole / Math.PI);
    const distance = radius / 3 + (outerRadius - radius) / 2;
    this.#plate = new PlateNodes(this.#layout, material, thickness, (2 * Math.PI * radius) / distance);
    this.#centreNode = firstPlateNode + this.#layout.nodes;
    this.#rimNode = this.#centreNode + 1;
    const plate = { material, layout: this.#layout, nodes: this.#plate };
    this.#bare = assemble(context, plate, undefined, spareNodes);
    this.#covered = assemble(
      context,
      plate,
      {
        centre: {
          area: this.pizza.centre.area,
          node: this.#centreNode,
          emissivity:
            this.pizza.centre.cells.length > this.pizza.centre.doughCells
              ? bake.toppingEmissivity
              : bake.doughEmissivity,
        },
        rim: { area: this.pizza.rim.area, node: this.#rimNode, emissivity: bake.doughEmissivity },
      },
      spareNodes,
    );
    const { faces } = this.#covered.setting;
    this.#faces = {
      centre: faces.findIndex((face) => face.node === this.#centreNode),
      rim: faces.findIndex((face) => face.node === this.#rimNode),
    };
    this.run = new OvenRun(context, this.#bare, this.#plate, model.dial.target);
    this.#takeOver(from);
    [this.centre, this.rim] = this.#fresh();
  }

  #takeOver(from: OvenRun): void {
    const state = from.save();
    const shared = state.network.temperature.slice(0, firstPlateNode);
    this.run.load({ ...state, network: { ...state.network, temperature: shared } });
    this.run.signalledAt = from.signalledAt;
    this.run.switchedOn.push(...from.switchedOn);
    const source = from.plate!.layout.columns[0]!;
    const T = this.#bare.temperature;
    const old = state.network.temperature;
    for (const column of this.#layout.columns) {
      T[column.under] = old[source.under]!;
      T[column.top] = old[source.top]!;
      column.layers.forEach((node, i) => {
        const k = Math.floor((i * source.layers.length) / column.layers.length);
        T[node] = old[source.layers[k]!]!;
      });
    }
    this.#plate.take(this.#bare);
  }

  #fresh(): [PizzaColumn, PizzaColumn] {
    const { bake, context, evening } = this.model;
    const resistance = 1 / bake.contactConductance + bake.benchResistance[evening.pizzas.bench];
    const common = {
      plateNode: this.#layout.columns[0]!.layers.at(-1)!,
      pressure: context.pressure,
      evaporation: context.effects.evaporation,
      contactResistance: resistance + 1 / this.#plate.topHalfConductance(0, this.run.network),
    };
    const hasCheese = evening.toppings.cheese.some((part) => part.mass > 0);
    return [
      new PizzaColumn({
        ...common,
        cells: this.pizza.centre.cells,
        area: this.pizza.centre.area,
        surfaceNode: this.#centreNode,
        convectingFace: this.#faces.centre,
        evaporationFactor: hasCheese ? bake.fatCover : 1,
      }),
      new PizzaColumn({
        ...common,
        cells: this.pizza.rim.cells,
        area: this.pizza.rim.area,
        surfaceNode: this.#rimNode,
        convectingFace: this.#faces.rim,
        evaporationFactor: 1,
      }),
    ];
  }

  /** m2 K/W between dough and plate, beyond half a layer of the plate */
  get contactResistance(): number {
    const { bake, evening } = this.model;
    return 1 / bake.contactConductance + bake.benchResistance[evening.pizzas.bench];
  }

  /** A new pizza on the plate. */
  load(): void {
    [this.centre, this.rim] = this.#fresh();
    this.#switchTo(this.#covered);
    const T = this.#covered.temperature;
    T[this.#centreNode] = this.centre.temperature.at(-1)!;
    T[this.#rimNode] = this.rim.temperature.at(-1)!;
    this.#covered.columns = [this.centre, this.rim];
  }

  /** The pizza off the plate. */
  unload(): void {
    this.#covered.columns = [];
    const T = this.#covered.temperature;
    const under = this.#layout.columns[0]!;
    T[under.top] = T[under.layers.at(-1)!]!;
    this.#switchTo(this.#bare);
  }

  #switchTo(network: OvenNetwork): void {
    if (this.run.network === network) return;
    network.load(this.run.network.save());
    this.run.network = network;
  }

  get plate(): PlateNodes {
    return this.#plate;
  }

  /** K, uppermost layer of the plate under the pizza */
  get plateTop(): number {
    return this.run.network.temperature[this.#layout.columns[0]!.layers.at(-1)!]!;
  }

  /** K, top of the rim and of the middle */
  get rimTop(): number {
    return this.run.network.temperature[this.#rimNode]!;
  }
  get centreTop(): number {
    return this.run.network.temperature[this.#centreNode]!;
  }

  get covered(): boolean {
    return this.run.network === this.#covered;
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

  /** Takes up a state saved while the plate was bare, whatever lies there now. */
  restoreBare(state: OvenState): void {
    this.#covered.columns = [];
    this.run.network = this.#bare;
    this.run.load(state);
  }
}
