import type { Place } from '../model/fact.js';
import type { Field } from '../model/list.js';
import type { Note, OpenItem, PlacedNote } from '../model/message.js';
import type { Severity, Who } from '../model/words.js';

/** One entry of the message catalogue: its permanent code and how its sentence is made. */
export interface MessageEntry<P> {
  readonly code: string;
  readonly severity: Severity;
  /** At a glance, for docs/messages.md. */
  readonly title: string;
  /** Leads with the problem. */
  readonly message: (p: P) => string;
  readonly found?: (p: P) => string;
  readonly expected: string | ((p: P) => string);
  /** What to do. */
  readonly hint: string | ((p: P) => string);
  readonly who: Who | ((p: P) => Who);
}

const text = <P>(of: string | ((p: P) => string), p: P): string => (typeof of === 'string' ? of : of(p));

/**
 * Makes the note of a message from its catalogue entry.
 * @param entry the catalogue's entry
 * @param p what its sentence needs
 * @returns the note, without its place
 */
export function note<P>(entry: MessageEntry<P>, p: P): Note {
  return {
    code: entry.code,
    severity: entry.severity,
    message: entry.message(p),
    found: entry.found?.(p) ?? '',
    expected: text(entry.expected, p),
    hint: text(entry.hint, p),
    who: typeof entry.who === 'string' ? entry.who : entry.who(p),
  };
}

/** Puts a place to a note. `equipment` is `` where the note is about the job or a file. */
export function itemAt(n: Note, place: Place, equipment = ''): OpenItem {
  // Spelt out, as a spread costs several times more, and a batch makes a hundred thousand of these.
  return {
    code: n.code,
    severity: n.severity,
    message: n.message,
    found: n.found,
    expected: n.expected,
    hint: n.hint,
    who: n.who,
    file: place.file,
    line: place.line,
    column: place.column,
    equipment,
  };
}

/**
 * Makes the note of a message about one field of one equipment.
 * @param tag the equipment; `` for the job itself
 * @param field field of the contract; `` for the row as a whole
 */
export function about<P>(entry: MessageEntry<P>, p: P, tag: string, field: Field | ''): PlacedNote {
  // Put onto the fresh note: a copy of it would cost as much again.
  return Object.assign(note(entry, p), { tag, field });
}
