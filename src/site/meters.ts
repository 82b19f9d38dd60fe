import type { JobList, ListRow } from '../model/list.js';
import { about } from '../model/message.js';
import { KIND_UNCLEAR } from '../model/messages/list.js';
import type { PlacedNote } from '../model/open-item.js';
import { visible } from '../words/visible.js';

/**
 * Meters with nothing ahead of them: each may be the service itself, or a meter of what the list doesn't show.
 * @param list the rows of one job
 */
export function metersInDoubt(list: JobList): PlacedNote[] {
  const meters = list.rows.filter((row) => row.mayBe?.includes('service') === true && hasNothingAhead(row));
  if (meters.length === 0) return [];
  const services = list.rows.filter((row) => row.facts.kind?.value === 'service');
  return meters.flatMap((row) => {
    const { tag, kind } = row.facts;
    if (tag === undefined || kind === undefined || row.mayBe === undefined) return [];
    if (services.some((service) => names(service, tag.value))) return [];
    return [about(KIND_UNCLEAR, { text: visible(kind.text), kinds: row.mayBe }, tag.value, 'kind')];
  });
}

/** What can't be read is asked for already. */
function hasNothingAhead(row: ListRow): boolean {
  return row.facts.connects_to === undefined && !row.unreadable.has('connects_to');
}

function names(row: ListRow, tag: string): boolean {
  const to = row.facts.connects_to?.value;
  return (
    to !== undefined && (to.whole === tag || to.each.some((one) => one.whole === tag || one.tag === tag))
  );
}
