/** The words of the program's own in texts, such as `a rule id: place/long-run`. */
export function ownWords(texts: readonly string[]): string[];
