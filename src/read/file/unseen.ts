import { STEP, type InSteps } from './in-steps.js';

/** Marks that turn text around or have no width: they make two tags that look the same differ. */
const TURNING = /[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/gu;
/** Control characters but line end and tab. */
const CONTROL = /(?![\n\t])\p{Cc}/gu;
/** Blanks of other widths than a blank's, as typesetters and spreadsheets put between thousands. */
const BLANKS = /[\u00a0\u2007\u2009\u202f\u3000]/gu;

/** Accents that stand after their letter: with it they are one letter, as other programs write it. */
const ACCENTS = /[\u0300-\u036f]/;

/** How often something was found, and where first. */
export interface Unseen {
  readonly count: number;
  readonly line: number;
  /** The line where it was found first. */
  readonly shown: string;
}

/** A text without what can't be seen. */
export interface SeenText {
  readonly text: string;
  /** Marks that were taken out. */
  readonly turning: Unseen | null;
  /** Control characters that were replaced by U+FFFD: no figure or word that holds one is read. */
  readonly control: Unseen | null;
}

/**
 * Where a text may be cut: ahead of a character that stays apart from what is before it (Unicode: all below U+0300 do, but a soft
 * hyphen is taken out). What is a step long without one is no cell, and may be cut anywhere.
 */
function cutBehind(text: string, from: number): number {
  const last = Math.min(from + STEP, text.length);
  let at = Math.min(from, text.length);
  while (at < last && !staysApart(text.charCodeAt(at))) at += 1;
  return at;
}

const staysApart = (code: number): boolean => code < 0x300 && code !== 0xad;

/**
 * Puts accents and their letters together. Marks of which more than 30 follow each other, as in no writing (Unicode Standard
 * Annex 15, stream-safe text), stay as they are, 31 at a time: to order them costs the square of their number.
 */
function composed(text: string): string {
  return text
    .split(/(\p{M}{31})/u)
    .map((part, i) => (i % 2 === 0 ? part.normalize('NFC') : part))
    .join('');
}

/** Counts what matches a pattern, piece by piece. */
function finder(pattern: RegExp): {
  /** Looks through the piece that begins at a position; true: something is in it. */
  readonly isIn: (piece: string, start: number) => boolean;
  /** What was found in the whole text. */
  readonly found: (text: string) => InSteps<Unseen | null>;
} {
  let count = 0;
  let first = -1;
  return {
    isIn(piece, start) {
      const at = piece.search(pattern);
      if (at < 0) return false;
      if (first < 0) first = start + at;
      // What a piece holds of it may be millions, too many for a list.
      count += piece.length - piece.replace(pattern, '').length;
      return true;
    },
    *found(text) {
      if (first < 0) return null;
      let line = 1;
      for (let at = 0; at < first; at += STEP) {
        yield;
        const end = Math.min(at + STEP, first);
        for (let i = text.indexOf('\n', at); i >= 0 && i < end; i = text.indexOf('\n', i + 1)) line += 1;
      }
      const start = Math.max(text.lastIndexOf('\n', first) + 1, first - 30);
      return { count, line, shown: text.slice(start, start + 60).split('\n', 1)[0] ?? '' };
    },
  };
}

function* hasAccents(text: string): InSteps<boolean> {
  for (let at = 0; at < text.length; at += STEP) {
    if (at > 0) yield;
    if (ACCENTS.test(text.slice(at, at + STEP))) return true;
  }
  return false;
}

/**
 * Takes out of a text what a reader can't see, and says so; in steps.
 * @param text with `\n` line ends
 */
export function* seeingText(text: string): InSteps<SeenText> {
  const turning = finder(TURNING);
  const control = finder(CONTROL);
  const accented = yield* hasAccents(text);
  const pieces: string[] = [];
  let changed = false;
  for (let at = 0; at < text.length;) {
    if (at > 0) yield;
    const end = cutBehind(text, at + STEP);
    const piece = text.slice(at, end);
    let seen = piece.replace(BLANKS, ' ');
    if (turning.isIn(piece, at)) seen = seen.replace(TURNING, '');
    if (accented) seen = composed(seen);
    if (control.isIn(piece, at)) seen = seen.replace(CONTROL, '\ufffd');
    pieces.push(seen);
    changed ||= seen !== piece;
    at = end;
  }
  const found = { turning: yield* turning.found(text), control: yield* control.found(text) };
  // Most files are as they were, and to copy one is a long step.
  return { text: changed ? pieces.join('') : text, ...found };
}
