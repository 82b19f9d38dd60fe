import { fontTable } from './font-tables.js';

/**
 * What a reader of a PDF needs of a TrueType font that is embedded whole: outlines, their widths, which glyph is which character.
 * Source: ISO 32000-1, 9.9 (tables of an embedded TrueType program).
 */
const TABLES = ['cmap', 'cvt ', 'fpgm', 'glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp', 'post', 'prep'];

const PADDED = (length: number): number => (length + 3) & ~3;

/** Sum of the 32-bit words of a table, as its entry of the directory has it. */
function checksum(table: Buffer): number {
  let sum = 0;
  for (let at = 0; at < table.length; at += 4) sum = (sum + table.readUInt32BE(at)) >>> 0;
  return sum;
}

/**
 * A bare TrueType font of one in a WOFF file, with the tables that an embedded font needs.
 * Source: OpenType specification, table directory and calculating checksums.
 * @param font the bytes of one font file with TrueType outlines
 * @throws Error where it has no such outlines
 */
export function trueTypeOf(font: Uint8Array): Buffer {
  const tables = TABLES.flatMap((tag) => {
    try {
      const { buffer, byteOffset, byteLength } = fontTable(font, tag);
      return [{ tag, bytes: Buffer.from(buffer, byteOffset, byteLength) }];
    } catch (error) {
      // Without hints of its own a font has no tables of them.
      if (tag === 'cvt ' || tag === 'fpgm' || tag === 'prep') return [];
      throw error;
    }
  });
  const power = 2 ** Math.floor(Math.log2(tables.length));
  const head = Buffer.alloc(12 + tables.length * 16);
  head.writeUInt32BE(0x00010000, 0);
  head.writeUInt16BE(tables.length, 4);
  head.writeUInt16BE(power * 16, 6);
  head.writeUInt16BE(Math.log2(power), 8);
  head.writeUInt16BE(tables.length * 16 - power * 16, 10);
  const parts: Buffer[] = [head];
  let at = head.length;
  for (const [i, { tag, bytes }] of tables.entries()) {
    const table = Buffer.alloc(PADDED(bytes.length));
    bytes.copy(table);
    const entry = 12 + i * 16;
    head.write(tag, entry, 'latin1');
    head.writeUInt32BE(checksum(table), entry + 4);
    head.writeUInt32BE(at, entry + 8);
    head.writeUInt32BE(bytes.length, entry + 12);
    parts.push(table);
    at += table.length;
  }
  return Buffer.concat(parts);
}
