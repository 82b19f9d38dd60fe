import { belongs, BASES, type Basis } from '../../model/editions.js';
import type { PlannedStanding } from '../../model/plan.js';
import { reasonKey, type Reason } from '../../model/reason.js';
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

/** What is said of one rule, by what is said. */
interface Entries {
  readonly byText: Map<string, Entry>;
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
        entries = { byText: new Map(), last: undefined };
        byRule.set(rule, entries);
      }
      let there = entries.last;
      if (there?.standing !== standing || there.because !== because) {
        const key = because === null ? standing : `${standing}|${reasonKey(because)}`;
        there = entries.byText.get(key);
        if (!there) {
          there = { standing, because, at: [] };
          entries.byText.set(key, there);
        }
        entries.last = there;
      }
      if (at !== undefined) there.at.push(at);
    },
    rules: () => byRule.keys(),
    sorted: (basis) => {
      const found: PlannedStanding[] = [];
      for (const { id } of RULES_OF.get(basis) ?? []) {
        const entries = byRule.get(id)?.byText;
        if (!entries) continue;
        const ranked = [...entries.values()].sort((a, b) => rank(a) - rank(b));
        for (const { standing, because, at } of ranked) {
          // A rule may say the same twice of one port: a control circuit's other end is asked once a circuit.
          const each = because === null || at.length < 2 ? at : onceEach(at);
          found.push({ rule: id, standing, at: each.map(nameOf), because });
        }
      }
      return found;
    },
  };
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
