import { readdirSync, readFileSync } from 'node:fs';

/** A process of a browser that this process started. */
export interface BrowserProcess {
  readonly pid: number;
  /** `browser`, `renderer`, `gpu-process`, `zygote`, `utility`. */
  readonly type: string;
}

// Read at once: what is asked twenty times a second costs a tenth of what it costs through the pool of threads.
function readOrNothing(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}

/**
 * The browser processes that descend from a process of ours (Linux).
 * @param ancestor process id; default: this one
 */
export function browserProcesses(ancestor = process.pid): BrowserProcess[] {
  const parents = new Map<number, number>();
  for (const name of readdirSync('/proc')) {
    if (!/^\d+$/.test(name)) continue;
    const state = readOrNothing(`/proc/${name}/stat`);
    const fields = state.slice(state.lastIndexOf(')') + 2).split(' ');
    if (fields[0] !== undefined && fields[0] !== 'Z' && fields[0] !== '')
      parents.set(Number(name), Number(fields[1]));
  }
  const descends = (pid: number): boolean => {
    for (let at = parents.get(pid); at !== undefined && at > 1; at = parents.get(at))
      if (at === ancestor) return true;
    return false;
  };
  const found: BrowserProcess[] = [];
  for (const pid of [...parents.keys()].filter(descends)) {
    const line = readOrNothing(`/proc/${pid}/cmdline`);
    if (!/chrom/i.test(line.split('\0')[0] ?? '')) continue;
    found.push({ pid, type: /--type=([\w-]+)/.exec(line)?.[1] ?? 'browser' });
  }
  return found;
}

/**
 * Waits until something holds.
 * @param holds asked every 20 ms
 * @param limit ms after which it throws
 */
export async function until(holds: () => boolean | Promise<boolean>, limit = 90_000): Promise<void> {
  const end = Date.now() + limit;
  while (!(await holds())) {
    if (Date.now() > end) throw new Error(`it didn’t hold within ${limit} ms`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

/**
 * True while a process is there and isn't only waiting for its parent to take note of its end.
 * @param pid process id (Linux)
 */
export function runs(pid: number): boolean {
  const state = readOrNothing(`/proc/${pid}/stat`);
  return state !== '' && !state.slice(state.lastIndexOf(')') + 2).startsWith('Z');
}
