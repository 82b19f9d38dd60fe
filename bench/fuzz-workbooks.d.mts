/** A mutated workbook of the fuzz run, by the run's seed and its number. */
export function workbookCase(seed: number, number: number): { readonly name: string; readonly list: Buffer };
