// Text that is printed over other text.

/** Points that two boxes may share before letters touch: 0.4 mm. */
const HAIR = (0.4 / 25.4) * 72;
/** A mark over a whole sheet, such as that of a draft, is meant to lie over what is there: 30 points and more, or aslant. */
const OVER_ALL = 30;

const isMark = ({ size, angle }) => size >= OVER_ALL || angle % 90 !== 0;

/**
 * Pairs of texts of a page whose letters lie over each other.
 * @param {readonly import('./page.d.mts').Text[]} texts
 * @returns {[string, string][]}
 */
export function overlapsOf(texts) {
  const sorted = texts.filter((text) => !isMark(text)).sort((one, other) => one.top - other.top);
  const found = [];
  for (const [at, one] of sorted.entries())
    for (let next = at + 1; next < sorted.length; next += 1) {
      const other = sorted[next];
      if (other.top > one.bottom) break;
      const down = Math.min(one.bottom, other.bottom) - other.top;
      const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      // The same text at the same place is one that is painted twice: outline and letters.
      const isTwice =
        one.text === other.text && Math.abs(one.left - other.left) < 0.1 && one.top === other.top;
      if (down > HAIR && across > HAIR && !isTwice) found.push([one.text, other.text]);
    }
  return found;
}
