/** Units, theme, keys, and ticks of shopping lists: kept by the shell, shared by all plans, never in the history. */
import { create } from 'zustand';
import { bridge } from '../bridgeClient.ts';
import type { Settings } from '../../main/bridge.ts';

export type Units = Settings['units'];
export type Theme = 'flour' | 'iron';

export const useSettings = create<Required<Settings>>()(() => ({
  theme: 'system',
  units: 'metric',
  letterKeys: true,
  ticks: [],
}));

export function useUnits(): Units {
  return useSettings(({ units }) => units);
}

/** What the shell remembered, at start. */
export function takeSettings(settings: Settings): void {
  useSettings.setState(settings);
}

export function changeSettings(change: Partial<Settings>): void {
  useSettings.setState(change);
  bridge.call('saveSettings', useSettings.getState()).catch(() => {
    // The choice holds for this session; a shell that cannot be reached says so where work is saved.
  });
}

const darkSystem = window.matchMedia('(prefers-color-scheme: dark)');

export function shownTheme(chosen: Settings['theme']): Theme {
  if (chosen !== 'system') return chosen;
  return darkSystem.matches ? 'iron' : 'flour';
}

/** Puts the theme on the page and keeps it there when the system's changes. */
export function followTheme(listener: (theme: Theme) => void): void {
  const show = (): void => {
    const theme = shownTheme(useSettings.getState().theme);
    document.documentElement.dataset['theme'] = theme;
    listener(theme);
  };
  darkSystem.addEventListener('change', show);
  useSettings.subscribe(show);
  show();
}
