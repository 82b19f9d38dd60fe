import { rect } from './svg.js';

/** The colours that conductors come in, as they are drawn; the word is always printed beside the stripe. */
const COLOURS: { readonly [word: string]: string } = {
  black: '#1a1a1a',
  red: '#c62828',
  blue: '#1f5fbf',
  white: '#ffffff',
  green: '#2e7d32',
  yellow: '#f2c500',
  orange: '#e07800',
  brown: '#7a4a21',
  grey: '#8c8c8c',
  gray: '#8c8c8c',
  purple: '#6a1b9a',
  violet: '#6a1b9a',
  pink: '#e58fb1',
};

const OUTLINE = { stroke: '#000', 'stroke-width': 0.8 };

/**
 * A length of conductor in its colour, outlined so that white shows. A colour of two words (`green-yellow`) is drawn with
 * bands of the second; a word that isn't known is drawn as an empty outline, and the label says its word.
 */
export function conductorStripe(x: number, y: number, width: number, colour: string): string {
  const [first = '', second] = colour.toLowerCase().split(/[\s/-]+/);
  const height = 5;
  const top = y - height / 2;
  const base = rect(x, top, width, height, { fill: COLOURS[first] ?? '#ffffff', ...OUTLINE });
  const band = second === undefined ? undefined : COLOURS[second];
  if (band === undefined) return base;
  const bands: string[] = [];
  for (let at = x + 6; at + 6 < x + width; at += 14)
    bands.push(rect(at, top + 0.4, 6, height - 0.8, { fill: band }));
  return base + bands.join('');
}
