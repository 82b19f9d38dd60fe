/**
 * Advance widths of DejaVu Sans in thousandths of the font size, read from the `hmtx` table of dejavu-fonts-ttf 2.37.3:
 * U+0020 to U+007E, then U+00A0 to U+00FF; the apostrophe, U+2019, apart. Drawings are laid out before the browser sees them, so they must know.
 */
const REGULAR = [
  318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636,
  636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295,
  295, 656, 557, 863, 748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838,
  500, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521,
  392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838, 318, 401, 636, 636, 636, 636, 337, 500, 500, 1000,
  471, 612, 838, 361, 1000, 500, 500, 838, 401, 401, 500, 636, 636, 318, 500, 401, 471, 612, 969, 969, 969,
  531, 684, 684, 684, 684, 684, 684, 974, 698, 632, 632, 632, 632, 295, 295, 295, 295, 775, 748, 787, 787,
  787, 787, 787, 838, 787, 732, 732, 732, 732, 611, 605, 630, 613, 613, 613, 613, 613, 613, 982, 550, 615,
  615, 615, 615, 278, 278, 278, 278, 612, 634, 612, 612, 612, 612, 612, 838, 612, 634, 634, 634, 634, 592,
  635, 592,
];
const BOLD = [
  348, 456, 521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415, 380, 365, 696, 696, 696, 696, 696,
  696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 580, 1000, 774, 762, 734, 830, 683, 683, 821, 837, 372,
  372, 775, 637, 995, 837, 850, 733, 850, 770, 720, 682, 812, 774, 1103, 771, 724, 725, 457, 365, 457, 838,
  500, 500, 675, 716, 593, 716, 678, 435, 716, 712, 343, 343, 665, 343, 1042, 712, 687, 716, 716, 493, 595,
  478, 712, 652, 924, 645, 652, 582, 712, 365, 712, 838, 348, 456, 696, 696, 636, 696, 365, 500, 500, 1000,
  564, 646, 838, 415, 1000, 500, 500, 838, 438, 438, 500, 736, 636, 380, 500, 438, 564, 646, 1035, 1035, 1035,
  580, 774, 774, 774, 774, 774, 774, 1085, 734, 683, 683, 683, 683, 372, 372, 372, 372, 838, 837, 850, 850,
  850, 850, 850, 838, 850, 812, 812, 812, 812, 724, 738, 719, 675, 675, 675, 675, 675, 675, 1048, 593, 678,
  678, 678, 678, 343, 343, 343, 343, 687, 712, 687, 687, 687, 687, 687, 838, 687, 712, 712, 712, 712, 652,
  716, 652,
];

const ASCII_COUNT = 0x7f - 0x20;
const APOSTROPHE = { regular: 318, bold: 380 };
/** Wider than all but a few dozen of the font's other glyphs. */
const OTHER = 1150;
/** DejaVu Sans Condensed is 90 % of the width of DejaVu Sans, glyph by glyph. */
const CONDENSED = 0.9;

function glyphWidth(codePoint: number, table: readonly number[]): number {
  if (codePoint >= 0x20 && codePoint <= 0x7e) return table[codePoint - 0x20] ?? OTHER;
  if (codePoint === 0x2019) return table === BOLD ? APOSTROPHE.bold : APOSTROPHE.regular;
  if (codePoint >= 0xa0 && codePoint <= 0xff) return table[codePoint - 0xa0 + ASCII_COUNT] ?? OTHER;
  return OTHER;
}

/**
 * Width of a line of text in DejaVu Sans Condensed.
 * @param text one line
 * @param size font size; the result has its unit
 * @param bold true for the bold face
 */
export function textWidth(text: string, size: number, bold = false): number {
  const table = bold ? BOLD : REGULAR;
  let sum = 0;
  for (const character of text) sum += glyphWidth(character.codePointAt(0) ?? 0, table);
  return (sum / 1000) * size * CONDENSED;
}

/** Puts the pieces of a word that is wider than a line on lines of their own. */
function broken(word: string, width: number, size: number, bold: boolean): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && textWidth(piece + character, size, bold) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return [...pieces, piece];
}

/**
 * Text on lines no wider than `width`: broken at blanks, and inside a word only where the word alone is wider.
 * @param text any text without line breaks
 * @param width of a line, in the unit of `size`
 * @param before stands in front of the first line, which leaves room for it
 */
export function wrapped(text: string, width: number, size: number, bold = false, before = ''): string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    const longer = current === '' ? word : `${current} ${word}`;
    const led = lines.length === 0 ? `${before}${longer}` : longer;
    if (textWidth(led, size, bold) <= width) {
      current = longer;
      continue;
    }
    if (current !== '' || (lines.length === 0 && before !== '')) lines.push(current);
    const pieces = textWidth(word, size, bold) <= width ? [word] : broken(word, width, size, bold);
    lines.push(...pieces.slice(0, -1));
    current = pieces.at(-1) ?? '';
  }
  return current === '' ? lines : [...lines, current];
}
