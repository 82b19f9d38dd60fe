import { access, constants } from 'node:fs/promises';
import { delimiter, join } from 'node:path';
import { loadDriver } from './driver.js';

const LINUX_NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
  'microsoft-edge',
];
const MAC_APPLICATIONS = ['Google Chrome', 'Chromium', 'Microsoft Edge'];
const WINDOWS_PROGRAMS = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
];

/** Where an installed browser may be, best first, whether or not one is there. */
function places(): string[] {
  const { env } = process;
  if (process.platform === 'darwin') {
    return ['/Applications', join(env['HOME'] ?? '/', 'Applications')].flatMap((folder) =>
      MAC_APPLICATIONS.map((name) => join(folder, `${name}.app`, 'Contents', 'MacOS', name)),
    );
  }
  if (process.platform === 'win32') {
    const folders = [env['PROGRAMFILES'], env['PROGRAMFILES(X86)'], env['LOCALAPPDATA']].filter(
      (f) => f !== undefined,
    );
    return folders.flatMap((folder) => WINDOWS_PROGRAMS.map((path) => join(folder, ...path)));
  }
  const folders = (env['PATH'] ?? '').split(delimiter).filter((folder) => folder.startsWith('/'));
  return LINUX_NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/**
 * Looks for installed browsers and for one that puppeteer's own command downloaded.
 * @param cache a folder of this user alone
 * @param tried takes a line for what was looked for in vain
 * @returns paths of programs that can be started, best first
 */
export async function installedBrowsers(cache: string, tried: string[]): Promise<string[]> {
  const found: string[] = [];
  for (const place of places()) {
    if (await isProgram(place)) found.push(place);
  }
  if (found.length === 0) tried.push('no installed Chrome, Chromium or Edge');
  const puppeteer = await loadDriver(cache);
  try {
    const downloaded = puppeteer.executablePath({ headless: 'shell' });
    if (await isProgram(downloaded)) found.push(downloaded);
    else tried.push(`no downloaded browser at ${downloaded}`);
  } catch {
    tried.push('no browser downloaded by puppeteer');
  }
  return found;
}

const isProgram = (path: string): Promise<boolean> =>
  access(path, constants.X_OK).then(
    () => true,
    () => false,
  );
