/** The key that folds something open and shut. */
import { ChevronDown, ChevronRight } from 'lucide-react';
import type { ReactNode } from 'react';

interface FoldKeyProps {
  readonly className: string;
  readonly open: boolean;
  /** id of what it folds */
  readonly controls: string;
  readonly onToggle: () => void;
  readonly children: ReactNode;
}

export function FoldKey({ className, open, controls, onToggle, children }: FoldKeyProps) {
  return (
    <button
      type="button"
      className={className}
      aria-expanded={open}
      aria-controls={controls}
      onClick={onToggle}
    >
      {open ? <ChevronDown aria-hidden="true" /> : <ChevronRight aria-hidden="true" />}
      {children}
    </button>
  );
}
