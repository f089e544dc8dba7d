/**
 * Keeps the forecast up with the plan. Two workers run the same function: one answers every change at once with the
 * point forecast, the other follows with the band. Each holds one request in flight and only the newest waiting.
 */
import SimulationWorker from '../simulation.worker.ts?worker';
import { localOffset } from '../words/clock.ts';
import { useForecast } from './forecastStore.ts';
import { dragging, usePlan } from './planStore.ts';
import type { PlanAnswered, PlanRequest } from '../simulation.worker.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';

type Work = Omit<PlanRequest, 'id'>;

/** One worker that is only ever asked for the newest thing. */
function newestFirst(hear: (answer: PlanAnswered, work: Work) => void): (work: Work) => void {
  const worker = new SimulationWorker();
  let inFlight: Work | undefined;
  let waiting: Work | undefined;
  let id = 0;
  const send = (work: Work): void => {
    inFlight = work;
    id += 1;
    worker.postMessage({ id, ...work } satisfies PlanRequest);
  };
  const next = (): Work | undefined => {
    const done = inFlight;
    inFlight = undefined;
    if (waiting !== undefined) {
      const work = waiting;
      waiting = undefined;
      send(work);
    }
    return done;
  };
  worker.addEventListener('message', ({ data }: MessageEvent<PlanAnswered>) => {
    const work = next();
    if (work !== undefined && data.id > 0) hear(data, work);
  });
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    next();
    useForecast.setState({ busy: undefined, fault: event.message || 'The simulation stopped.' });
  });
  return (work) => {
    if (inFlight === undefined) send(work);
    else waiting = work;
  };
}

function isCurrent(file: PlanFile): boolean {
  return usePlan.getState().file === file;
}

/** What happened on the evening changes nothing of what was planned. */
function samePlan(file: PlanFile, before: PlanFile): boolean {
  const keys = Object.keys({ ...before, ...file }) as (keyof PlanFile)[];
  return keys.every((key) => key === 'tonight' || file[key] === before[key]);
}

function take(answer: PlanAnswered, file: PlanFile): boolean {
  if (answer.fault !== undefined) {
    useForecast.setState({ busy: undefined, fault: answer.fault });
    return false;
  }
  const { planned } = answer;
  if (!planned.ok) {
    useForecast.setState({ problems: planned.problems, busy: undefined, fault: undefined });
    return false;
  }
  const { evening, answer: told, run } = planned;
  useForecast.setState({ forecast: { file, evening, answer: told, run }, problems: [], fault: undefined });
  return true;
}

/** Starts following the plan; the returned function asks again for the plan as it stands. */
export function followPlan(): () => void {
  let bandTimer: ReturnType<typeof setTimeout> | undefined;
  const band = newestFirst((answer, { file }) => {
    if (!isCurrent(file)) return;
    if (take(answer, file)) useForecast.setState({ busy: undefined });
  });
  const point = newestFirst((answer, work) => {
    // During a drag every answer is shown as it comes, so that the curves follow; otherwise only the newest plan's.
    if (!isCurrent(work.file) && !dragging()) return;
    if (!take(answer, work.file) || !isCurrent(work.file)) return;
    useForecast.setState({ busy: 'band' });
    clearTimeout(bandTimer);
    // The band is for a plan that rests: while the plate is still moving only the newest would be thrown away.
    bandTimer = setTimeout(() => {
      if (isCurrent(work.file)) band({ ...work, band: true });
    }, 150);
  });
  const ask = (): void => {
    useForecast.setState({ busy: 'point' });
    const now = Date.now();
    point({ file: usePlan.getState().file, now, offsetMinutes: localOffset(now), band: false });
  };
  usePlan.subscribe((state, before) => {
    if (state.file === before.file) return;
    const { forecast, busy } = useForecast.getState();
    if (forecast?.file === before.file && busy === undefined && samePlan(state.file, before.file))
      useForecast.setState({ forecast: { ...forecast, file: state.file } });
    else ask();
  });
  ask();
  return ask;
}
