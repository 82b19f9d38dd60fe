/** What a block of a permit sheet has to know of the sheet that it stands on. */
export interface BlockContext {
  /** True on letter and A4: a row of the schedule is two lines there. */
  readonly narrow: boolean;
  /** Parts whose data sheets are appended; undefined: none were asked for. */
  readonly dataSheets: readonly string[] | undefined;
}
