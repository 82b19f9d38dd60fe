// Pieces of text put together again to the lines that they were printed as.

/** In type sizes: how far apart two pieces of one line may stand before a blank is read between them. */
const BLANK = 0.15;

/** True where `next` goes on behind `last`, up and down by no more than a sub- or superscript. */
function goesOn(last, next) {
  if (last.angle !== next.angle) return false;
  const turn = (last.angle * Math.PI) / 180;
  const [dx, dy] = [next.origin.x - last.origin.x, next.origin.y - last.origin.y];
  const along = dx * Math.cos(turn) - dy * Math.sin(turn);
  const across = dx * Math.sin(turn) + dy * Math.cos(turn);
  const size = Math.max(last.size, next.size);
  return Math.abs(across) < 0.6 * size && along > last.along - 0.5 * size && { gap: along - last.along };
}

/**
 * The lines of each group of texts (one piece of the document's source), in the order in which they are read.
 * @param {readonly import('./page.d.mts').Text[]} texts of a page
 * @returns {string[][]} a group its lines, blanks as one
 */
export function linesOf(texts) {
  const groups = new Map();
  for (const text of texts) {
    // Running heads share no source: each piece is one of its own.
    const key = text.group === 0 ? text : text.group;
    const lines = groups.get(key) ?? [];
    groups.set(key, lines);
    const line = lines.at(-1);
    const on = line && goesOn(line.last, text);
    if (on) {
      line.text += (on.gap > BLANK * text.size ? ' ' : '') + text.text;
      line.last = text;
    } else lines.push({ text: text.text, last: text });
  }
  return [...groups.values()].map((lines) => lines.map(({ text }) => text.replace(/\s+/gu, ' ').trim()));
}
