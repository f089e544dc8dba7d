/** Which sheet lies over the window because the cook asked for it; keys, buttons and the shell's menu open the same. */
import { create } from 'zustand';

export const useSheet = create<{ readonly settings: boolean }>()(() => ({ settings: false }));

export function showSettings(settings = true): void {
  useSheet.setState({ settings });
}
