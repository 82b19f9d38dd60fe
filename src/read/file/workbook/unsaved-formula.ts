const MARK = '#unsaved formula =';

/**
 * What stands for a formula that no program has worked out: nothing reads it as a name, a word or a figure.
 * @param formula without its equals sign; empty where the workbook doesn't state it at this cell
 */
export const unsavedFormula = (formula: string): string => `${MARK}${formula}`;

/** Whether a cell stands for a formula that no program has worked out. */
export const isUnsavedFormula = (text: string): boolean => text.startsWith(MARK);
