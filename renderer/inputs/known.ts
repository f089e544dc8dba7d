/** How far off an input may be where the cook knows it better than usual: one standard deviation each. */
import { usualSpread, type UncertainName } from '../../physics/evening/uncertain.ts';
import type { FieldSpec } from './fields.ts';

const labels: Readonly<Record<UncertainName, string>> = {
  thermostatOffset: 'Dial, off by',
  power: 'Elements, power',
  topShare: 'Top share in preheat',
  wallEmissivity: 'Walls, emissivity',
  convection: 'Air in the oven',
  vent: 'Vent flow',
  liner: 'Inner walls, mass',
  plateEmissivity: 'Plate, emissivity',
  thickness: 'Plate, thickness',
  contact: 'Contact with the plate',
  browning: 'Browning',
  density: 'Dough, density',
  crust: 'Crust, insulation',
};
const absolute = new Set<UncertainName>(['wallEmissivity', 'plateEmissivity']);

function field(name: UncertainName, label: string): FieldSpec {
  const path = `known.${name}`;
  if (name === 'thermostatOffset') return { path, label, step: 1, optional: 'usual' };
  if (absolute.has(name)) return { path, label, step: 0.01, optional: `usual ${String(usualSpread[name])}` };
  return {
    path,
    label,
    step: 1,
    unit: '%',
    optional: `usual ${String(Math.round(usualSpread[name] * 100))} %`,
  };
}

export const knownFields: readonly FieldSpec[] = Object.entries(labels).map(([name, label]) =>
  field(name as UncertainName, label),
);
