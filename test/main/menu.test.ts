import { describe, expect, it } from 'vitest';
import type { MenuItemConstructorOptions } from 'electron';
import { menuTemplate } from '../../main/shell/menu.ts';

/** Every item of a template with the menus it lies in. */
function items(template: readonly MenuItemConstructorOptions[]): MenuItemConstructorOptions[] {
  return template.flatMap((item) => [item, ...(Array.isArray(item.submenu) ? items(item.submenu) : [])]);
}

describe.each(['linux', 'mac', 'windows'] as const)('the menu on %s', (system) => {
  const chosen: string[] = [];
  const template = menuTemplate(system, (command) => chosen.push(command));
  const keyed = items(template).filter(({ accelerator }) => accelerator !== undefined);

  it('has the menus of the platform in its order', () => {
    const titles = template.map(({ label, role }) => label ?? role);
    expect(titles).toEqual(
      system === 'mac'
        ? ['appMenu', '&File', '&Edit', '&View', 'windowMenu']
        : ['&File', '&Edit', '&View', 'help'],
    );
    const roles = items(template).map(({ role }) => role);
    expect(roles).toEqual(
      expect.arrayContaining(['about', 'quit', 'copy', 'paste', 'zoomIn', 'togglefullscreen']),
    );
    expect(roles.includes('services')).toBe(system === 'mac');
  });

  it('sends each command once, and leaves the keys to the window', () => {
    for (const { click } of keyed) (click as unknown as () => void)();
    expect([...chosen].sort()).toEqual(['new', 'open', 'print', 'redo', 'save', 'saveAs', 'undo']);
    expect(keyed.map(({ registerAccelerator }) => registerAccelerator)).toEqual(keyed.map(() => false));
    const keys = keyed.map(({ accelerator }) => accelerator);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toContain(system === 'windows' ? 'Ctrl+Y' : 'CmdOrCtrl+Shift+Z');
  });
});
