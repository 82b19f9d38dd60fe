import { inflateSync } from 'node:zlib';

const WOFF = 0x774f4646; // `wOFF`

/** One table of a font file: its bytes as they stand in the file, and how many they are once unpacked. */
interface Entry {
  readonly offset: number;
  readonly packed: number;
  readonly length: number;
}

/**
 * A table of a TrueType or OpenType font, of a WOFF file or a bare one.
 * Source: OpenType specification, table directory; W3C WOFF File Format 1.0, section 4 (a table as long packed as unpacked isn't packed).
 * @param font the bytes of one font file
 * @param tag four characters, `cmap`
 * @throws Error where the font has no such table or the file is damaged
 */
export function fontTable(font: Uint8Array, tag: string): DataView {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const woff = view.getUint32(0) === WOFF;
  const [count, first, size] = woff ? [view.getUint16(12), 44, 20] : [view.getUint16(4), 12, 16];
  for (let i = 0; i < count; i += 1) {
    const at = first + i * size;
    const name = String.fromCharCode(...[0, 1, 2, 3].map((k) => view.getUint8(at + k)));
    if (name !== tag) continue;
    return unpacked(font, woff ? woffEntry(view, at) : bareEntry(view, at), tag);
  }
  throw new Error(`the font has no table ${tag}`);
}

const woffEntry = (view: DataView, at: number): Entry => ({
  offset: view.getUint32(at + 4),
  packed: view.getUint32(at + 8),
  length: view.getUint32(at + 12),
});

const bareEntry = (view: DataView, at: number): Entry => {
  const length = view.getUint32(at + 12);
  return { offset: view.getUint32(at + 8), packed: length, length };
};

function unpacked(font: Uint8Array, { offset, packed, length }: Entry, tag: string): DataView {
  const bytes = font.subarray(offset, offset + packed);
  const table = packed < length ? inflateSync(bytes, { maxOutputLength: length }) : bytes;
  if (table.length < length) throw new Error(`the table ${tag} of the font is cut off`);
  return new DataView(table.buffer, table.byteOffset, length);
}
