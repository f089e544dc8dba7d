/** The one door of the bridge: every host sends every call of the window through it. */
import * as v from 'valibot';
import { wording } from '../physics/evening/problem.ts';
import { calls, type Answer, type Bridge, type CallName } from './bridge.ts';

/** A call that is refused before any service sees it. `kind` is what an HTTP host turns into a status. */
export class Refusal extends Error {
  readonly kind: 'foreign' | 'unknown' | 'misshapen';
  constructor(kind: Refusal['kind'], message: string) {
    super(message);
    this.name = 'Refusal';
    this.kind = kind;
  }
}

function isCallName(name: string): name is CallName {
  return Object.hasOwn(calls, name);
}

async function run<K extends CallName>(bridge: Bridge, name: K, ask: unknown): Promise<Answer<K>> {
  const read = v.safeParse(calls[name].ask, ask);
  if (!read.success) {
    const lines = read.issues.map((issue) =>
      wording({
        path: [`bridge.${name}`, v.getDotPath(issue)].filter((part) => part !== null).join('.'),
        found: shortened(issue.received),
        allowed: issue.expected ?? issue.message,
      }),
    );
    throw new Refusal('misshapen', lines.join('\n'));
  }
  const answer: unknown = await bridge[name](read.output);
  return v.parse(calls[name].answer, answer);
}

function shortened(text: string): string {
  return text.length > 80 ? `${text.slice(0, 80)}…` : text;
}

/** A foreign sender, an unknown call or a misshapen request is refused aloud; so is an answer that breaks the contract. */
export async function answer(
  bridge: Bridge,
  fromOurWindow: boolean,
  name: string,
  ask: unknown,
): Promise<unknown> {
  if (!fromOurWindow) {
    throw new Refusal(
      'foreign',
      wording({
        path: 'bridge',
        found: `a call of ${JSON.stringify(shortened(name))} from a foreign page`,
        allowed: 'only calls from our own window',
      }),
    );
  }
  if (!isCallName(name)) {
    throw new Refusal(
      'unknown',
      wording({
        path: 'bridge',
        found: JSON.stringify(shortened(name)),
        allowed: Object.keys(calls).join(', '),
      }),
    );
  }
  return run(bridge, name, ask);
}
