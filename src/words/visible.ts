/** Control characters, line and paragraph separators, marks that hide or turn the text around them, lone surrogates. */
export const UNSEEN =
  /[\p{Cc}\u00ad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\uffff]|\p{Surrogate}/gu;

/** The most characters of a cell that a message shows. */
const MOST_SHOWN = 80;

/**
 * A cell as a message shows it: control characters and marks that turn text around made visible, cut to 80 characters.
 * @param text the cell as typed
 * @returns one line of text; nothing in it moves a cursor or turns a line around
 */
export function visible(text: string): string {
  const start = text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN - 1)}\u2026` : text;
  return start.replace(UNSEEN, (c) =>
    c === '\n'
      ? '\u23ce'
      : c === '\t'
        ? '\u21e5'
        : `<${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}>`,
  );
}
