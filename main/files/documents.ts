/**
 * The plans the window may read and write. It knows them by an id that is given out here and never by a path, so that
 * nothing the window runs can reach another file.
 */
import { randomUUID } from 'node:crypto';
import { mkdir, stat } from 'node:fs/promises';
import { basename, extname, join, resolve } from 'node:path';
import { wording } from '../../physics/evening/problem.ts';
import type { PlanDocument } from '../bridge.ts';
import { FlushFailed, inTurn, targetOf, writeAtomically } from './atomicWrite.ts';
import { causeOf, hasCode } from './disk.ts';
import { addRecent, namesIn, readRecents, type Warn } from './ownFiles.ts';
import type { Places } from './places.ts';
import { fileNameFor, planEnding } from './planName.ts';
import { readText } from './readText.ts';

interface Known {
  readonly path: string;
  /** when the text that the window holds was on disk; undefined until the plan is opened or saved */
  mtimeMs: number | undefined;
}

export interface Saved {
  readonly savedAt: string;
}

export class Documents {
  readonly #places: Places;
  readonly #warn: Warn;
  readonly #byId = new Map<string, Known>();
  readonly #idOf = new Map<string, string>();

  constructor(places: Places, warn: Warn) {
    this.#places = places;
    this.#warn = warn;
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
    const { text, mtimeMs } = await readText(known.path);
    known.mtimeMs = mtimeMs;
    await this.#remember(known.path);
    return { document, name: nameOf(known.path), text };
  }

  /** Whether somebody else wrote the file since the window read or saved it. A file that is gone is no conflict. */
  async changedOnDisk(document: string): Promise<boolean> {
    const { path, mtimeMs } = this.#known(document);
    try {
      return mtimeMs !== undefined && (await stat(path)).mtimeMs !== mtimeMs;
    } catch (error) {
      if (hasCode(error, 'ENOENT')) return false;
      throw error;
    }
  }

  async save(document: string, text: string): Promise<Saved> {
    const known = this.#known(document);
    try {
      await writeAtomically(known.path, text);
    } catch (error) {
      // The new file is in place then; the cook's work is not to be called unsaved.
      if (!(error instanceof FlushFailed)) throw error;
      this.#warn(error.message);
    }
    known.mtimeMs = (await stat(known.path)).mtimeMs;
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
        if (!hasCode(error, 'ENOENT', 'ENOTDIR'))
          this.#warn(`${path}: ${causeOf(error)}; left out of the list`);
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
    this.#byId.set(document, { path, mtimeMs: undefined });
    return document;
  }

  /** The list of recent plans is a comfort: that it cannot be written must not fail the opening or the save. */
  async #remember(path: string): Promise<void> {
    try {
      await addRecent(this.#places.recents, path, this.#warn);
    } catch (error) {
      this.#warn(causeOf(error));
    }
  }
}

export function nameOf(path: string): string {
  const ending = extname(path);
  return basename(path, ending === planEnding || ending === '.json' ? ending : '');
}
