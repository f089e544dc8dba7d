/** Which sheet lies over the window because the cook asked for it; keys, buttons and the shell's menu open the same. */
import { create } from 'zustand';

export type SheetId = 'settings' | 'keys' | 'about';

export const useSheet = create<{ readonly shown: SheetId | undefined }>()(() => ({ shown: undefined }));

export function showSheet(shown: SheetId | undefined): void {
  useSheet.setState({ shown });
}
