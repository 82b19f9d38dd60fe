const collator = new Intl.Collator('en', { numeric: true });

/**
 * Compares two tags in natural order: `P-2` before `P-10`; ties by code unit, so that the order is total.
 * @returns negative, zero or positive as `Array.prototype.sort` wants it
 */
export function byNaturalOrder(a: string, b: string): number {
  if (a === b) return 0;
  return plainOrder(a, b) || collator.compare(a, b) || (a < b ? -1 : 1);
}

const ZERO = 48;
const isDigit = (code: number): boolean => code >= ZERO && code <= ZERO + 9;
/** Code of the small letter; 0 for what is no letter of A to Z. */
const letterOf = (code: number): number => {
  const small = code | 32;
  return small >= 97 && small <= 122 ? small : 0;
};

/**
 * The order of two tags that first differ in a number, or in two letters of A to Z: what the collator would say, at a
 * fraction of its cost, since tags are compared a few hundred times a job.
 * @returns 0 where only the collator knows
 */
function plainOrder(a: string, b: string): number {
  const length = Math.min(a.length, b.length);
  let i = 0;
  while (i < length && a.charCodeAt(i) === b.charCodeAt(i)) i += 1;
  const x = i < a.length ? a.charCodeAt(i) : 0;
  const y = i < b.length ? b.charCodeAt(i) : 0;
  const before = i > 0 && isDigit(a.charCodeAt(i - 1));
  if (isDigit(x) || isDigit(y)) {
    if (before || (isDigit(x) && isDigit(y))) return numberOrder(a, b, i);
    if (i < length) return (isDigit(x) ? letterOf(y) : letterOf(x)) === 0 ? 0 : isDigit(x) ? -1 : 1;
  }
  if (i === length) return a.length - b.length;
  const first = letterOf(x);
  const second = letterOf(y);
  return first === 0 || second === 0 ? 0 : first - second;
}

/** The order of the two numbers in whose digits the tags first differ, at `i`; 0 where they are one number. */
function numberOrder(a: string, b: string, i: number): number {
  let start = i;
  while (start > 0 && isDigit(a.charCodeAt(start - 1))) start -= 1;
  const fromA = afterZeros(a, start);
  const fromB = afterZeros(b, start);
  const x = digitsFrom(a, fromA);
  const y = digitsFrom(b, fromB);
  if (x === 0 || y === 0) return 0;
  if (x !== y) return x - y;
  for (let k = 0; k < x; k += 1) {
    const order = a.charCodeAt(fromA + k) - b.charCodeAt(fromB + k);
    if (order !== 0) return order;
  }
  return 0;
}

function afterZeros(text: string, start: number): number {
  let from = start;
  while (text.charCodeAt(from) === ZERO) from += 1;
  return from;
}

/** How many digits a number has from a place on; 0 for none, and for one too long to be a number of a tag. */
function digitsFrom(text: string, from: number): number {
  let to = from;
  while (to < text.length && isDigit(text.charCodeAt(to))) to += 1;
  return to - from > 100 ? 0 : to - from;
}
