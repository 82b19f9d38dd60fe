/** Every digit, so that the font in the PDF has them all. */
export const MARK_DIGITS = '0123456789';

/**
 * What a table of contents has where the number of a page shall stand, in an element of the class `page-mark`: the printer puts the
 * number in its place. It holds every digit and says whose page is meant.
 * @param index of the place in `DocumentMetadata.contents`, below 100
 */
export function pageMark(index: number): string {
  return MARK_DIGITS + String(index).padStart(2, '0');
}

/** How many marks stand in a page of HTML. */
export function countMarks(html: string): number {
  return html.match(/ class="page-mark">\d{12}</g)?.length ?? 0;
}
