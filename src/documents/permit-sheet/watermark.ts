/** Letters of one stroke in a box 4 wide and 6 high, as paths by `M` and `L`. */
const LETTERS: { readonly [letter: string]: string } = {
  A: 'M0 6L2 0L4 6M0.8 4L3.2 4',
  D: 'M0 0L0 6L2.4 6L4 4.6L4 1.4L2.4 0Z',
  E: 'M4 0L0 0L0 6L4 6M0 3L3.2 3',
  F: 'M4 0L0 0L0 6M0 3L3.2 3',
  I: 'M2 0L2 6',
  M: 'M0 6L0 0L2 3.4L4 0L4 6',
  N: 'M0 6L0 0L4 6L4 0',
  O: 'M1 0L3 0L4 1L4 5L3 6L1 6L0 5L0 1Z',
  P: 'M0 6L0 0L3 0L4 0.8L4 2.6L3 3.4L0 3.4',
  R: 'M0 6L0 0L3 0L4 0.8L4 2.6L3 3.4L0 3.4M2.2 3.4L4 6',
  T: 'M0 0L4 0M2 0L2 6',
  ',': 'M1 5.4L1 6L0.4 7',
};
const ADVANCE = 5.2;

/**
 * A mark over the whole sheet, drawn and not set: it lies behind what is read, and no search or reader meets it there.
 * @param text of the letters above
 * @param x and `y` of its upper left corner, and the height of a letter, in the unit of the drawing
 * @returns path data
 */
function strokes(text: string, x: number, y: number, height: number): string {
  const scale = height / 6;
  return Array.from(text, (letter, index) =>
    (LETTERS[letter] ?? '').replace(
      /([ML])([\d.]+) ([\d.]+)/g,
      (_, move: string, dx: string, dy: string) =>
        `${move}${((Number(dx) + index * ADVANCE) * scale + x).toFixed(2)} ${(Number(dy) * scale + y).toFixed(2)}`,
    ),
  ).join('');
}

/** DRAFT, NOT FOR PERMIT. */
export function watermark(): string {
  return strokes('DRAFT, NOT FOR PERMIT', 3, 3, 6);
}
