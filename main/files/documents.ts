/**
 * The plans the window may read and write. It knows them by an id that is given out here and never by a path, so that
 * nothing the window runs can reach another file.
 */
import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, stat } from 'node:fs/promises';
import { basename, extname, join, resolve } from 'node:path';
import { wording } from '../../physics/evening/problem.ts';
import type { PlanDocument } from '../bridge.ts';
import { inTurn, targetOf, writeAndTell } from './atomicWrite.ts';
import { causeOf, hasCode, realDisk, type Disk } from './disk.ts';
import { addRecent, namesIn, readRecents, type Warn } from './ownFiles.ts';
import type { Places } from './places.ts';
import { fileNameFor, planEnding } from './planName.ts';
import { fingerprintOf, readText } from './readText.ts';

interface Known {
  readonly path: string;
  /** of the file as the window read or saved it; undefined until then */
  fingerprint: string | undefined;
}

export interface Saved {
  readonly savedAt: string;
}

export class Documents {
  readonly #places: Places;
  readonly #warn: Warn;
  readonly #disk: Disk;
  readonly #byId = new Map<string, Known>();
  readonly #idOf = new Map<string, string>();

  constructor(places: Places, warn: Warn, disk = realDisk) {
    this.#places = places;
    this.#warn = warn;
    this.#disk = disk;
  }

  /** @throws Error for an id that was not given out here */
  pathOf(document: string): string {
    return this.#known(document).path;
  }

  async open(path: string): Promise<PlanDocument> {
    const document = this.#idFor(await targetOf(resolve(path)));
    return this.openAgain(document);
  }

  async openAgain(document: string): Promise<PlanDocument> {
    const known = this.#known(document);
    const { text, fingerprint } = await readText(known.path);
    known.fingerprint = fingerprint;
    await this.#remember(known.path);
    return { document, name: nameOf(known.path), text };
  }

  /**
   * Whether the file is another than the window read or saved, or one that it never read. One that is gone is no
   * conflict, and one that cannot be looked at is for the save to fail at.
   */
  async changedOnDisk(document: string): Promise<boolean> {
    const { path, fingerprint } = this.#known(document);
    if (!existsSync(path)) return false;
    return readText(path).then(
      (read) => read.fingerprint !== fingerprint,
      // Too large by now, no text any more, not to be read: nothing that was written from here.
      () => true,
    );
  }

  async save(document: string, text: string): Promise<Saved> {
    const known = this.#known(document);
    await writeAndTell(known.path, text, this.#warn, { disk: this.#disk });
    known.fingerprint = fingerprintOf(text);
    await this.#remember(known.path);
    return { savedAt: new Date().toISOString() };
  }

  async saveTo(path: string, text: string): Promise<Saved & { document: string; name: string }> {
    const target = await targetOf(resolve(path));
    const document = this.#idFor(target);
    const { savedAt } = await this.save(document, text);
    return { document, name: nameOf(target), savedAt };
  }

  /** Into the program's own folder, beside what is there and never over it: `Friday`, `Friday 2`, `Friday 3`. */
  async saveInOwnFolder(name: string, text: string): Promise<Saved & { document: string; name: string }> {
    const wanted = fileNameFor(name);
    await mkdir(this.#places.plans, { recursive: true });
    return inTurn(this.#places.plans, async () => {
      const taken = new Set((await namesIn(this.#places.plans)).map((one) => one.toLowerCase()));
      let free = wanted;
      for (let n = 2; taken.has(`${free}${planEnding}`.toLowerCase()); n += 1) free = `${wanted} ${n}`;
      return this.saveTo(join(this.#places.plans, `${free}${planEnding}`), text);
    });
  }

  async list(): Promise<{ document: string; name: string; changedAt: string }[]> {
    const own = (await namesIn(this.#places.plans))
      .filter((name) => name.endsWith(planEnding))
      .map((name) => join(this.#places.plans, name));
    const found = new Map<string, number>();
    for (const path of [...own, ...(await readRecents(this.#places.recents, this.#warn))]) {
      try {
        const target = await targetOf(path);
        const about = await stat(target);
        if (about.isFile()) found.set(target, about.mtimeMs);
      } catch (error) {
        // A recent plan on a stick that was pulled out is no news; anything else is.
        if (!hasCode(error, 'ENOENT')) this.#warn(`${path}: ${causeOf(error)}; left out of the list`);
      }
    }
    return [...found]
      .sort(([, a], [, b]) => b - a)
      .map(([path, mtimeMs]) => ({
        document: this.#idFor(path),
        name: nameOf(path),
        changedAt: new Date(mtimeMs).toISOString(),
      }));
  }

  #known(document: string): Known {
    const known = this.#byId.get(document);
    if (known === undefined) {
      throw new Error(
        wording({
          path: 'document',
          found: document,
          allowed: 'an id answered by choosePlan, listPlans, openPlan or savePlanAs in this session',
        }),
      );
    }
    return known;
  }

  #idFor(path: string): string {
    const given = this.#idOf.get(path);
    if (given !== undefined) return given;
    const document = randomUUID();
    this.#idOf.set(path, document);
    this.#byId.set(document, { path, fingerprint: undefined });
    return document;
  }

  /** The list of recent plans is a comfort: that it cannot be written must not fail the opening or the save. */
  async #remember(path: string): Promise<void> {
    try {
      await addRecent(this.#places.recents, path, this.#warn, this.#disk);
    } catch (error) {
      this.#warn(causeOf(error));
    }
  }
}

export function nameOf(path: string): string {
  const ending = extname(path);
  return basename(path, ending === planEnding || ending === '.json' ? ending : '');
}
