/** What must not be late and what may, in words: the critical chain, the slack of the rest, what gave way to what. */
import type { PlanAnswer, Task } from './answer.ts';
import { durationText } from './steps.ts';

type Facts = Pick<PlanAnswer, 'tasks' | 'criticalChain'>;

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);
const perPizza = ({ id }: Task): boolean => /-\d+$/u.test(id) && !id.startsWith('move-');

/** `Mix, rise, ball, rest as balls, shape 1, load 1, then pizza after pizza: each waits for the one before it.` */
export function chainText({ tasks, criticalChain }: Facts): string {
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const chained = criticalChain.flatMap((id) => byId.get(id) ?? []);
  const first = chained.findIndex(({ id }) => id.startsWith('bake-'));
  const names = chained.slice(0, first === -1 ? undefined : first).map(({ name }) => lower(name));
  const bakes = tasks.filter(({ id }) => id.startsWith('bake-')).length;
  return `${names.join(', ')}, then ${bakes === 1 ? 'the bake' : 'pizza after pizza'}: each waits for the one before it, none may be late.`.replace(
    /^./u,
    (letter) => letter.toUpperCase(),
  );
}

/** `Preheat can begin or take 5 h 25 min longer.`: what is done once and has a minute or more. */
export function spareTexts({ tasks }: Facts): readonly string[] {
  return tasks
    .filter((task) => task.lane !== 'dough' && !perPizza(task) && (task.slackMinutes ?? 0) >= 1)
    .map(({ name, slackMinutes }) => `${name} may take ${durationText(60 * slackMinutes!)} longer.`);
}

/** min: less than that nobody notices */
const noticed = 5;

/** `Shape 2 comes 8 min sooner, because hands are needed for load 1.` */
export function movedTexts({ tasks }: Facts): readonly string[] {
  const nameOf = (id: string): string => tasks.find((task) => task.id === id)?.name ?? id;
  return tasks.flatMap(({ name, moved }) =>
    moved === undefined || Math.abs(moved.minutes) < noticed
      ? []
      : [
          `${name} comes ${durationText(60 * Math.abs(moved.minutes))} ${moved.minutes < 0 ? 'sooner' : 'later'} than it would, because hands are needed for ${lower(nameOf(moved.for))}.`,
        ],
  );
}
