/** What calls the cook: a sound, a note of the system, a screen that stays on. */
import { bridge } from '../bridgeClient.ts';
import type { Ask } from '../../main/bridge.ts';

let audio: AudioContext | undefined;

/** Browsers let sound begin only after a key or a click: called from one. */
export function allowSound(): void {
  audio ??= typeof AudioContext === 'undefined' ? undefined : new AudioContext();
  void audio?.resume();
}

/** Two short tones, a fifth apart. */
export function sound(): void {
  if (audio?.state !== 'running') return;
  const start = audio.currentTime;
  for (const [tone, after] of [
    [660, 0],
    [990, 0.22],
  ] as const) {
    const oscillator = audio.createOscillator();
    const loudness = audio.createGain();
    oscillator.frequency.value = tone;
    loudness.gain.setValueAtTime(0, start + after);
    loudness.gain.linearRampToValueAtTime(0.4, start + after + 0.02);
    loudness.gain.exponentialRampToValueAtTime(0.001, start + after + 0.4);
    oscillator.connect(loudness).connect(audio.destination);
    oscillator.start(start + after);
    oscillator.stop(start + after + 0.45);
  }
}

/** Only where the shell shows no notes itself, and only from a key or a click. */
export function allowNotes(): void {
  if ('Notification' in window && Notification.permission === 'default')
    void Notification.requestPermission();
}

export function note(title: string, body: string): void {
  if (!('Notification' in window) || Notification.permission !== 'granted' || !document.hidden) return;
  const shown = new Notification(title, { body });
  shown.addEventListener('click', () => {
    window.focus();
    shown.close();
  });
}

let lock: WakeLockSentinel | undefined;
let wanted = false;

async function hold(): Promise<void> {
  if (!wanted || document.hidden || lock !== undefined || !('wakeLock' in navigator)) return;
  try {
    lock = await navigator.wakeLock.request('screen');
    lock.addEventListener('release', () => {
      lock = undefined;
    });
  } catch {
    // A machine low on power may refuse: the evening goes on without.
  }
}

let asked: Ask<'keepAwake'> = 'off';

/**
 * Keeps the screen or the machine awake. A browser knows the screen only, and keeps both with it; it loses that with a
 * hidden window and takes it again when the window is back.
 */
export function keepAwake(what: Ask<'keepAwake'>): void {
  if (what === asked) return;
  asked = what;
  void bridge
    .call('keepAwake', what)
    .catch(() => ({ kept: false }))
    .then(({ kept }) => {
      wanted = !kept && what !== 'off';
      if (wanted) void hold();
      else void lock?.release();
    });
}
document.addEventListener('visibilitychange', () => {
  void hold();
});
