import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fontFaces } from '../../src/fonts/faces.js';
import { advancesOf, glyphsOf } from '../../src/fonts/glyphs.js';
import { formFont } from '../../src/print/form-font.js';

describe('the font of a form', () => {
  // Codes of WinAnsiEncoding from ISO 32000-1, Annex D.2: on no version of Node may they be taken for control characters.
  it.each([
    [0x20, ' '],
    [0x41, 'A'],
    [0x80, '€'],
    [0x85, '…'],
    [0x97, '—'],
    [0x99, '™'],
    [0xe9, 'é'],
  ])('says how wide the character of code %d is: %s', (code, character) => {
    const face = fontFaces().find(
      ({ family, weight, format }) => family === 'Plex' && weight === 400 && format === 'woff',
    );
    const bytes = readFileSync(face?.path ?? '');
    const wide = Math.round(
      advancesOf(bytes)(glyphsOf(bytes).get(character.codePointAt(0) ?? 0) ?? 0) * 1000,
    );
    const [font] = formFont(10);
    const widths = /\/Widths \[([\d ]+)\]/.exec(font?.text ?? '')?.[1]?.split(' ') ?? [];
    expect(widths[code - 32]).toBe(String(wide));
    expect(wide).toBeGreaterThan(100);
  });
});
