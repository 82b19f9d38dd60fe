import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'puppeteer-core';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import type { Note } from '../model/open-item.js';
import { PRINT_MESSAGES } from '../model/messages/print.js';
import { note } from '../model/message.js';
import {
  nameOfThisProcess,
  privateCacheFolder,
  sweepCacheFolder,
  type RefusedFolder,
} from './cache-folder.js';
import { loadDriver } from './driver.js';
import { dejavuFolder } from '../fonts/faces.js';
import { installedBrowsers } from './installed-browsers.js';
import { isShippedHere, shippedBrowser } from './shipped-browser.js';

/** A browser that can be started. */
interface BrowserProgram {
  readonly executable: string;
  /** Set for the shipped one: the folder of its libraries. */
  readonly libraries?: string;
}

/** A browser that runs, bound to this process. */
export interface RunningBrowser {
  readonly browser: Browser;
  /** Ends it (killed where it doesn't answer within 3 s) and removes its profile; never fails. */
  readonly end: () => Promise<void>;
}

/** How a browser is found. */
export interface BrowserOptions {
  /** `--browser`; before SHUNTBOOK_BROWSER, before the shipped one. */
  readonly browser?: string | undefined;
  /** ms that a browser may take to start before it counts as hung; default 60 000. */
  readonly startTimeout?: number | undefined;
  /** Is told what a person should know: no sandbox, another browser than the shipped one. */
  readonly onNotice?: (notice: Note) => void;
}

/** Our arguments, beside those that puppeteer gives every headless browser. */
const ARGUMENTS = [
  // Glyphs stand where their outlines say, not where a screen's pixels are: the same line breaks on every machine.
  '--font-render-hinting=none',
  // Pages are printed, never painted: no graphics driver is needed and none is looked for.
  '--disable-gpu',
  // The words of the browser's own making (list counters, hyphens) don't follow the machine's language.
  '--lang=en-US',
  // Colours are those of the style, whatever profile the machine's screen has.
  '--force-color-profile=srgb',
  // No name is ever looked up, should a request get past the page's own gate.
  '--host-resolver-rules=MAP * ~NOTFOUND',
  // Nothing is fetched by a helper of the browser, such as a proxy script.
  '--no-proxy-server',
];

/** Times that a browser is started before it counts as one that can't be. */
const STARTS = 2;

/**
 * What the browser would else put into its own environment while it starts, in one thread while others read there:
 * the list of variables then moves under the reader, and now and then a start ends in a fault of memory (two of some thousands).
 * A variable that is there already moves nothing.
 */
const SETTLED = { FC_FONTATIONS: '1', DBUS_SESSION_BUS_ADDRESS: 'disabled:' };

/**
 * Starts the browser: the one that is named, else the shipped one (Linux on x64), else an installed or downloaded one.
 * It is bound to this process by a pipe, so it ends with it, and has a profile of its own that goes with it.
 * @throws Failure (`print/no-browser`) naming every place that was tried
 */
export async function startBrowser(options: BrowserOptions = {}): Promise<RunningBrowser> {
  const tried: string[] = [];
  const refused: RefusedFolder[] = [];
  const cache = await privateCacheFolder(refused);
  tried.push(...refused.map((r) => `${r.folder}: ${r.because}`));
  if (cache === undefined) throw noBrowser(tried);
  await sweepCacheFolder(cache);
  const given = options.browser ?? process.env['SHUNTBOOK_BROWSER'];
  if (given !== undefined && given !== '') {
    const started = await tryToStart({ executable: given }, cache, tried, options);
    if (started) return started;
    throw noBrowser(tried);
  }
  if (isShippedHere()) {
    const shipped = await shippedBrowser(cache).catch((error: unknown) => {
      tried.push(`the shipped browser: ${reason(error)}`);
    });
    const started = shipped && (await tryToStart(shipped, cache, tried, options));
    if (started) return started;
  }
  for (const executable of await installedBrowsers(tried)) {
    const before = [...tried];
    const started = await tryToStart({ executable }, cache, tried, options);
    if (!started) continue;
    if (isShippedHere())
      options.onNotice?.(note(PRINT_MESSAGES.browserSubstituted, { tried: before, used: executable }));
    return started;
  }
  throw noBrowser(tried);
}

const noBrowser = (tried: readonly string[]): Failure =>
  new Failure(note(PRINT_MESSAGES.noBrowser, { tried }), EXIT.failed);

const reason = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).split('\n').slice(0, 3).join(' ').slice(0, 300);

async function tryToStart(
  program: BrowserProgram,
  cache: string,
  tried: string[],
  options: BrowserOptions,
): Promise<RunningBrowser | undefined> {
  const root = process.getuid?.() === 0;
  let sandbox = !root;
  for (let falls = 0; ;) {
    try {
      const browser = await launch(program, cache, sandbox, options.startTimeout ?? 60_000);
      if (!sandbox) options.onNotice?.(note(PRINT_MESSAGES.sandboxOff, { root }));
      return browser;
    } catch (error) {
      // A browser that falls while it starts may well stand the next time; one that has no sandbox never will with it.
      if (sandbox && /sandbox/i.test(String(error))) sandbox = false;
      else falls += 1;
      if (falls < STARTS) continue;
      tried.push(`${program.executable}: ${reason(error)}`);
      return undefined;
    }
  }
}

async function launch(
  program: BrowserProgram,
  cache: string,
  sandbox: boolean,
  limit: number,
): Promise<RunningBrowser> {
  const puppeteer = await loadDriver(cache);
  const profile = join(cache, nameOfThisProcess('profile'));
  await mkdir(profile, { mode: 0o700 });
  const forget = (): Promise<void> =>
    rm(profile, { recursive: true, force: true, maxRetries: 3 }).catch(() => undefined);
  // A browser that is stopped while it starts answers nothing: it is killed, which ends every wait for it.
  const hung = new AbortController();
  const timer = setTimeout(() => {
    hung.abort(new Error(`it didn’t start within ${limit} ms`));
  }, limit);
  try {
    const browser = await puppeteer.launch({
      executablePath: program.executable,
      headless: 'shell',
      pipe: true,
      userDataDir: profile,
      // root can't have the sandbox; else it stays on, and its refusal is told.
      args: sandbox ? ARGUMENTS : [...ARGUMENTS, '--no-sandbox'],
      env:
        program.libraries === undefined
          ? { ...process.env, ...SETTLED }
          : await shippedEnvironment(program.libraries, profile),
      // Ending is ours: a signal finishes or drops the page in hand.
      handleSIGINT: false,
      handleSIGTERM: false,
      handleSIGHUP: false,
      signal: hung.signal,
      // No limit but our own: how long a document may take goes by its size (printer.ts).
      timeout: 0,
      protocolTimeout: 0,
    });
    // A browser that is killed resets its pipes; that it is gone is seen where a document waits for it.
    for (const stream of browser.process()?.stdio ?? []) stream?.on('error', () => undefined);
    const end = async (): Promise<void> => {
      await close(browser);
      await forget();
    };
    return { browser, end };
  } catch (error) {
    await forget();
    throw hung.signal.aborted ? hung.signal.reason : error;
  } finally {
    clearTimeout(timer);
  }
}

async function close(browser: Browser): Promise<void> {
  const program = browser.process();
  let timer: NodeJS.Timeout | undefined;
  const patience = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, 3_000);
  });
  await Promise.race([browser.close().catch(() => undefined), patience]);
  clearTimeout(timer);
  // A page that hung stays behind when its browser ends.
  if (program?.pid !== undefined) killAll(program.pid);
}

/** Kills a browser with all its processes: they are a group of their own, and one that is stopped can't follow by itself. */
function killAll(pid: number): void {
  try {
    process.kill(process.platform === 'win32' ? pid : -pid, 'SIGKILL');
  } catch {
    // It has ended meanwhile.
  }
}

/**
 * The environment of the shipped browser's process: its own libraries, and of fonts none but the shipped, so that a
 * page looks the same whatever fonts a machine has.
 */
async function shippedEnvironment(libraries: string, profile: string): Promise<Record<string, string>> {
  const fontConfiguration = join(profile, 'fonts.conf');
  const escaped = (path: string): string => path.replace(/&/g, '&amp;').replace(/</g, '&lt;');
  await writeFile(
    fontConfiguration,
    `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${escaped(dejavuFolder())}</dir>` +
      `<cachedir>${escaped(join(profile, 'fonts'))}</cachedir></fontconfig>`,
  );
  return {
    ...SETTLED,
    PATH: process.env['PATH'] ?? '/usr/bin:/bin',
    // A key store or settings folder of the user's is never touched.
    HOME: profile,
    TMPDIR: profile,
    LANG: 'C.UTF-8',
    LD_LIBRARY_PATH: libraries,
    FONTCONFIG_FILE: fontConfiguration,
  };
}
