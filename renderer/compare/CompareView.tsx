/** The view Compare: the plan beside others, as curves, in figures and as a map. */
import { useEffect, useMemo } from 'react';
import { BakeCurves, PreheatCurves, type Compared } from './Curves.tsx';
import { useCompare, type Variant } from './compareStore.ts';
import { nameOf, startersFor, withDifferences } from './differences.ts';
import { MapPanel } from './MapPanel.tsx';
import { MeasuresTable } from './MeasuresTable.tsx';
import { PlanList } from './PlanList.tsx';
import { Progress } from './Progress.tsx';
import { useEscapeStops } from '../frame/useEscapeStops.ts';
import { Held } from '../Held.tsx';
import { usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { useUnits, type Theme } from '../state/settingsStore.ts';
import { stopStudies, useStudied } from '../state/studies.ts';
import type { StudyJob } from '../state/study.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

const nobody: readonly Variant[] = [];

/** At the first look something worth comparing stands there already. */
function useFirstVariants(evening: Evening, units: UnitSystem): readonly Variant[] {
  const variants = useCompare((state) => state.variants);
  useEffect(() => {
    if (useCompare.getState().variants !== undefined) return;
    const [stone, thicker] = startersFor(evening, units);
    const differences = [stone!.differences, thicker!.differences];
    useCompare.setState({
      variants: differences.map((one, i) => ({ id: i + 1, differences: one })),
      nextId: 3,
    });
  }, [evening, units]);
  return variants ?? nobody;
}

interface ShownProps {
  readonly file: PlanFile;
  readonly evening: Evening;
  readonly theme: Theme;
}

function Shown({ file, evening, theme }: ShownProps) {
  const units = useUnits();
  const variants = useFirstVariants(evening, units);
  const jobs = useMemo(
    (): readonly StudyJob[] => [
      { kind: 'evening', file },
      ...variants.map(({ differences }) => ({
        kind: 'evening' as const,
        file: withDifferences(file, differences),
      })),
    ],
    [file, variants],
  );
  const studied = useStudied('table', jobs);
  const evenings = useMemo(
    () =>
      studied.outcomes.flatMap((outcome, index): readonly Compared[] =>
        outcome?.ok === true && outcome.study.kind === 'evening'
          ? [
              {
                index,
                name: index === 0 ? 'The plan' : nameOf(variants[index - 1]?.differences ?? [], units),
                study: outcome.study,
              },
            ]
          : [],
      ),
    [studied, variants, units],
  );
  useEscapeStops(stopStudies);
  return (
    <div className="compare">
      <aside className="compare-list" aria-label="Side by side">
        <PlanList evening={evening} variants={variants} outcomes={studied.outcomes} units={units} />
      </aside>
      <div className="compare-main">
        <Held />
        <Progress group="table" studied={studied} total={jobs.length} what="evenings side by side" />
        {evenings.length > 0 && (
          <>
            <div className="chart-row">
              <PreheatCurves evenings={evenings} units={units} theme={theme} />
              <BakeCurves evenings={evenings} units={units} theme={theme} />
            </div>
            <MeasuresTable evenings={evenings} units={units} />
          </>
        )}
        <MapPanel file={file} units={units} />
      </div>
    </div>
  );
}

export function CompareView({ theme }: { readonly theme: Theme }) {
  const file = usePlan((state) => state.file);
  const reading = readingOf(file);
  if (!reading.ok) return null;
  return <Shown file={file} evening={reading.evening} theme={theme} />;
}
