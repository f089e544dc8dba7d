/** One side of the map: which field, and over which of its values. */
import { useId } from 'react';
import type { MapSide } from './compareStore.ts';
import { isTyped, mapPaths, mapSideName, typedOf, valuesOf } from './mapModel.ts';
import { Choice } from '../inputs/Choice.tsx';
import { TextEntry } from '../inputs/TextEntry.tsx';
import type { UnitSystem } from '../../physics/quantities/index.ts';

export function Side({
  name,
  side,
  other,
  units,
  onChange,
}: {
  readonly name: string;
  readonly side: MapSide;
  /** the path of the other side, which cannot be chosen twice */
  readonly other: string;
  readonly units: UnitSystem;
  readonly onChange: (side: MapSide) => void;
}) {
  const id = useId();
  const read = valuesOf(side, units);
  return (
    <div className={read.ok ? 'map-side' : 'map-side wrong'}>
      <label htmlFor={id}>{name}</label>
      <Choice
        id={id}
        options={mapPaths.filter((path) => path !== other).map((path) => [path, mapSideName(path)])}
        value={side.path}
        onChoose={(path) => {
          onChange({ path, typed: undefined });
        }}
      />
      {isTyped(side.path) && (
        <TextEntry
          id={`${id}-values`}
          label={`${name}: values of ${mapSideName(side.path).toLowerCase()}`}
          aria-describedby={`${id}-reason`}
          aria-invalid={read.ok ? undefined : true}
          shown={typedOf(side, units)}
          step={undefined}
          onTake={(typed) => {
            onChange({ ...side, typed });
          }}
          onBack={() => {
            onChange({ ...side, typed: undefined });
          }}
        />
      )}
      <p className="reason" id={`${id}-reason`} hidden={read.ok}>
        {read.ok ? '' : read.reason}
      </p>
    </div>
  );
}
