import type { LeastType } from './least-type.d.mts';
import type { Finding } from './page.d.mts';

export interface Sheet {
  readonly paper: string;
  readonly least: LeastType;
}

/** `page` null: the whole document. */
export type FindingOnPage = Finding & { readonly page: number | null };

/** What a document breaks as a whole: pages against the budget, sizes and title strips of its sheets. */
export function documentFindings(
  document: string,
  protectors: number,
  pages: readonly Sheet[],
  notes?: number | null,
  more?: number,
): FindingOnPage[];
