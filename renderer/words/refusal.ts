import type { Problem } from '../../physics/evening/problem.ts';

/** Why an entry was not taken, for the eye: `250 degC` as `250 °C`. */
export function refusalText({ found, allowed }: Pick<Problem, 'found' | 'allowed'>): string {
  return `Found ${found}; allowed ${allowed.replaceAll(/\s*deg([CF])\b/gu, ' °$1')}.`;
}
