/** Starts the window. */
import './styles/all.ts';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { followTicks } from './amounts/ticks.ts';
import { followEvening } from './tonight/followEvening.ts';
import { bridge } from './bridgeClient.ts';
import { commands } from './state/commands.ts';
import { openDocument } from './state/documentStore.ts';
import { greet, keepWork } from './state/keptWork.ts';
import { followTheme, takeSettings } from './state/settingsStore.ts';
import { followPlan } from './state/simulation.ts';

const place = document.getElementById('window');
if (place === null) throw new Error('index.html: found no element "window"; allowed exactly one');
const root = createRoot(place);

function open(): void {
  followTheme((theme) => {
    root.render(
      <StrictMode>
        <App theme={theme} />
      </StrictMode>,
    );
  });
}

followPlan();
keepWork();
followTicks();
void greet(({ settings }) => {
  takeSettings(settings);
}).then(() => {
  followEvening();
  bridge.on('opened', openDocument);
  bridge.on('command', (name) => {
    commands[name]();
  });
});
// Labels are placed by their widths, so the shipped font comes first; a window without it is better than none.
document.fonts.load('13px "Inter Variable"').then(open, open);
