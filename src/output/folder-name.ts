import { createHash } from 'node:crypto';

/** Characters of an id that the name keeps at most. */
const LONGEST = 60;

/** Names that stand for devices on some systems, alone or before a dot. */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;

/** Files that a batch writes beside the job folders. */
const BATCH_FILES = new Set([
  'order-list.csv',
  'open-items.csv',
  'missing-models.csv',
  'report.html',
  'report.csv',
  'register.csv',
  'checks-due.csv',
  'checks-due.ics',
]);

/**
 * The folder names of a batch: an id with every character but `A-Z a-z 0-9 . _ -` made `-`, no leading dot or hyphen (a
 * command would take the name for an option), at most 60 characters, `job` where nothing is left; with `-` and 8 hex digits of its SHA-256 where that changed it, where it is a reserved name, or where
 * two ids differ in case only. No name can lead out of the folder that holds it.
 * @param ids all ids of the batch, since one can force a longer name on another
 * @returns the name of each id; no two names are equal, whatever the case of their letters
 */
export function folderNames(ids: Iterable<string>): ReadonlyMap<string, string> {
  const all = [...new Set(ids)];
  const lengthened = new Set<string>();
  for (;;) {
    const holders = new Map<string, string[]>();
    for (const id of all) {
      const key = folderName(id, lengthened.has(id)).toLowerCase();
      holders.set(key, [...(holders.get(key) ?? []), id]);
    }
    // An id may be typed as the lengthened name of another: lengthened in its turn, until all differ.
    const sharing = [...holders.values()].filter((h) => h.length > 1).flat();
    const more = sharing.filter((id) => !lengthened.has(id));
    if (more.length === 0) return new Map(all.map((id) => [id, folderName(id, lengthened.has(id))]));
    for (const id of more) lengthened.add(id);
  }
}

function folderName(id: string, lengthened: boolean): string {
  const kept = Array.from(id, (c) => (/[A-Za-z0-9._-]/.test(c) ? c : '-'))
    .join('')
    .replace(/^[.-]+/, '')
    .slice(0, LONGEST);
  // A trailing dot is dropped by some systems, so it would be another job's folder there.
  const reserved =
    kept === '' || kept.endsWith('.') || DEVICE.test(kept) || BATCH_FILES.has(kept.toLowerCase());
  if (kept === id && !reserved && !lengthened) return kept;
  return `${kept === '' ? 'job' : kept}-${createHash('sha256').update(id, 'utf8').digest('hex').slice(0, 8)}`;
}
