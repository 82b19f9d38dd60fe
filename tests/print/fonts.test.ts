import { describe, expect, it } from 'vitest';
import { embeddedFonts, type FontFaceSource } from '../../src/print/fonts.js';
import { charactersOf, namesFamily } from '../../src/print/page-characters.js';

const page = (style: string, text = ''): string => `<head><style>${style}</style></head><body>${text}</body>`;
const PLEX = "html{font-family:Plex,'DejaVu Sans Condensed'}";
const brief = (faces: readonly FontFaceSource[]): string[] =>
  faces.map(({ family, weight, unicodeRange }) => {
    const part = unicodeRange.startsWith('U+20-7E') ? '' : ' more';
    return `${family} ${weight}${part}`;
  });

describe('the embedded fonts', () => {
  it('cover what the documents write, and not what they must show by its code', async () => {
    const { kit } = await embeddedFonts();
    const covered = (text: string): string[] =>
      Array.from(text).filter((c) => kit.covers(c.codePointAt(0) ?? 0));
    const written = 'Az09 äßçñ µΩ²½±≤≥×→“”–—…•☐✓';
    expect(covered(written)).toEqual(Array.from(written));
    expect(covered('ЖλŁ')).toEqual(['Ж', 'λ', 'Ł']);
    expect(covered('中文\u{1f680}\u202e\u2066\u061c\u{10ffff}\0')).toEqual([]);
  });

  it('are needed as far as a page names their family and holds their characters', async () => {
    const { facesFor } = await embeddedFonts();
    expect(brief(facesFor(page(PLEX, 'Łódź')))).toEqual([
      'Plex 400',
      'Plex 400 more',
      'Plex 700',
      'Plex 700 more',
    ]);
    const signs = ['Plex 400', 'DejaVu Sans Condensed 400', 'Plex 700', 'DejaVu Sans Condensed 700'];
    expect(brief(facesFor(page(PLEX, '5 Ω')))).toEqual(signs);
    expect(brief(facesFor(page(PLEX, '5 &#x3a9;')))).toEqual(signs);
    expect(brief(facesFor(page(`${PLEX} li::before{content:'\\2610 '}`)))).toEqual(signs);
    expect(brief(facesFor(page("p{font-family:'DejaVu Sans'}", 'a')))).toEqual([
      'DejaVu Sans 400',
      'DejaVu Sans 700',
    ]);
    const old = page("html{font-family:'DejaVu Sans Condensed','DejaVu Sans'}", 'a');
    expect(brief(facesFor(old))).toEqual(['DejaVu Sans Condensed 400', 'DejaVu Sans Condensed 700']);
    expect(facesFor(page('p{font-family:serif}'))).toEqual([]);
  });

  it('go into a page that stands alone, and into none that is printed', async () => {
    const { kit, standAloneKit } = await embeddedFonts();
    expect(kit.css(page(PLEX))).toBe('');
    const css = standAloneKit.css(page(PLEX));
    expect(css.match(/@font-face/g)).toHaveLength(2);
    // A page of plain letters has no use for the megabyte of signs.
    expect(css.length).toBeLessThan(60_000);
    expect(css).toMatch(/font-family:"Plex";font-weight:400;[^}]*unicode-range:U\+/);
  });
});

describe('the characters of a page', () => {
  const has = (html: string, character: string): boolean =>
    charactersOf(html).includes(character.codePointAt(0) ?? 0);

  it('are those that stand in it and those that it writes by number', () => {
    expect(has('Ω', 'Ω')).toBe(true);
    expect(has('&#937;', 'Ω')).toBe(true);
    expect(has('&#x3A9;', 'Ω')).toBe(true);
    expect(has("content: '\\3a9 '", 'Ω')).toBe(true);
    expect(has('3a9 937', 'Ω')).toBe(false);
    expect(has('', '7')).toBe(true);
  });

  it('are set in the families that it names', () => {
    expect(namesFamily("font: 8pt 'DejaVu Sans'", 'DejaVu Sans')).toBe(true);
    expect(namesFamily("font: 8pt 'DejaVu Sans Condensed'", 'DejaVu Sans')).toBe(false);
    expect(namesFamily("font: 8pt Plex, 'DejaVu Sans Condensed'", 'DejaVu Sans Condensed', 'first')).toBe(
      false,
    );
    expect(namesFamily("font: 8pt Plex, 'DejaVu Sans Condensed'", 'Plex', 'first')).toBe(true);
    expect(namesFamily('complex', 'Plex')).toBe(false);
  });
});
