import type { MessageKind } from '../../model/message.js';
import type { Field } from '../../model/list.js';
import type { PortsAt } from '../../model/ports-at.js';

/** What an assumption decides: in this order they are numbered, those first that could turn a result. */
export const DECIDES = [
  'that it may not protect',
  'what feeds it',
  'whether it protects',
  'a current that is not known',
  'whether a clause asks',
  'a voltage',
  'a device',
  'the rest',
] as const;
export type Decides = (typeof DECIDES)[number];

/** A fact of the list that nobody states, and what it was taken for, as a cell has it. */
export interface AssumedFact {
  readonly field: Field;
  readonly value: string;
}

/** Of a fact that nothing stands in for: whoever finds it out tells it. */
export const NOT_KNOWN = 'not known';

/** One fact that was taken for granted, in trade words: assumptions of equal words are one, with the tags of all. */
export interface Assumption {
  readonly decides: Decides;
  /** Ends without a full stop: the tags follow in brackets. */
  readonly says: string;
  /** The same in the words of the IEC, where they are others. */
  readonly underIec?: string;
  /** Equipment that it is about; none: the site, or what `at` names. */
  readonly tags: readonly string[];
  /** Places whose protectors it is about. */
  readonly at: readonly PortsAt[];
  /** Absent: a field of the list says nothing of it. */
  readonly fact?: AssumedFact;
}

/** The words of one kind of item: an assumption of its values, or that only the office needs it. */
export interface AssumptionEntry {
  readonly kind: MessageKind<object>;
  readonly of: ((values: object) => Assumption | 'office') | 'office';
}

/** What is said of one kind of item. */
interface Said<P> {
  readonly decides: Decides | ((p: P) => Decides);
  readonly says: string | ((p: P) => string);
  readonly underIec?: (p: P) => string;
  readonly tags?: (p: P) => readonly string[];
  readonly at?: (p: P) => readonly PortsAt[];
  readonly fact?: (p: P) => AssumedFact;
}

/** Says an item as an assumption on a permit sheet. */
export function assumed<P extends object>(kind: MessageKind<P>, said: Said<P>): AssumptionEntry {
  const { decides, says, underIec, tags, at, fact } = said;
  const of = (values: P): Assumption => ({
    decides: typeof decides === 'function' ? decides(values) : decides,
    says: typeof says === 'function' ? says(values) : says,
    ...(underIec && { underIec: underIec(values) }),
    tags: tags?.(values) ?? [],
    at: at?.(values) ?? [],
    ...(fact && { fact: fact(values) }),
  });
  // Who reads an entry hands it the values of an item of its own code.
  return { kind, of: of as (values: object) => Assumption };
}

/** An item that a reviewer of the sheets needs nothing of. */
export function ofOffice<P extends object>(kind: MessageKind<P>): AssumptionEntry {
  return { kind, of: 'office' };
}
