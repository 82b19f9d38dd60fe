/** What a record says of one housing on one day, as far as the register asks. */
export interface HousingEntry {
  /** Null: not recorded, so that something may hang there. */
  readonly outcome: 'fitted' | 'moved' | 'not fitted' | 'kept' | 'replaced' | 'removed' | null;
  /** None: not recorded. */
  readonly serials: readonly { readonly serial: string; readonly dateCode: string }[];
  /** Of what was taken away; none: not recorded. */
  readonly serialRemoved: readonly string[];
  readonly reason: string;
  /** `YYYY-MM-DD`; `` not recorded. */
  readonly date: string;
}

/** The time that one protector hangs in a housing: from the day that it is fitted until it is replaced or removed. */
export interface Term<E extends HousingEntry> {
  /** The entry that counts: the last one about this protector. */
  readonly entry: E;
  /** `YYYY-MM-DD` of the day it was fitted; `` not recorded. */
  readonly from: string;
  /** How it ended; undefined: it hangs still. */
  readonly end?: TermEnd | undefined;
}

/** How the time of a protector ended. */
export interface TermEnd {
  readonly date: string;
  /** Serials of what hangs there instead; none where it was removed. */
  readonly by: readonly string[];
  readonly reason: string;
}

/**
 * The protectors that hang, and hung, in one housing, told from the entries of its record: an entry that replaces or removes ends the
 * time of what hung before, any other corrects what is known of it.
 * @param entries in the order in which they count, the last one last
 * @returns first to last; the last one hangs there where it has no end
 */
export function termsOf<E extends HousingEntry>(entries: readonly E[]): readonly Term<E>[] {
  const terms: Term<E>[] = [];
  for (const entry of entries) {
    const last = terms.at(-1);
    if (entry.outcome === 'removed') {
      const end: TermEnd = { date: entry.date, by: [], reason: entry.reason };
      // The same removal once more, or what a record of the removal alone tells.
      if (last === undefined) terms.push(removedOnly(entry, end));
      else terms.splice(-1, 1, { ...last, end });
    } else if (entry.outcome === 'replaced') {
      replace(terms, entry);
    } else if (last === undefined || last.end !== undefined) {
      if (entry.outcome !== 'not fitted') terms.push({ entry, from: entry.date });
    } else if (entry.outcome === 'not fitted') {
      terms.pop();
    } else {
      terms.splice(-1, 1, corrected(last, entry));
    }
  }
  return terms;
}

function replace<E extends HousingEntry>(terms: Term<E>[], entry: E): void {
  const end: TermEnd = {
    date: entry.date,
    by: entry.serials.map(({ serial }) => serial).filter((serial) => serial !== ''),
    reason: entry.reason,
  };
  const last = terms.at(-1);
  // What it took away went before: the same replacement, recorded once more.
  const again =
    last?.entry.outcome === 'replaced' && last.end === undefined && sameRemoved(last.entry, entry);
  const before = again ? terms.at(-2) : last;
  if (again) terms.pop();
  if (before === undefined || (before.end !== undefined && !again)) {
    if (entry.serialRemoved.length > 0) terms.push(removedOnly(entry, end));
  } else terms.splice(-1, 1, { ...before, end });
  terms.push({ entry, from: entry.date });
}

/** Of a protector that no record tells of but that of its end. */
function removedOnly<E extends HousingEntry>(entry: E, end: TermEnd): Term<E> {
  const serials = entry.serialRemoved.map((serial) => ({ serial, dateCode: '' }));
  return { entry: { ...entry, serials, outcome: 'removed' }, from: '', end };
}

const sameRemoved = (a: HousingEntry, b: HousingEntry): boolean =>
  a.serialRemoved.length > 0 && a.serialRemoved.join('\n') === b.serialRemoved.join('\n');

/** One that was moved hangs since it was fitted, and keeps its serials where nobody wrote them again. */
function corrected<E extends HousingEntry>(last: Term<E>, entry: E): Term<E> {
  if (entry.outcome !== 'moved') return { entry, from: entry.date };
  const serials = entry.serials.length > 0 ? entry.serials : last.entry.serials;
  return { entry: { ...entry, serials }, from: last.from === '' ? entry.date : last.from };
}
