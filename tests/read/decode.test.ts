import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { decoding, type Decoded, type Encoding, type NotText } from '../../src/read/file/decode.js';
import { atOneGo } from '../../src/read/file/in-steps.js';

const decode = (bytes: Uint8Array, forced?: Encoding): Decoded | NotText => atOneGo(decoding(bytes, forced));
const text = (bytes: Uint8Array): Decoded => {
  const decoded = decode(bytes);
  if ('kind' in decoded) throw new Error(decoded.kind);
  return decoded;
};
const swapped = (bytes: Buffer): Buffer => Buffer.from(bytes).swap16();

describe('bytes become text', () => {
  const list = 'tag,kind\nHütte,array\n';
  test.each<[string, Buffer, string]>([
    ['UTF-8', Buffer.from(list), 'utf-8'],
    ['UTF-8 with its mark', Buffer.from(`\ufeff${list}`), 'utf-8'],
    ['UTF-16 LE with its mark', Buffer.from(`\ufeff${list}`, 'utf16le'), 'utf-16le'],
    ['UTF-16 BE with its mark', swapped(Buffer.from(`\ufeff${list}`, 'utf16le')), 'utf-16be'],
    ['UTF-16 LE without', Buffer.from(list, 'utf16le'), 'utf-16le'],
    ['UTF-16 BE without', swapped(Buffer.from(list, 'utf16le')), 'utf-16be'],
  ])('%s', (name, bytes, encoding) => {
    expect(text(bytes)).toEqual({ text: list, encoding, marked: name.endsWith('its mark'), guessedAt: 0 });
  });

  it('takes windows-1252 where it is no UTF-8, and says from which line on', () => {
    const bytes = Buffer.concat([
      Buffer.from('tag,place\nA,B\nC,'),
      Buffer.from([0xfc, 0x80, 0x92, 0x9f]),
      Buffer.from('\n'),
    ]);
    expect(text(bytes)).toEqual({
      text: 'tag,place\nA,B\nC,\u00fc\u20ac\u2019\u0178\n',
      encoding: 'windows-1252',
      marked: false,
      guessedAt: 3,
    });
  });

  it('reads what is stated, whatever it looks like', () => {
    const decoded = decode(Buffer.from([0x41, 0xe9]), 'windows-1252');
    expect(decoded).toEqual({ text: 'A\u00e9', encoding: 'windows-1252', marked: false, guessedAt: 0 });
  });

  it('makes every line end one', () => {
    expect(text(Buffer.from('a\r\nb\rc\nd\r\r\ne')).text).toBe('a\nb\nc\nd\n\ne');
  });

  test.each([
    ['a workbook', [0x50, 0x4b, 0x03, 0x04]],
    ['a PDF', [0x25, 0x50, 0x44, 0x46, 0x2d]],
    ['a compressed file', [0x1f, 0x8b, 0x08]],
  ])('%s is no text', (kind, bytes) => {
    expect('kind' in decode(Buffer.from(bytes)), kind).toBe(true);
  });

  it('never throws', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => typeof decode(bytes) === 'object'));
  });

  it('gives any text back that was written in an encoding which knows it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (typed) => {
        fc.pre(!typed.includes('\r') && !typed.includes('\ufeff'));
        // What begins like another sort of file is one.
        fc.pre(!/^(?:PK\u0003|%PDF|\u001f)/.test(typed));
        expect(text(Buffer.from(`\ufeff${typed}`)).text).toBe(typed);
        expect(text(Buffer.from(`\ufeff${typed}`, 'utf16le')).text).toBe(typed);
      }),
    );
  });
});
