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

function find(text: string, pattern: RegExp): Unseen | null {
  const at = text.search(pattern);
  if (at < 0) return null;
  let line = 1;
  for (let i = text.indexOf('\n'); i >= 0 && i < at; i = text.indexOf('\n', i + 1)) line += 1;
  const start = Math.max(text.lastIndexOf('\n', at) + 1, at - 30);
  return {
    count: text.match(pattern)?.length ?? 0,
    line,
    shown: text.slice(start, start + 60).split('\n', 1)[0] ?? '',
  };
}

/**
 * Takes out of a text what a reader can't see, and says so.
 * @param text with `\n` line ends
 */
export function seenText(text: string): SeenText {
  const turning = find(text, TURNING);
  const control = find(text, CONTROL);
  let seen = text.replace(BLANKS, ' ');
  if (turning !== null) seen = seen.replace(TURNING, '');
  if (ACCENTS.test(seen)) seen = seen.normalize('NFC');
  if (control !== null) seen = seen.replace(CONTROL, '\ufffd');
  return { text: seen, turning, control };
}
