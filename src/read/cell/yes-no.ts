/** A word without what doesn't count: case, and spaces or underscores for hyphens. */
export function wordKey(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, '-');
}

/** What people write in a cell that has nothing to say; never zero. */
const NOTHING = new Set([
  '-',
  '--',
  '---',
  '\u2013',
  '\u2014',
  'n/a',
  'n.a.',
  'na',
  'none',
  'nil',
  'tbd',
  'tbc',
  'tba',
  '?',
  '??',
  '???',
  'unknown',
  'not stated',
  'blank',
]);

/**
 * True where a cell says that nothing is known: blank, `-`, `n/a`, `none`, `TBD`, `?`.
 * @param text the cell, trimmed
 */
export function saysNothing(text: string): boolean {
  return text === '' || (text.length <= 10 && NOTHING.has(text.toLowerCase()));
}

/** A cross is neither: some tick what is so with it, some cross out what isn't. */
const YES = new Set(['yes', 'y', 'true', '1', '\u2713', '\u2714']);
const NO = new Set(['no', 'n', 'false', '0']);

/** Yes or no; null where the text is neither. */
export function readYesNo(text: string): boolean | null {
  const word = text.trim().toLowerCase();
  if (YES.has(word)) return true;
  return NO.has(word) ? false : null;
}
