import { X } from 'lucide-react';

/** The cross that takes one thing out of a list. */
export function LeaveOutKey({ label, onLeaveOut }: { label: string; onLeaveOut: () => void }) {
  return (
    <button type="button" className="reset" aria-label={label} title="Leave out" onClick={onLeaveOut}>
      <X aria-hidden="true" />
    </button>
  );
}
