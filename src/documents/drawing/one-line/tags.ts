import { byNaturalOrder } from '../../../model/natural-order.js';

interface Numbered {
  readonly text: string;
  readonly stem: string;
  readonly number: number;
}

function numbered(text: string): Numbered {
  const digits = /(?<![\d.])(?:0|[1-9]\d{0,8})$/.exec(text)?.[0] ?? '';
  return {
    text,
    stem: text.slice(0, text.length - digits.length),
    number: digits === '' ? NaN : Number(digits),
  };
}

/** Ranges that are named; the schedule names all. */
const MOST_RANGES = 16;

/**
 * Tags in few words, in natural order: `P-5 to P-30`, `P-1, P-2`, `ARR-E, ARR-W`.
 * @param tags in any order; one that comes twice is named once
 */
export function tagsInShort(tags: readonly string[]): string {
  const sorted = [...new Set(tags)].sort(byNaturalOrder).map(numbered);
  const ranges: Numbered[][] = [];
  for (const tag of sorted) {
    const last = ranges.at(-1)?.at(-1);
    if (last?.stem === tag.stem && tag.number === last.number + 1) ranges.at(-1)?.push(tag);
    else ranges.push([tag]);
  }
  const named = ranges.length > MOST_RANGES ? ranges.slice(0, MOST_RANGES - 1) : ranges;
  const others = ranges.slice(named.length).reduce((sum, range) => sum + range.length, 0);
  const told = named
    .flatMap((range) => {
      const [first, last] = [range[0], range.at(-1)];
      if (range.length < 3 || !first || !last) return range.map(({ text }) => text);
      return [`${first.text} to ${last.text}`];
    })
    .join(', ');
  return others === 0 ? told : `${told} and ${others} more`;
}
