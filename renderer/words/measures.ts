/** What is compared, as a cook says it, and its figures with their units. */
import { grams, temperatureC } from './figures.ts';
import { spanText } from './clock.ts';
import { showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';
import type { MeasureId } from '../../physics/evening/comparison.ts';

export interface MeasureWords {
  readonly name: string;
  /** which way is better; undefined where neither is */
  readonly better: 'less' | 'more' | undefined;
  readonly text: (value: number, units: UnitSystem) => string;
}

const span = (minutes: number): string => spanText(minutes);
const whole = (minutes: number): string => `${minutes.toFixed(0)} min`;

export const measureWords: Readonly<Record<MeasureId, MeasureWords>> = {
  preheat_min: { name: 'Plate ready after', better: 'less', text: whole },
  oven_signal_min: { name: 'Oven signals after', better: undefined, text: whole },
  plate_top_degC: { name: 'Plate then at', better: 'more', text: temperatureC },
  first_bake_min: { name: 'First bake', better: 'less', text: span },
  rim_finish_min: { name: 'Top heat the rim still needs', better: 'less', text: span },
  water_left_g: { name: 'Water left on top', better: undefined, text: grams },
  recovery_min: { name: 'Wait before the second', better: 'less', text: span },
  last_bake_min: { name: 'Last bake', better: 'less', text: span },
  evening_min: { name: 'Oven on until the last is cut', better: 'less', text: span },
  energy_kWh: { name: 'Energy', better: 'less', text: (kWh) => `${kWh.toFixed(2)} kWh` },
  plate_mass_kg: {
    name: 'Weight on the rack',
    better: 'less',
    text: (kg, units) => showQuantity(kg, 'mass', units, { unit: units === 'us' ? 'lb' : 'kg', decimals: 1 }),
  },
};
export const measureIds = Object.keys(measureWords) as readonly MeasureId[];
