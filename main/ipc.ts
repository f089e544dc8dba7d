/** What Electron's main process and its preload agree on: channel names in one place, and what travels on them. */

export const callChannel = 'hearthclock:call';
export const pushChannel = 'hearthclock:push';

/** The same shapes as over HTTP: an error in a sentence, never a stack. */
export type CallOutcome = { readonly answer: unknown } | { readonly error: string };

/** The line by which a started Electron tells that its window is up. */
export const electronReady = 'hearthclock: the window is open';
