import { readdir } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join } from 'node:path';

/** What the download of a browser without windows is called, as a folder and as a program. */
const NAME = 'chrome-headless-shell';

/**
 * Where puppeteer's own command keeps what it downloads.
 * @param env the environment: `PUPPETEER_CACHE_DIR` goes before the home
 * @returns the folder, or undefined for a user that has no home
 */
export function downloadFolder(env: NodeJS.ProcessEnv): string | undefined {
  const given = env['PUPPETEER_CACHE_DIR'];
  if (given !== undefined && given !== '') return given;
  try {
    return join(homedir(), '.cache', 'puppeteer');
  } catch {
    return undefined;
  }
}

/**
 * The browsers that puppeteer's own command downloaded: one folder by platform and version, the program in a folder of it.
 * @param folder of the downloads
 * @returns paths of programs, newest version first, whether or not they can be started
 */
export async function downloadedBrowsers(folder: string): Promise<string[]> {
  const program = process.platform === 'win32' ? `${NAME}.exe` : NAME;
  const versions = await foldersIn(join(folder, NAME));
  versions.sort((a, b) => versionOf(b).localeCompare(versionOf(a), 'en', { numeric: true }));
  const found = await Promise.all(
    versions.map(async (version) => {
      const within = join(folder, NAME, version);
      return (await foldersIn(within)).map((name) => join(within, name, program));
    }),
  );
  return found.flat();
}

const versionOf = (name: string): string => name.slice(name.lastIndexOf('-') + 1);

async function foldersIn(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  return entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
}
