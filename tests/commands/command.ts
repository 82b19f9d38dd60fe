import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import { runCommandLine } from '../../src/commands/command-line.js';

/** How a command ended and what it told. */
export interface Told {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** A path of the project. */
export function projectPath(path: string): string {
  return fileURLToPath(new URL(`../../${path}`, import.meta.url));
}

/** A folder of the test's own, taken away when the test is over. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'shuntbook-command-'));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return folder;
}

/**
 * Carries out a command line in this process.
 * @param args what stands behind `shuntbook`
 * @param more environment and standard input
 */
export async function shuntbook(
  args: readonly string[],
  more: { readonly env?: Record<string, string>; readonly stdin?: string } = {},
): Promise<Told> {
  const out: string[] = [];
  const err: string[] = [];
  const status = await runCommandLine(args, {
    out: (text) => out.push(text),
    err: (text) => err.push(text),
    errIsTerminal: false,
    env: more.env ?? {},
    stdin: () => Promise.resolve(new TextEncoder().encode(more.stdin ?? '')),
  });
  return { status, out: out.join(''), err: err.join('') };
}

/**
 * The example in the help of a command.
 * @param command its name
 * @returns the arguments that stand behind `shuntbook` there; none where the help has no example
 */
export async function exampleOf(command: string): Promise<readonly string[]> {
  const { out } = await shuntbook([command, '--help']);
  const [, example] = /^Examples:\n {2}shuntbook (\S.*?)(?: {2,}|$)/m.exec(out) ?? [];
  return example?.split(' ') ?? [];
}
