import { crc32, inflateRawSync } from 'node:zlib';
import { MOST_OF, WorkbookFault } from './fault.js';

/** One part of an archive as its directory states it (ZIP file format specification 6.3, clause 4.3.12). */
interface Entry {
  readonly packed: Uint8Array;
  readonly method: number;
  readonly encrypted: boolean;
  readonly size: number;
  readonly crc: number;
}

/** A zip archive of which only the directory is read. */
export interface Archive {
  readonly has: (name: string) => boolean;
  /**
   * Unpacks a part.
   * @throws WorkbookFault where it isn't there, is damaged, or holds more than may still be unpacked: told before it is unpacked
   */
  readonly part: (name: string) => Uint8Array;
}

const END_LENGTH = 22;
const LONGEST_COMMENT = 0xffff;
const STORED = 0;
const DEFLATED = 8;
/** A workbook has a part for each sheet and picture; more is none. */
const MOST_PARTS = 20_000;

/**
 * Reads the directory of a zip archive.
 * @param bytes of the file
 * @throws WorkbookFault where the directory is damaged
 */
export function openArchive(bytes: Uint8Array): Archive {
  const entries = directory(bytes);
  let left = MOST_OF.unpacked;
  return {
    has: (name) => entries.has(name),
    part: (name) => {
      const entry = entries.get(name);
      if (entry === undefined) throw new WorkbookFault('broken');
      if (entry.encrypted) throw new WorkbookFault('encrypted');
      if (entry.size > left) throw new WorkbookFault('unpacked');
      left -= entry.size;
      const part = unpacked(entry);
      if (part.length !== entry.size || crc32(part) !== entry.crc) throw new WorkbookFault('broken');
      return part;
    },
  };
}

function unpacked({ method, packed, size }: Entry): Uint8Array {
  if (method === STORED) return packed;
  if (method !== DEFLATED) throw new WorkbookFault('broken');
  // Nothing is unpacked beyond what the directory states.
  try {
    return size === 0 ? new Uint8Array() : inflateRawSync(packed, { maxOutputLength: size });
  } catch {
    throw new WorkbookFault('broken');
  }
}

function directory(bytes: Uint8Array): Map<string, Entry> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const entries = new Map<string, Entry>();
  try {
    const end = endOfDirectory(view);
    const count = view.getUint16(end + 10, true);
    if (count > MOST_PARTS) throw new WorkbookFault('broken');
    for (let i = 0, at = view.getUint32(end + 16, true); i < count; i += 1) {
      if (view.getUint32(at, true) !== 0x02014b50) throw new WorkbookFault('broken');
      const nameLength = view.getUint16(at + 28, true);
      const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
      if (!entries.has(name)) entries.set(name, entryAt(bytes, view, at));
      at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    }
  } catch (error) {
    // A place beyond the file.
    throw error instanceof RangeError ? new WorkbookFault('broken') : error;
  }
  return entries;
}

function endOfDirectory(view: DataView): number {
  const first = Math.max(0, view.byteLength - END_LENGTH - LONGEST_COMMENT);
  for (let at = view.byteLength - END_LENGTH; at >= first; at -= 1)
    if (view.getUint32(at, true) === 0x06054b50) return at;
  throw new WorkbookFault('broken');
}

function entryAt(bytes: Uint8Array, view: DataView, at: number): Entry {
  const packedSize = view.getUint32(at + 20, true);
  const local = view.getUint32(at + 42, true);
  const start = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  if (view.getUint32(local, true) !== 0x04034b50 || start + packedSize > bytes.length)
    throw new WorkbookFault('broken');
  return {
    packed: bytes.subarray(start, start + packedSize),
    method: view.getUint16(at + 10, true),
    encrypted: (view.getUint16(at + 8, true) & 1) === 1,
    size: view.getUint32(at + 24, true),
    crc: view.getUint32(at + 16, true),
  };
}
