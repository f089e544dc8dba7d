/** Each group of inputs in one line. */
import { clockText, dayText } from '../words/clock.ts';
import { temperatureK } from '../words/figures.ts';
import {
  benchNames,
  cheeseNames,
  liquidNames,
  materialNames,
  presetNames,
  rackText,
  shadeWord,
  tiedTo,
  yeastNames,
} from '../words/names.ts';
import { showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';
import type { Evening } from '../../physics/evening/evening.ts';

export type GroupName = 'When' | 'Oven' | 'Plate' | 'Pizzas' | 'Dough' | 'Kitchen';

export function summaries(evening: Evening, units: UnitSystem): Record<GroupName, string> {
  const { anchor, oven, plate, pizzas, dough, kitchen } = evening;
  const { epochMilliseconds: at, offsetMinutes: offset } = anchor.time;
  const water = dough.liquid.map(
    ({ kind, percent }) => `${String(percent)} % ${liquidNames[kind].toLowerCase()}`,
  );
  const [cheese] = evening.toppings.cheese;
  const pizzaParts = [
    `${String(pizzas.count)} of ${showQuantity(pizzas.diameter, 'length', units)}`,
    shadeWord(pizzas.shadeLightness),
    benchNames[pizzas.bench].toLowerCase(),
    ...(cheese === undefined ? [] : [cheeseNames[cheese.kind].split(',')[0]!.toLowerCase()]),
  ];
  return {
    When: `${tiedTo[anchor.kind].name} ${clockText(at, offset)}, ${dayText(at, offset)}`,
    Oven: `${temperatureK(oven.setpoint, units)}, ${presetNames[oven.preset]}`,
    Plate: `${materialNames[plate.material]} ${showQuantity(plate.thickness, 'length', units)}, ${rackText(plate.rackHeight)}`,
    Pizzas: pizzaParts.join(', '),
    Dough: `${water.join(', ')}, ${yeastNames[dough.yeast.kind].toLowerCase()} yeast ${String(dough.yeast.percent)} %`,
    Kitchen: `${temperatureK(kitchen.roomTemperature, units)}, ${showQuantity(kitchen.altitude, 'length', units)} up`,
  };
}
