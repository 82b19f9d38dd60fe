/** The tags that a drawing names in short: `P-5 to P-7, P-9`. */
export function tagsOf(text: string): string[] {
  return text.split(', ').flatMap((one) => {
    const [, stem, first, last] = /^(.*?)(\d+) to .*?(\d+)$/.exec(one) ?? [];
    if (stem === undefined || first === undefined || last === undefined) return [one];
    return Array.from(
      { length: Number(last) - Number(first) + 1 },
      (_, i) => `${stem}${String(Number(first) + i)}`,
    );
  });
}
