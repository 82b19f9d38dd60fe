import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { downloadedBrowsers, downloadFolder } from '../../src/print/downloaded-browsers.js';
import { installedBrowsers } from '../../src/print/installed-browsers.js';

function folderWith(...programs: string[]): string {
  const folder = mkdtempSync(join(tmpdir(), 'shuntbook-downloads-'));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  for (const program of programs) {
    const path = join(folder, program);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, '');
    chmodSync(path, 0o755);
  }
  return folder;
}

const NAME = process.platform === 'win32' ? 'chrome-headless-shell.exe' : 'chrome-headless-shell';
const of = (version: string): string =>
  join('chrome-headless-shell', `linux-${version}`, 'chrome-headless-shell-linux64', NAME);

/** Environment variables for the test's time. */
function withEnvironment(more: Record<string, string>): void {
  const before = { ...process.env };
  Object.assign(process.env, more);
  onTestFinished(() => {
    process.env = before;
  });
}

describe('browsers that were downloaded', () => {
  it('are found by version, the newest first', async () => {
    const versions = ['99.0.1.2', '148.0.7778.97', '148.0.7778.168'];
    const folder = folderWith(...versions.map(of));
    expect(await downloadedBrowsers(folder)).toEqual(versions.toReversed().map((v) => join(folder, of(v))));
  });

  it('are none where nothing was downloaded', async () => {
    expect(await downloadedBrowsers(folderWith())).toEqual([]);
    expect(await downloadedBrowsers('/nowhere/at/all')).toEqual([]);
  });

  it('are looked for where puppeteer keeps them, or where its own variable says', () => {
    expect(downloadFolder({ PUPPETEER_CACHE_DIR: '/elsewhere' })).toBe('/elsewhere');
    expect(downloadFolder({})).toMatch(/[/\\]\.cache[/\\]puppeteer$/);
  });

  it('stand behind the installed ones, and one that was looked for in vain is told', async () => {
    const folder = folderWith(of('148.0.7778.97'));
    withEnvironment({ PUPPETEER_CACHE_DIR: folder, PATH: '' });
    const tried: string[] = [];
    expect((await installedBrowsers(tried)).at(-1)).toBe(join(folder, of('148.0.7778.97')));
    expect(tried.join()).not.toContain('downloaded');

    const empty = folderWith();
    withEnvironment({ PUPPETEER_CACHE_DIR: empty });
    await installedBrowsers(tried);
    expect(tried).toContain(`no downloaded browser in ${empty}`);
  });
});
