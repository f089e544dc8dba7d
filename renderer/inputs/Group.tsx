/** A group of fields that folds; folded, its heading says it all in one line. */
import { ChevronDown, ChevronRight } from 'lucide-react';
import { useId, useState, type ReactNode } from 'react';

interface GroupProps {
  readonly name: string;
  readonly summary: string;
  readonly wrong: boolean;
  readonly startsOpen?: boolean;
  readonly children: ReactNode;
}

export function Group({ name, summary, wrong, startsOpen = false, children }: GroupProps) {
  const [open, setOpen] = useState(startsOpen);
  const id = useId();
  return (
    <section className="group">
      <h3>
        <button
          type="button"
          className="group-key"
          aria-expanded={open}
          aria-controls={id}
          onClick={() => {
            setOpen(!open);
          }}
        >
          {open ? <ChevronDown aria-hidden="true" /> : <ChevronRight aria-hidden="true" />}
          <span className="group-name">{name}</span>
          {!open && <span className="group-summary">{wrong ? 'an entry is not taken' : summary}</span>}
        </button>
      </h3>
      <div id={id} hidden={!open} className="group-fields">
        {children}
      </div>
    </section>
  );
}
