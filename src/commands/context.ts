import type { ExitStatus } from '../index.js';

/** Where a command tells its results and what people read, and what it knows of the machine. */
export interface Context {
  /** Results: standard output. */
  readonly out: (text: string) => unknown;
  /** Everything for people: standard error. */
  readonly err: (text: string) => unknown;
  /** True where standard error is a terminal that can redraw a line. */
  readonly errIsTerminal: boolean;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** All bytes of standard input. */
  readonly stdin: () => Promise<Uint8Array>;
}

/** Options that every command has. */
export interface CommonOptions {
  readonly quiet: boolean;
  readonly verbose: boolean;
  readonly json: boolean;
}

/** Carries out a command and keeps how the run ends. */
export type Act = (action: (context: Context) => Promise<ExitStatus>) => Promise<void>;
