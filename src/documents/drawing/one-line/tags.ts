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
  return ranges
    .flatMap((range) => {
      const [first, last] = [range[0], range.at(-1)];
      if (range.length < 3 || !first || !last) return range.map(({ text }) => text);
      return [`${first.text} to ${last.text}`];
    })
    .join(', ');
}
