/** `npm run bench`: error and time side by side, in one run. `--json` for scripts, `--fine` makes the fine solution anew. */
import { cpus, totalmem } from 'node:os';
import { benchBand, benchEvening, benchFit, benchGrid, keepFineEvening } from './evening.ts';
import { benchNetwork } from './network.ts';
import { table } from './table.ts';
import { benchSize, benchStart } from './start.ts';
import { benchWindow } from './window.ts';

const say = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

async function main(): Promise<void> {
  if (process.argv.includes('--fine')) {
    say('making the fine solution, this takes a while');
    keepFineEvening();
  }
  const machine = `${cpus()[0]?.model ?? 'unknown'}, ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}`;
  say('network');
  const network = benchNetwork();
  say('evening');
  const evening = benchEvening();
  say('band, grid and fit');
  const band = benchBand();
  const grid = benchGrid();
  const fit = benchFit();
  say('start');
  const start = await benchStart();
  say('window');
  const { drag, memory, firstDraw } = await benchWindow();
  const all = {
    machine,
    network,
    evening,
    band,
    grid,
    fit,
    drag,
    start: { ...start, windowMilliseconds: firstDraw },
    bundleKB: benchSize(),
    memory,
  };
  process.stdout.write(
    process.argv.includes('--json') ? `${JSON.stringify(all, undefined, 2)}\n` : table(all),
  );
}

await main();
