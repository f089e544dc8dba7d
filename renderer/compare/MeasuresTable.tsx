/** What is compared, a row each, the best of the row marked. */
import { Check } from 'lucide-react';
import { Sample } from '../charts/Sample.tsx';
import { CsvKey } from '../charts/SaveKeys.tsx';
import { measureIds, measureWords } from '../words/measures.ts';
import { measures, type MeasureId } from '../../physics/evening/comparison.ts';
import { csvText } from '../../physics/handout/csv.ts';
import type { Compared } from './Curves.tsx';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface MeasuresTableProps {
  readonly evenings: readonly Compared[];
  readonly units: UnitSystem;
}

/** Which are best, as far as the figures shown tell them apart; none where all are alike. */
export function bestOf(id: MeasureId, evenings: readonly Compared[], units: UnitSystem): ReadonlySet<number> {
  const { better, text } = measureWords[id];
  const values = evenings.map(({ study }) => measures[id](study.compared));
  if (better === undefined || values.length < 2) return new Set();
  const best = text(better === 'less' ? Math.min(...values) : Math.max(...values), units);
  const winners = evenings.filter((_, i) => text(values[i]!, units) === best);
  return winners.length === evenings.length ? new Set() : new Set(winners.map(({ index }) => index));
}

function csv(evenings: readonly Compared[]): string {
  return csvText([
    ['plan', ...measureIds],
    ...evenings.map(({ name, study }) => [
      name,
      ...measureIds.map((id) => String(Number(measures[id](study.compared).toFixed(3)))),
    ]),
  ]);
}

export function MeasuresTable({ evenings, units }: MeasuresTableProps) {
  return (
    <section className="measures" aria-labelledby="compare-figures">
      <div className="chart-head">
        <h2 id="compare-figures">In figures</h2>
        <CsvKey of="In figures" saveAs="compared" make={() => csv(evenings)} />
      </div>
      <div className="scroll-x" tabIndex={0} role="region" aria-label="In figures, side by side">
        <table className="small-table compared">
          <caption className="hidden">
            The plan and the others in figures; the best of a row is marked
          </caption>
          <thead>
            <tr>
              <td />
              {evenings.map(({ index, name }) => (
                <th key={index} scope="col">
                  <Sample index={index} /> {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {measureIds.map((id) => {
              const best = bestOf(id, evenings, units);
              return (
                <tr key={id}>
                  <th scope="row">{measureWords[id].name}</th>
                  {evenings.map(({ index, study }) => (
                    <td key={index} className={best.has(index) ? 'best' : undefined}>
                      {measureWords[id].text(measures[id](study.compared), units)}
                      {best.has(index) && (
                        <>
                          <Check className="best-mark" aria-hidden="true" />
                          <span className="hidden">, best</span>
                        </>
                      )}
                    </td>
                  ))}
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}
