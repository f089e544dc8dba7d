/** The built-in evenings, on a day that is still to come. */
import { demoIds, upcoming, type DemoId } from '../../physics/evening/demos.ts';
import { localOffset } from '../words/clock.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';

export type { DemoId } from '../../physics/evening/demos.ts';

export function example(id: DemoId): PlanFile {
  const now = Date.now();
  return upcoming(id, now, localOffset(now), localOffset);
}

export const examples: readonly { readonly id: DemoId; readonly title: string }[] = demoIds.map((id) => ({
  id,
  title: example(id).title ?? id,
}));

/** What stands in the window at a first start. */
export const demoPlan: PlanFile = example('saturday');
