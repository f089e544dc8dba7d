/** Kills programs in the midst of saving and looks what is left, as the next start of the product would see it. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { sweepTemporaries } from '../../main/files/atomicWrite.ts';
import { places } from '../../main/files/places.ts';
import { browserPlatform } from '../../main/platform.ts';
import { openServices } from '../../main/services.ts';
import { bundle, sourceOf } from './bundle.ts';
import { numberOf } from './checkedText.ts';

/** The calls to the disk of one save, one note in the list of recent plans and one keeping of unsaved work. */
export const callsOfARound = 40;

export interface Killed {
  kills: number;
  /** kills that left a temporary file, and so fell into the midst of a save */
  leftTemporary: number;
  /** saves and keepings that were acknowledged */
  acknowledged: number;
}

/** @throws Error when anything was torn or lost */
export async function killSaves(folder: string, kills: number, lanes: number): Promise<Killed> {
  const built = await bundle(join(folder, 'built'), { program: sourceOf('test/support/savingProgram.ts') });
  const total: Killed = { kills: 0, leftTemporary: 0, acknowledged: 0 };
  let next = 0;
  const lane = async (data: string): Promise<void> => {
    mkdirSync(data);
    while (next < kills) {
      const kill = next;
      next += 1;
      // Most right before a known call to the disk; every fifth from outside at any moment.
      const call = kill % 5 === 4 ? undefined : (kill - Math.floor(kill / 5)) % callsOfARound;
      const said = await killOnce(join(built, 'program.mjs'), data, call, (kill * 7) % 23);
      total.acknowledged += said.length;
      total.leftTemporary += (await lookAfter(data, said)) ? 1 : 0;
      total.kills += 1;
    }
  };
  await Promise.all(Array.from({ length: lanes }, (_, n) => lane(join(folder, `data-${n}`))));
  return total;
}

/** @returns the lines by which the program acknowledged what it had saved */
async function killOnce(
  program: string,
  data: string,
  call: number | undefined,
  wait: number,
): Promise<string[]> {
  const words = [program, data, ...(call === undefined ? [] : [String(call)])];
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  let complained = '';
  const closed = once(child, 'close');
  child.stderr.on('data', (part: Buffer) => (complained += part.toString('utf8')));
  const first = once(child.stdout, 'data');
  child.stdout.on('data', (part: Buffer) => (said += part.toString('utf8')));
  try {
    if (call === undefined) {
      await Promise.race([first, closed]);
      await pause(wait);
      child.kill('SIGKILL');
    }
    const [, signal] = (await closed) as [number | null, NodeJS.Signals | null];
    if (signal !== 'SIGKILL' || complained !== '')
      throw new Error(`the program ended by itself: ${complained}`);
  } finally {
    child.kill('SIGKILL');
  }
  return said.split('\n').filter((line) => line !== '');
}

/** The last number acknowledged with this word; undefined when there was none. */
function last(said: readonly string[], word: string): number | undefined {
  const line = said.findLast((one) => one.startsWith(word));
  return line === undefined ? undefined : Number(line.split(' ')[1]);
}

function within(what: string, n: number, allowed: readonly number[]): void {
  if (!allowed.includes(n)) throw new Error(`${what}: found number ${n}; allowed ${allowed.join(' or ')}`);
}

async function lookAfter(data: string, said: readonly string[]): Promise<boolean> {
  const own = places('linux', { HEARTHCLOCK_DATA: data }, data);
  const path = join(own.plans, 'plan.hearthclock');
  const saved = numberOf(readFileSync(path, 'utf8'));
  const acknowledged = last(said, 'saved');
  // The save after the last acknowledged one may be in place already, but nothing older.
  if (acknowledged !== undefined) within(path, saved, [acknowledged, acknowledged + 1]);
  if (existsSync(`${path}.bak`))
    within('.bak', numberOf(readFileSync(`${path}.bak`, 'utf8')), [saved - 1, saved]);

  const warnings: string[] = [];
  const warn = (message: string): void => void warnings.push(message);
  const platform = browserPlatform('serve');
  const { bridge } = await openServices({
    platform,
    places: own,
    version: '0.0.0-test',
    push: () => undefined,
    warn,
  });
  const [plan, ...others] = await bridge.listPlans(null);
  if (plan?.name !== 'plan' || others.length > 0)
    throw new Error('the next start does not list the one plan');
  within('the plan opened', numberOf((await bridge.openPlan({ document: plan.document })).text), [saved]);
  const { recovered } = await bridge.greet(null);
  const kept = last(said, 'kept');
  if (kept !== undefined) within('unsaved work', numberOf(recovered?.text ?? ''), [kept, kept + 1]);
  if (warnings.length > 0) throw new Error(warnings.join('\n'));

  let temporaries = 0;
  for (const one of [own.root, own.plans, own.unsaved]) {
    temporaries += (await sweepTemporaries(one, Date.now(), -1)).length;
  }
  const left = [...readdirSync(own.root), ...readdirSync(own.plans)].filter(
    (name) => !/^(plans|unsaved|recent\.json(\.bak)?|plan\.hearthclock(\.bak)?)$/.test(name),
  );
  if (left.length > 0) throw new Error(`found ${left.join(', ')} beside the plan`);
  return temporaries > 0;
}
