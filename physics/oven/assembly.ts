/**
 * Puts an oven together: the cavity's surfaces with their view factors, walls, elements, and whatever stands in it
 * (nothing, a plate, a plate with a pizza). The same walls and the same order of nodes in every arrangement, so that a
 * state can be carried from one to the next.
 */
import type { Evening } from '../evening/evening.ts';
import type { Effects } from '../bake/parameters.ts';
import { pressureAtAltitude, saturationPressure } from '../materials/water.ts';
import type { PlateMaterial } from '../materials/plates.ts';
import { enclosureSides, plateArea, platePerimeter } from '../plate/geometry.ts';
import type { PlateLayout, PlateNodes } from '../plate/plateNodes.ts';
import type { OvenParameters } from './parameters.ts';
import { OvenNetwork } from './network.ts';
import {
  airNode,
  bottomElementNode,
  ceilingNode,
  doorNode,
  firstPlateNode,
  floorNode,
  sidesNode,
  topElementNode,
} from './networkParts.ts';
import type { ConvectingFace, Conductor } from './networkParts.ts';
import { partExchange } from './radiation.ts';
import type { RadiatingPart } from './radiation.ts';
import { cavityViewFactors } from './shading.ts';
import { WallStack, doorPanes, woolWall } from './wallStack.ts';

export type CavityView = ReturnType<typeof cavityViewFactors>;

/** What every arrangement of one oven shares: its parameters, its kitchen, its geometry. */
export interface OvenContext {
  readonly evening: Evening;
  readonly parameters: OvenParameters;
  readonly effects: Effects;
  /** Pa */
  readonly pressure: number;
  /** mole fraction of vapour in the kitchen: half saturated */
  readonly roomSteam: number;
  readonly emptyView: CavityView;
  readonly plateView: CavityView;
}

/**
 * Works out the geometry of cavity and plate, unless it is given.
 *
 * @param shared of the same cavity and plate, computed before
 * @throws OutOfRange for a plate that does not lie free in the cavity
 */
export function ovenContext(
  evening: Evening,
  parameters: OvenParameters,
  effects: Effects,
  shared?: { readonly emptyView: CavityView; readonly plateView: CavityView },
): OvenContext {
  const { cavity } = evening.oven;
  const { plate, kitchen } = evening;
  const pressure = pressureAtAltitude(kitchen.altitude);
  const underside = plate.rackHeight * cavity.height;
  const { thickness } = plate;
  const { width, depth } = enclosureSides(plate);
  return {
    evening,
    parameters,
    effects,
    pressure,
    roomSteam: (0.5 * saturationPressure(Math.max(kitchen.roomTemperature, 273.15))) / pressure,
    emptyView: shared?.emptyView ?? cavityViewFactors({ ...cavity, plate: undefined }),
    plateView:
      shared?.plateView ?? cavityViewFactors({ ...cavity, plate: { width, depth, thickness, underside } }),
  };
}

/** A pizza on the first column of a plate: the areas (m2) and surface nodes of its middle and its rim. */
export interface PizzaFaces {
  readonly centre: { readonly area: number; readonly node: number; readonly emissivity: number };
  readonly rim: { readonly area: number; readonly node: number; readonly emissivity: number };
}

export interface PlateInOven {
  readonly material: PlateMaterial;
  readonly layout: PlateLayout;
  readonly nodes: PlateNodes;
}

const surfaceIndex = {
  floor: 0,
  ceiling: 1,
  sides: 2,
  door: 3,
  plateUnder: 4,
  plateTop: 5,
  plateEdge: 6,
} as const;

/** m2 of rod surface: a heater is as long as its rated power and its surface load make it. */
function elementAreas({ evening, parameters }: OvenContext): {
  readonly bottom: number;
  readonly top: number;
} {
  const { power } = evening.oven;
  const { surfaceLoad } = parameters.element;
  return { bottom: power.bottom / surfaceLoad, top: power.top / surfaceLoad };
}

/** The network of this oven with a plate (or none) and a pizza (or none). */
export function assemble(
  context: OvenContext,
  plate: PlateInOven | undefined,
  pizza: PizzaFaces | undefined,
  spareNodes: number,
): OvenNetwork {
  const { evening, parameters, effects, pressure, roomSteam } = context;
  const { oven, kitchen } = evening;
  const { width, depth, height } = oven.cavity;
  const view = plate ? context.plateView : context.emptyView;
  const areas = view.areas;
  const wall = parameters.wallEmissivity;
  const parts: RadiatingPart[] = [
    { node: floorNode, surface: surfaceIndex.floor, share: 1, emissivity: wall },
    { node: ceilingNode, surface: surfaceIndex.ceiling, share: 1, emissivity: wall },
    { node: sidesNode, surface: surfaceIndex.sides, share: 1, emissivity: wall },
    { node: doorNode, surface: surfaceIndex.door, share: 1, emissivity: parameters.doorEmissivity },
  ];
  const horizontal = (width * depth) / (2 * (width + depth));
  const faces: ConvectingFace[] = [
    { node: floorNode, area: areas[0]!, facing: 'up', length: horizontal },
    { node: ceilingNode, area: areas[1]!, facing: 'down', length: horizontal },
    { node: sidesNode, area: areas[2]!, facing: 'vertical', length: height },
    { node: doorNode, area: areas[3]!, facing: 'vertical', length: height },
  ];
  if (plate) addPlate(parts, faces, context, plate, pizza);

  const exchange = partExchange(view.factors, areas, parts);
  const scale = effects.radiation ? 1 : 0;
  const a = [...exchange.links.a];
  const b = [...exchange.links.b];
  const area = exchange.links.area.map((g) => g * scale);
  const toRoom = [{ node: sidesNode, conductance: parameters.seamConductance }];
  const conductors: Conductor[] = [...(plate?.nodes.conductors ?? [])];
  addElements(context, parts, exchange.absorbed, { a, b, area }, conductors, toRoom);

  const wool = woolWall(parameters.woolThickness, parameters.outerCoefficient);
  const panes = doorPanes(
    parameters.doorGapConductance,
    parameters.doorPaneCapacity,
    parameters.outerCoefficient,
  );
  const start = oven.startTemperature;
  const nodes = firstPlateNode + (plate?.layout.nodes ?? 0) + spareNodes;
  const network = new OvenNetwork({
    nodes,
    room: kitchen.roomTemperature,
    pressure,
    cavity: oven.cavity,
    radiation: { a, b, area },
    faces,
    conductors,
    toRoom,
    stacks: [
      { node: floorNode, stack: new WallStack(wool, areas[0]!, start) },
      { node: ceilingNode, stack: new WallStack(wool, areas[1]!, start) },
      { node: sidesNode, stack: new WallStack(wool, areas[2]!, start) },
      { node: doorNode, stack: new WallStack(panes, areas[3]!, start) },
    ],
    start,
    forcedCoefficient: oven.fan ? parameters.fanCoefficient : undefined,
    convectionFactor: parameters.convectionFactor,
    circulation: parameters.circulation,
    roomSteam,
  });
  // An oven that was hot already: its walls fall off towards the kitchen, as after a bake.
  if (start !== kitchen.roomTemperature)
    for (const { stack } of network.setting.stacks) stack.rest(start, kitchen.roomTemperature);
  const C = network.capacity;
  C[floorNode] = parameters.linerCapacity * areas[0]!;
  C[ceilingNode] = parameters.linerCapacity * areas[1]!;
  C[sidesNode] = parameters.linerCapacity * areas[2]! + parameters.rackCapacity;
  C[doorNode] = parameters.doorPaneCapacity * areas[3]!;
  const rods = elementAreas(context);
  C[bottomElementNode] = parameters.element.capacity * rods.bottom;
  C[topElementNode] = parameters.element.capacity * rods.top;
  return network;
}

function addPlate(
  parts: RadiatingPart[],
  faces: ConvectingFace[],
  context: OvenContext,
  { material, layout }: PlateInOven,
  pizza: PizzaFaces | undefined,
): void {
  const { plate } = context.evening;
  const { thickness } = plate;
  const whole = plateArea(plate);
  const length = whole / platePerimeter(plate);
  const { emissivity } = material;
  layout.columns.forEach((column, k) => {
    const share = column.area / whole;
    parts.push({ node: column.under, surface: surfaceIndex.plateUnder, share, emissivity });
    faces.push({ node: column.under, area: column.area, facing: 'down', length });
    const covered = k === 0 ? pizza : undefined;
    const tops = covered
      ? [covered.centre, covered.rim]
      : [{ area: column.area, node: column.top, emissivity }];
    for (const top of tops) {
      parts.push({
        node: top.node,
        surface: surfaceIndex.plateTop,
        share: top.area / whole,
        emissivity: top.emissivity,
      });
      faces.push({ node: top.node, area: top.area, facing: 'up', length });
    }
  });
  // The edge belongs to the outer column, at mid-thickness.
  const outer = layout.columns.at(-1)!;
  const middle = outer.layers[Math.floor(outer.layers.length / 2)]!;
  parts.push({ node: middle, surface: surfaceIndex.plateEdge, share: 1, emissivity });
  faces.push({
    node: middle,
    area: platePerimeter(plate) * thickness,
    facing: 'vertical',
    length: thickness,
  });
}

/**
 * Elements are rods that radiate: half of it strikes the wall beside them, half goes on by that wall's own absorption
 * factors, so that the exchange areas of a rod add up to eps A. A hidden bottom element radiates to the floor sheet
 * alone and loses a little downwards. A burner has no node: its heat is a source of floor and air.
 */
function addElements(
  context: OvenContext,
  parts: readonly RadiatingPart[],
  absorbed: (part: number) => readonly number[],
  links: { a: number[]; b: number[]; area: number[] },
  conductors: Conductor[],
  toRoom: { node: number; conductance: number }[],
): void {
  const { parameters, evening, effects } = context;
  const { element } = parameters;
  const rods = elementAreas(context);
  const glow = element.emissivity * (effects.radiation ? 1 : 0);
  const join = (node: number, other: number, area: number): void => {
    links.a.push(node);
    links.b.push(other);
    links.area.push(area);
  };
  const radiate = (node: number, wallPart: number, rod: number): void => {
    const onward = absorbed(wallPart);
    parts.forEach((part, j) => {
      const area = glow * rod * (0.5 * onward[j]! + (j === wallPart ? 0.5 : 0));
      if (area > 0) join(node, part.node, area);
    });
  };
  const toAir = (node: number, rod: number): void => {
    conductors.push({ a: node, b: airNode, conductance: element.convection * rod });
  };
  radiate(topElementNode, surfaceIndex.ceiling, rods.top);
  toAir(topElementNode, rods.top);
  if (evening.oven.fuel === 'gas') return;
  if (evening.oven.bottomElement === 'exposed') {
    radiate(bottomElementNode, surfaceIndex.floor, rods.bottom);
    toAir(bottomElementNode, rods.bottom);
  } else {
    join(bottomElementNode, floorNode, glow * rods.bottom);
    toRoom.push({ node: bottomElementNode, conductance: element.lossBelow });
  }
}
