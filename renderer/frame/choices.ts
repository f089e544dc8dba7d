/** What can be chosen for all plans, with the names it has everywhere. */
import type { Settings } from '../../main/bridge.ts';

export const themes: readonly { readonly id: Settings['theme']; readonly name: string }[] = [
  { id: 'system', name: 'As the system' },
  { id: 'flour', name: 'Flour, light' },
  { id: 'iron', name: 'Iron, dark' },
];
export const unitSystems: readonly { readonly id: Settings['units']; readonly name: string }[] = [
  { id: 'metric', name: '°C · metric' },
  { id: 'us', name: '°F · US' },
];
