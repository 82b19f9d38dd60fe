import { execFile, execFileSync, fork, spawn, spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { startBrowser } from '../../src/print/browser.js';

const TESTS = fileURLToPath(new URL('..', import.meta.url));
// What starts a browser or a process. This test imports it to see that it can't.
const STARTS =
  /from '(?:node:)?(?:child_process|puppeteer)'|\/(?:print\/(?:browser|printer|browser-processes)|faults\/program|\.\/(?:program|browser-processes))\.js'/;
const STARTS_NONE: unknown = expect.stringContaining('A quick test starts no process');
const THIS = 'quick/start-nothing.test.ts';

const files = readdirSync(TESTS, { recursive: true, encoding: 'utf8' }).filter(
  (name) => name.endsWith('.test.ts') && !name.startsWith('outside/'),
);
const isStarted = (name: string): boolean => /\.(?:browser|process)\.test\.ts$/.test(name);

describe('the quick tests', () => {
  it.each([
    ['spawn', () => spawn(process.execPath, ['-e', ''])],
    ['spawnSync', () => spawnSync(process.execPath, ['-e', ''])],
    ['execFile', () => execFile(process.execPath, ['-e', ''])],
    ['execFileSync', () => execFileSync(process.execPath, ['-e', ''])],
    ['fork', () => fork('nothing.js')],
  ])('start no process by %s', (_, start) => {
    expect(start).toThrow(/A quick test starts no process/);
  });

  it('start no browser', async () => {
    await expect(startBrowser()).rejects.toMatchObject({
      note: { values: { tried: expect.arrayContaining([STARTS_NONE]) as string[] } },
    });
  });

  it('import nothing that starts one', () => {
    const quick = files.filter((name) => !isStarted(name) && name !== THIS);
    expect(quick.length).toBeGreaterThan(100);
    expect(quick.filter((name) => STARTS.test(readFileSync(`${TESTS}/${name}`, 'utf8')))).toEqual([]);
  });

  it('are told by their name from those that start something', () => {
    const started = files.filter(isStarted);
    expect(started.length).toBeGreaterThan(5);
    // The search finds them: directly, or by the command line and the batch, which print.
    const prints = /runBatch|shuntbook\(/;
    const idle = started.filter((name) => {
      const text = readFileSync(`${TESTS}/${name}`, 'utf8');
      return !STARTS.test(text) && !prints.test(text);
    });
    expect(idle).toEqual([]);
  });
});
