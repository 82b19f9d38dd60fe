import type { Signed } from '../model/fact.js';

/** How papers name what somebody accepted of what was to be confirmed. */
export function acceptedBy({ by, date }: Signed): string {
  return `accepted by ${by === '' ? 'someone who isn’t named' : by}${date === '' ? '' : ` on ${date}`}`;
}

/** How papers name a default that the company settled: whoever reads them can ask who did, and when. */
export function settledBy({ by, date }: { readonly by: string; readonly date: string }): string {
  return `assumed, settled by ${by} on ${date}`;
}
