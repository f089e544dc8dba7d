/** Cheeses as the list of parts shows them. */
import { showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';
import type { CheesePart } from '../../physics/evening/evening.ts';
import type { Part } from './PartList.tsx';

/** @param written the same list as the plan file has it; undefined where it leaves it out */
export function cheeseParts(
  cheese: readonly CheesePart[],
  written: readonly { readonly mass: string }[] | undefined,
  units: UnitSystem,
): readonly Part[] {
  return cheese.map(({ kind, mass, waterShare }, index) => ({
    kind,
    amount: written?.[index]?.mass ?? showQuantity(mass, 'mass', units),
    si: mass,
    waterShare,
  }));
}

/** What "Add cheese" adds. */
export function freshCheese(units: UnitSystem): { readonly kind: string; readonly mass: string } {
  return { kind: 'hard', mass: units === 'us' ? '0.5 oz' : '15 g' };
}
