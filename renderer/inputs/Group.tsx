/** A group of fields that folds; folded, its heading says it all in one line. */
import { useId, type ReactNode } from 'react';
import { FoldKey } from './FoldKey.tsx';
import { useFold } from '../state/lookStore.ts';

interface GroupProps {
  readonly name: string;
  readonly summary: string;
  readonly wrong: boolean;
  readonly startsOpen?: boolean;
  readonly children: ReactNode;
}

export function Group({ name, summary, wrong, startsOpen = false, children }: GroupProps) {
  const [open, toggle] = useFold(name, startsOpen);
  const id = useId();
  return (
    <section className="group">
      <h3>
        <FoldKey className="group-key" open={open} controls={id} onToggle={toggle}>
          <span className="group-name">{name}</span>
          {!open && <span className="group-summary">{wrong ? 'an entry is not taken' : summary}</span>}
        </FoldKey>
      </h3>
      <div id={id} hidden={!open} className="group-fields">
        {children}
      </div>
    </section>
  );
}
