/** What this program is, how far to trust it, and under which licences it and its parts are. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { Sheet } from './Sheet.tsx';
import { useDocument } from '../state/documentStore.ts';

const beside = 'They lie in the folder “licences” beside the program.';

/** The file that the build puts beside the window; a packaged program has it in a folder of its own. */
async function readLicences(): Promise<string> {
  try {
    const answer = await fetch('./licences.txt');
    return answer.ok ? await answer.text() : beside;
  } catch {
    return beside;
  }
}

/** Read when they are asked for; whoever pressed the key by keyboard then stands on them. */
function Licences() {
  const [text, setText] = useState<string>();
  return text === undefined ? (
    <Button className="key framed" onPress={() => void readLicences().then(setText)}>
      Show those licences
    </Button>
  ) : (
    <pre
      className="licences"
      tabIndex={0}
      aria-label="Licences of what others wrote"
      ref={(element) => {
        element?.focus();
      }}
    >
      {text}
    </pre>
  );
}

export function AboutSheet() {
  const version = useDocument((state) => state.greeting?.version);
  return (
    <Sheet id="about" heading="About Hearthclock" wide>
      <div className="about">
        <p>
          {version === undefined ? '' : `Version ${version}. `}
          Plans a home pizza evening: when to switch the oven on, how long each pizza bakes on your steel or
          stone, and when the dough is ready.
        </p>
        <p>
          Its figures are estimates of a model of an ordinary oven: watch the pizza, not the clock. What the
          makers of oven and plate say, and local rules, come before anything said here.
        </p>
        <p>Plans, settings and learned ovens stay on this machine; nothing is sent anywhere.</p>
        <p>
          Hearthclock is free under the MIT licence. Parts of it others wrote, under licences of their own.
        </p>
        <Licences />
      </div>
    </Sheet>
  );
}
