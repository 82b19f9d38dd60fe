import { crc32 } from 'node:zlib';

/** Width and height in pixels; or that the file is damaged, or of a coding that browsers don't read. */
export type PictureSize = { readonly width: number; readonly height: number } | 'broken' | 'coding';

const BIT_DEPTHS: Readonly<Record<number, readonly number[]>> = {
  0: [1, 2, 4, 8, 16],
  2: [8, 16],
  3: [1, 2, 4, 8],
  4: [8, 16],
  6: [8, 16],
};

/**
 * Walks through a PNG: whole, with every part as its checksum says.
 * Source: ISO/IEC 15948 (PNG), clauses 5.3 (chunks), 11.2.2 (IHDR), 11.2.4 (IDAT), 11.2.5 (IEND).
 * @param bytes of the file, which begins with the signature
 */
export function pngSize(bytes: Uint8Array): PictureSize {
  const view = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let size: PictureSize = 'broken';
  let hasData = false;
  for (let at = 8; at + 12 <= view.length;) {
    const length = view.readUInt32BE(at);
    const end = at + 12 + length;
    if (end > view.length) return 'broken';
    if (crc32(view.subarray(at + 4, end - 4)) !== view.readUInt32BE(end - 4)) return 'broken';
    const type = view.toString('latin1', at + 4, at + 8);
    if ((at === 8) !== (type === 'IHDR')) return 'broken';
    if (type === 'IHDR') size = length === 13 ? headerOf(view.subarray(at + 8, at + 21)) : 'broken';
    if (type === 'IDAT') hasData ||= length > 0;
    if (type === 'IEND') return hasData ? size : 'broken';
    at = end;
  }
  return 'broken';
}

function headerOf(header: Buffer): PictureSize {
  const width = header.readUInt32BE(0);
  const height = header.readUInt32BE(4);
  const [depth = 0, colour = 0, packing, filter, interlace = 2] = header.subarray(8);
  const isKnown = BIT_DEPTHS[colour]?.includes(depth) === true && packing === 0 && filter === 0;
  return isKnown && interlace < 2 && width > 0 && height > 0 ? { width, height } : 'broken';
}

/**
 * Walks through a JPEG from marker to marker, to its end.
 * Source: ITU-T T.81 (ISO/IEC 10918-1), B.1.1 (markers), B.2.2 (frame header), Table B.1.
 * @param bytes of the file, which begins with its start marker
 */
export function jpegSize(bytes: Uint8Array): PictureSize {
  let size: PictureSize = 'broken';
  let hasScan = false;
  for (let at = 2; at + 1 < bytes.length;) {
    // Within a scan bytes of the picture are passed over: FF00 stands for one of them, D0 to D7 part it.
    const marker = bytes[at + 1] ?? 0;
    const isMarker = bytes[at] === 0xff && marker !== 0 && !(marker >= 0xd0 && marker <= 0xd7);
    if (!isMarker || marker === 0xff) {
      if (!isMarker && !hasScan) return 'broken';
      at += 1;
      continue;
    }
    if (marker === 0xd9) return hasScan ? size : 'broken';
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    if (length < 2 || at + 2 + length > bytes.length) return 'broken';
    // Baseline, extended, progressive; C4, C8 and CC are tables, the rest of the row rare codings.
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) {
      size = marker <= 0xc2 ? frameOf(bytes.subarray(at + 4, at + 2 + length)) : 'coding';
      if (typeof size === 'string') return size;
    }
    if (marker === 0xda) {
      if (typeof size === 'string') return 'broken';
      hasScan = true;
    }
    at += 2 + length;
  }
  return 'broken';
}

function frameOf(frame: Uint8Array): PictureSize {
  const [precision = 0, h1 = 0, h2 = 0, w1 = 0, w2 = 0, components = 0] = frame;
  const width = (w1 << 8) | w2;
  const height = (h1 << 8) | h2;
  if (width === 0 || height === 0 || frame.length < 6 + 3 * components) return 'broken';
  return precision === 8 && [1, 3, 4].includes(components) ? { width, height } : 'coding';
}
