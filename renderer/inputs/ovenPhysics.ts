/** The figures of an oven that its preset supplies and a plan may replace, one by one. */
import type { FieldSpec } from './fields.ts';
import type { OvenPhysicsFile } from '../../physics/evening/planFile.ts';

const labels: Readonly<Record<keyof OvenPhysicsFile, string>> = {
  linerCapacity: 'Liner, heat capacity',
  rackCapacity: 'Racks, heat capacity',
  woolThickness: 'Insulation, thickness',
  outerCoefficient: 'Outer face to the room',
  doorPaneCapacity: 'Door panes, heat capacity',
  doorGapConductance: 'Gap between the panes',
  seamConductance: 'Seams, loss',
  ventFlow: 'Vent flow',
  wallEmissivity: 'Walls, emissivity',
  doorEmissivity: 'Door, emissivity',
  elementLoad: 'Elements, load of surface',
  elementEmissivity: 'Elements, emissivity',
  elementCapacity: 'Elements, heat capacity',
  elementConvection: 'Elements to the air',
  elementLossBelow: 'Lost below the floor',
  burnerToFloor: 'Burner heat into the floor',
  burnerAir: 'Burner air, times needed',
  preheatShareBottom: 'Preheat, bottom share',
  preheatShareTop: 'Preheat, top share',
  holdShareBottom: 'Holding, bottom share',
  holdShareTop: 'Holding, top share',
  sensorLag: 'Sensor lag',
  sensorHalfBand: 'Thermostat, half band',
  sensorWallShare: 'Sensor sees walls, share',
  circulation: 'Still air, stirring',
  fanCoefficient: 'Fan, heat transfer',
};

export const ovenPhysicsFields: readonly FieldSpec[] = Object.entries(labels).map(([name, label]) => ({
  path: `oven.physics.${name}`,
  label,
  optional: 'preset',
}));
