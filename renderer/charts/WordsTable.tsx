/** A table of what is already in words. */
import type { WordTable } from '../words/advice.ts';

export function WordsTable({ table, className }: { readonly table: WordTable; readonly className: string }) {
  return (
    <table className={className}>
      <caption>{table.caption}</caption>
      <thead>
        <tr>
          {table.head.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {table.rows.map(([first, ...cells]) => (
          <tr key={first}>
            <th scope="row">{first}</th>
            {cells.map((cell, i) => (
              <td key={table.head[i + 1]}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
