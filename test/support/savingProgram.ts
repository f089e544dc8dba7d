/**
 * Saves a plan and keeps unsaved work by the product's own services, again and again until it is killed: run as a
 * program of its own by the kill test. What was acknowledged is said at once, past any buffer of ours.
 *
 *     node savingProgram.mjs DATA [CALL]
 *
 * With CALL it kills itself right before that call to the disk, counted from its second save on.
 */
import { writeSync } from 'node:fs';
import { places } from '../../main/files/places.ts';
import { browserPlatform } from '../../main/platform.ts';
import { openServices } from '../../main/services.ts';
import { checkedText, numberOf } from './checkedText.ts';
import { faultyDisk } from './faultyDisk.ts';

const [data = '', call] = process.argv.slice(2);
let left = Infinity;
const disk = faultyDisk(() => {
  left -= 1;
  if (left < 0) process.kill(process.pid, 'SIGKILL');
  return undefined;
});
const { bridge } = await openServices({
  platform: browserPlatform('serve'),
  places: places('linux', { HEARTHCLOCK_DATA: data }, data),
  version: '0.0.0-test',
  push: () => undefined,
  warn: (message) => process.stderr.write(`${message}\n`),
  disk,
});

/** What was unsaved when the program before was killed is offered here and taken. */
await bridge.greet(null);
const listed = (await bridge.listPlans(null))[0]?.document;
const text = (n: number): string => checkedText(n, 20_000 + ((n * 77_777) % 60_000));
const opened = listed === undefined ? undefined : await bridge.openPlan({ document: listed });
const first = opened === undefined ? 1 : numberOf(opened.text) + 1;
const document =
  opened?.document ?? (await bridge.savePlanAs({ name: 'plan', text: text(0) }))?.document ?? '';

for (let n = first; ; n += 1) {
  if (n === first + 1 && call !== undefined) left = Number(call);
  await bridge.savePlan({ document, text: text(n) });
  writeSync(1, `saved ${n}\n`);
  await bridge.keepUnsaved({ text: text(n), offer: 'settled' });
  writeSync(1, `kept ${n}\n`);
}
