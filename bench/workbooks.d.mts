/** What a cell holds; a string that begins with its element is taken as it is. */
export type GridCell = string | number | null;

export interface SheetToWrite {
  readonly name: string;
  /** What stands in `<worksheet>`. */
  readonly content: string;
  readonly state?: string;
}

export function zipOf(
  parts: Readonly<Record<string, string | Uint8Array>>,
  forged?: { readonly encrypted?: boolean; readonly declared?: number },
): Buffer<ArrayBuffer>;
export function letters(index: number): string;
export function sheetData(grid: readonly (readonly GridCell[])[]): string;
export function xlsxParts(
  sheets: readonly SheetToWrite[],
  more?: {
    readonly formats?: readonly string[];
    readonly strings?: readonly string[];
    readonly from1904?: boolean;
  },
): Record<string, string>;
export function odsParts(spreadsheet: string, styles?: string): Record<string, string>;
export function odsTable(name: string, grid: readonly (readonly GridCell[])[]): string;
