import { hundredthsOr } from '../model/rounding.js';
import type { RecordEntry, RecordOrigin, SiteRecord } from '../model/record.js';
import type { HousingRow } from '../model/site-form-rows.js';

type Housing = SiteRecord['housings'][number];

/** A row of a record as it was read, with where it stood. */
export interface RowOfHousing {
  readonly tag: string;
  readonly row: HousingRow;
  readonly photos: RecordEntry['photos'];
  readonly origin: RecordOrigin;
}

/** Blanks at the ends, their number within and capitals don't count. */
export const sameText = (a: string, b: string): boolean => folded(a) === folded(b);
const folded = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();

/**
 * Whether a crew filled in a row: what the form came with doesn't count.
 * @param placePlanned as the form had it
 */
export function isFilledIn(row: HousingRow, placePlanned: string): boolean {
  const { place, serials, serialRemoved, photos, device, ...rest } = row;
  const texts = [...serialRemoved, ...photos, device.fitted, device.position];
  return (
    serials.length > 0 ||
    (texts.length > 0 && texts.some((text) => text !== '')) ||
    device.volts !== null ||
    device.interrupting !== null ||
    Object.values(rest).some((value) => value !== null && value !== '') ||
    (place !== '' && !sameText(place, placePlanned))
  );
}

/** An entry of a row. */
export function entryOf({ row, photos, origin }: RowOfHousing): RecordEntry {
  const { serials, serialRemoved, device, ...rest } = row;
  return {
    ...rest,
    // As the file holds them: read back they are the same.
    leadLength: hundredthsOr(rest.leadLength),
    faultCurrent: hundredthsOr(rest.faultCurrent),
    serials: serials.map((one) => ({ ...one })),
    serialRemoved: [...serialRemoved],
    device: {
      ...device,
      volts: hundredthsOr(device.volts),
      interrupting: hundredthsOr(device.interrupting),
    },
    photos: [...photos],
    origin,
  };
}

/** When an entry was made; one without a date counts as the earliest. */
const momentOf = ({ date, time }: RecordEntry): string => `${date} ${time}`;

/** Its content in one order of keys, without where it stood. */
function contentOf(entry: RecordEntry): string {
  const { serials, device, photos } = entry;
  return JSON.stringify([
    ...Object.entries(entry)
      .filter(([key]) => !['origin', 'serials', 'device', 'photos'].includes(key))
      .sort(([a], [b]) => (a < b ? -1 : 1)),
    serials.map(({ serial, dateCode }) => [serial, dateCode]),
    [device.fitted, device.volts, device.interrupting, device.position],
    photos.map(({ file, sha256 }) => [file, sha256]),
  ]);
}

/** What hangs there after an entry, where the entry doesn't say: a housing that was moved keeps its protector. */
function completed(entry: RecordEntry, before: RecordEntry | undefined, partPlanned: string): RecordEntry {
  const { outcome } = entry;
  const isThere = outcome !== null && outcome !== 'not fitted' && outcome !== 'removed';
  const keeps = outcome === 'moved' && before !== undefined;
  const part = keeps && before.partFitted !== '' ? before.partFitted : partPlanned;
  return {
    ...entry,
    partFitted: entry.partFitted === '' && isThere ? part : entry.partFitted,
    serials: entry.serials.length === 0 && keeps ? before.serials : entry.serials,
  };
}

/**
 * The entries of a housing with further ones: in the order of their days and times, of one moment that read last behind. One that is there
 * already changes nothing.
 * @returns `current` is the last
 */
export function withEntries(
  { partPlanned, entries }: Pick<Housing, 'partPlanned' | 'entries'>,
  more: readonly RecordEntry[],
): Pick<Housing, 'entries' | 'current'> {
  let all = entries;
  for (const entry of more) {
    const next = [...all, entry].sort((a, b) => {
      const [x, y] = [momentOf(a), momentOf(b)];
      return x < y ? -1 : x > y ? 1 : 0;
    });
    const at = next.indexOf(entry);
    const whole = completed(entry, next[at - 1], partPlanned);
    if (all.some((known) => contentOf(known) === contentOf(whole))) continue;
    all = next.map((one) => (one === entry ? whole : one));
  }
  return { entries: all, current: all.length - 1 };
}

/** True where another entry of the moment of the one that counts says something else, or of no moment at all. */
export function isContested({ entries, current }: Pick<Housing, 'entries' | 'current'>): boolean {
  const counts = entries[current];
  return (
    counts !== undefined &&
    entries.some((one) => one !== counts && (one.date === '' || momentOf(one) === momentOf(counts)))
  );
}
