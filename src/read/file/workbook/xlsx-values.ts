import type { NumberFormat } from './number-format.js';

/** What the cells of all sheets refer to. */
export interface Shared {
  readonly strings: readonly string[];
  /** By the index of a cell's style. */
  readonly formats: readonly NumberFormat[];
  readonly from1904: boolean;
  readonly mark: '.' | ',';
}

/** A truth as these parts write it. */
export const isTrue = (attribute: string | undefined): boolean => attribute === '1' || attribute === 'true';

/** A character that XML can't hold is written `_x0007_` (ECMA-376 part 1, clause 22.9.2.19). */
export function unescaped(text: string): string {
  if (!text.includes('_x')) return text;
  return text.replace(/_x([0-9a-f]{4})_/gi, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
}
