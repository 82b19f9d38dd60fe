import type { Note, OpenItem, PlacedNote } from './open-item.js';
import type { Place } from './fact.js';
import type { Field } from './list.js';
import type { Severity, Who } from './words.js';

/**
 * A kind of message: its permanent code, how grave it is and who can supply what is asked. Its sentences stand in words/messages/.
 * `P`: what its sentences are made of: quantities, tags, words of the contract.
 */
export interface MessageKind<P extends object> {
  /** Permanent, e.g. `fact/run-length`. */
  readonly code: string;
  readonly severity: Severity;
  /** `given`: the values say who, in `who`. */
  readonly who: Who | 'given';
  /** Never there: holds the type of the values. */
  readonly takes?: P;
}

/** Declares a kind of message. */
export function message<P extends object>(
  code: string,
  severity: Severity,
  who: Who | 'given',
): MessageKind<P> {
  return { code, severity, who };
}

/** Who can supply it; a kind that leaves it open has it among its values. */
function whoOf<P extends object>(kind: MessageKind<P>, values: P): Who {
  if (kind.who !== 'given') return kind.who;
  if ('who' in values) return values.who as Who;
  throw new Error(`the message ${kind.code} doesn’t say who can supply it`);
}

/** A message of a kind, without its place. */
export function note<P extends object>(kind: MessageKind<P>, values: P): Note {
  return { code: kind.code, severity: kind.severity, who: whoOf(kind, values), values };
}

/**
 * A message of a kind about one field of one equipment.
 * @param tag the equipment; `` for the job itself
 * @param field field of the contract; `` for the row as a whole
 */
export function about<P extends object>(
  kind: MessageKind<P>,
  values: P,
  tag: string,
  field: Field | '',
): PlacedNote {
  // Spelt out, as a spread costs several times more, and a batch makes a hundred thousand of these.
  return { code: kind.code, severity: kind.severity, who: whoOf(kind, values), values, tag, field };
}

/**
 * Puts a place to a note.
 * @param equipment `` where the note is about the job or a file
 * @param field `` where it is about none, or its values say which
 */
export function itemAt(n: Note, place: Place, equipment = '', field = ''): OpenItem {
  const item = {
    code: n.code,
    severity: n.severity,
    who: n.who,
    values: n.values,
    file: place.file,
    line: place.line,
    column: place.column,
    equipment,
  };
  return field === '' ? item : { ...item, field };
}
