/** The three answers, and where each comes from. */
import { memo } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Popover } from 'react-aria-components';
import { WordsTable } from '../charts/WordsTable.tsx';
import { pointAt } from '../state/momentStore.ts';
import { unbroken } from '../words/unbroken.ts';
import type { AnswerWords } from '../words/answers.ts';

interface AnswersProps {
  readonly answers: readonly AnswerWords[];
  readonly assumed: readonly string[];
}

function Answer({ answer, assumed }: { answer: AnswerWords; assumed: readonly string[] }) {
  const { id, heading, pieces, range, because, figures, table, moment } = answer;
  return (
    <li className="answer-place">
      <DialogTrigger>
        <Button className="answer" id={`answer-${id}`}>
          <span className="answer-heading">{heading}</span>
          <span className="answer-figure">
            {pieces.map(({ figure, unit }) => (
              <span key={unit}>
                {figure}
                {unit !== '' && <span className="answer-unit"> {unit} </span>}
              </span>
            ))}
          </span>
          <span className="answer-range">{unbroken(range)}</span>
          <span className="answer-because">{unbroken(because)}</span>
        </Button>
        <Popover className="sheet" placement="bottom start">
          <Dialog className="sheet-body wide-sheet scrolls">
            {({ close }) => (
              <>
                <Heading slot="title">{heading}: where it comes from</Heading>
                <dl className="figures">
                  {figures.map(([name, figure]) => (
                    <div key={name}>
                      <dt>{name}</dt>
                      <dd>{figure}</dd>
                    </div>
                  ))}
                </dl>
                {table !== undefined && <WordsTable table={table} className="sheet-table" />}
                {assumed.length > 0 && (
                  <p className="small muted">
                    Rests on {assumed.length} {assumed.length === 1 ? 'assumption' : 'assumptions'}, listed
                    below the clock. {assumed.slice(0, 3).join('; ')}
                    {assumed.length > 3 ? '; …' : '.'}
                  </p>
                )}
                <div className="actions">
                  <Button
                    className="key main"
                    onPress={() => {
                      pointAt(moment);
                      close();
                    }}
                  >
                    Show the moment
                  </Button>
                  <Button className="key framed" onPress={close}>
                    Close
                  </Button>
                </div>
              </>
            )}
          </Dialog>
        </Popover>
      </DialogTrigger>
    </li>
  );
}

/** Not drawn again while the pointer moves. */
export const Answers = memo(function Answers({ answers, assumed }: AnswersProps) {
  return (
    <ul className="answers" aria-label="The three answers">
      {answers.map((answer) => (
        <Answer key={answer.id} answer={answer} assumed={assumed} />
      ))}
    </ul>
  );
});
