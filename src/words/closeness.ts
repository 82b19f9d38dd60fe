/**
 * Edit distance of two short texts (insert, delete, replace, swap of neighbours), given up beyond `most`.
 * @returns the distance, or `most + 1` where it is more
 */
export function editDistance(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, (before[j - 2] ?? 0) + 1);
      row.push(cost);
      least = Math.min(least, cost);
    }
    if (least > most) return most + 1;
    before = last;
    last = row;
  }
  return Math.min(last[b.length] ?? 0, most + 1);
}

/**
 * The word of a list that is nearest to a text, where one is near enough to be a slip of the hand.
 * @param text as typed, lower case
 * @param words lower case
 * @returns the nearest word, or null; at most one slip in four characters, at most three
 */
export function nearest(text: string, words: Iterable<string>): string | null {
  if (text.length > 60) return null;
  let most = Math.min(3, Math.ceil(text.length / 4));
  let found: string | null = null;
  for (const word of words) {
    const distance = editDistance(text, word, most);
    if (distance <= most && (found === null || distance < most)) {
      found = word;
      most = distance;
      if (distance === 0) break;
    }
  }
  return found;
}
