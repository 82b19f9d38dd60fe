import { RECORD_MESSAGES } from '../model/messages/record.js';
import { inOrder } from '../model/item-order.js';
import type { OpenItem } from '../model/open-item.js';
import type { SiteRecord } from '../model/record.js';
import { itemOf } from '../record/items.js';

/** Where a serial hangs. */
export interface SerialAt {
  readonly job: string;
  readonly protector: string;
}

/** Serials that hang at jobs, by maker, part and serial. */
export type SerialsThere = Map<string, SerialAt[]>;

type Housing = SiteRecord['housings'][number];
type Hanging = { readonly serial: string; readonly part: string; readonly key: string };

/** The serials that hang at a housing now. */
function hangingAt({ entries, current, maker, partPlanned }: Housing): Hanging[] {
  const entry = entries[current];
  if (!entry || entry.outcome === 'removed' || entry.outcome === 'not fitted') return [];
  const part = entry.partFitted === '' ? partPlanned : entry.partFitted;
  return entry.serials
    .filter(({ serial }) => serial !== '' && serial !== 'none')
    .map(({ serial }) => ({ serial, part, key: JSON.stringify([maker, part, serial]).toLowerCase() }));
}

/** Adds what hangs at a job. */
export function addSerials(to: SerialsThere, { job, housings }: Pick<SiteRecord, 'job' | 'housings'>): void {
  for (const housing of housings)
    for (const { key } of hangingAt(housing)) {
      const known = to.get(key);
      const at = { job, protector: housing.tag };
      if (known) known.push(at);
      else to.set(key, [at]);
    }
}

/**
 * The serials of a job that stand twice.
 * @param there what hangs at all jobs, this one among them
 */
export function serialItems(record: SiteRecord, there: SerialsThere): OpenItem[] {
  return record.housings.flatMap((housing) => {
    const origin = housing.entries[housing.current]?.origin ?? { file: '', line: 0 };
    const told = new Set<string>();
    return hangingAt(housing).flatMap(({ serial, part, key }) => {
      const places = there.get(key) ?? [];
      if (places.length < 2 || told.has(key)) return [];
      told.add(key);
      const p = { serial, part, maker: housing.maker, places };
      return [itemOf(RECORD_MESSAGES.serialTwice, p, origin, 'serial', housing.tag)];
    });
  });
}

/** A record with those items among its own, its state with them. */
export function withSerialItems(record: SiteRecord, found: readonly OpenItem[]): SiteRecord {
  const others = record.items.filter(({ code }) => code !== RECORD_MESSAGES.serialTwice.code);
  const items = inOrder([...others, ...found]) as SiteRecord['items'];
  const isOpen = items.some(({ severity }) => severity !== 'confirm');
  if (isOpen) return { ...record, items, state: 'record open' };
  return { ...record, items };
}
