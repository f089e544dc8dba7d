/** How far long work is, what it is doing, and the key that stops it. */
import { goOn, stopStudies, type Studied, type StudyGroup } from '../state/studies.ts';

interface ProgressProps {
  readonly group: StudyGroup;
  readonly studied: Studied;
  readonly total: number;
  /** what is being worked out: `evenings of the map` */
  readonly what: string;
}

export function Progress({ group, studied: { done, stopped }, total, what }: ProgressProps) {
  if (done >= total) return null;
  return (
    <div className="progress">
      <progress value={done} max={total} aria-label={`Working out ${what}`} />
      <span className="small">
        {done} of {total} {what}
        {stopped ? ', stopped' : ''}
      </span>
      {stopped ? (
        <button
          type="button"
          className="key framed"
          onClick={() => {
            goOn(group);
          }}
        >
          Go on
        </button>
      ) : (
        <button type="button" className="key framed" aria-keyshortcuts="Escape" onClick={stopStudies}>
          Stop (Escape)
        </button>
      )}
    </div>
  );
}
