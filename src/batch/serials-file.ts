import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { note } from '../model/message.js';
import { REGISTER_MESSAGES } from '../model/messages/register.js';
import { readRegularFile } from '../output/regular-file.js';
import { serialLines } from '../read/file/serial-lines.js';
import { serialList, type SerialTest } from '../register/serials.js';
import { shownPath } from '../words/shown-path.js';

/** Bytes. */
const LARGEST = 50_000_000;

/**
 * Serials to look for, of a file with one a line.
 * @param path as it was given
 * @throws Failure `register/no-serials` (2) where it can't be read or holds none
 */
export async function readSerials(path: string): Promise<SerialTest> {
  const refused = (unread: boolean, cause?: unknown): Failure =>
    new Failure(note(REGISTER_MESSAGES.noSerials, { path: shownPath(path), unread }), EXIT.unreadable, {
      cause,
    });
  const bytes = await readRegularFile(path, { most: LARGEST, followLinks: true }).catch((error: unknown) => {
    throw refused(true, error);
  });
  const serials = serialLines(bytes);
  if (serials.length === 0) throw refused(false);
  return serialList(serials);
}
