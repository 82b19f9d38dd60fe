import { createHash } from 'node:crypto';
import { byNaturalOrder } from '../model/natural-order.js';
import type { Plan } from '../model/plan.js';
import { DECIDED, type Decided, type DecisionIs } from '../model/record-change.js';
import { conductorText } from '../words/conductors.js';

/** What a plan decides of one housing, as far as a record of the work depends on it. */
export interface HousingDecision {
  readonly tag: string;
  /** `EQUIPMENT:port`. */
  readonly ports: readonly string[];
  readonly place: string;
  /** ``: none chosen. */
  readonly part: string;
  /** By channel: `positive to ground`. */
  readonly conductors: readonly string[];
}

/**
 * What a plan decides, housing by housing, in the order of their tags: not its words, figures or notes, which another version of the
 * program may tell otherwise.
 * @param plan of a job
 */
export function decisionsOf({ protectors }: Pick<Plan, 'protectors'>): readonly HousingDecision[] {
  return protectors
    .map(({ tag, ports, place, part, channels }) => ({
      tag,
      ports: ports.map(({ equipment, port }) => `${equipment}:${port}`),
      place,
      part: part ?? '',
      conductors: channels.map(({ wire, to }) => `${conductorText(wire)} to ${to}`),
    }))
    .sort((a, b) => byNaturalOrder(a.tag, b.tag));
}

/** No digits, which a spreadsheet would take for a number or a power of ten, and no vowels, which would make words of them. */
const LETTERS = 'BCDFGHJKLMNPQRSTVWXZ';
/** 20 letters to the power of 8: two plans of one job meet by chance once in 25 thousand million. */
const LENGTH = 8;

/**
 * The fingerprint of a plan's decisions, as forms carry it in `plan`: short, of capital letters.
 * @param decisions of one plan
 */
export function planMark(decisions: readonly HousingDecision[]): string {
  const hash = createHash('sha256')
    .update(JSON.stringify(decisions.map(inOrder)))
    .digest();
  let rest = hash.readBigUInt64BE(0);
  let mark = '';
  for (let i = 0; i < LENGTH; i += 1) {
    mark += LETTERS[Number(rest % 20n)] ?? '';
    rest /= 20n;
  }
  return mark;
}

/** The parts of a decision by place, so that no order of keys counts. */
const inOrder = ({ tag, ports, place, part, conductors }: HousingDecision): unknown => [
  tag,
  ports,
  place,
  part,
  conductors,
];

/** How a housing stands in two plans of one job. */
export interface DecisionChange {
  readonly tag: string;
  /** `gone`: the later plan hasn't it; `new`: the earlier hadn't. */
  readonly is: DecisionIs;
  /** What differs; none where it is gone or new. */
  readonly what: readonly { readonly of: Decided; readonly before: string; readonly now: string }[];
}

const textOf = (one: HousingDecision, of: Decided): string => {
  const value = one[of];
  return typeof value === 'string' ? value : value.join('; ');
};

/**
 * Which housings differ between two plans of one job, by their tags.
 * @param before decisions of the plan that forms were given out for
 * @param now decisions of the plan of today
 * @returns in the order of the tags; none where both decide the same
 */
export function decisionChanges(
  before: readonly HousingDecision[],
  now: readonly HousingDecision[],
): readonly DecisionChange[] {
  const old = new Map(before.map((one) => [one.tag, one]));
  const fresh = new Map(now.map((one) => [one.tag, one]));
  const tags = [...new Set([...old.keys(), ...fresh.keys()])].sort(byNaturalOrder);
  return tags.flatMap((tag): DecisionChange[] => {
    const a = old.get(tag);
    const b = fresh.get(tag);
    if (a === undefined || b === undefined) return [{ tag, is: a === undefined ? 'new' : 'gone', what: [] }];
    const what = DECIDED.flatMap((of) => {
      const [was, is] = [textOf(a, of), textOf(b, of)];
      return was === is ? [] : [{ of, before: was, now: is }];
    });
    return what.length === 0 ? [] : [{ tag, is: 'changed', what }];
  });
}
