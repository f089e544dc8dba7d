/** The plan and the evenings beside it, each by what sets it apart. */
import { Plus } from 'lucide-react';
import { adopt } from './adopt.ts';
import { DifferenceRow, firstValue } from './DifferenceRow.tsx';
import { nameOf, startersFor } from './differences.ts';
import { addVariant, dropVariant, mostVariants, setDifferences, type Variant } from './compareStore.ts';
import { troubleOf } from './trouble.ts';
import { LeaveOutKey } from '../inputs/LeaveOutKey.tsx';
import { Sample } from '../charts/Sample.tsx';
import type { Outcome } from '../state/studies.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface PlanListProps {
  readonly evening: Evening;
  readonly variants: readonly Variant[];
  /** of the plan, then of each of the others */
  readonly outcomes: readonly (Outcome | undefined)[];
  readonly units: UnitSystem;
}

function Card({
  variant: { id, differences },
  index,
  outcome,
  units,
}: {
  readonly variant: Variant;
  readonly index: number;
  readonly outcome: Outcome | undefined;
  readonly units: UnitSystem;
}) {
  const name = nameOf(differences, units);
  return (
    <li className="variant">
      <h3>
        <Sample index={index} /> {name}
        <LeaveOutKey
          label={`Leave out: ${name}`}
          onLeaveOut={() => {
            dropVariant(id);
          }}
        />
      </h3>
      {differences.map((difference, i) => (
        <DifferenceRow
          key={`${String(i)} ${difference.path}`}
          difference={difference}
          units={units}
          onChange={(next) => {
            setDifferences(
              id,
              differences.map((one, k) => (k === i ? next : one)),
            );
          }}
          onDrop={() => {
            setDifferences(
              id,
              differences.filter((_, k) => k !== i),
            );
          }}
        />
      ))}
      {troubleOf(outcome).map((text) => (
        <p key={text} className="reason">
          {text}
        </p>
      ))}
      <div className="variant-keys">
        <button
          type="button"
          className="key"
          aria-label={`${name}: another difference`}
          onClick={() => {
            setDifferences(id, [
              ...differences,
              { path: 'oven.setpoint', value: firstValue('oven.setpoint', units) },
            ]);
          }}
        >
          <Plus aria-hidden="true" /> Difference
        </button>
        <button
          type="button"
          className="key framed"
          disabled={differences.length === 0 || outcome?.ok !== true}
          aria-label={`Make it the plan: ${name}`}
          onClick={() => {
            if (adopt(differences)) dropVariant(id);
          }}
        >
          Make it the plan
        </button>
      </div>
    </li>
  );
}

export function PlanList({ evening, variants, outcomes, units }: PlanListProps) {
  const full = variants.length >= mostVariants;
  return (
    <>
      <h2>Side by side</h2>
      <ul className="variants">
        <li className="variant">
          <h3>
            <Sample index={0} /> The plan
          </h3>
          {troubleOf(outcomes[0]).map((text) => (
            <p key={text} className="reason">
              {text}
            </p>
          ))}
        </li>
        {variants.map((variant, i) => (
          <Card key={variant.id} variant={variant} index={i + 1} outcome={outcomes[i + 1]} units={units} />
        ))}
      </ul>
      <h3 className="add-heading">{full ? 'Six are as many as can be told apart.' : 'Set beside it'}</h3>
      {!full && (
        <div className="starters">
          {startersFor(evening, units).map(({ name, differences }) => (
            <button
              key={name}
              type="button"
              className="key framed"
              onClick={() => {
                addVariant(differences);
              }}
            >
              <Plus aria-hidden="true" /> {name}
            </button>
          ))}
          <button
            type="button"
            className="key framed"
            onClick={() => {
              addVariant([{ path: 'oven.setpoint', value: firstValue('oven.setpoint', units) }]);
            }}
          >
            <Plus aria-hidden="true" /> Something else
          </button>
        </div>
      )}
    </>
  );
}
