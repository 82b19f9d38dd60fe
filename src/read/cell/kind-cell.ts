import { FIELDS } from '../../model/fields.js';
import { note } from '../../model/message.js';
import { KIND_UNCLEAR } from '../../model/messages/list.js';
import { KINDS, type Kind } from '../../model/words.js';
import { nearest } from '../../words/closeness.js';
import { visible } from '../../words/visible.js';
import { wrongCell, type CellReading } from './cell-reading.js';
import { KIND_WORDS, kindWord, singular, wordsIn } from './kind-words.js';

/** A text of more words names no kind; it isn't compared with any. */
const MOST_WORDS = 8;

const WHERE = 'under words in the column map or the settings';

/**
 * Reads a cell of `kind`: a kind of the contract or a word of the trade for it; a word that can be several is asked about.
 * @param text the cell as typed
 * @param word what it stands for by the company's words; else the cell, trimmed
 */
export function readKind(text: string, word: string): CellReading {
  const known = kindWord(word);
  if (known === undefined) return { is: 'wrong', note: unknownKind(text, word) };
  const { kinds, taken, states } = known;
  if (taken === null)
    return { is: 'wrong', note: note(KIND_UNCLEAR, { text: visible(text), kinds }), either: kinds };
  const value = { is: 'value', value: taken, feet: null, note: null } as const;
  if (states !== null) return { ...value, also: states };
  return kinds.length > 1 ? { ...value, mayBe: kinds } : value;
}

function unknownKind(text: string, word: string): ReturnType<typeof wrongCell> {
  const near = nearestKind(word);
  const { expected } = FIELDS.kind;
  return wrongCell('kind', text, {
    because: 'it is no kind, nor a word that is known for one',
    hint:
      near === null
        ? `Write ${expected}; or say ${WHERE} which of them the word stands for.`
        : `The nearest kind is ${near}: write it if that is what is meant, or say ${WHERE} what the word stands for.`,
  });
}

/** Kinds by each single word of the phrases that are known for them. */
const BY_WORD: ReadonlyMap<string, readonly Phrase[]> = byWord();

interface Phrase {
  readonly kind: Kind;
  readonly words: readonly string[];
}

function byWord(): Map<string, Phrase[]> {
  const found = new Map<string, Phrase[]>();
  for (const { taken, words } of KIND_WORDS.values()) {
    if (taken === null) continue;
    for (const word of words) found.set(word, [...(found.get(word) ?? []), { kind: taken, words }]);
  }
  return found;
}

/**
 * The kind that a text comes nearest to: a kind misspelt, else the kind whose words share the most with it. What a phrase ends with
 * says what it is (`pool pump panel` is a panel), so that word counts most.
 */
export function nearestKind(text: string): Kind | null {
  const words = wordsIn(text).map(singular);
  if (words.length === 0 || words.length > MOST_WORDS) return null;
  const slip = nearest(words.join('-'), KINDS);
  const misspelt = KINDS.find((kind) => kind === slip);
  if (misspelt !== undefined) return misspelt;
  let found: Kind | null = null;
  let most = 0;
  for (const [i, word] of words.entries()) {
    for (const phrase of BY_WORD.get(word) ?? []) {
      const shared = phrase.words.filter((w) => words.includes(w)).length;
      const ends = i === words.length - 1 && phrase.words.at(-1) === word ? 1 : 0;
      const score = shared / (phrase.words.length + words.length - shared) + ends;
      if (score > most) [found, most] = [phrase.kind, score];
    }
  }
  return found;
}
