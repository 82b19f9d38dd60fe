/** Words, and pairs of words that stand beside each other, in small letters. */
export interface Vocabulary {
  readonly words: ReadonlySet<string>;
  readonly pairs: ReadonlySet<string>;
}

/** The words of texts, each whole in itself. */
export function vocabularyOf(texts: Iterable<string>): Vocabulary;

/** The words that are cut between lines without a hyphen of their own, `confir/m`. */
export function brokenWords(lines: readonly string[], vocabularies: readonly Vocabulary[]): string[];
