/**
 * One size of pizza on the plate: the plate as a slab in two columns, under the pizza and around it, bare or covered.
 * Both networks share their nodes, so that one state serves both.
 */
import type { PizzaColumns } from '../bake/pizza.ts';
import { assemble } from '../oven/assembly.ts';
import type { OvenNetwork } from '../oven/network.ts';
import { firstPlateNode } from '../oven/networkParts.ts';
import type { PlateMaterial } from '../materials/plates.ts';
import { plateArea } from '../plate/geometry.ts';
import { PlateNodes, slabLayout } from '../plate/plateNodes.ts';
import type { PlateLayout } from '../plate/plateNodes.ts';
import type { EveningModel } from './model.ts';

/** a pizza has two columns, each with a surface node of its own behind those of the plate */
const spareNodes = 2;

/** factor on the conduction between the two columns that makes them one */
const asOne = 1e4;

/** The plate and the oven around it for one size of pizza. */
export interface Arrangement {
  readonly layout: PlateLayout;
  readonly plate: PlateNodes;
  readonly bare: OvenNetwork;
  readonly covered: OvenNetwork;
  readonly centreNode: number;
  readonly rimNode: number;
  /** places of the pizza's surfaces among the convecting faces */
  readonly faces: { readonly centre: number; readonly rim: number };
}

/**
 * Divides the plate for a pizza and assembles the oven around it, bare and covered.
 *
 * @param diameter m, of the pizza
 */
export function arrange(model: EveningModel, diameter: number, pizza: PizzaColumns): Arrangement {
  const { context, material, resolution, bake, plateModel } = model;
  const { plate: given } = context.evening;
  const whole = plateArea(given);
  const radius = diameter / 2;
  const covered = Math.PI * radius ** 2;
  // A stone conducts so poorly that its uppermost millimetres set the pace.
  const layers = (plateModel === 'slab' ? 3 : 1) * resolution.plateLayers;
  const layout = slabLayout([covered, whole - covered], layers);
  // Heat flows from the middle of the disc (its mean radius is two thirds) to the middle of the ring around it.
  const outerRadius = Math.sqrt(whole / Math.PI);
  const distance = radius / 3 + (outerRadius - radius) / 2;
  const lateral = ((2 * Math.PI * radius) / distance) * (context.effects.twoPlateColumns ? 1 : asOne);
  const nodes = new PlateNodes(layout, material, given.thickness, lateral);
  const plate = { material, layout, nodes };
  const centreNode = firstPlateNode + layout.nodes;
  const rimNode = centreNode + 1;
  const topped = pizza.centre.cells.length > pizza.centre.doughCells;
  const network = assemble(
    context,
    plate,
    {
      centre: {
        area: pizza.centre.area,
        node: centreNode,
        emissivity: topped ? bake.toppingEmissivity : bake.doughEmissivity,
      },
      rim: { area: pizza.rim.area, node: rimNode, emissivity: bake.doughEmissivity },
    },
    spareNodes,
  );
  const { faces } = network.setting;
  return {
    layout,
    plate: nodes,
    bare: assemble(context, plate, undefined, spareNodes),
    covered: network,
    centreNode,
    rimNode,
    faces: {
      centre: faces.findIndex(({ node }) => node === centreNode),
      rim: faces.findIndex(({ node }) => node === rimNode),
    },
  };
}

/** K of a mixture of two parts of a plate, by heat. @param share of the first */
function mixed(material: PlateMaterial, first: number, second: number, share: number): number {
  const heat = share * material.specificEnthalpy(first) + (1 - share) * material.specificEnthalpy(second);
  let T = share * first + (1 - share) * second;
  for (let i = 0; i < 4; i++) T -= (material.specificEnthalpy(T) - heat) / material.specificHeat(T);
  return T;
}

/**
 * Temperatures of the plate's nodes carried over to another division into columns: the part of the plate that changes
 * columns takes its heat along. From one column (the preheat's) both take theirs, each layer as its depth was.
 */
export function carryPlate(
  material: PlateMaterial,
  from: PlateLayout,
  old: Float64Array,
  to: PlateLayout,
  T: Float64Array,
): void {
  const [under, around] = from.columns;
  const outer = around ?? under!;
  const areas = to.columns.map(({ area }) => area);
  // share of each new column that was under the pizza before
  const before = under!.area;
  const inner = around === undefined ? 1 : Math.min(1, before / areas[0]!);
  const rest = around === undefined ? 0 : Math.max(0, before - areas[0]!) / areas[1]!;
  to.columns.forEach((column, k) => {
    const share = k === 0 ? inner : rest;
    const carry = (node: number, a: number, b: number): void => {
      T[node] = mixed(material, old[a]!, old[b]!, share);
    };
    carry(column.under, under!.under, outer.under);
    carry(column.top, under!.top, outer.top);
    column.layers.forEach((node, i) => {
      const at = Math.floor((i * under!.layers.length) / column.layers.length);
      carry(node, under!.layers[at]!, outer.layers[at]!);
    });
  });
}
