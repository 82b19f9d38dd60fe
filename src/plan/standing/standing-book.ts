import { belongs, BASES, type Basis } from '../../model/editions.js';
import type { PlannedStanding } from '../../model/plan.js';
import { isSameReason, reasonKey, type Reason } from '../../model/reason.js';
import type { PrintedRule } from '../../model/rule.js';
import type { SitePort } from '../../model/site.js';
import { STANDINGS, type Standing } from '../../model/words.js';
import { ALL_RULES } from '../../rules/rulebook.js';

/** Rules of a basis, in the rulebook's order. */
const RULES_OF: ReadonlyMap<Basis, readonly PrintedRule[]> = new Map(
  BASES.map((basis) => [basis, ALL_RULES.filter((rule) => belongs(rule.sources, basis))]),
);
/** What is said of each rule, gathered. */
export interface Book {
  /** `at`: a protector's tag, a port, or nowhere. */
  readonly add: (rule: string, standing: Standing, because: Reason | null, at?: string | SitePort) => void;
  readonly rules: () => Iterable<string>;
  readonly sorted: (basis: Basis) => PlannedStanding[];
}

/** One thing that is said of a rule, with where. */
interface Entry {
  readonly standing: Standing;
  readonly because: Reason | null;
  readonly at: (string | SitePort)[];
}

/** What is said of one rule, in the order in which it is first said. */
interface Entries {
  readonly each: Entry[];
  /** By what is said, once there are many: of most rules one thing is said, or a few. */
  byText: Map<string, Entry> | undefined;
  /** The entry that was added to last: the ports of a panel's loads mostly say the same, in the very words. */
  last: Entry | undefined;
}

/** A book with one entry for what is alike but for where it is. */
export function openBook(): Book {
  const byRule = new Map<string, Entries>();
  return {
    add: (rule, standing, because, at) => {
      let entries = byRule.get(rule);
      if (!entries) {
        entries = { each: [], byText: undefined, last: undefined };
        byRule.set(rule, entries);
      }
      let there = entries.last;
      if (there?.standing !== standing || there.because !== because) {
        there = entryOf(entries, standing, because);
        entries.last = there;
      }
      if (at !== undefined) there.at.push(at);
    },
    rules: () => byRule.keys(),
    sorted: (basis) => {
      const found: PlannedStanding[] = [];
      for (const { id } of RULES_OF.get(basis) ?? []) {
        const each = byRule.get(id)?.each;
        if (!each) continue;
        const ranked = each.length < 2 ? each : [...each].sort((a, b) => rank(a) - rank(b));
        for (const { standing, because, at } of ranked) {
          // A rule may say the same twice of one port: a control circuit's other end is asked once a circuit.
          const places = because === null || at.length < 2 ? at : onceEach(at);
          found.push({ rule: id, standing, at: places.map(nameOf), because });
        }
      }
      return found;
    },
  };
}

/** So many are compared with one another faster than they are looked up by their text. */
const FEW_ENTRIES = 8;

function entryOf(entries: Entries, standing: Standing, because: Reason | null): Entry {
  const { each } = entries;
  const made: Entry = { standing, because, at: [] };
  if (each.length < FEW_ENTRIES) {
    for (const one of each) if (one.standing === standing && isSameReason(one.because, because)) return one;
    each.push(made);
    return made;
  }
  const byText = (entries.byText ??= new Map(each.map((one) => [textOf(one), one])));
  const text = textOf(made);
  const before = byText.get(text);
  if (before) return before;
  each.push(made);
  byText.set(text, made);
  return made;
}

function textOf({ standing, because }: Entry): string {
  return because === null ? standing : `${standing}|${reasonKey(because)}`;
}

/** So many are compared with one another faster than they are put into a set. */
const FEW = 64;

function onceEach(at: readonly (string | SitePort)[]): readonly (string | SitePort)[] {
  return at.length > FEW ? [...new Set(at)] : at.filter((one, i) => at.indexOf(one) === i);
}

const rank = ({ standing }: Entry): number => STANDINGS.indexOf(standing);

function nameOf(at: string | SitePort): string {
  return typeof at === 'string' ? at : `${at.equipment.tag} ${at.name}`;
}
