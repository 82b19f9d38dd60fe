import { z } from 'zod';
import { FIELD_GUIDE } from '../model/field-guide.js';
import { byLead } from '../model/item-order.js';
import type { JobItem } from '../model/open-item.js';
import { WHOS, type Who } from '../model/words.js';
import { counted, printable } from '../screen/text-table.js';
import { told } from '../words/messages/told.js';
import { placeText } from '../words/origin.js';
import { sharedFact, type SharedFact } from '../words/shared-fact.js';
import { tagList } from '../words/tag-list.js';

const factsSchema = z.array(
  z.object({
    severity: z.string(),
    says: z.string(),
    code: z.string(),
    hint: z.string(),
    /** The field that it is about in plain words: `run_length: length of the run`; `` for none. */
    field: z.string(),
    /** The one place where it shows, with the job; `` where it shows at several. */
    place: z.string(),
    /** `` where it shows at one place. */
    among: z.string(),
    jobs: z.array(z.object({ job: z.string(), about: z.string(), place: z.string() })),
  }),
);
type Fact = z.infer<typeof factsSchema>[number];

/** Open items by who can supply them: each fact once, with the jobs that share it. */
export const factGroupsSchema = z.array(
  z.object({
    who: z.string(),
    /** What keeps a pack a draft. */
    blocking: factsSchema,
    confirm: factsSchema,
    /** `23 facts to confirm, 145 places`. */
    confirmSummary: z.string(),
  }),
);
type FactGroups = z.infer<typeof factGroupsSchema>;

/** One open item, and the fact that it tells. */
interface Telling extends JobItem {
  readonly shared: SharedFact;
}

/**
 * The open items of a batch by who can supply them, what leads first.
 * @param items of all jobs
 */
export function factGroups(items: readonly JobItem[]): FactGroups {
  const of = new Map<Who, Telling[]>();
  for (const { job, item } of items) {
    const own = of.get(item.who) ?? [];
    own.push({ job, item, shared: sharedFact(item) });
    of.set(item.who, own);
  }
  return WHOS.flatMap((who) => {
    const own = of.get(who);
    if (!own) return [];
    const blocking = own.filter(({ item }) => item.severity !== 'confirm');
    const confirm = own.filter(({ item }) => item.severity === 'confirm');
    const facts = factsOf(confirm);
    const confirmSummary = `${counted(facts.length, 'fact')} to confirm, ${counted(confirm.length, 'place')}`;
    return [{ who, blocking: factsOf(blocking), confirm: facts, confirmSummary }];
  });
}

function factsOf(all: readonly Telling[]): Fact[] {
  const facts = new Map<string, [Telling, ...Telling[]]>();
  for (const one of all) {
    const known = facts.get(one.shared.key);
    if (known) known.push(one);
    else facts.set(one.shared.key, [one]);
  }
  return [...facts.values()].sort(([a], [b]) => byLead(a.item, b.item)).map(fact);
}

const MEANS = new Map(Object.entries(FIELD_GUIDE).map(([field, { means }]) => [field, means]));

function fieldText(column: string): string {
  const means = MEANS.get(column);
  return means === undefined ? '' : `${column}: ${means}`;
}

/** A fact; one that shows at a single place in the words of its own message. */
function fact(tellings: readonly [Telling, ...Telling[]]): Fact {
  const [{ job, item, shared }] = tellings;
  const { message, hint } = told(item);
  const base = { severity: item.severity, code: item.code, hint, field: fieldText(item.column) };
  if (tellings.length === 1) {
    const place = [job, printable(placeText(item))].filter((part) => part !== '').join(': ');
    return { ...base, says: message, place, among: '', jobs: [] };
  }
  const jobs = new Set(tellings.map((one) => one.job)).size;
  const places = tellings.length === jobs ? '' : `, ${String(tellings.length)} places`;
  return {
    ...base,
    says: shared.says,
    place: '',
    among: `${counted(jobs, 'job')}${places}`,
    jobs: tellings.map((one) => ({
      job: one.job,
      about: tagList(one.shared.about),
      place: printable(placeText(one.item)),
    })),
  };
}
