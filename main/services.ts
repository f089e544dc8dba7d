/** The services behind the bridge: one implementation for every host. */
import { mkdir } from 'node:fs/promises';
import { wording } from '../physics/evening/problem.ts';
import { AlarmClock } from './alarmClock.ts';
import type { Answer, Bridge, PlanDocument, Push, PushName } from './bridge.ts';
import { inTurn, sweepTemporaries } from './files/atomicWrite.ts';
import { causeOf, type Disk } from './files/disk.ts';
import { Documents } from './files/documents.ts';
import {
  readOvens,
  readSettings,
  UnsavedWork,
  writeOvens,
  writeSettings,
  type Warn,
} from './files/ownFiles.ts';
import type { Places } from './files/places.ts';
import { fileNameFor, planEnding } from './files/planName.ts';
import { systemName, type Platform } from './platform.ts';

export interface ServiceOptions {
  readonly platform: Platform;
  readonly places: Places;
  readonly version: string;
  /** the plan named on the command line or double-clicked */
  readonly file?: string | undefined;
  readonly warn: Warn;
  /** tells the window something unasked */
  readonly push: <K extends PushName>(name: K, what: Push<K>) => void;
  /** where files are written, for tests */
  readonly disk?: Disk;
}

export interface Services {
  readonly bridge: Bridge;
  /** Another plan was opened from outside (second start, double click). */
  readonly openFromOutside: (path: string) => Promise<PlanDocument>;
}

/** Makes the program's own folders and sweeps what a killed save left in them. */
export async function openServices(options: ServiceOptions): Promise<Services> {
  const { platform, places, version, warn, disk, push } = options;
  for (const folder of [places.root, places.plans, places.unsaved]) {
    // What a cook writes down is nobody else's business on a shared machine.
    await mkdir(folder, { recursive: true, mode: 0o700 });
    await sweepTemporaries(folder, Date.now());
  }
  const documents = new Documents(places, warn, disk);
  const unsaved = new UnsavedWork(places.unsaved, warn, process.pid, disk);
  /** Shown again when the window is loaded again. */
  let current = options.file;

  const alarmClock = new AlarmClock(({ step, title, body }) => {
    platform.notify({ title, body });
    push('alarmDue', { step });
  });

  const openFromOutside = async (path: string): Promise<PlanDocument> => {
    const plan = await documents.open(path);
    current = path;
    platform.documentShown(documents.pathOf(plan.document));
    return plan;
  };

  const openAtStart = async (): Promise<PlanDocument | null> => {
    if (current === undefined) return null;
    try {
      return await openFromOutside(current);
    } catch (error) {
      // The window has to come up all the same; the terminal says why it is not showing the file.
      warn(causeOf(error));
      return null;
    }
  };

  const mayOverwrite = async (document: string): Promise<boolean> => {
    if (!(await documents.changedOnDisk(document))) return true;
    const changed = `${documents.pathOf(document)} was changed by another program since it was opened here.`;
    if (platform.dialogs === undefined) {
      throw new Error(
        `${changed} Save under another name, or save again to replace it (that version is kept as .bak).`,
      );
    }
    return platform.dialogs.confirm(`${changed} Replace it? That version is kept as .bak.`, 'Replace');
  };

  const orGivenUp = async <T>(save: () => Promise<T>): Promise<T> => {
    let saved: T | null = null;
    try {
      return (saved = await save());
    } finally {
      if (saved === null) platform.saveGivenUp();
    }
  };

  const bridge: Bridge = {
    greet: async () => {
      const settings = await readSettings(places.settings, warn);
      // A window that was loaded anew says so itself when timers are still running.
      platform.keepAwake('off');
      platform.themeChosen(settings.theme);
      return {
        host: platform.host,
        dialogs: platform.dialogs !== undefined,
        version,
        platform: systemName(process.platform),
        opened: await openAtStart(),
        recovered: await unsaved.offer(),
        settings,
      };
    },
    choosePlan: async () => {
      if (platform.dialogs === undefined) throw noDialogs(platform.host);
      const path = await platform.dialogs.pickToOpen();
      return path === undefined ? null : openFromOutside(path);
    },
    listPlans: () => documents.list(),
    openPlan: async ({ document }) => {
      const plan = await documents.openAgain(document);
      current = documents.pathOf(document);
      platform.documentShown(current);
      return plan;
    },
    savePlan: ({ document, text, evenIfChanged }) =>
      // In turn, or the second of two quick saves would take the first for another program's change.
      inTurn(`document ${document}`, () =>
        orGivenUp(async () => {
          if (evenIfChanged !== true && !(await mayOverwrite(document))) {
            throw new Error(
              `${documents.pathOf(document)} was left as it is; your changes are not saved yet.`,
            );
          }
          return documents.save(document, text);
        }),
      ),
    savePlanAs: ({ name, text }) =>
      orGivenUp(async () => {
        let saved: NonNullable<Answer<'savePlanAs'>>;
        if (platform.dialogs === undefined) {
          saved = await documents.saveInOwnFolder(name, text);
        } else {
          const path = await platform.dialogs.pickToSave(`${fileNameFor(name)}${planEnding}`);
          if (path === undefined) return null;
          saved = await documents.saveTo(path, text);
        }
        current = documents.pathOf(saved.document);
        platform.documentShown(current);
        return saved;
      }),
    keepUnsaved: async ({ text, offer }) => {
      await unsaved.keep(text, offer);
      platform.unsavedChanged(text !== '');
      return null;
    },
    saveSettings: async (settings) => {
      await writeSettings(places.settings, settings, warn, disk);
      platform.themeChosen(settings.theme);
      return null;
    },
    readOvens: () => readOvens(places.ovens),
    saveOvens: async ({ text }) => {
      await writeOvens(places.ovens, text, warn, disk);
      return null;
    },
    notify: (note) => Promise.resolve({ shown: platform.notify(note) }),
    setAlarms: (alarms) => {
      alarmClock.set(alarms);
      return Promise.resolve(null);
    },
    keepAwake: (what) => Promise.resolve({ kept: platform.keepAwake(what) }),
  };
  return { bridge, openFromOutside };
}

function noDialogs(host: string): Error {
  return new Error(
    wording({ path: 'choosePlan', found: `the host ${host}`, allowed: 'a host with its own file dialogs' }),
  );
}
