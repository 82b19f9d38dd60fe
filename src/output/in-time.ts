import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { OUTPUT_MESSAGES } from '../model/messages/output.js';
import { note } from '../model/message.js';

/** ms; a disk that takes longer for one file is as good as gone, and a slow one of a network is well within it. */
const PATIENCE = 120_000;

/**
 * Waits for the disk, but not for ever.
 * @param path what is read or written, as messages name it
 * @param work what is waited for; it goes on by itself where it is given up
 * @param patience ms
 * @returns what it gives
 * @throws Failure `output/no-answer` (70) where it takes longer
 */
export async function inTime<T>(path: string, work: Promise<T>, patience = PATIENCE): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      const seconds = patience / 1000;
      reject(new Failure(note(OUTPUT_MESSAGES.noAnswer, { path, seconds }), EXIT.failed));
    }, patience);
  });
  work.catch(() => undefined);
  return Promise.race([work, late]).finally(() => {
    clearTimeout(timer);
  });
}
