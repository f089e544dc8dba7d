/** What can be opened: a file, a built-in evening, a plan of the program's own folder. */
import { FolderOpen } from 'lucide-react';
import { useState } from 'react';
import { Header as Heading, MenuItem, MenuSection } from 'react-aria-components';
import { HeadMenu } from './HeadMenu.tsx';
import { openPlan } from '../state/commands.ts';
import { listPlans, openExample, openListed } from '../state/documentStore.ts';
import { examples } from '../state/examples.ts';
import { pastClockText, dayText, epochOf, localOffset } from '../words/clock.ts';
import type { Answer } from '../../main/bridge.ts';

function changedText(changedAt: string): string {
  const at = epochOf(changedAt);
  const offset = localOffset(at);
  return `${dayText(at, offset)}, ${pastClockText(at, offset)}`;
}

export function OpenMenu() {
  const [plans, setPlans] = useState<Answer<'listPlans'>>([]);
  return (
    <HeadMenu
      name="Open"
      face={
        <>
          <FolderOpen aria-hidden="true" /> Open
        </>
      }
      onOpen={() => void listPlans().then(setPlans)}
      onChoose={(key) => {
        const chosen = examples.find(({ id }) => key === `example:${id}`);
        if (key === 'file') openPlan();
        else if (chosen !== undefined) openExample(chosen.id);
        else void openListed(key);
      }}
    >
      <MenuItem id="file">Open a file …</MenuItem>
      <MenuSection>
        <Heading>Open an example</Heading>
        {examples.map(({ id, title }) => (
          <MenuItem key={id} id={`example:${id}`}>
            {title}
          </MenuItem>
        ))}
      </MenuSection>
      {plans.length > 0 && (
        <MenuSection>
          <Heading>Your plans</Heading>
          {plans.slice(0, 20).map(({ document, name, changedAt }) => (
            <MenuItem key={document} id={document} textValue={name}>
              <span>{name}</span> <span className="small muted">{changedText(changedAt)}</span>
            </MenuItem>
          ))}
        </MenuSection>
      )}
    </HeadMenu>
  );
}
