/** Anything but printable ASCII takes the slow way. */
const PLAIN = /^[\x20-\x7e]*$/;

/**
 * Controls, format characters (among them the bidirectional overrides and zero-width ones), line and paragraph
 * separators, unassigned, private and lone surrogate code points: they print as nothing or reorder what stands beside them.
 */
const HIDDEN = /^[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cn}\p{Co}\p{Cs}]$/u;
const MARK = /^\p{M}$/u;

/** More marks than this on one letter would climb over the neighbouring lines. */
const MOST_MARKS = 2;

function named(codePoint: number): string {
  return `[U+${codePoint.toString(16).toUpperCase().padStart(4, '0')}]`;
}

/**
 * Text in which nothing hides: a character that no embedded font covers, a control character or a bidirectional
 * override is written out by its code point, such as `[U+202E]`.
 * @param text any text of a list, a catalogue or the settings
 * @param covers true for a code point that an embedded font holds
 */
export function visibleText(text: string, covers: (codePoint: number) => boolean): string {
  if (PLAIN.test(text)) return text;
  let out = '';
  let marks = 0;
  for (const character of text.normalize('NFC')) {
    const codePoint = character.codePointAt(0) ?? 0;
    marks = MARK.test(character) ? marks + 1 : 0;
    const hidden = HIDDEN.test(character) || marks > MOST_MARKS || !covers(codePoint);
    out += hidden ? named(codePoint) : character;
  }
  return out;
}

/**
 * A copy of plain data in which every string went through `visibleText`.
 * @param data plain data: objects, arrays, strings, numbers, booleans, null
 */
export function visibleData<T>(data: T, covers: (codePoint: number) => boolean): T {
  const walk = (value: unknown): unknown => {
    if (typeof value === 'string') return visibleText(value, covers);
    if (Array.isArray(value)) return value.map(walk);
    if (value !== null && typeof value === 'object') {
      return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, walk(entry)]));
    }
    return value;
  };
  return walk(data) as T;
}
