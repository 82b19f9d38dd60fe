/** The lines that only one of two texts has, `- ` before what is gone and `+ ` before what is new. */
export function differingLines(before: readonly string[], after: readonly string[]): string[];

/** Reads every PDF of two folders and holds those of one name against each other. */
export function comparePaper(
  before: string,
  after: string,
): Promise<{
  readonly documents: number;
  readonly pages: number;
  readonly differing: readonly { readonly name: string; readonly differences: readonly string[] }[];
}>;
