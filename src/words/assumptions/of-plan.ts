import { isNec } from '../../model/editions.js';
import type { Plan, PlanItem } from '../../model/plan.js';
import { acceptedBy, settledBy } from '../settled.js';
import { DECIDES, type AssumedFact, type Assumption } from './assumption-kit.js';
import { tagsAt } from './at-ports.js';
import { settledAssumed } from './defaults.js';
import { assumptionOf } from './told.js';

/** An assumption as papers number it, with the tags that it names. */
export interface PlanAssumption {
  /** `A1`. */
  readonly number: string;
  readonly assumption: Assumption;
  /** Of equipment, or of protectors where it is about what is fitted there; none: the site. */
  readonly tags: readonly string[];
  /** What each tag was taken for, by tag, as far as that is a fact of the list; `` for the site. */
  readonly facts: ReadonlyMap<string, AssumedFact>;
  /** True where papers ask to verify it: nobody settled or accepted it. */
  readonly isOpen: boolean;
  /** How it ends on paper: `Verify`, or who settled or accepted it. */
  readonly end: string;
  /** What it stems from: the code of an item, of a default with its field. */
  readonly stems: ReadonlySet<string>;
}

/** What a default is told by, be it open or settled: its field decides. */
export const ofDefault = (field: string): string => `default/used ${field}`;

/** The grounding of the wires of a control circuit, which is another matter than that of arrays and batteries. */
export const OF_CONTROL = 'default/used in a control circuit';

function isOfControl({ values }: PlanItem): boolean {
  const why = 'why' in values ? (values.why as { readonly code?: string } | null) : null;
  return why?.code === 'default-decides/recorded-lights';
}

const VERIFY = 'Verify';
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function stemOf(item: PlanItem): string {
  const field = 'field' in item.values && typeof item.values.field === 'string' ? item.values.field : '';
  if (item.code !== 'default/used') return item.code;
  return isOfControl(item) ? OF_CONTROL : ofDefault(field);
}

interface Gathered {
  readonly assumption: Assumption;
  readonly tags: string[];
  readonly facts: Map<string, AssumedFact>;
  readonly isOpen: boolean;
  readonly end: string;
  readonly stems: Set<string>;
}

/**
 * Every fact that a plan takes for granted, numbered as on all its papers, by what it decides: those first that could turn a result.
 * Assumptions of equal words are one.
 * @param plan of a job
 */
export function planAssumptions(plan: Plan): readonly PlanAssumption[] {
  const found: Gathered[] = [];
  const add = (taken: Assumption | 'office', isOpen: boolean, end: string, stem: string): void => {
    if (taken === 'office') return;
    const assumption = isNec(plan.basis) ? taken : { ...taken, says: taken.underIec ?? taken.says };
    const tags = [...assumption.tags, ...tagsAt(plan, assumption.at)];
    let same = found.find(
      (one) =>
        one.assumption.says === assumption.says &&
        one.assumption.decides === assumption.decides &&
        one.end === end,
    );
    if (!same) {
      same = { assumption, tags: [], facts: new Map(), isOpen, end, stems: new Set() };
      found.push(same);
    }
    same.stems.add(stem);
    for (const tag of tags) if (!same.tags.includes(tag)) same.tags.push(tag);
    // A fact is one of the equipment; where none is named, of the protectors there, or of the site.
    const { fact, tags: own } = assumption;
    if (!fact) return;
    const about = own.length > 0 ? own : tags.length > 0 ? tags : [''];
    for (const tag of about) if (!same.facts.has(tag)) same.facts.set(tag, fact);
  };
  for (const item of plan.openItems)
    if (item.severity === 'confirm') add(assumptionOf(item), true, VERIFY, stemOf(item));
  for (const item of plan.accepted ?? [])
    add(assumptionOf(item), false, capital(acceptedBy(item)), stemOf(item));
  for (const one of plan.settled)
    add(settledAssumed(one), false, capital(settledBy(one)), ofDefault(one.field));
  const rank = ({ assumption }: Gathered): number => DECIDES.indexOf(assumption.decides);
  return found
    .sort((a, b) => rank(a) - rank(b))
    .map((one, index) => ({ ...one, number: `A${String(index + 1)}` }));
}
