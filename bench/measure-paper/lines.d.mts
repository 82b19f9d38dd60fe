import type { Text } from './page.d.mts';

/** The lines of each group of texts, in the order in which they are read. */
export function linesOf(texts: readonly Text[]): string[][];
