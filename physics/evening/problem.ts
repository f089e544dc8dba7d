/** One thing wrong with an input: where, what was found, what is allowed. Shown as `path: found …; allowed …`. */
export interface Problem {
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
}

/** The one wording of a problem, everywhere. */
export function wording({ path, found, allowed }: Problem): string {
  return `${path}: found ${found}; allowed ${allowed}`;
}

/** Thrown by physics functions whose arguments lie outside their validity. */
export class OutOfRange extends RangeError {
  readonly problem: Problem;
  constructor(path: string, found: string, allowed: string) {
    super(wording({ path, found, allowed }));
    this.name = 'OutOfRange';
    this.problem = { path, found, allowed };
  }
}
