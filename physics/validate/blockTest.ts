/**
 * The energy test of North American ovens: a block of aluminium, black anodised, is heated by 130 K in an oven that is
 * set 181 K above the room, all from cold. Efficiency is the block's heat over the energy put in.
 *
 * Source: 10 CFR 430, subpart B, appendix I, in its form of the 1990s: 8.5 lb, 6.25 in across, 234 and 325 degF of rise
 * (from memory).
 */
import { allEffects } from '../bake/parameters.ts';
import { plateMaterial } from '../materials/plates.ts';
import type { PlanFile } from '../evening/planFile.ts';
import { assemble, ovenContext } from '../oven/assembly.ts';
import { firstPlateNode } from '../oven/networkParts.ts';
import { OvenRun } from '../oven/ovenRun.ts';
import { parametersOf } from '../oven/parameters.ts';
import { readDial } from '../oven/settled.ts';
import { plateArea } from '../plate/geometry.ts';
import { PlateNodes, lumpedLayout } from '../plate/plateNodes.ts';
import { eveningFor, step } from './ovens.ts';

const mass = 8.5 * 0.45359237;
const density = 2700;
/** J/(kg K), aluminium near 90 degC */
const specificHeat = 940;
const blockRise = 234 / 1.8;
const ovenRise = 325 / 1.8;
const room = 25;
const across = 6.25 * 0.0254;
const longest = 4 * 3600;

/** Share of the energy that the block has taken up when it is done. @param height m, of the cavity */
export function blockEfficiency(oven: NonNullable<PlanFile['oven']>, height: number): number {
  const thickness = mass / density / ((Math.PI / 4) * across ** 2);
  const evening = eveningFor({
    kitchen: { roomTemperature: `${room} degC`, altitude: '0 m' },
    oven: { ...oven, setpoint: `${(room + ovenRise).toFixed(1)} degC` },
    plate: {
      material: 'custom',
      density: `${density} kg/m3`,
      specificHeat: `${specificHeat} J/(kg K)`,
      thermalConductivity: '200 W/(m K)',
      // anodised 0.84 (engineering data page)
      emissivity: 0.84,
      shape: 'round',
      diameter: `${across} m`,
      thickness: `${thickness} m`,
      rackHeight: Number(((height - thickness) / 2 / height).toFixed(3)),
    },
    pizzas: { diameter: '12 cm', ballMass: '60 g' },
  });
  const context = ovenContext(evening, parametersOf(evening.oven), allEffects);
  const { plate } = evening;
  const material = plateMaterial(plate.material, plate.surface, plate.custom);
  const layout = lumpedLayout(plateArea(plate));
  const nodes = new PlateNodes(layout, material, plate.thickness, 0);
  const network = assemble(context, { material, layout, nodes }, undefined, 0);
  const run = new OvenRun(context, network, nodes, readDial(context, step).target);
  const start = network.temperature[firstPlateNode]!;
  while (network.temperature[firstPlateNode]! < start + blockRise && run.time < longest) run.step(step);
  return (mass * specificHeat * blockRise) / network.ledger.supplied;
}
