/** How long still, or how late: a figure that cannot be taken for a time of day. */
import { countOf, spokenCount } from './said.ts';

export function Count({ left, className }: { readonly left: number; readonly className: string }) {
  const { figure, unit } = countOf(left);
  return (
    <span className={className} role="timer" aria-live="off" aria-label={spokenCount(left)}>
      {figure}
      <span className="count-unit"> {unit}</span>
    </span>
  );
}
