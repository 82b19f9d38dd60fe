import type { Page } from './page.d.mts';

/** The pages of a PDF: their size, the scale that their text is printed in, and each piece of text. */
export function readPrinted(bytes: Uint8Array): Promise<Page[]>;
