import { readFileSync } from 'node:fs';
import { fontFaces, type FontFamily, type FontWeight } from '../../fonts/faces.js';
import { advancesOf, glyphsOf, type Glyphs } from '../../fonts/glyphs.js';

const MILLIMETRES_A_POINT = 25.4 / 72;
/** Wider than all but a few dozen glyphs of any font here, for a character that none of them has. */
const OTHER = 1.15;

interface Face {
  readonly glyphs: Glyphs;
  readonly advance: (glyph: number) => number;
}

const faces = new Map<string, Face>();
const widths = new Map<string, Map<string, number>>();

/** The font files that draw text of a family, in the order in which the browser asks them; each is read once a process. */
function* facesOf(family: FontFamily, weight: FontWeight): Generator<Face> {
  const ofWeight = fontFaces().filter((face) => face.weight === weight);
  for (const wanted of [family, 'DejaVu Sans Condensed']) {
    for (const { path } of ofWeight.filter((face) => face.family === wanted)) {
      let face = faces.get(path);
      if (!face) {
        const bytes = readFileSync(path);
        face = { glyphs: glyphsOf(bytes), advance: advancesOf(bytes) };
        faces.set(path, face);
      }
      yield face;
    }
  }
}

function characterWidth(character: string, weight: FontWeight, family: FontFamily): number {
  const code = character.codePointAt(0) ?? 0;
  for (const face of facesOf(family, weight)) {
    const glyph = face.glyphs.get(code);
    if (glyph !== undefined) return face.advance(glyph);
  }
  return OTHER;
}

/**
 * Width of a line of text by the advances of the fonts themselves, without kerning: drawings are laid out before the
 * browser sees them.
 * @param text one line
 * @param size font size in any unit
 * @returns in the unit of `size`
 */
export function lineWidth(
  text: string,
  size: number,
  weight: FontWeight = 400,
  family: FontFamily = 'Plex',
): number {
  const key = `${family} ${weight}`;
  let known = widths.get(key);
  if (!known) widths.set(key, (known = new Map()));
  let sum = 0;
  for (const character of text) {
    let width = known.get(character);
    if (width === undefined) known.set(character, (width = characterWidth(character, weight, family)));
    sum += width;
  }
  return sum * size;
}

/**
 * Width of a line of text, as {@link lineWidth}.
 * @param text one line
 * @param points font size in points
 * @returns mm
 */
export function textWidth(
  text: string,
  points: number,
  weight: FontWeight = 400,
  family: FontFamily = 'Plex',
): number {
  return lineWidth(text, points, weight, family) * MILLIMETRES_A_POINT;
}
