import { element, rect } from './svg.js';

/** The colours that conductors come in, as they are drawn; the word is always printed beside the stripe. */
const COLOURS: { readonly [word: string]: string | undefined } = {
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

const OUTLINE = { stroke: '#000', 'stroke-width': 0.9 };

/** Thickness of a conductor, points. */
export const STRIPE = 9;

/** The colours that a text names, one or two of a conductor with a band; none where it names several to choose from, or no colour. */
function coloursNamed(text: string): readonly string[] {
  const words = text
    .toLowerCase()
    .split(/[\s/-]+/)
    .filter((word) => word !== '');
  const known = words.map((word) => COLOURS[word]);
  return words.length <= 2 && known.every((one) => one !== undefined) ? known : [];
}

/**
 * A length of conductor in its colour, outlined so that white shows; one whose colour isn't sure is drawn blank, an outline that is
 * broken. A colour of two words (`green-yellow`) has bands of the second.
 * @param colour word of the settings; ``: not sure, or none
 */
export function conductorStripe(x: number, y: number, width: number, height: number, colour: string): string {
  const [first, second] = coloursNamed(colour);
  if (first === undefined)
    return rect(x, y, width, height, { fill: '#fff', ...OUTLINE, 'stroke-dasharray': '3 2' });
  const base = rect(x, y, width, height, { fill: first, ...OUTLINE });
  if (second === undefined) return base;
  const isLevel = width > height;
  const along = isLevel ? width : height;
  let d = '';
  for (let at = 5; at + 5 < along; at += 11) {
    d += isLevel ? `M${x + at} ${y + height / 2}h5` : `M${x + width / 2} ${y + at}v5`;
  }
  const across = (isLevel ? height : width) - 0.9;
  return base + element('path', { d, stroke: second, 'stroke-width': across });
}
