import type { Finding, Page, Text } from './page.d.mts';

export type Role =
  | 'body'
  | 'heading'
  | 'table'
  | 'drawing'
  | 'title strip'
  | 'margin'
  | 'box text'
  | 'box table'
  | 'box figure';

/** By role: points, and the first text that is so small. */
export type LeastType = Readonly<Partial<Record<Role, { readonly points: number; readonly text: string }>>>;

/** The least type of a page by role. */
export function leastType(document: string, page: Page, isStrip?: (text: Text) => boolean): LeastType;

/** Roles whose type is smaller than the design asks. */
export function tooSmall(document: string, least: LeastType): Finding[];
