import type { Vocabulary } from './broken-words.d.mts';
import type { Picture } from './ink.d.mts';
import type { LeastType } from './least-type.d.mts';
import type { Finding, Page } from './page.d.mts';

export interface Measured {
  readonly least: LeastType;
  /** mm from the left edge to the nearest text; null: no text. */
  readonly left: number | null;
  /** Share of its height without ink below the last line; null where that wasn't measured. */
  readonly blank: number | null;
  readonly findings: readonly Finding[];
}

/** Measures a page, and says what it breaks. */
export function measurePage(
  document: string,
  page: Page,
  picture: Picture | null,
  vocabularies: readonly Vocabulary[],
): Measured;
