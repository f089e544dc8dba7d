/** The components of the view Tonight in their states: the plain evening at moments of its own. */
import { Component, State } from './frames.tsx';
import { NowPanel } from '../../renderer/tonight/NowPanel.tsx';
import { Over } from '../../renderer/tonight/Over.tsx';
import { PlateReading } from '../../renderer/tonight/PlateReading.tsx';
import { Rest } from '../../renderer/tonight/Rest.tsx';
import { Ringing } from '../../renderer/tonight/Ringing.tsx';
import { kitchenClock, offsetsOf } from '../../renderer/tonight/said.ts';
import { Timers } from '../../renderer/tonight/Timers.tsx';
import { Words } from '../../renderer/tonight/Words.tsx';
import { alarmsOf, lookAt, noAlarms } from '../../physics/tonight/alarms.ts';
import { courseOf } from '../../physics/tonight/course.ts';
import type { Forecast } from '../../renderer/state/forecastStore.ts';
import type { LogEntry } from '../../physics/tonight/log.ts';

const nothing = (): void => undefined;
const minute = 60_000;

export function Tonight({ forecast, extreme }: { readonly forecast: Forecast; readonly extreme: Forecast }) {
  const { tasks, anchor, range } = forecast.answer;
  const from = (id: string): number => Date.parse(tasks.find((task) => task.id === id)!.from);
  const done = (...steps: readonly string[]): readonly LogEntry[] =>
    steps.map((step) => ({ at: from(step) + minute, what: 'done', step }));
  const before = done('hands-mix', 'hands-ball');
  const on = [...before, ...done('preheat', 'hands-prepare')];
  const baking = [...on, ...done('shape-1', 'load-1')];
  const moments = [
    { name: 'waiting', log: before, now: from('preheat') - 20 * minute },
    { name: 'late', log: before, now: from('preheat') + 4 * minute },
    {
      name: 'a load, which a whole pizza can be left out of',
      log: [...on, ...done('shape-1')],
      now: from('load-1') + 4 * minute,
    },
    { name: 'a bake, and what runs beside it', log: baking, now: from('bake-1') + 4 * minute },
  ].map(({ name, log, now }) => ({
    name,
    now,
    course: courseOf({ tasks, log, now }),
    clock: kitchenClock(offsetsOf(anchor.at), now),
  }));
  const [waiting, late, load, bake] = moments;
  const missed = lookAt(noAlarms, alarmsOf(late!.course), late!.now).state;
  const crowd = courseOf({
    tasks: extreme.answer.tasks,
    log: [],
    now: Date.parse(extreme.answer.ovenOnAt) + 90 * minute,
  });
  const many = lookAt(noAlarms, alarmsOf(crowd), Date.parse(extreme.answer.ovenOnAt) + 90 * minute).state;
  const preheat = (course: typeof crowd) => course.steps.find(({ id }) => id === 'preheat');
  return (
    <>
      <Component name="Alarms">
        <State name="one, missed">
          <Ringing alarms={missed} now={late!.now} clock={late!.clock} onHeard={nothing} />
        </State>
        <State name="several">
          <Ringing
            alarms={many}
            now={Date.parse(extreme.answer.ovenOnAt) + 90 * minute}
            clock={late!.clock}
            onHeard={nothing}
          />
        </State>
      </Component>
      <Component name="Now and next">
        {moments.map(({ name, course, now, clock }) => (
          <State key={name} name={name}>
            <NowPanel
              course={course}
              now={now}
              clock={clock}
              units="us"
              letters
              onDone={nothing}
              onLonger={nothing}
              onSkip={nothing}
            />
          </State>
        ))}
        <State name="over">
          <Over rehearsed={false} />
        </State>
      </Component>
      <Component name="Beside it">
        <State name="what runs as well">
          <Timers
            steps={bake!.course.steps}
            large={bake!.course.now?.id}
            now={bake!.now}
            clock={bake!.clock}
            onLonger={nothing}
            onDone={nothing}
          />
        </State>
        <State name="a reading: as planned, narrowed by readings that disagree, past">
          {[waiting!, load!, bake!].map(({ name, course, clock }) => (
            <PlateReading
              key={name}
              units="metric"
              clock={clock}
              preheat={preheat(course)}
              loaded={course === bake!.course}
              forecast={
                course === load!.course
                  ? { ready: { value: 2400, p10: 2300, p90: 2500 }, agrees: false }
                  : undefined
              }
              planned={range?.preheatMinutes}
              shown={undefined}
              onRead={nothing}
            />
          ))}
        </State>
        <State name="words">
          <Words
            out={[2, 1]}
            said={[{ at: 0, what: 'words', pizza: 1, words: 'crisp, the rim a little pale', lightness: 62 }]}
            onSay={nothing}
          />
        </State>
        <State name="still to come, some of it moved">
          <Rest steps={late!.course.steps} clock={late!.clock} />
        </State>
      </Component>
    </>
  );
}
