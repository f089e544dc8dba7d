/** What `npm start` was asked for. */
import { wording, type Problem } from '../../physics/evening/problem.ts';
import { hostNames, type HostName } from './choose.ts';

export interface StartOptions {
  readonly file?: string;
  readonly host?: HostName;
  readonly help: boolean;
}

export const help = `Opens the window of Hearthclock.

  npm start -- [FILE] [--host electron|browser|serve] [--help]

  FILE            a plan file to open
  --host electron in Electron; its binary is fetched once if it is not here
  --host browser  in an installed Chromium-family browser, as a window of its own (CHROME_PATH can name the browser)
  --host serve    prints an address on a line of its own and serves the window there, on this machine only
  --help          this text

Without --host: Electron, else the browser, else serve; the terminal says which and why.
Plans, settings and unsaved work lie in the folder of your system for program data; HEARTHCLOCK_DATA names another.
Exit status: 0 done, 2 the request was wrong, 1 our fault.
`;

/** @returns the options, or what is wrong with them in our one wording */
export function readStartOptions(words: readonly string[]): StartOptions | { readonly problems: string[] } {
  const problems: Problem[] = [];
  const files: string[] = [];
  let host: HostName | undefined;
  let askedHelp = false;
  let onlyFiles = false;
  const takeHost = (name: string | undefined): void => {
    const known = hostNames.find((one) => one === name);
    if (known === undefined) {
      const found = name === undefined ? 'nothing' : JSON.stringify(name);
      problems.push({ path: '--host', found, allowed: hostNames.join(', ') });
    }
    host = known;
  };
  for (let i = 0; i < words.length; i += 1) {
    const word = words[i]!;
    if (onlyFiles || !word.startsWith('-')) files.push(word);
    else if (word === '--') onlyFiles = true;
    else if (word === '--help' || word === '-h') askedHelp = true;
    else if (word === '--host') takeHost(words[(i += 1)]);
    else if (word.startsWith('--host=')) takeHost(word.slice('--host='.length));
    else problems.push({ path: 'option', found: word, allowed: '--host, --help' });
  }
  const [file, ...more] = files;
  if (more.length > 0) {
    problems.push({ path: 'FILE', found: `${files.length} files`, allowed: 'one' });
  }
  if (problems.length > 0) return { problems: problems.map(wording) };
  return {
    help: askedHelp,
    ...(file === undefined ? {} : { file }),
    ...(host === undefined ? {} : { host }),
  };
}
