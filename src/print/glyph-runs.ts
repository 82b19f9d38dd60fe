import { deflateSync, inflateSync } from 'node:zlib';
import type { PdfObject } from './pdf-objects.js';

/** Advance of a glyph in thousandths of the size. */
type Advances = (glyph: number) => number;

/** Glyphs stand no further from where the browser put them than this, in thousandths of the size: 0.01 mm at 10 pt. */
const MOST_OFF = 3;

/** Widths of the glyphs of a font: runs `first [w w ...]` and `first last w` (ISO 32000-1, 9.7.4.3). */
function advancesOf(font: string): Advances {
  const widths = /\/W \[((?:[^[\]]|\[[^\]]*\])*)\]/.exec(font)?.[1] ?? '';
  const others = Number(/\/DW ([-\d.]+)/.exec(font)?.[1] ?? 1000);
  const advances = new Map<number, number>();
  for (const [, first = '', list, last = '', one = ''] of widths.matchAll(
    /(\d+) (?:\[([-\d. ]*)\]|(\d+) ([-\d.]+))/g,
  )) {
    if (list !== undefined)
      list.split(' ').forEach((width, i) => advances.set(Number(first) + i, Number(width)));
    else for (let glyph = Number(first); glyph <= Number(last); glyph += 1) advances.set(glyph, Number(one));
  }
  return (glyph) => advances.get(glyph) ?? others;
}

/** Advances by the name that pages have for a font; a name that means two fonts isn't there. */
function advancesByName(objects: readonly PdfObject[]): ReadonlyMap<string, Advances> {
  const byNumber = new Map(objects.map((object) => [object.number, object.text]));
  const numbers = new Map<string, Set<number>>();
  for (const { text } of objects)
    for (const [, name = '', number = ''] of text.matchAll(/\/(F\d+) (\d+) 0 R/g))
      numbers.set(name, (numbers.get(name) ?? new Set()).add(Number(number)));
  const found = new Map<string, Advances>();
  for (const [name, [number = 0, ...others]] of numbers) {
    const descendant = /\/DescendantFonts \[(\d+) 0 R\]/.exec(byNumber.get(number) ?? '')?.[1];
    const font = byNumber.get(Number(descendant));
    if (others.length === 0 && font !== undefined) found.set(name, advancesOf(font));
  }
  return found;
}

/** A glyph where the browser puts each on its own: how far on from the one before, and which. */
const GLYPH = /^(?:(-?[\d.]+) 0 Td )?<([0-9A-F]{4})> Tj$/;

/** Glyphs beside each other, as they are gathered. */
class Run {
  private shown = '';
  /** Where the next glyph would stand, and where it shall; in units of the text. */
  private at = 0;
  private wanted = 0;
  private isShifted = false;

  constructor(
    private readonly size: number,
    private readonly advances: Advances,
  ) {}

  /**
   * @param advance how far on from the glyph before
   * @param glyph four digits of the base 16
   */
  add(advance: number, glyph: string): void {
    this.wanted += advance;
    const off = Math.round(((this.at - this.wanted) * 1000) / this.size);
    if (Math.abs(off) > MOST_OFF) {
      this.shown += `>${String(off)}<`;
      this.at -= (off * this.size) / 1000;
      this.isShifted = true;
    }
    this.shown += glyph;
    this.at += (this.advances(Number.parseInt(glyph, 16)) * this.size) / 1000;
  }

  /** What shows the glyphs; what comes next is placed from the last of them, as it was before. */
  get text(): string {
    return this.isShifted ? `[<${this.shown}>] TJ` : `<${this.shown}> Tj`;
  }

  /** How far on from the first glyph the last one stands. */
  get length(): number {
    return this.wanted;
  }
}

/** A content stream in which glyphs beside each other stand in one string. */
function joined(content: string, fonts: ReadonlyMap<string, Advances>): string {
  const lines = content.split('\n');
  const kept: string[] = [];
  let font: Advances | undefined;
  let size = 0;
  for (let i = 0; i < lines.length; i += 1) {
    const line = lines[i] ?? '';
    if (line.endsWith(' Tf')) {
      const [, name = '', given = ''] = /^\/(F\d+) ([\d.]+) Tf$/.exec(line) ?? [];
      font = fonts.get(name);
      size = Number(given);
    }
    const first = font !== undefined && size > 0 && line.endsWith('> Tj') ? GLYPH.exec(line) : null;
    if (font === undefined || first === null) {
      kept.push(line);
      continue;
    }
    const run = new Run(size, font);
    run.add(0, first[2] ?? '');
    let next = i + 1;
    for (; next < lines.length; next += 1) {
      const [, advance, glyph = ''] = GLYPH.exec(lines[next] ?? '') ?? [];
      if (advance === undefined) break;
      run.add(Number(advance), glyph);
    }
    const moved = first[1] === undefined ? '' : `${first[1]} 0 Td `;
    kept.push(`${moved}${run.text}`);
    // What goes on in this line of text is placed from its last glyph.
    const follows = lines[next] ?? '';
    if (run.length !== 0 && follows.includes(' Td')) kept.push(`${run.length.toFixed(4)} 0 Td`);
    i = next - 1;
  }
  return kept.join('\n');
}

const isContent = ({ text, stream }: PdfObject): boolean =>
  stream !== undefined &&
  /\/Filter \/FlateDecode\b/.test(text) &&
  !/\/(?:Length1|Subtype \/Image|FunctionType|ShadingType)\b/.test(text);

/**
 * Joins the glyphs that the browser shows one by one, each with its place, to strings that a font's own widths space; where they
 * don't (kerning), the string says by how much. Half of a PDF's bytes are those places.
 * Source: ISO 32000-1, 9.4.3 (Tj, TJ), 9.7.4.3 (widths of glyphs).
 * @param objects of a PDF as the browser wrote it
 * @returns the same objects, streams of text written anew; no glyph stands more than 0.003 of its size from where it stood
 */
export function withGlyphRuns(objects: readonly PdfObject[]): readonly PdfObject[] {
  const fonts = advancesByName(objects);
  return objects.map((object) => {
    if (object.stream === undefined || !isContent(object)) return object;
    const content = inflateSync(object.stream).toString('latin1');
    if (!content.includes('> Tj\n')) return object;
    const stream = deflateSync(Buffer.from(joined(content, fonts), 'latin1'));
    return { ...object, stream, text: object.text.replace(/\/Length \d+/, `/Length ${stream.length}`) };
  });
}
