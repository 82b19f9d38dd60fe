export const ENCODINGS = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;
export type Encoding = (typeof ENCODINGS)[number];

/** A file's text and how its bytes were read. */
export interface Decoded {
  readonly text: string;
  readonly encoding: Encoding;
  /** True where a byte order mark says the encoding. */
  readonly marked: boolean;
  /** First line that isn't UTF-8, where windows-1252 was taken for want of anything better; else 0. */
  readonly guessedAt: number;
}

/** Not a text: what its first bytes say it is. */
export interface NotText {
  readonly kind: string;
}

/** Windows code page 1252, bytes 80 to 9F (Unicode mapping table of that page); the rest is Latin-1. */
const CP1252 =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

/** What a file begins with that only looks like a list by its name. */
const SIGNATURES: readonly { readonly bytes: readonly number[]; readonly kind: string }[] = [
  { bytes: [0x50, 0x4b, 0x03, 0x04], kind: 'a zip archive or a workbook' },
  { bytes: [0xd0, 0xcf, 0x11, 0xe0], kind: 'a workbook in a binary format' },
  { bytes: [0x25, 0x50, 0x44, 0x46], kind: 'a PDF' },
  { bytes: [0x1f, 0x8b], kind: 'a compressed file' },
  { bytes: [0x89, 0x50, 0x4e, 0x47], kind: 'a picture' },
  { bytes: [0xff, 0xd8, 0xff], kind: 'a picture' },
];

/** Node's own windows-1252 decoder has passed bytes 80 to 9F through as control characters, so the table is ours. */
function windows1252(bytes: Uint8Array): string {
  const latin1 = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  return latin1.replace(/[\u0080-\u009f]/g, (c) => CP1252[c.charCodeAt(0) - 0x80] ?? c);
}

function utf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** The line of the first byte that isn't UTF-8. */
function firstBadLine(bytes: Uint8Array): number {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let line = 1;
  let from = 0;
  while (from < bytes.length) {
    const end = bytes.indexOf(10, from);
    const to = end < 0 ? bytes.length : end + 1;
    try {
      decoder.decode(bytes.subarray(from, to));
    } catch {
      return line;
    }
    from = to;
    line += 1;
  }
  return 1;
}

/** UTF-16 without a mark shows by NULs at every other byte of what is mostly Latin text. */
function utf16WithoutMark(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const end = Math.min(bytes.length, 4096) & ~1;
  if (end < 4) return null;
  let even = 0;
  let odd = 0;
  for (let i = 0; i < end; i += 2) {
    if (bytes[i] === 0) even += 1;
    if (bytes[i + 1] === 0) odd += 1;
  }
  const half = end / 2;
  if (odd > half * 0.6 && even < half * 0.1) return 'utf-16le';
  if (even > half * 0.6 && odd < half * 0.1) return 'utf-16be';
  return null;
}

/**
 * Decodes the bytes of a list: by its mark, as UTF-16 by its NULs, as strict UTF-8, else as windows-1252.
 * @param bytes the file
 * @param forced an encoding that the column map or a flag states
 * @returns the text without its mark and with `\n` line ends, or what the file is instead of a text
 */
export function decode(bytes: Uint8Array, forced?: Encoding): Decoded | NotText {
  for (const { bytes: start, kind } of SIGNATURES) {
    if (start.every((byte, i) => bytes[i] === byte)) return { kind };
  }
  const marked = byMark(bytes);
  const done = (text: string, encoding: Encoding, guessedAt = 0): Decoded => ({
    text: lineEnds(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text),
    encoding,
    marked: encoding === marked,
    guessedAt,
  });
  const encoding = forced ?? marked ?? utf16WithoutMark(bytes);
  if (encoding === 'windows-1252') return done(windows1252(bytes), encoding);
  if (encoding === 'utf-16le' || encoding === 'utf-16be') {
    return done(new TextDecoder(encoding).decode(bytes), encoding);
  }
  const text = utf8(bytes);
  if (text !== null) return done(text, 'utf-8');
  return done(windows1252(bytes), 'windows-1252', firstBadLine(bytes));
}

function byMark(bytes: Uint8Array): Encoding | null {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return 'utf-8';
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  return null;
}

/** Line ends may be mixed in one file: all become `\n`, so that a line is a line everywhere. */
export function lineEnds(text: string): string {
  return text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text;
}
