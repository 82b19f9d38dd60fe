import type { Fact } from '../../model/fact.js';
import type { JobField, RowField } from '../../model/list.js';
import type { PlannedSettled } from '../../model/plan.js';
import { entryOf, textOf, type Settled } from '../../model/settled.js';
import type { SiteEquipment } from '../../model/site.js';
import { OUTDOORS_BY_DEFAULT } from '../../model/words.js';
import type { JobContext } from '../context/job-context.js';

/** The company's settled defaults that stand in for something on one job, as they are found. */
export interface SettledUses {
  /** Notes rows that a fact stands in for; false where it isn't of a settled default. */
  note(fact: Fact<unknown> | undefined, tags: readonly string[]): boolean;
  /** What was noted, in the order of the settings, the rows in that of the site. */
  readonly list: () => PlannedSettled[];
}

/** Uses of the settled defaults of a job, none of them noted yet. */
export function settledUses({ settings, site }: JobContext): SettledUses {
  const used = new Map<Settled, Set<string>>();
  return {
    note(fact, tags) {
      const entry = entryOf(settings.settled, fact);
      if (!entry) return false;
      const mine = used.get(entry) ?? new Set();
      for (const tag of tags) mine.add(tag);
      used.set(entry, mine);
      return true;
    },
    list: () =>
      settings.settled.flatMap((entry) => {
        const tags = used.get(entry);
        if (!tags) return [];
        const rows = site.equipments.map(({ tag }) => tag).filter((tag) => tags.has(tag));
        const { field, by, date } = entry;
        return [{ field, value: textOf(entry), rows, by, date }];
      }),
  };
}

/** What stands in for a fact of a row that nobody states. */
export function settledAt({ facts, row }: SiteEquipment, field: RowField): Fact<unknown> | undefined {
  return facts[field] ?? row.settled?.[field];
}

/** The defaults of facts of the job; a fact that has none is not known. */
const OF_JOB: { readonly [F in JobField]?: string } = {
  occupancy: 'dwelling',
  earthing: 'TN',
  lightning_protection: 'none',
  surroundings: 'rural',
};

/** The defaults of facts of a row; a fact that isn't here has another for each row. */
const OF_ROW: { readonly [F in RowField]?: unknown } = {
  worth_protecting: true,
  ahead_of_disconnect: false,
  module_technology: 'crystalline',
};

/**
 * Notes each settled value that differs from its default: it is as if the list said so, and may be why no default decides any more.
 * @param uses gets them
 */
export function noteOtherThanDefault(job: JobContext, uses: SettledUses): void {
  const { site, settings } = job;
  if (settings.settled.length === 0) return;
  const { facts } = site.list;
  for (const { field } of settings.settled) {
    const fact = facts[field as JobField];
    const byDefault = field === 'basis' ? settings.basis : OF_JOB[field as JobField];
    if (fact && fact.value !== byDefault) uses.note(fact, []);
  }
  const fields = new Set(settings.settled.map(({ field }) => field as RowField));
  for (const equipment of site.equipments) {
    for (const field of fields) {
      const fact = equipment.facts[field];
      const byDefault = field === 'outdoors' ? OUTDOORS_BY_DEFAULT.has(equipment.kind) : OF_ROW[field];
      if (fact && fact.value !== byDefault) uses.note(fact, [equipment.tag]);
    }
    const { settled } = equipment.row;
    const inputs = equipment.ports.filter(({ cls }) => cls === 'dc-in').length;
    if (settled?.dc_inputs?.value === inputs) uses.note(settled.dc_inputs, [equipment.tag]);
    // Of a transformer its grounding is asked for, whatever hangs on it.
    const out = equipment.ports.find(({ cls }) => cls === 'ac-out');
    if (equipment.kind === 'transformer' && out) uses.note(job.groundingAt(out).from, [equipment.tag]);
  }
}
