import { EXIT } from '../../model/exit-status.js';
import { Failure } from '../../model/failure.js';
import { note } from '../../model/message.js';
import { documentMessages } from '../../model/messages/documents.js';

function reasonOf(cause: unknown): string {
  return cause instanceof Error ? cause.message : String(cause);
}

/** Where a template doesn't parse: the rest of what its parser says is names of the parser's own. */
const UNPARSED = /^Parse error on line (\d+):\n(.*)/;

function unparsedAt(cause: unknown): string {
  const [, line, near = ''] = UNPARSED.exec(reasonOf(cause)) ?? [];
  return line === undefined ? reasonOf(cause) : `it doesn’t parse at line ${line}, near “${near.trim()}”`;
}

/** A template that can't be read, compiled or filled in. `file` is relative to the templates folder. */
export function templateFailure(file: string, cause: unknown): Failure {
  return new Failure(note(documentMessages.template, { file, reason: unparsedAt(cause) }), EXIT.failed, {
    cause,
  });
}

/** A view model that breaks its own schema: a fault of the program, found before anything is printed. */
export function viewFailure(document: string, cause: unknown): Failure {
  return new Failure(note(documentMessages.view, { document, reason: reasonOf(cause) }), EXIT.failed, {
    cause,
  });
}
