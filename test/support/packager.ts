/** Packages of electron-builder, each from the one that depends on it, not from wherever npm happened to put it. */
import { createRequire } from 'node:module';

export const builder = createRequire(createRequire(import.meta.url).resolve('electron-builder/package.json'));
export const library = createRequire(builder.resolve('app-builder-lib/package.json'));
