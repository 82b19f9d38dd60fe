/** Why a file is no workbook that can be read. */
export type WorkbookProblem =
  | 'broken'
  | 'encrypted'
  /** A zip archive of something else. */
  | 'no-workbook'
  /** A workbook whose parts aren't XML. */
  | 'binary'
  | 'bytes'
  | 'unpacked'
  | 'cells'
  | 'characters';

/** Ends the reading of a workbook; it never leaves this folder. */
export class WorkbookFault extends Error {
  override readonly name = 'WorkbookFault';

  constructor(readonly problem: WorkbookProblem) {
    super(problem);
  }
}

/**
 * Most that is read of a workbook. Common practice, no source.
 * bytes: of the file; unpacked: bytes of its parts once they are unpacked, all that are read together; cells that say something, repeated
 * ones as often as they stand; characters of all cells: a text that many cells share counts each time.
 */
export const MOST_OF = {
  bytes: 50_000_000,
  unpacked: 300_000_000,
  cells: 3_000_000,
  characters: 200_000_000,
} as const;
