/** Colours that lights, flags and conductors come in, by their English word in catalogues and settings. */
export const COLOUR_NAMES = [
  'amber',
  'black',
  'blue',
  'brown',
  'gray',
  'green',
  'grey',
  'orange',
  'pink',
  'purple',
  'red',
  'violet',
  'white',
  'yellow',
] as const;
export type ColourName = (typeof COLOUR_NAMES)[number];

/** Words of one language for colours, and what joins two of them. */
export type ColourWords = { readonly [C in ColourName | 'or']: string };

/** Colours of a light or a flag, and those of a wire: a language may have two forms. */
export interface PairOfColours {
  readonly light: ColourWords;
  readonly wire: ColourWords;
}

function isColour(word: string): word is ColourName | 'or' {
  return word === 'or' || COLOUR_NAMES.some((name) => name === word);
}

/**
 * A text of a catalogue or of settings with its colours in the words of another language.
 * @param text such as `green`, `green-yellow`, `white or gray`
 * @param words of the language
 * @returns the text as it is, but for words that are colours
 */
export function coloursIn(text: string, words: ColourWords): string {
  return text.replace(/\p{L}+/gu, (word) => {
    const known = word.toLowerCase();
    return isColour(known) ? words[known] : word;
  });
}

/** The one colour that a text names; undefined where it names none, several, or says more. */
export function colourNamed(text: string): ColourName | undefined {
  const word = text.trim().toLowerCase();
  return COLOUR_NAMES.find((name) => name === word);
}
