import { readFile } from 'node:fs/promises';
import { FONT_FAMILIES, FONT_WEIGHTS, fontFaces, type FontFace, type FontFamily } from '../fonts/faces.js';
import { glyphsOf, unicodeRange } from '../fonts/glyphs.js';
import type { FontKit } from '../model/print.js';
import { charactersOf, namesFamily } from './page-characters.js';

/** One embedded font file: what CSS says of it, and its bytes as base64. */
export interface FontFaceSource {
  readonly family: string;
  readonly weight: '400' | '700';
  /** The characters that it draws, as CSS writes them; the next face of the family draws what is left. */
  readonly unicodeRange: string;
  readonly format: 'woff' | 'truetype';
  readonly ascentOverride: string;
  readonly descentOverride: string;
  readonly lineGapOverride: string;
  readonly base64: string;
}

/** The embedded fonts: what the printer loads into its pages, and what documents are handed. */
export interface EmbeddedFonts {
  /**
   * The font files that a page needs: those of the families that it names, as far as they have a character of it that no
   * family before them has.
   */
  readonly facesFor: (html: string) => readonly FontFaceSource[];
  /** For documents that this printer prints: it brings the fonts itself, so `css` gives nothing. */
  readonly kit: FontKit;
  /** For a page that is to stand alone: `css` holds the fonts. */
  readonly standAloneKit: FontKit;
}

// Bidirectional controls draw nothing but would reorder the figures around them: shown by their code instead.
const REORDERING: readonly (readonly [number, number])[] = [
  [0x061c, 0x061c],
  [0x200e, 0x200f],
  [0x202a, 0x202e],
  [0x2066, 0x2069],
];
const reorders = (code: number): boolean => REORDERING.some(([first, last]) => code >= first && code <= last);

/**
 * Height of a line above and below its base, for every family that of DejaVu: a sign from there then leaves a line as high as
 * it was. Plex and Atkinson claim 1.3 times their size, though no letter fills it; a heading at the top of a page, set closer
 * than that, would be tagged on the page before as well.
 */
const LINE = { ascentOverride: '93%', descentOverride: '24%', lineGapOverride: '0%' } as const;

/** Has signs and scripts for all other families: what it lacks, no page shows. */
const FOR_ALL = 'DejaVu Sans Condensed';

let loaded: Promise<EmbeddedFonts> | undefined;

/**
 * The embedded fonts, read once a process.
 * @returns Plex, Atkinson, DejaVu Sans Condensed and DejaVu Sans, regular and bold
 * @throws Error where a font package is damaged
 */
export function embeddedFonts(): Promise<EmbeddedFonts> {
  loaded ??= readFonts();
  return loaded;
}

/** A font file with what is in it; its text forms are made when a page first needs them: 3 MB, and many a run needs few. */
class ReadFace {
  private made: FontFaceSource | undefined;
  private written: string | undefined;

  constructor(
    readonly face: FontFace,
    private readonly bytes: Buffer,
    /** The code points that it draws: those that no face before it in its family and weight has. */
    readonly draws: ReadonlySet<number>,
  ) {}

  get source(): FontFaceSource {
    const { family, weight, format } = this.face;
    return (this.made ??= {
      family,
      weight: `${weight}`,
      format,
      ...LINE,
      unicodeRange: unicodeRange(this.draws),
      base64: this.bytes.toString('base64'),
    });
  }

  get rule(): string {
    const { family, weight, format, base64, unicodeRange: range } = this.source;
    return (this.written ??=
      `@font-face{font-family:"${family}";font-weight:${weight};font-style:normal;unicode-range:${range};` +
      `ascent-override:${LINE.ascentOverride};descent-override:${LINE.descentOverride};line-gap-override:${LINE.lineGapOverride};` +
      `src:url(data:font/${format === 'woff' ? 'woff' : 'ttf'};base64,${base64}) format("${format}")}`);
  }
}

async function readFonts(): Promise<EmbeddedFonts> {
  const files = await Promise.all(
    fontFaces().map(async (face) => ({ face, bytes: await readFile(face.path) })),
  );
  const before = new Map<string, Set<number>>();
  const all = files.map(({ face, bytes }) => {
    const key = `${face.family} ${face.weight}`;
    const drawn = before.get(key) ?? new Set<number>();
    // Where two faces had a character, the browser would ask the later one, which has the letters A and blank for its accents alone.
    const draws = new Set([...glyphsOf(bytes).keys()].filter((code) => code >= 0x20 && !drawn.has(code)));
    before.set(key, new Set([...drawn, ...draws]));
    return new ReadFace(face, bytes, draws);
  });
  const last = all.filter(({ face }) => face.family === FOR_ALL);
  const covers = (code: number): boolean => !reorders(code) && last.every(({ draws }) => draws.has(code));
  const needed = (html: string): readonly ReadFace[] => neededFaces(all, html);
  return {
    facesFor: (html) => needed(html).map(({ source }) => source),
    kit: { css: () => '', covers },
    standAloneKit: {
      css: (html) =>
        needed(html)
          .map(({ rule }) => rule)
          .join('\n'),
      covers,
    },
  };
}

function neededFaces(all: readonly ReadFace[], html: string): readonly ReadFace[] {
  const characters = charactersOf(html);
  const lead = FONT_FAMILIES.filter((family) => namesFamily(html, family, 'first'));
  return FONT_WEIGHTS.flatMap((weight) => {
    const of = (family: FontFamily): readonly ReadFace[] =>
      all.filter(({ face }) => face.weight === weight && face.family === family);
    const lacking = (family: FontFamily): readonly number[] =>
      characters.filter((code) => !of(family).some(({ draws }) => draws.has(code)));
    const named = FONT_FAMILIES.filter((family) => namesFamily(html, family));
    return named.flatMap((family) => {
      const wanted = lead.includes(family) ? characters : lead.flatMap(lacking);
      return of(family).filter(({ draws }) => wanted.some((code) => draws.has(code)));
    });
  });
}
