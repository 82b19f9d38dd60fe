import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { FontKit } from '../model/print.js';
import { codePointsOf, inRanges } from './cmap.js';

/** One embedded font: its CSS name and weight, and its file as base64. */
export interface FontFaceSource {
  readonly family: string;
  readonly weight: '400' | '700';
  readonly base64: string;
}

/** The embedded fonts: what the printer loads into its pages, and what documents are handed. */
export interface EmbeddedFonts {
  readonly faces: readonly FontFaceSource[];
  /** For documents that this printer prints: it brings the fonts itself, so `css` is empty. */
  readonly kit: FontKit;
  /** For a page that is to stand alone: `css` holds all fonts. */
  readonly standAloneKit: FontKit;
}

const FILES = [
  { family: 'DejaVu Sans', weight: '400', file: 'DejaVuSans.ttf' },
  { family: 'DejaVu Sans', weight: '700', file: 'DejaVuSans-Bold.ttf' },
  { family: 'DejaVu Sans Condensed', weight: '400', file: 'DejaVuSansCondensed.ttf' },
  { family: 'DejaVu Sans Condensed', weight: '700', file: 'DejaVuSansCondensed-Bold.ttf' },
] as const;

/** The folder of the font package. */
export function fontFolder(): string {
  const require = createRequire(import.meta.url);
  return join(dirname(require.resolve('dejavu-fonts-ttf/package.json')), 'ttf');
}

// Bidirectional controls draw nothing but would reorder the figures around them: shown by their code instead.
const REORDERING: readonly (readonly [number, number])[] = [
  [0x061c, 0x061c],
  [0x200e, 0x200f],
  [0x202a, 0x202e],
  [0x2066, 0x2069],
];

let loaded: Promise<EmbeddedFonts> | undefined;

/**
 * The embedded fonts, read once a process.
 * @returns DejaVu Sans and DejaVu Sans Condensed, regular and bold
 * @throws Error where the font package is damaged
 */
export function embeddedFonts(): Promise<EmbeddedFonts> {
  loaded ??= readFonts();
  return loaded;
}

async function readFonts(): Promise<EmbeddedFonts> {
  const folder = fontFolder();
  const files = await Promise.all(
    FILES.map(async (face) => ({ ...face, bytes: await readFile(join(folder, face.file)) })),
  );
  const coverage = files.map((face) => codePointsOf(face.bytes));
  const covers = (codePoint: number): boolean =>
    !inRanges(REORDERING, codePoint) && coverage.every((ranges) => inRanges(ranges, codePoint));
  // Of 4 MB each, and many a run needs neither.
  const faces = once(() =>
    files.map(({ family, weight, bytes }) => ({ family, weight, base64: bytes.toString('base64') })),
  );
  const css = once(() => faces().map(fontFaceRule).join('\n'));
  return {
    kit: { css: '', covers },
    get faces() {
      return faces();
    },
    standAloneKit: {
      covers,
      get css() {
        return css();
      },
    },
  };
}

const fontFaceRule = ({ family, weight, base64 }: FontFaceSource): string =>
  `@font-face{font-family:"${family}";font-weight:${weight};font-style:normal;` +
  `src:url(data:font/ttf;base64,${base64}) format("truetype")}`;

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}
