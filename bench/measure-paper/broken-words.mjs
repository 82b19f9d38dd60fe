// Words that a line's end cuts without a hyphen of their own. The paper doesn't say whether a line ended at a blank; so a cut
// is what the job's own text holds whole, and holds nowhere as two words.

const WORD = /[\p{L}\p{N}]/u;
const bare = (word) => word.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, '').toLowerCase();
const wordsIn = (text) =>
  text
    .normalize('NFKC')
    .split(/\s+/u)
    .map(bare)
    .filter((word) => word !== '');

/**
 * The words of texts, and which stand beside each other.
 * @param {Iterable<string>} texts each whole in itself: a line, a cell, a sentence
 * @returns {import('./broken-words.d.mts').Vocabulary}
 */
export function vocabularyOf(texts) {
  const words = new Set();
  const pairs = new Set();
  for (const text of texts) {
    const found = wordsIn(text);
    for (const [at, word] of found.entries()) {
      words.add(word);
      if (at > 0) pairs.add(`${found[at - 1]} ${word}`);
    }
  }
  return { words, pairs };
}

/**
 * The words that are cut between the lines of one piece of text.
 * @param {readonly string[]} lines
 * @param {readonly import('./broken-words.d.mts').Vocabulary[]} vocabularies that hold words whole
 * @returns {string[]} `confir/m`, a stroke where the line ends
 */
export function brokenWords(lines, vocabularies) {
  const isWord = (word) => vocabularies.some(({ words }) => words.has(word));
  const isPair = (one, other) => vocabularies.some(({ pairs }) => pairs.has(`${one} ${other}`));
  const tokens = lines.map((line) => line.split(' '));
  const found = [];
  for (const [at, line] of tokens.entries()) {
    let cut = line.at(-1) ?? '';
    let shown = cut;
    // A word may be cut more than once: then it has lines of its own.
    for (let next = at + 1; next < tokens.length; next += 1) {
      const part = tokens[next][0] ?? '';
      // A line may end behind a hyphen or a stroke of the word's own.
      if (!WORD.test(cut.at(-1) ?? '') || !WORD.test(part[0] ?? '')) break;
      // P-1 and 2 are no P-12, though the job has one.
      const areFigures =
        /\p{N}$/u.test(cut) && /^\p{N}/u.test(part) && isWord(bare(cut)) && isWord(bare(part));
      const apart = areFigures || isPair(bare(cut), bare(part));
      cut += part;
      shown += `/${part}`;
      if (!apart && isWord(bare(cut))) {
        found.push(shown);
        break;
      }
      if (tokens[next].length > 1) break;
    }
  }
  return found;
}
