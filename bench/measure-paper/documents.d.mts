export const DOCUMENTS: readonly string[];

/** What is measured and listed, not failed: what isn't set anew yet, or holds pages of others; with the reason. */
export const HELD: ReadonlyMap<string, string>;

/** Which document a file is, or is a sheet of. */
export function documentOf(name: string): string | null;
