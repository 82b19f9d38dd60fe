/** Tags of one run of numbers are told as a span from this many on. */
const SPAN = 4;

interface Numbered {
  readonly stem: string;
  readonly number: number;
}

function numbered(tag: string): Numbered | undefined {
  const found = /^(.*?)(\d{1,9})$/.exec(tag);
  const [, stem, digits] = found ?? [];
  if (stem === undefined || digits === undefined || String(Number(digits)) !== digits) return undefined;
  return { stem, number: Number(digits) };
}

/** True where a tag follows another one in the numbers of one stem. */
function follows(before: string, tag: string): boolean {
  const a = numbered(before);
  const b = numbered(tag);
  return a !== undefined && b !== undefined && a.stem === b.stem && b.number === a.number + 1;
}

/**
 * Tags as papers name them: `P-1, P-2`; from four in a row on as a span, `P-5 to P-30`.
 * @param tags in natural order, each once
 * @param span words of a span, in another language than English
 */
export function tagList(
  tags: readonly string[],
  span = (first: string, last: string): string => `${first} to ${last}`,
): string {
  const runs: string[][] = [];
  for (const tag of tags) {
    const last = runs.at(-1);
    const before = last?.at(-1);
    if (last && before !== undefined && follows(before, tag)) last.push(tag);
    else runs.push([tag]);
  }
  return runs.flatMap((run) => (run.length < SPAN ? run : span(run[0] ?? '', run.at(-1) ?? ''))).join(', ');
}
