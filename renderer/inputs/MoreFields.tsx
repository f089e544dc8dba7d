/** Fields of a group that few change, behind a fold of their own. */
import { ChevronDown, ChevronRight } from 'lucide-react';
import { useId, useState, type ReactNode } from 'react';

interface MoreFieldsProps {
  readonly name: string;
  /** an entry in here was not taken: it must be seen */
  readonly wrong: boolean;
  readonly children: ReactNode;
}

export function MoreFields({ name, wrong, children }: MoreFieldsProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const shown = open || wrong;
  return (
    <>
      <button
        type="button"
        className="more-key small"
        aria-expanded={shown}
        aria-controls={id}
        onClick={() => {
          setOpen(!open);
        }}
      >
        {shown ? <ChevronDown aria-hidden="true" /> : <ChevronRight aria-hidden="true" />}
        {name}
      </button>
      <div id={id} hidden={!shown}>
        {shown && children}
      </div>
    </>
  );
}
