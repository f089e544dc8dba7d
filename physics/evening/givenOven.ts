/**
 * A bake between boundaries that are given and stay: a floor and a vault as warm as someone measured them. For ovens
 * that this program does not heat up itself, such as a wood-fired one whose masonry hardly changes during a bake.
 */
import { firstPlateNode, airNode } from '../oven/networkParts.ts';
import { BakeWatcher } from './bakeWatcher.ts';
import type { Evening } from './evening.ts';
import { LoadedOven } from './loadedOven.ts';
import { prepareModel } from './model.ts';
import type { ModelOptions } from './model.ts';
import { startPreheat } from './preheat.ts';

/** J/K that a vault is given so that a bake does not change it */
const unmoved = 1e12;

/** K */
export interface Boundaries {
  /** the plate, through and through, when the pizza is laid down */
  readonly floor: number;
  /** walls, and the air between them */
  readonly vault: number;
}

/** A pizza just laid down there; cavity and plate are those of the evening. Take its steps as you would any bake's. */
export function bakeBetween(
  evening: Evening,
  { floor, vault }: Boundaries,
  options: ModelOptions = {},
): BakeWatcher {
  const model = prepareModel(evening, options);
  const oven = new LoadedOven(model, startPreheat(model));
  const { run } = oven;
  run.network.temperature.fill(vault, 0, firstPlateNode);
  run.network.temperature.fill(floor, firstPlateNode);
  for (const { stack } of run.network.setting.stacks) stack.temperature.fill(vault);
  run.plate!.take(run.network);
  oven.load();
  run.network.capacity.fill(unmoved, airNode, firstPlateNode);
  return new BakeWatcher(oven);
}
