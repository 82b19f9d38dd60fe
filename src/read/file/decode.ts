import { WINDOWS_1252_HIGH } from '../../model/windows-1252.js';
import { isUtf8 } from 'node:buffer';
import { STEP, type InSteps } from './in-steps.js';

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
  return bufferOf(bytes)
    .toString('latin1')
    .replace(/[\u0080-\u009f]/g, (c) => WINDOWS_1252_HIGH[c.charCodeAt(0) - 0x80] ?? c);
}

function bufferOf(bytes: Uint8Array): Buffer {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

const LF = 10;
const CR = 13;

/** Bytes among which the first line that isn't UTF-8 is searched line by line. */
const SEARCHED = 64_000;

/** Where UTF-8 may be cut, not behind a position: ahead of a byte that begins a character (RFC 3629, clause 3). */
function utf8Cut(bytes: Uint8Array, at: number): number {
  let cut = at;
  while (at - cut < 3 && ((bytes[cut] ?? 0) & 0xc0) === 0x80) cut -= 1;
  return cut;
}

/** Where UTF-16 may be cut, not behind an even position: not within a pair of surrogates. */
function utf16Cut(bytes: Uint8Array, at: number, high: 0 | 1): number {
  return ((bytes[at - 2 + high] ?? 0) & 0xfc) === 0xd8 ? at - 2 : at;
}

/** How one encoding is decoded: where it may be cut, and what a piece says; null: the piece isn't of this encoding. */
interface Decoder {
  readonly cut: (bytes: Uint8Array, at: number) => number;
  readonly text: (piece: Uint8Array) => string | null;
}

const utf16 = (encoding: 'utf-16le' | 'utf-16be', high: 0 | 1): Decoder => {
  const decoder = new TextDecoder(encoding, { ignoreBOM: true });
  return { cut: (bytes, at) => utf16Cut(bytes, at, high), text: (piece) => decoder.decode(piece) };
};

const DECODERS: Readonly<Record<Encoding, Decoder>> = {
  'utf-8': { cut: utf8Cut, text: (piece) => (isUtf8(piece) ? bufferOf(piece).toString('utf8') : null) },
  'utf-16le': utf16('utf-16le', 1),
  'utf-16be': utf16('utf-16be', 0),
  'windows-1252': { cut: (_, at) => at, text: windows1252 },
};

/** The text with `\n` line ends and without its mark, or where the piece begins that isn't of this encoding. */
function* decodingPieces(bytes: Uint8Array, encoding: Encoding): InSteps<string | number> {
  const { cut, text } = DECODERS[encoding];
  const pieces: string[] = [];
  /** A line end that may go on in the next piece. */
  let held = '';
  for (let from = 0; from < bytes.length;) {
    if (from > 0) yield;
    const to = from + STEP < bytes.length ? cut(bytes, from + STEP) : bytes.length;
    const read = text(bytes.subarray(from, to));
    if (read === null) return from;
    // Of two marks both go: the second is nothing that a person typed.
    const piece = held + (from === 0 ? read.replace(/^\ufeff{1,2}/, '') : read);
    held = piece.endsWith('\r') && to < bytes.length ? '\r' : '';
    pieces.push(lineEnds(held === '' ? piece : piece.slice(0, -1)));
    from = to;
  }
  return pieces.join('');
}

/** The line of the first byte that isn't UTF-8, which is searched from a position where a character begins. */
function* firstBadLine(bytes: Uint8Array, from: number): InSteps<number> {
  let start = from;
  let end = start;
  do {
    start = end;
    end = start + SEARCHED < bytes.length ? utf8Cut(bytes, start + SEARCHED) : bytes.length;
  } while (isUtf8(bytes.subarray(start, end)) && end < bytes.length);
  for (;;) {
    const next = lineEnd(bytes, start, end);
    if (next === end || !isUtf8(bytes.subarray(start, next))) break;
    start = next;
  }
  let line = 1;
  for (let at = 0, paused = 0; at < start; at += 1) {
    if (bytes[at] === LF || (bytes[at] === CR && bytes[at + 1] !== LF)) line += 1;
    if (at - paused < STEP) continue;
    yield;
    paused = at;
  }
  return line;
}

/** Behind the first line end from a position on, or the end. */
function lineEnd(bytes: Uint8Array, from: number, end: number): number {
  for (let at = from; at < end; at += 1) if (bytes[at] === LF || bytes[at] === CR) return at + 1;
  return end;
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
 * Decodes the bytes of a list, in steps: by its mark, as UTF-16 by its NULs, as strict UTF-8, else as windows-1252.
 * @param bytes the file
 * @param forced an encoding that the column map or a flag states
 * @returns the text without its mark and with `\n` line ends, or what the file is instead of a text
 */
export function* decoding(bytes: Uint8Array, forced?: Encoding): InSteps<Decoded | NotText> {
  for (const { bytes: start, kind } of SIGNATURES) {
    if (start.every((byte, i) => bytes[i] === byte)) return { kind };
  }
  const marked = byMark(bytes);
  const encoding = forced ?? marked ?? utf16WithoutMark(bytes) ?? 'utf-8';
  const text = yield* decodingPieces(bytes, encoding);
  if (typeof text === 'string') return { text, encoding, marked: encoding === marked, guessedAt: 0 };
  const guessedAt = yield* firstBadLine(bytes, text);
  // There is no byte that it doesn't know.
  const guessed = String(yield* decodingPieces(bytes, 'windows-1252'));
  return { text: guessed, encoding: 'windows-1252', marked: false, guessedAt };
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
