import { readFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';
import { fontFaces } from '../fonts/faces.js';
import { fontTable } from '../fonts/font-tables.js';
import { advancesOf, glyphsOf } from '../fonts/glyphs.js';
import { trueTypeOf } from '../fonts/true-type.js';
import { WINDOWS_1252_HIGH } from '../model/windows-1252.js';
import type { PdfObject } from './pdf-objects.js';

const FAMILY = 'Plex';
const NAME = 'IBMPlexSansCond-Regular';
const FIRST = 32;
const LAST = 255;

interface ReadFont {
  readonly stream: Buffer;
  readonly length: number;
  readonly widths: readonly number[];
  readonly descriptor: string;
}

let read: ReadFont | undefined;

/** The font that what is typed into a form is shown in; read once a process. */
function readFont(): ReadFont {
  const face = fontFaces().find(({ family, weight, format }) => {
    return family === FAMILY && weight === 400 && format === 'woff';
  });
  if (!face) throw new Error(`there is no font ${FAMILY}`);
  const bytes = readFileSync(face.path);
  const whole = trueTypeOf(bytes);
  const glyphs = glyphsOf(bytes);
  const advance = advancesOf(bytes);
  // The codes of WinAnsiEncoding are those of Windows 1252 (ISO 32000-1, Annex D.2).
  const characters = Array.from({ length: LAST - FIRST + 1 }, (_, i) => {
    const code = FIRST + i;
    return WINDOWS_1252_HIGH[code - 0x80] ?? String.fromCharCode(code);
  });
  const widths = characters.map((character) =>
    Math.round(advance(glyphs.get(character.codePointAt(0) ?? 0) ?? 0) * 1000),
  );
  const head = fontTable(bytes, 'head');
  const hhea = fontTable(bytes, 'hhea');
  const em = (value: number): number => Math.round((value * 1000) / head.getUint16(18));
  const box = [36, 38, 40, 42].map((at) => em(head.getInt16(at)));
  const [ascent, descent] = [em(hhea.getInt16(4)), em(hhea.getInt16(6))];
  const os2 = fontTable(bytes, 'OS/2');
  // Version 2 and later of that table tell how high capitals are; 32: a font of Latin text (ISO 32000-1, table 123).
  const capitals = os2.getUint16(0) >= 2 ? em(os2.getInt16(88)) : ascent;
  const descriptor = `/Flags 32\n/FontBBox [${box.join(' ')}]\n/ItalicAngle 0\n/Ascent ${ascent}\n/Descent ${descent}\n/CapHeight ${capitals}\n/StemV 80`;
  return { stream: deflateSync(whole), length: whole.length, widths, descriptor };
}

/**
 * The objects of the font that a form's fields are filled in with: whole, since nobody knows what will be typed.
 * @param first number of the first object
 * @returns three objects; the first of them is the font itself
 */
export function formFont(first: number): readonly PdfObject[] {
  read ??= readFont();
  const { stream, length, widths, descriptor } = read;
  const what = `/Type /Font\n/Subtype /TrueType\n/BaseFont /${NAME}\n/Encoding /WinAnsiEncoding`;
  const range = `/FirstChar ${FIRST}\n/LastChar ${LAST}\n/Widths [${widths.join(' ')}]`;
  return [
    {
      number: first,
      text: `<<${what}\n${range}\n/FontDescriptor ${first + 1} 0 R>>`,
      stream: undefined,
    },
    {
      number: first + 1,
      text: `<</Type /FontDescriptor\n/FontName /${NAME}\n${descriptor}\n/FontFile2 ${first + 2} 0 R>>`,
      stream: undefined,
    },
    {
      number: first + 2,
      text: `<</Filter /FlateDecode\n/Length1 ${length}\n/Length ${stream.length}>>`,
      stream,
    },
  ];
}
