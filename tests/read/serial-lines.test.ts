import { describe, expect, it } from 'vitest';
import { serialLines } from '../../src/read/file/serial-lines.js';

const lines = (text: string): readonly string[] => serialLines(Buffer.from(text, 'utf8'));

describe('a file of serials', () => {
  it.each([
    ['one a line', '0001\n0002\r\n0003', ['0001', '0002', '0003']],
    ['with a heading and blank lines', '\ufeffSerial\r\n\r\n 0001 \r\n', ['0001']],
    ['a table', 'serial;part\n"0;1";X\n"a""b";X\n0002;X\n', ['0;1', 'a"b', '0002']],
    ['tabs', '0001\tX\n0002\tX', ['0001', '0002']],
    ['a serial that is called so', '0001\nserial\n', ['0001', 'serial']],
    ['nothing', '', []],
    ['a heading alone', 'serial\n', []],
  ])('%s', (_name, text, expected) => {
    expect(lines(text)).toEqual(expected);
  });

  it('reads UTF-16, and nothing of a workbook', () => {
    expect(serialLines(Buffer.from('\ufeff0001\n0002', 'utf16le'))).toEqual(['0001', '0002']);
    expect(serialLines(Uint8Array.of(0x50, 0x4b, 3, 4, 0, 0))).toEqual([]);
  });
});
