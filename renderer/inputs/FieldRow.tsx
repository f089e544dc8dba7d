/** One field: label and source, control, reset, and the reason below when an entry cannot be taken. */
import { RotateCcw } from 'lucide-react';
import type { ReactNode } from 'react';
import { dropDraft, usePlan } from '../state/planStore.ts';
import { useSource } from './source.ts';

export interface ControlProps {
  readonly id: string;
  readonly 'aria-describedby': string;
  readonly 'aria-invalid': true | undefined;
}
interface FieldRowProps {
  readonly path: string;
  readonly label: string;
  /** said behind the source */
  readonly under?: string | undefined;
  readonly control: (props: ControlProps) => ReactNode;
}

export function fieldId(path: string): string {
  return `field-${path.replaceAll('.', '-')}`;
}

export function FieldRow({ path, label, under, control }: FieldRowProps) {
  const draft = usePlan(({ drafts }) => drafts[path]);
  const { text, reset } = useSource(path);
  const id = fieldId(path);
  const wrong = draft !== undefined;
  return (
    <div className={wrong ? 'field wrong' : 'field'}>
      <div className="field-name">
        <label htmlFor={id}>{label}</label>
        <span className="source" id={`${id}-source`}>
          {wrong ? 'not taken' : under === undefined ? text : `${text}; ${under}`}
        </span>
      </div>
      {control({
        id,
        'aria-describedby': wrong ? `${id}-reason` : `${id}-source`,
        'aria-invalid': wrong ? true : undefined,
      })}
      {wrong || reset !== undefined ? (
        <button
          type="button"
          className="reset"
          aria-label={wrong ? `Take back the entry of ${label}` : `Reset ${label}`}
          title={wrong ? 'Take the entry back' : 'Reset'}
          onClick={() => {
            if (wrong) dropDraft(path);
            else reset?.();
          }}
        >
          <RotateCcw aria-hidden="true" />
        </button>
      ) : (
        <span />
      )}
      {wrong && (
        <p className="reason" id={`${id}-reason`}>
          {draft.reason}
        </p>
      )}
    </div>
  );
}
