import { useEffect, useState } from 'react';

/** The present, to the minute. */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => {
      setNow(Math.floor(Date.now() / 60_000) * 60_000);
    }, 10_000);
    return () => {
      clearInterval(timer);
    };
  }, []);
  return now;
}
