import type { MessageKind } from '../model/message.js';
import type { Sentence } from '../model/sentence.js';

/** The sentences of one kind of message, in English. */
export interface MessageWords<P extends object> {
  /** At a glance, for docs/messages.md. */
  readonly title: string;
  /** Leads with the problem. */
  readonly message: (p: P) => string;
  /** The cell as typed, or the figure found. */
  readonly found?: (p: P) => string;
  readonly expected: string | ((p: P) => string);
  /** What to do. */
  readonly hint: string | ((p: P) => string);
  /** Of a message that many places of a batch may have: what is the same at all of them, so that it is told once. */
  readonly shared?: SharedWords<P>;
}

/** What a message says wherever it shows, and what it is about at one place. */
interface SharedWords<P extends object> {
  readonly fact: string | ((p: P) => string);
  /** Tags, or what else names the place. */
  readonly about: (p: P) => readonly string[];
}

/** A kind of message with its sentences. */
export interface MessageEntry {
  readonly kind: MessageKind<object>;
  readonly words: MessageWords<object>;
}

/** Says a kind of message in words: what the catalogue of messages is made of. */
export function says<P extends object>(kind: MessageKind<P>, words: MessageWords<P>): MessageEntry {
  // Who reads an entry hands it the values of a note of its own code.
  return { kind, words: words as MessageWords<object> };
}

/** What a message says to people. */
export interface MessageTold {
  readonly message: Sentence;
  /** `` where nothing was found. */
  readonly found: Sentence;
  readonly expected: Sentence;
  readonly hint: Sentence;
}

const text = (of: string | ((p: object) => string) | undefined, p: object): Sentence =>
  (typeof of === 'function' ? of(p) : (of ?? '')) as Sentence;

/** What an entry says wherever it shows, and of what; undefined where it is a matter of its one place. */
export function sharedBy(
  { words }: MessageEntry,
  values: object,
): { readonly fact: Sentence; readonly about: readonly string[] } | undefined {
  if (!words.shared) return undefined;
  return { fact: text(words.shared.fact, values), about: words.shared.about(values) };
}

/** The sentences of an entry with the values of one message put in. */
export function toldBy({ words }: MessageEntry, values: object): MessageTold {
  return {
    message: text(words.message, values),
    found: text(words.found, values),
    expected: text(words.expected, values),
    hint: text(words.hint, values),
  };
}
