/** Characters of text and markup for which a document is given as much time again: some ten times what they take. */
const MARKUP = 500_000;
/** The same for characters of pictures and fonts, which only pass through. */
const CARRIED = 20_000_000;

/**
 * How long the browser may take for a document before it counts as hung: the more it holds, the longer.
 * @param html the document
 * @param base ms for a document of nothing
 * @returns ms
 */
export function timeLimit(html: string, base: number): number {
  const carried = carriedIn(html);
  return Math.round(base * (1 + (html.length - carried) / MARKUP + carried / CARRIED));
}

/** Characters of a document that stand in `data:` addresses. */
function carriedIn(html: string): number {
  let sum = 0;
  for (let at = html.indexOf(';base64,'); at >= 0;) {
    const end = endOfData(html, at + ';base64,'.length);
    sum += end - at;
    at = html.indexOf(';base64,', end);
  }
  return sum;
}

function endOfData(html: string, from: number): number {
  const after = /[^A-Za-z0-9+/=]/g;
  after.lastIndex = from;
  return after.exec(html)?.index ?? html.length;
}
