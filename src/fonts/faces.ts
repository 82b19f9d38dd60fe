import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/** Families as the styles call them; what a face lacks, `DejaVu Sans Condensed` has (signs, Greek, Cyrillic). */
export const FONT_FAMILIES = ['Plex', 'Atkinson', 'DejaVu Sans Condensed', 'DejaVu Sans'] as const;
export type FontFamily = (typeof FONT_FAMILIES)[number];

export const FONT_WEIGHTS = [400, 700] as const;
export type FontWeight = (typeof FONT_WEIGHTS)[number];

/** One font file that is shipped: all that the pages of a printer load. */
export interface FontFace {
  readonly family: FontFamily;
  readonly weight: FontWeight;
  /** Absolute path. */
  readonly path: string;
  readonly format: 'woff' | 'truetype';
}

const require = createRequire(import.meta.url);
const packageFolder = (name: string): string => dirname(require.resolve(`${name}/package.json`));

/** The folder of the font package for signs and for scripts that the others lack. */
export function dejavuFolder(): string {
  return join(packageFolder('dejavu-fonts-ttf'), 'ttf');
}

// WOFF, not WOFF 2: as small for faces of two hundred glyphs, and its tables can be read without another library.
function subsets(family: FontFamily, name: string): FontFace[] {
  const folder = join(packageFolder(`@fontsource/${name}`), 'files');
  return FONT_WEIGHTS.flatMap((weight) =>
    ['latin', 'latin-ext'].map((subset) => ({
      family,
      weight,
      path: join(folder, `${name}-${subset}-${weight}-normal.woff`),
      format: 'woff' as const,
    })),
  );
}

function dejavu(family: FontFamily, file: string): FontFace[] {
  return FONT_WEIGHTS.map((weight) => ({
    family,
    weight,
    path: join(dejavuFolder(), `${file}${weight === 700 ? '-Bold' : ''}.ttf`),
    format: 'truetype' as const,
  }));
}

/** Every font file that is shipped; within a family and weight the first that has a character draws it. */
export function fontFaces(): readonly FontFace[] {
  return [
    ...subsets('Plex', 'ibm-plex-sans-condensed'),
    ...subsets('Atkinson', 'atkinson-hyperlegible-next'),
    ...dejavu('DejaVu Sans Condensed', 'DejaVuSansCondensed'),
    ...dejavu('DejaVu Sans', 'DejaVuSans'),
  ];
}
