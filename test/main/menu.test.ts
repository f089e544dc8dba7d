import { describe, expect, it } from 'vitest';
import type { MenuItemConstructorOptions } from 'electron';
import { menuTemplate } from '../../main/shell/menu.ts';

/** Every item of a template with the menus it lies in. */
function items(template: readonly MenuItemConstructorOptions[]): MenuItemConstructorOptions[] {
  return template.flatMap((item) => [item, ...(Array.isArray(item.submenu) ? items(item.submenu) : [])]);
}

describe.each(['linux', 'mac', 'windows'] as const)('the menu on %s', (system) => {
  const chosen: string[] = [];
  const template = menuTemplate(system, {
    send: (command) => chosen.push(command),
    savePdf: () => chosen.push('PDF'),
  });
  const keyed = items(template).filter(
    ({ accelerator, role }) => accelerator !== undefined && role === undefined,
  );

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
    expect([...chosen].sort()).toEqual([
      'new',
      'open',
      'print',
      'redo',
      'save',
      'saveAs',
      'settings',
      'undo',
    ]);
    const byMenu = keyed.filter(({ registerAccelerator }) => registerAccelerator === true);
    expect(byMenu.map(({ label }) => label)).toEqual(['&New']);
    const keys = keyed.map(({ accelerator }) => accelerator);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.sort()).toEqual(
      [
        ...['N', 'O', 'S', 'Shift+S', 'P', 'Z', ','].map((key) => `CmdOrCtrl+${key}`),
        system === 'windows' ? 'Ctrl+Y' : 'CmdOrCtrl+Shift+Z',
      ].sort(),
    );
  });

  it('has its settings where the system expects them', () => {
    const [menu] = template.filter(
      ({ submenu }) => Array.isArray(submenu) && submenu.some(({ label }) => label === 'Settin&gs…'),
    );
    expect(menu?.label ?? menu?.role).toBe(system === 'mac' ? 'appMenu' : '&File');
    const names = (menu?.submenu as MenuItemConstructorOptions[]).map(({ label, role }) => label ?? role);
    // macOS: right after About; elsewhere the last thing before Quit.
    const place = names.filter((name) => name !== undefined).indexOf('Settin&gs…');
    expect(system === 'mac' ? place : names.filter((name) => name !== undefined).length - 1 - place).toBe(1);
  });

  it('leaves the keys of zoom and full screen to the roles, which know each system', () => {
    const roles = items(template).filter(({ role }) => /zoom|fullscreen/i.test(role ?? ''));
    expect(roles.map(({ role, accelerator }) => [role, accelerator])).toEqual([
      ['zoomIn', undefined],
      ['zoomIn', 'CmdOrCtrl+='],
      ['zoomOut', undefined],
      ['resetZoom', undefined],
      ['togglefullscreen', undefined],
    ]);
  });

  it('saves a PDF, and quits where the system expects it', () => {
    const pdf = items(template).find(({ label }) => label === 'Save as P&DF…');
    chosen.length = 0;
    (pdf?.click as unknown as () => void)();
    expect(chosen).toEqual(['PDF']);
    const quits = template.find(
      ({ submenu }) => Array.isArray(submenu) && submenu.some(({ role }) => role === 'quit'),
    );
    expect(quits?.label ?? quits?.role).toBe(system === 'mac' ? 'appMenu' : '&File');
    const recent = items(template).some(({ role }) => role === 'recentDocuments');
    expect(recent).toBe(system === 'mac');
  });
});
