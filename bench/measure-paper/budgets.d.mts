/** The name of a sheet's size, whichever way it lies; lengths in points. */
export function paperOf(page: { readonly width: number; readonly height: number }): string;

/** The pages that a document may have; null where the design names no number. */
export function budgetOf(
  document: string,
  protectors: number,
  paper: string,
  notes?: number | null,
  more?: number,
): { readonly most: number; readonly asks: string } | null;
