/** How papers name a default that the company settled: whoever reads them can ask who did, and when. */
export function settledBy({ by, date }: { readonly by: string; readonly date: string }): string {
  return `assumed, settled by ${by} on ${date}`;
}
