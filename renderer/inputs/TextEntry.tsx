/** A text that is taken on Enter or when the field is left; Escape takes it back; arrows step its number. */
import { useState } from 'react';
import { stepped } from './shown.ts';
import type { ControlProps } from './FieldRow.tsx';

interface TextEntryProps extends ControlProps {
  readonly shown: string;
  /** what an arrow adds to its number, or how to move it by so many steps */
  readonly step: number | ((text: string, by: number) => string | undefined) | undefined;
  readonly onTake: (text: string) => void;
  readonly onBack: () => void;
  readonly inputMode?: 'decimal' | 'text';
  /** what an empty field says */
  readonly placeholder?: string | undefined;
  /** where no label of the page names the field */
  readonly label?: string;
}

export function TextEntry({
  shown,
  step,
  onTake,
  onBack,
  inputMode = 'text',
  label,
  placeholder,
  ...control
}: TextEntryProps) {
  // Undefined while nobody types: the field then follows the plan.
  const [typed, setTyped] = useState<string>();
  const take = (text: string | undefined): void => {
    setTyped(undefined);
    if (text !== undefined && text.trim() !== shown.trim()) onTake(text);
  };
  return (
    <input
      {...control}
      aria-label={label}
      placeholder={placeholder}
      className="entry"
      type="text"
      inputMode={inputMode}
      autoComplete="off"
      spellCheck={false}
      data-typing={typed === undefined ? undefined : true}
      value={typed ?? shown}
      onChange={(event) => {
        setTyped(event.currentTarget.value);
      }}
      onBlur={() => {
        take(typed);
      }}
      onKeyDown={(event) => {
        if (event.key === 'Enter') take(typed);
        else if (event.key === 'Escape') {
          if (typed === undefined) onBack();
          setTyped(undefined);
        } else if (step !== undefined && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
          const by = (event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1);
          const text = typed ?? shown;
          const next = typeof step === 'number' ? stepped(text, step * by) : step(text, by);
          event.preventDefault();
          if (next !== undefined) take(next);
        }
      }}
    />
  );
}
