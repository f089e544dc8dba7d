import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** A window of three files for the tests of the shell: it listens for pushes and calls the bridge as the real one does. */
export function writeFixtureWindow(root: string): string {
  mkdirSync(join(root, 'assets'), { recursive: true });
  writeFileSync(
    join(root, 'index.html'),
    '<!doctype html><html lang="en"><title>Fixture</title><script type="module" src="./assets/page.js"></script></html>\n',
  );
  writeFileSync(
    join(root, 'assets', 'page.js'),
    `new EventSource('/bridge/events');
const answered = await fetch('/bridge/greet', {
  method: 'POST',
  headers: { 'x-hearthclock': '1', 'content-type': 'application/json' },
  body: JSON.stringify({ ask: null }),
});
document.title = (await answered.json()).answer.host;
`,
  );
  writeFileSync(join(root, 'assets', 'page.css'), 'body { margin: 0 }\n');
  return root;
}
