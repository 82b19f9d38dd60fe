// Runs a program and watches the memory of it and of everything that it starts (Linux).
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';

// ms; adding up the pages of a process takes the kernel a while, so not more often.
const EVERY = 500;

/** Bytes of all processes below one, each shared page counted once (proportional set size). */
function memoryBelow(root) {
  const children = new Map();
  for (const name of readdirSync('/proc')) {
    if (!/^\d+$/.test(name)) continue;
    try {
      const state = readFileSync(`/proc/${name}/stat`, 'utf8');
      const parent = Number(state.slice(state.lastIndexOf(')') + 2).split(' ')[1]);
      children.set(parent, [...(children.get(parent) ?? []), Number(name)]);
    } catch {
      // It ended meanwhile.
    }
  }
  const all = [root];
  for (const pid of all) all.push(...(children.get(pid) ?? []));
  let bytes = 0;
  for (const pid of all) {
    try {
      bytes +=
        Number(/^Pss:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/smaps_rollup`, 'utf8'))?.[1] ?? 0) * 1024;
    } catch {
      // It ended meanwhile.
    }
  }
  return bytes;
}

/**
 * Runs Node on a script to its end.
 * @param {string[]} args script and arguments
 * @param {number[]} statuses exit statuses that are as expected
 * @returns {Promise<{ seconds: number, peak: number, out: string }>} wall time, peak memory of all processes in bytes, standard output
 */
export async function runNode(args, statuses = [0]) {
  const begun = performance.now();
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  let peak = 0;
  let out = '';
  let err = '';
  child.stdout.on('data', (data) => (out += data));
  child.stderr.on('data', (data) => (err += data));
  const timer = setInterval(() => (peak = Math.max(peak, memoryBelow(child.pid))), EVERY);
  const status = await new Promise((resolve) => child.once('close', resolve));
  clearInterval(timer);
  if (!statuses.includes(status))
    throw new Error(`${args.join(' ')} ended with ${status}: ${err.slice(-2000)}`);
  return { seconds: (performance.now() - begun) / 1000, peak, out };
}

/** The middle one of some numbers. */
export function median(numbers) {
  const sorted = [...numbers].sort((a, b) => a - b);
  return (sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2;
}
