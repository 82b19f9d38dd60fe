/** The values of what needs none: a sentence that is always the same. */
export type None = Readonly<Record<string, never>>;
