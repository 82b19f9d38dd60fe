import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cp, mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { inject } from 'vitest';

/** The program as an installation has it, made from the sources as they are now. */
export interface Program {
  /** Where it lies, with the fixtures beside it. */
  readonly folder: string;
  /** What Node is to run. */
  readonly cli: string;
}

/** The program that `program-setup.ts` made for this run of the tests. */
export function installedProgram(): Program {
  const folder = inject('program');
  return { folder, cli: join(folder, 'dist', 'cli.js') };
}

/** How a run of the program ended. */
export interface Ended {
  readonly status: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly err: string;
  readonly out: string;
}

/** A run of the program that goes on. */
export interface Running {
  readonly child: ChildProcess;
  readonly pid: number;
  readonly ended: Promise<Ended>;
}

/**
 * Starts a program.
 * @param command the program and its arguments
 * @param cwd its folder
 */
export function start(command: readonly string[], cwd: string): Running {
  const [program = '', ...args] = command;
  const child = spawn(program, args, { cwd, stdio: ['ignore', 'pipe', 'pipe'] });
  const texts = { out: '', err: '' };
  child.stdout.on('data', (data: Buffer) => (texts.out += data.toString()));
  child.stderr.on('data', (data: Buffer) => (texts.err += data.toString()));
  const ended = new Promise<Ended>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (status, signal) => {
      resolve({ status, signal, ...texts });
    });
  });
  return { child, pid: child.pid ?? 0, ended };
}

/**
 * A catalogue, and a list of that many jobs: invented, as small as a job with something to protect can be.
 * @param feet of the first run; a list of another length gives plans of another text
 */
export async function writeLists(folder: string, jobs: number, feet = 20): Promise<void> {
  await mkdir(folder, { recursive: true });
  const rows = Array.from({ length: jobs }, (_, i) => {
    const job = `T-${String(i + 1).padStart(2, '0')}`;
    return [
      `${job},Trial site ${i + 1},SVC,service,,,Barn / hall,120/240,${5000 + i}`,
      `${job},,PNL,panel,SVC,${feet + i},Barn / hall,120/240,`,
    ];
  });
  const heading = 'job,job_name,tag,kind,connects_to,run_length (ft),place,ac_in,fault_current';
  await writeFile(join(folder, 'trial.csv'), [heading, ...rows.flat(), ''].join('\n'));
  await cp('fixtures/demo/catalogue.csv', join(folder, 'catalogue.csv'));
}

/** Every file of an output folder that says nothing of the run itself, with its bytes. */
export async function packsBelow(out: string): Promise<ReadonlyMap<string, Buffer>> {
  // They tell what this run did; our own records hold times.
  const ofTheRun = /^(?:\.shuntbook\/|report\.)/;
  const files = new Map<string, Buffer>();
  // A run that is killed while it starts has made no folder yet.
  const entries = existsSync(out) ? await readdir(out, { recursive: true, withFileTypes: true }) : [];
  for (const entry of entries) {
    const path = join(entry.parentPath, entry.name);
    const name = path.slice(out.length + 1);
    if (entry.isFile() && !ofTheRun.test(name)) files.set(name, await readFile(path));
  }
  return new Map([...files].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Names of files that differ, or that only one of two trees has. */
export function differences(a: ReadonlyMap<string, Buffer>, b: ReadonlyMap<string, Buffer>): string[] {
  const names = new Set([...a.keys(), ...b.keys()]);
  return [...names].filter((name) => !a.get(name)?.equals(b.get(name) ?? Buffer.alloc(0)));
}

/** Files that are neither whole nor under a temporary name. */
export function halfFiles(files: ReadonlyMap<string, Buffer>): string[] {
  return [...files]
    .filter(([name, bytes]) => !/(?:^|\/)\.shuntbook-[^/]*\.tmp$/.test(name) && !isWhole(name, bytes))
    .map(([name]) => name);
}

function isWhole(name: string, bytes: Buffer): boolean {
  const text = bytes.toString('latin1');
  if (name.endsWith('.pdf')) return text.startsWith('%PDF-') && text.endsWith('%%EOF\n');
  if (name.endsWith('.csv')) return text.endsWith('\r\n');
  if (name.endsWith('.html')) return text.trimEnd().endsWith('</html>');
  if (!name.endsWith('.json')) return false;
  try {
    JSON.parse(bytes.toString());
    return true;
  } catch {
    return false;
  }
}
