import type { ExitStatus } from '../index.js';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { MACHINE_MESSAGES } from '../model/messages/machine.js';
import { areFilesFew } from './open-files.js';
import { refusalText, runOut } from '../words/refusals.js';

type Told = ReturnType<typeof note>;

/** ms after which a process that has told all and still doesn't end is ended: it waits for a disk that is gone. */
const LINGERS = 10_000;

/** What standard output and standard error refused. */
export interface Refusals {
  /** What to tell of it; empty where nothing was refused. */
  readonly told: () => readonly Told[];
}

/**
 * Watches the streams that a command tells things on, so that one that is full ends in a sentence, and a reader that has seen
 * enough (`| head`) is no fault.
 * @param streams by the name that people know them by
 */
export function watchStreams(streams: Readonly<Record<string, NodeJS.WriteStream>>): Refusals {
  const refused = new Map<string, Told>();
  for (const [stream, writes] of Object.entries(streams)) {
    writes.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') return;
      const because = refusalText(error) ?? error.message;
      refused.set(stream, note(MACHINE_MESSAGES.notTold, { stream, because }));
    });
  }
  return { told: () => [...refused.values()] };
}

/**
 * What to tell of an error that no command took care of.
 * @param error as thrown
 */
export function faultNote(error: unknown): Told {
  const because = runOut(error, areFilesFew());
  if (because !== undefined) return note(MACHINE_MESSAGES.ranOut, { because });
  return note(COMMAND_MESSAGES.fault, { what: error instanceof Error ? error.message : String(error) });
}

/**
 * Ends the process with a status, once all is written.
 * @param status of the command
 * @param streams that must be written out first
 * @param refusals a stream that refused something makes it 70 at least
 * @param tell takes what there is to tell of that
 */
export async function endWith(
  status: ExitStatus,
  streams: readonly NodeJS.WriteStream[],
  refusals: Refusals,
  tell: (told: Told) => unknown,
): Promise<void> {
  await Promise.all(streams.map(written));
  // A refusal is told a turn after the write.
  await new Promise((resolve) => setImmediate(resolve));
  for (const told of refusals.told()) tell(told);
  const isTold = refusals.told().length === 0;
  process.exitCode = isTold ? status : Math.max(status, FAILED);
  // An end in good order would wait for a file that never opens; SIGKILL is the one way past it.
  setTimeout(() => process.kill(process.pid, 'SIGKILL'), LINGERS).unref();
}

/** The status of a disk that failed; written here, since nothing may be loaded where a machine has run out. */
const FAILED: ExitStatus = 70;

function written(stream: NodeJS.WriteStream): Promise<void> {
  return new Promise((resolve) => {
    if (stream.destroyed || stream.writableLength === 0) {
      resolve();
      return;
    }
    stream.once('error', () => {
      resolve();
    });
    stream.write('', () => {
      resolve();
    });
  });
}
