import { deflateSync, inflateSync } from 'node:zlib';
import type { PdfObject } from './pdf-objects.js';

/** Advance of a glyph, named by four digits of the base 16, in thousandths of the size. */
type Advances = (glyph: string) => number;

/** Glyphs stand no further from where the browser put them than this, in thousandths of the size: 0.01 mm at 10 pt. */
const MOST_OFF = 3;

/** Widths of the glyphs of a font: runs `first [w w ...]` and `first last w` (ISO 32000-1, 9.7.4.3). */
function advancesOf(font: string): Advances {
  const widths = /\/W \[((?:[^[\]]|\[[^\]]*\])*)\]/.exec(font)?.[1] ?? '';
  const others = Number(/\/DW ([-\d.]+)/.exec(font)?.[1] ?? 1000);
  const advances = new Map<string, number>();
  const add = (glyph: number, width: number): void => {
    advances.set(glyph.toString(16).toUpperCase().padStart(4, '0'), width);
  };
  for (const [, first = '', list, last = '', one = ''] of widths.matchAll(
    /(\d+) (?:\[([-\d. ]*)\]|(\d+) ([-\d.]+))/g,
  )) {
    if (list === undefined)
      for (let glyph = Number(first); glyph <= Number(last); glyph += 1) add(glyph, Number(one));
    else
      list.split(' ').forEach((width, i) => {
        add(Number(first) + i, Number(width));
      });
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
    this.at += (this.advances(glyph) * this.size) / 1000;
  }

  /** What shows the glyphs. */
  get text(): string {
    return this.isShifted ? `[<${this.shown}>] TJ` : `<${this.shown}> Tj`;
  }

  /** How far on from the first glyph the last one stands. */
  get length(): number {
    return this.wanted;
  }
}

/** How a line ends that shows one glyph, and what stands before it where it isn't the first. */
const SHOWN = '<0000> Tj'.length;
const MOVED = ' 0 Td ';

/** A line that shows one glyph: how far on from the one before; undefined: it shows something else. */
function glyphAt(content: string, from: number, to: number): number | undefined {
  const glyph = to - SHOWN;
  if (glyph < from || !content.endsWith('> Tj', to) || content[glyph] !== '<') return undefined;
  if (glyph === from) return 0;
  if (!content.endsWith(MOVED, glyph)) return undefined;
  const advance = Number(content.slice(from, glyph - MOVED.length));
  return Number.isNaN(advance) ? undefined : advance;
}

/** A content stream in which glyphs beside each other stand in one string. */
function joined(content: string, fonts: ReadonlyMap<string, Advances>): string {
  const kept: string[] = [];
  let font: Advances | undefined;
  let size = 0;
  let run: Run | undefined;
  // What stands from here on is kept as it is.
  let whole = 0;
  for (let from = 0; from < content.length;) {
    const end = content.indexOf('\n', from);
    const to = end < 0 ? content.length : end;
    const advance = font === undefined ? undefined : glyphAt(content, from, to);
    if (advance !== undefined && font !== undefined && (run === undefined || to - from > SHOWN)) {
      const glyph = content.slice(to - SHOWN + 1, to - SHOWN + 5);
      if (run === undefined) {
        kept.push(content.slice(whole, to - SHOWN));
        run = new Run(size, font);
        run.add(0, glyph);
      } else run.add(advance, glyph);
      whole = to;
    } else {
      if (run !== undefined) {
        // What goes on in this line of text is placed from its last glyph.
        const goesOn = run.length !== 0 && content.slice(from, to).includes(' Td');
        kept.push(goesOn ? `${run.text}\n${run.length.toFixed(4)} 0 Td` : run.text);
        run = undefined;
      }
      if (content.endsWith(' Tf', to)) {
        const [, name = '', given = ''] = /^\/(F\d+) ([\d.]+) Tf$/.exec(content.slice(from, to)) ?? [];
        size = Number(given);
        font = size > 0 ? fonts.get(name) : undefined;
      }
      if (advance !== undefined) continue;
    }
    from = to + 1;
  }
  kept.push(run?.text ?? '', content.slice(whole));
  return kept.join('');
}

/** Level 5: a fiftieth larger than 6, at two thirds of its time. */
const LEVEL = 5;

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
    const stream = deflateSync(Buffer.from(joined(content, fonts), 'latin1'), { level: LEVEL });
    return { ...object, stream, text: object.text.replace(/\/Length \d+/, `/Length ${stream.length}`) };
  });
}
