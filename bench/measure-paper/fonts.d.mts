import type { Finding, Text } from './page.d.mts';

/** The fonts of letters that are set in another one than the house's: a line a font. */
export function otherFonts(document: string, texts: readonly Text[]): Finding[];
