/**
 * The bridge between the window and the shell: one list of calls with the schema of what is asked and what is
 * answered. Every host (Electron, app window of a browser, served page) speaks exactly this list; types come from it.
 * The window never sends a path: it names a document by the id that the shell gave it.
 */
import * as v from 'valibot';

const documentId = v.pipe(v.string(), v.uuid('the id of a document, a UUID'));
/** A plan file is at most 1 MB. */
const planText = v.pipe(v.string(), v.maxLength(1_000_000));
const planDocument = v.strictObject({ document: documentId, name: v.string(), text: planText });

/** What is ticked on the shopping list of one evening, which is known by its title and day. */
const ticks = v.strictObject({
  title: v.pipe(v.string(), v.maxLength(200)),
  day: v.pipe(v.string(), v.maxLength(10)),
  there: v.pipe(v.array(v.pipe(v.string(), v.maxLength(200))), v.maxLength(200)),
});

const settings = v.strictObject({
  theme: v.picklist(['system', 'flour', 'iron']),
  units: v.picklist(['metric', 'us']),
  /** whether single letters work as keys; on unless said otherwise (WCAG 2.1.4 asks that they can be switched off) */
  letterKeys: v.optional(v.boolean()),
  /** of the last evenings shopped for, the newest first */
  ticks: v.optional(v.pipe(v.array(ticks), v.maxLength(20))),
});

export const calls = {
  /** What the window needs to know at start. `dialogs`: the host has its own file dialogs. */
  greet: {
    ask: v.null(),
    answer: v.strictObject({
      host: v.picklist(['electron', 'browser', 'serve']),
      dialogs: v.boolean(),
      version: v.string(),
      platform: v.picklist(['linux', 'mac', 'windows']),
      /** the file named on the command line or double-clicked, if any */
      opened: v.nullable(planDocument),
      /** unsaved work of the last session, if any */
      recovered: v.nullable(v.strictObject({ text: planText, keptAt: v.string() })),
      settings,
    }),
  },
  /** Lets the cook pick a file in the host's own dialog; null when cancelled. Only with `dialogs`. */
  choosePlan: { ask: v.null(), answer: v.nullable(planDocument) },
  /** The plans in the program's own folder and those opened recently, newest first. */
  listPlans: {
    ask: v.null(),
    answer: v.array(v.strictObject({ document: documentId, name: v.string(), changedAt: v.string() })),
  },
  openPlan: { ask: v.strictObject({ document: documentId }), answer: planDocument },
  /**
   * Writes over the document (atomically, the previous version kept). When the file changed on disk since it was
   * opened or saved here, a host with dialogs asks; elsewhere the call is refused unless `evenIfChanged` is true.
   */
  savePlan: {
    ask: v.strictObject({ document: documentId, text: planText, evenIfChanged: v.optional(v.boolean()) }),
    answer: v.strictObject({ savedAt: v.string() }),
  },
  /** With `dialogs` the host asks where; otherwise the plan goes to the program's own folder under this name. */
  savePlanAs: {
    ask: v.strictObject({ name: v.pipe(v.string(), v.minLength(1), v.maxLength(120)), text: planText }),
    answer: v.nullable(v.strictObject({ document: documentId, name: v.string(), savedAt: v.string() })),
  },
  /**
   * Keeps unsaved work aside for the next start; an empty text forgets it. `offer` says what became of the work that
   * `greet` offered: `open` while the cook has not decided, and it stays; `settled` once it was taken or dropped.
   * Unsaid, it goes with an empty text.
   */
  keepUnsaved: {
    ask: v.strictObject({ text: planText, offer: v.optional(v.picklist(['open', 'settled'])) }),
    answer: v.null(),
  },
  saveSettings: { ask: settings, answer: v.null() },
  /** The ovens learned, as `saveOvens` was last given them; empty when none were. Refused when they cannot be read. */
  readOvens: { ask: v.null(), answer: planText },
  saveOvens: { ask: v.strictObject({ text: planText }), answer: v.null() },
  /** A note of the system; `shown: false` where the window has to show it by its own means. */
  notify: {
    ask: v.strictObject({
      title: v.pipe(v.string(), v.minLength(1), v.maxLength(60)),
      body: v.pipe(v.string(), v.maxLength(180)),
    }),
    answer: v.strictObject({ shown: v.boolean() }),
  },
  /**
   * The alarms that still can ring, all of them, each with its instant (ms since 1970-01-01T00:00Z): the shell keeps the
   * time, since a hidden window is held back, and pushes `alarmDue` when one is due. An empty list ends them.
   */
  setAlarms: {
    ask: v.pipe(
      v.array(
        v.strictObject({
          step: v.pipe(v.string(), v.minLength(1), v.maxLength(40)),
          at: v.pipe(v.number(), v.safeInteger(), v.minValue(0)),
          title: v.pipe(v.string(), v.minLength(1), v.maxLength(60)),
          body: v.pipe(v.string(), v.maxLength(180)),
        }),
      ),
      v.maxLength(200),
    ),
    answer: v.null(),
  },
  /** While timers run; `kept: false` where the window has to keep the screen awake by its own means. */
  keepAwake: {
    ask: v.picklist(['off', 'machine', 'screen']),
    answer: v.strictObject({ kept: v.boolean() }),
  },
} as const;

/** What the shell tells the window unasked. */
export const pushes = {
  /** another file was opened from outside (second start, double click) */
  opened: planDocument,
  /** an alarm is due; the window looks at all of them, so that none rings twice */
  alarmDue: v.strictObject({ step: v.string() }),
  /** a menu item was chosen */
  command: v.picklist(['new', 'open', 'save', 'saveAs', 'undo', 'redo', 'print', 'settings']),
} as const;

export type CallName = keyof typeof calls;
export type PushName = keyof typeof pushes;
export type Ask<K extends CallName> = v.InferOutput<(typeof calls)[K]['ask']>;
export type Answer<K extends CallName> = v.InferOutput<(typeof calls)[K]['answer']>;
export type Push<K extends PushName> = v.InferOutput<(typeof pushes)[K]>;
export type Settings = v.InferOutput<typeof settings>;
export type PlanDocument = v.InferOutput<typeof planDocument>;

/** The shell's side. */
export type Bridge = { readonly [K in CallName]: (ask: Ask<K>) => Promise<Answer<K>> };

/** The window's side: Electron's preload offers it as `window.hearthclock`; the browser hosts over HTTP. */
export interface WindowBridge {
  call<K extends CallName>(name: K, ask: Ask<K>): Promise<Answer<K>>;
  on<K extends PushName>(name: K, listener: (push: Push<K>) => void): () => void;
}
