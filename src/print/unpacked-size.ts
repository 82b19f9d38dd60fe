import { inflateSync } from 'node:zlib';

const STREAM = Buffer.from('stream');
const OBJECT = Buffer.from(' obj');
/** Bytes before a stream that its dictionary is looked for in; no dictionary of streams that hold objects is nearly as long. */
const DICTIONARY = 4000;
/** A reader unpacks these before anything else: what holds objects, and the table of them. */
const READ_FIRST = /\/(?:ObjStm|XRef)\b/;
const FILTERS = /\/(?:Filter|F)\b\s*(\[[^\]]*\]|\/[A-Za-z0-9#]+|\d+ \d+ R)/;

/** Where each stream of a PDF begins. */
function* streamsOf(bytes: Buffer): Generator<number> {
  for (let at = bytes.indexOf(STREAM); at >= 0; at = bytes.indexOf(STREAM, at + STREAM.length)) {
    if (bytes.subarray(at - 3, at).toString('latin1') === 'end') continue;
    const begin = bytes[at + STREAM.length] === 13 ? at + STREAM.length + 2 : at + STREAM.length + 1;
    yield begin;
  }
}

function dictionaryBefore(bytes: Buffer, begin: number): string {
  const from = Math.max(0, begin - DICTIONARY);
  const at = bytes.lastIndexOf(OBJECT, begin);
  return bytes.subarray(Math.max(from, at), begin).toString('latin1');
}

/**
 * Tells whether a PDF can be unpacked within a limit, before a library that knows no limit is given it: some kilobytes can unpack to
 * a whole memory.
 * @param file bytes of a PDF that somebody sent
 * @param most bytes that all its packed streams may unpack to
 * @returns false too where what a reader unpacks first is packed in a way that no writer of forms uses
 */
export function unpacksWithin(file: Uint8Array, most: number): boolean {
  const bytes = Buffer.from(file.buffer, file.byteOffset, file.byteLength);
  let left = most;
  for (const begin of streamsOf(bytes)) {
    const dictionary = dictionaryBefore(bytes, begin);
    // A name may be written in escapes, to be no name that anyone looks for.
    const isReadFirst = READ_FIRST.test(dictionary) || dictionary.includes('#');
    const filter = FILTERS.exec(dictionary)?.[1];
    if (isReadFirst && filter !== undefined && !/^\[?\s*\/FlateDecode\s*\]?$/.test(filter)) return false;
    const [first = 0, second = 0] = bytes.subarray(begin, begin + 2);
    const isPacked = (first & 15) === 8 && (first * 256 + second) % 31 === 0;
    if (!isPacked) continue;
    try {
      left -= inflateSync(bytes.subarray(begin), { maxOutputLength: Math.max(1, left) }).length;
    } catch (error) {
      if (error instanceof RangeError) return false;
      // Not packed after all, or cut off: it unpacks to less than the library would make of it.
    }
    if (left <= 0) return false;
  }
  return true;
}
