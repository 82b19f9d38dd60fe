import type { ExitStatus } from './exit-status.js';
import type { Note } from './open-item.js';

/**
 * An error that a person is told of by a message of the catalogue: the browser, a template or the disk failed, or the
 * output folder is held. Everything else that is thrown is a fault of the program.
 */
export class Failure extends Error {
  override readonly name = 'Failure';

  constructor(
    /** What to tell, from the message catalogue. */
    readonly note: Note,
    /** How a run ends that can't go on. */
    readonly exitStatus: ExitStatus,
    options?: ErrorOptions,
  ) {
    // Whoever calls the package sees no report: what was found is told here.
    super(`${note.code} ${JSON.stringify(note.values)}`, options);
  }
}
