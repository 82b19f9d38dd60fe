import type { PdfObject } from './pdf-objects.js';

/** A reference, or a text string that may hold what looks like one. */
const REFERENCE = /\((?:[^()\\]|\\[\s\S])*\)|(\d+) 0 R/g;

/**
 * Numbers objects one after the other, from 1: a table with gaps is three times as large.
 * @param objects of a PDF, in any order
 * @returns the objects in their order, and the new number of each old one; what refers to no object refers to none still
 */
export function numberedAnew(objects: readonly PdfObject[]): {
  readonly objects: readonly PdfObject[];
  readonly anew: ReadonlyMap<number, number>;
} {
  const sorted = objects.map(({ number }) => number).sort((a, b) => a - b);
  const anew = new Map(sorted.map((number, index) => [number, index + 1]));
  const NONE = sorted.length + 1_000_000;
  const renumbered = (text: string): string =>
    text.replace(REFERENCE, (whole, number: string | undefined) =>
      number === undefined ? whole : `${String(anew.get(Number(number)) ?? NONE)} 0 R`,
    );
  return {
    objects: objects.map(({ number, text, stream }) => ({
      number: anew.get(number) ?? NONE,
      text: renumbered(text),
      stream,
    })),
    anew,
  };
}
