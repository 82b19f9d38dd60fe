import { existsSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Failure } from '../../src/model/failure.js';
import { withPrinter, type Printer, type PrintOrder } from '../../src/print/printer.js';
import { shippedBrowser } from '../../src/print/shipped-browser.js';
import { timeLimit } from '../../src/print/time-limit.js';
import { saidOf } from '../told.js';
import { browserProcesses, runs, until } from './browser-processes.js';

const order = (rows: number, title = 'table'): PrintOrder => ({
  html: `<!doctype html><html lang="en"><head><title>${title}</title><style>body { font-family: "DejaVu Sans" }</style></head><body><h1>${title}</h1><table>${Array.from({ length: rows }, (_, i) => `<tr><th>${i}</th><td>cell ${i}</td></tr>`).join('')}</table></body></html>`,
  metadata: { title, author: '', subject: '', keywords: [], language: 'en', created: new Date(0) },
});

const starts = (bytes: Uint8Array): string => Buffer.from(bytes.subarray(0, 8)).toString('latin1');

/** Signals the browser's processes of one type, and gives their ids. */
function signal(type: string, name: NodeJS.Signals): number[] {
  const all = browserProcesses();
  const some = all.filter((p) => p.type === type);
  return some.map((p) => p.pid).filter((pid) => signalled(pid, name));
}

/** False where the process ended before the signal came. */
function signalled(pid: number, name: NodeJS.Signals): boolean {
  try {
    return process.kill(pid, name);
  } catch {
    return false;
  }
}

/** Waits until the browser's page has computed for half a second, in which it lays the document out for printing. */
async function busy(): Promise<void> {
  const ticks = async (): Promise<number> => {
    const renderers = browserProcesses().filter((p) => p.type === 'renderer');
    const states = await Promise.all(renderers.map((p) => readFile(`/proc/${p.pid}/stat`, 'utf8')));
    // Fields 14 and 15, in hundredths of a second, counted after the name in brackets.
    const used = states.map((state) => state.slice(state.lastIndexOf(')') + 2).split(' '));
    return used.reduce((sum, fields) => sum + Number(fields[11]) + Number(fields[12]), 0);
  };
  const before = await ticks();
  await until(async () => (await ticks()) > before + 50);
}

// Timers run as the clock does, and can be told that minutes have gone by: nobody waits for them, and no limit is made so
// short that a browser on a busy machine could overrun it.
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'], shouldAdvanceTime: true });
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a browser that fails', () => {
  it('is replaced when it is killed in the middle of a document, and the document is printed', async () => {
    await withPrinter({ pages: 2 }, async (printer) => {
      const calm = await printer.print(order(50));
      const printing = [printer.print(order(6_000)), printer.print(order(50))];
      await until(() => browserProcesses().some((p) => p.type === 'renderer'));
      expect(signal('browser', 'SIGKILL')).toHaveLength(1);
      const [long, short] = await Promise.all(printing);
      expect(starts(long ?? new Uint8Array())).toBe('%PDF-1.7');
      expect(Buffer.compare(short ?? new Uint8Array(), calm)).toBe(0);
    });
    await until(() => browserProcesses().length === 0);
  });

  it('is replaced when a page crashes', async () => {
    await withPrinter({ pages: 1 }, async (printer) => {
      const calm = await printer.print(order(50));
      const printing = printer.print(order(6_000));
      expect(signal('renderer', 'SIGKILL')).not.toEqual([]);
      expect(starts(await printing)).toBe('%PDF-1.7');
      expect(Buffer.compare(await printer.print(order(50)), calm)).toBe(0);
    });
  });

  it('is replaced when it hangs; a document that hangs again is given up, and the others are printed', async () => {
    // Time flies while pages are stopped, also while a browser starts that takes the place of one that hung.
    await withPrinter({ pages: 2, startTimeout: 3_600_000 }, async (printer: Printer) => {
      await printer.print(order(5));
      // Every page that comes up is stopped, the one that takes the first one's place as well.
      const stopped: number[] = [];
      let isSettled = false;
      const stopAll = async (): Promise<void> => {
        while (!isSettled) {
          stopped.push(...signal('renderer', 'SIGSTOP'));
          await vi.advanceTimersByTimeAsync(1_000);
          // Far less than a browser takes for 6,000 rows.
          await pause(10);
        }
      };
      const stopping = stopAll();
      const failing = printer.print(order(6_000, 'The one that hangs')).finally(() => {
        isSettled = true;
      });
      await expect(failing).rejects.toMatchObject({
        exitStatus: 70,
        note: { code: 'print/document-failed' },
      });
      await stopping;
      // A stopped process doesn't follow its browser by itself.
      await until(() => !stopped.some(runs));
      expect(starts(await printer.print(order(20, 'another')))).toBe('%PDF-1.7');
    });
    await until(() => browserProcesses().length === 0);
  }, 240_000);

  it('is replaced when it is stopped while it prints, and the document is printed', async () => {
    await withPrinter({ pages: 1, documentTimeout: 180_000 }, async (printer) => {
      const calm = await printer.print(order(50));
      const long = order(6_000);
      const printing = printer.print(long);
      await busy();
      expect(signal('browser', 'SIGSTOP')).toHaveLength(1);
      // Longer than the half minute, and the three, that the library would wait by itself.
      const limit = timeLimit(long.html, 180_000);
      await vi.advanceTimersByTimeAsync(limit);
      expect(starts(await printing)).toBe('%PDF-1.7');
      expect(Buffer.compare(await printer.print(order(50)), calm)).toBe(0);
    });
    await until(() => browserProcesses().length === 0);
  });

  it('that is not there is told with every place that was tried and a command', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'shuntbook-browser-'));
    const browser = join(folder, 'no-browser');
    await writeFile(browser, '#!/bin/sh\nexit 3\n', { mode: 0o755 });
    const printing = withPrinter({ browser }, (printer) => printer.print(order(1)));
    const failure: unknown = await printing.catch((thrown: unknown) => thrown);
    if (!(failure instanceof Failure)) throw new Error('a browser that is not there was started');
    expect(failure).toMatchObject({ exitStatus: 70, note: { code: 'print/no-browser' } });
    expect(saidOf(failure.note)).toMatchObject({
      found: expect.stringContaining(browser) as string,
      hint: expect.stringContaining('apt-get install') as string,
    });
    await rm(folder, { recursive: true });
  });

  it('that falls while it starts is started again', async () => {
    const shipped = await shippedBrowser(join(homedir(), '.cache', 'shuntbook'));
    const folder = await mkdtemp(join(tmpdir(), 'shuntbook-browser-'));
    const browser = join(folder, 'falls-once');
    const script = `#!/bin/sh\n[ -e '${folder}/fallen' ] || { touch '${folder}/fallen'; kill -SEGV $$; }\nexport LD_LIBRARY_PATH='${shipped.libraries}'\nexec '${shipped.executable}' "$@"\n`;
    await writeFile(browser, script, { mode: 0o755 });
    const bytes = await withPrinter({ browser }, (printer) => printer.print(order(1)));
    expect(starts(bytes)).toBe('%PDF-1.7');
    expect(await readdir(folder)).toContain('fallen');
    await rm(folder, { recursive: true });
  });

  it('that stops while it starts is killed and started again', async () => {
    const shipped = await shippedBrowser(join(homedir(), '.cache', 'shuntbook'));
    const folder = await mkdtemp(join(tmpdir(), 'shuntbook-browser-'));
    const browser = join(folder, 'stops-once');
    const script = `#!/bin/sh\n[ -e '${folder}/stopped' ] || { echo $$ > '${folder}/stopped'; kill -STOP $$; }\nexport LD_LIBRARY_PATH='${shipped.libraries}'\nexec '${shipped.executable}' "$@"\n`;
    await writeFile(browser, script, { mode: 0o755 });
    const printing = withPrinter({ browser, startTimeout: 90_000 }, (printer) => printer.print(order(1)));
    await until(() => existsSync(join(folder, 'stopped')));
    await vi.advanceTimersByTimeAsync(90_000);
    expect(starts(await printing)).toBe('%PDF-1.7');
    const stopped = Number(await readFile(join(folder, 'stopped'), 'utf8'));
    await until(() => !runs(stopped));
    await rm(folder, { recursive: true });
  });

  it('leaves no profile behind', async () => {
    await withPrinter({ pages: 1 }, (printer) => printer.print(order(1)));
    const own = (await readdir(join(homedir(), '.cache', 'shuntbook'))).filter((n) =>
      n.includes(`@${process.pid}@`),
    );
    expect(own).toEqual([]);
  }, 240_000);
});
