/** The plate as something to take hold of: dragged up and down, or moved by keys. One drag is one step to undo. */
import { useRef } from 'react';
import { beginDrag, change, dragTo, endDrag } from '../state/planStore.ts';
import { nextRack, rackCount, rackHeightOf, rackPositionOf, rackText } from '../words/names.ts';
import type { OvenGeometry } from './geometry.ts';
import type { Evening } from '../../physics/evening/evening.ts';

interface PlateHandleProps {
  readonly geometry: OvenGeometry;
  readonly evening: Evening;
}

/** Heights the plan takes; the handle stops there, as a rack does. */
const lowest = 0.03;
const highest = 0.9;

function round(height: number): number {
  return Math.round(Math.min(Math.max(height, lowest), highest) * 100) / 100;
}

/** A whole percent of the height, drawn to a rack position that is near. */
export function snapped(height: number): number {
  const position = rackPositionOf(height);
  return position === undefined ? round(height) : rackHeightOf(position);
}

function keyHeight(key: string, fine: boolean, height: number): number | undefined {
  const up = key === 'ArrowUp' || key === 'ArrowRight';
  if (up || key === 'ArrowDown' || key === 'ArrowLeft') {
    return fine ? round(height + (up ? 0.01 : -0.01)) : nextRack(height, up ? 1 : -1);
  }
  if (key === 'PageUp') return nextRack(nextRack(height, 1), 1);
  if (key === 'PageDown') return nextRack(nextRack(height, -1), -1);
  if (key === 'Home') return rackHeightOf(1);
  if (key === 'End') return rackHeightOf(rackCount);
  return undefined;
}

export function PlateHandle({ geometry, evening }: PlateHandleProps) {
  const grip = useRef<number>(undefined);
  const { plate, cavity } = geometry;
  const height = evening.plate.rackHeight;
  const size = Math.max(24, plate.height + 8);
  const rowUnder = (clientY: number, element: Element): number =>
    clientY - (element.parentElement?.getBoundingClientRect().top ?? 0);
  return (
    <div
      className="plate-handle"
      style={{
        left: cavity.x,
        top: plate.y + plate.height / 2 - size / 2,
        width: cavity.width,
        height: size,
      }}
      role="slider"
      tabIndex={0}
      aria-label="Rack: height of the plate"
      aria-orientation="vertical"
      aria-valuemin={lowest * 100}
      aria-valuemax={highest * 100}
      aria-valuenow={Math.round(height * 100)}
      aria-valuetext={rackText(height)}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        event.currentTarget.focus();
        grip.current = geometry.rowOf(height) - rowUnder(event.clientY, event.currentTarget);
        beginDrag();
      }}
      onPointerMove={(event) => {
        if (grip.current === undefined) return;
        const row = rowUnder(event.clientY, event.currentTarget) + grip.current;
        dragTo({ 'plate.rackHeight': snapped(geometry.heightAt(row)) });
      }}
      onPointerUp={() => {
        grip.current = undefined;
        endDrag();
      }}
      onPointerCancel={() => {
        grip.current = undefined;
        endDrag();
      }}
      onKeyDown={(event) => {
        const target = keyHeight(event.key, event.shiftKey, height);
        if (target === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
        event.preventDefault();
        if (target !== height) change({ 'plate.rackHeight': target });
      }}
    >
      <span className="plate-arrow" />
    </div>
  );
}
