/** Fields of a group that few change, behind a fold of their own. */
import { useId, type ReactNode } from 'react';
import { FoldKey } from './FoldKey.tsx';
import { useFold } from '../state/lookStore.ts';

interface MoreFieldsProps {
  readonly name: string;
  /** tells the fold from others where its name changes with what is in it */
  readonly fold?: string;
  /** an entry in here was not taken: it must be seen */
  readonly wrong: boolean;
  readonly children: ReactNode;
}

export function MoreFields({ name, fold = name, wrong, children }: MoreFieldsProps) {
  const [open, toggle] = useFold(fold);
  const id = useId();
  const shown = open || wrong;
  return (
    <>
      <FoldKey className="more-key small" open={shown} controls={id} onToggle={toggle}>
        {name}
      </FoldKey>
      <div id={id} hidden={!shown}>
        {shown && children}
      </div>
    </>
  );
}
