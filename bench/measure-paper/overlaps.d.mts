import type { Text } from './page.d.mts';

/** Pairs of texts of a page whose letters lie over each other. */
export function overlapsOf(texts: readonly Text[]): [string, string][];
