import { lineDashes } from './lineFigure.ts';

/** A piece of a line, so that name and line are matched by dash as well as by colour. */
export function Sample({ index }: { readonly index: number }) {
  const dash = lineDashes[index] ?? 'solid';
  return (
    <svg className="sample" aria-hidden="true" width={24} height={8}>
      <line
        x1={0}
        x2={24}
        y1={4}
        y2={4}
        stroke={`var(--line-${String(index + 1)})`}
        strokeWidth={2.5}
        strokeDasharray={dash === 'solid' ? undefined : dash.replaceAll('px', '')}
      />
    </svg>
  );
}
