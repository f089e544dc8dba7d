/** What a step is called where it stands alone: in large type, and in its alarm. */
import type { CourseStep } from './course.ts';

/** `Pizza 2 in`, `Look at pizza 2`, `The plate heats up`; by the task's own name where it has no other. */
export function titleOf({ id, name, status }: Pick<CourseStep, 'id' | 'name' | 'status'>): string {
  const [, kind, pizza = ''] =
    /^(load|bake|turn|look|pull|top|top-before|cut|shape|recover)-(\d+)$/u.exec(id) ?? [];
  switch (kind) {
    case 'load':
      return `Pizza ${pizza} in`;
    case 'bake':
      return status === 'due' ? `Pizza ${pizza} out` : `Pizza ${pizza} bakes`;
    case 'recover':
      return 'The plate recovers';
    case 'cut':
    case 'shape':
    case 'turn':
      return `${name.replace(/ \d+$/u, '')} pizza ${pizza}`;
    case 'look':
      return `Look at pizza ${pizza}`;
    case 'pull':
      return `Paper from under pizza ${pizza}`;
    case 'top':
      return `Top heat on pizza ${pizza}`;
    case 'top-before':
      return `Top heat before pizza ${pizza}`;
    default:
      if (id === 'preheat') return status === 'running' ? 'The plate heats up' : 'Oven on';
      return name.replace(/ \d+$/u, '');
  }
}
