export const DOCUMENTS: readonly string[];

/** What isn't set anew yet: measured and listed, not failed; with the reason. */
export const HELD: ReadonlyMap<string, string>;

/** Which document a file is, or is a sheet of. */
export function documentOf(name: string): string | null;
