/** What can be given to others: the page, the recipe, the calendar, the curves, the plan. */
import { FileOutput } from 'lucide-react';
import { useState } from 'react';
import { Header as Heading, MenuItem, MenuSection } from 'react-aria-components';
import { handOut } from './handOut.ts';
import { HeadMenu } from '../frame/HeadMenu.tsx';
import { downloadCopy } from '../state/downloads.ts';
import { handoutIds, type HandoutId } from '../../physics/handout/files.ts';

type Choice = readonly [id: HandoutId, name: string];

const sections: readonly { readonly heading: string; readonly choices: readonly Choice[] }[] = [
  {
    heading: 'For the kitchen',
    choices: [
      ['page', 'Page for the fridge'],
      ['calendar', 'Calendar with alarms'],
      ['plan', 'The plan itself'],
    ],
  },
  {
    heading: 'For a recipe, with other ovens',
    choices: [
      ['block-html', 'Recipe block, HTML'],
      ['block-markdown', 'Recipe block, Markdown'],
      ['block-text', 'Recipe block, plain text'],
      ['recipe', 'Recipe for other programs'],
    ],
  },
  {
    heading: 'Figures',
    choices: [
      ['curves', 'Curves, CSV'],
      ['curves-spreadsheet', 'Curves, CSV with decimal commas'],
    ],
  },
];

export function HandoutMenu() {
  const [making, setMaking] = useState(false);
  const act = (key: string): void => {
    const id = handoutIds.find((known) => known === key);
    if (id === 'plan') downloadCopy();
    else if (id !== undefined) {
      setMaking(true);
      void handOut(id).finally(() => {
        setMaking(false);
      });
    }
  };
  return (
    <HeadMenu
      name="Hand out"
      busy={making}
      face={
        <>
          <FileOutput aria-hidden="true" /> <span className="widest">Hand out</span>
        </>
      }
      onChoose={act}
    >
      {sections.map(({ heading, choices }) => (
        <MenuSection key={heading}>
          <Heading>{heading}</Heading>
          {choices.map(([id, name]) => (
            <MenuItem key={id} id={id}>
              {name}
            </MenuItem>
          ))}
        </MenuSection>
      ))}
    </HeadMenu>
  );
}
