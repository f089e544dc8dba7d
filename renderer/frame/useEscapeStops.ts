/** Escape stops what is being worked out, unless it closes or takes back something nearer. */
import { useEffect } from 'react';

/** @param stop the same from one drawing to the next */
export function useEscapeStops(stop: () => void): void {
  useEffect(() => {
    const hear = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || event.defaultPrevented) return;
      const { target } = event;
      if (target instanceof HTMLElement && target.closest('[role="dialog"],[data-typing]') !== null) return;
      stop();
    };
    window.addEventListener('keydown', hear);
    return () => {
      window.removeEventListener('keydown', hear);
    };
  }, [stop]);
}
