/** A figure that can be typed in: held ones carry a lock, the others follow. A wrong entry stays with its reason. */
import { Lock } from 'lucide-react';
import { useId } from 'react';
import { TextEntry } from '../inputs/TextEntry.tsx';
import { useWrongEntry } from '../state/wrongEntries.ts';

export interface CellProps {
  /** names the field; a table's heading repeats it for the eye */
  readonly label: string;
  /** which of several cells of this name it is */
  readonly index?: number | undefined;
  /** undefined where the figure is a plain field that holds nothing else */
  readonly held?: boolean | undefined;
  readonly shown: string;
  readonly step?: number | undefined;
  /** takes the text, or says why not */
  readonly onTake: (text: string) => string | undefined;
}

export function Cell({ label, index = 0, held, shown, step, onTake }: CellProps) {
  const id = useId();
  const [draft, setDraft] = useWrongEntry(`${label} ${String(index)}`);
  const wrong = draft !== undefined;
  return (
    <div className={`cell${wrong ? ' wrong' : ''}${held === true ? ' held-cell' : ''}`}>
      <TextEntry
        id={id}
        label={held === true ? `${label}, held` : label}
        aria-describedby={`${id}-reason`}
        aria-invalid={wrong ? true : undefined}
        shown={draft?.text ?? shown}
        step={step}
        onTake={(text) => {
          const reason = onTake(text);
          setDraft(reason === undefined ? undefined : { text, reason });
        }}
        onBack={() => {
          setDraft(undefined);
        }}
      />
      {held === true && <Lock className="lock" aria-hidden="true" />}
      <p className="reason" id={`${id}-reason`} hidden={!wrong}>
        {draft?.reason}
      </p>
    </div>
  );
}

/** A cell with its name before it. */
export function NamedCell({ note, ...cell }: CellProps & { readonly note?: string | undefined }) {
  return (
    <div className="named-cell">
      <span className="field-name">
        <span aria-hidden="true">{cell.label}</span>
        {note !== undefined && <span className="source">{note}</span>}
      </span>
      <Cell {...cell} />
    </div>
  );
}
