import type { NestedReason } from '../../model/nested-reason.js';
import type { Sentence } from '../../model/sentence.js';

/** Says a reason that is a value of another one, in the same language. */
export type Say = (reason: NestedReason) => Sentence;

/** A sentence for each code of a table of reasons: the compiler asks for each. */
export type Sayings<R> = { readonly [C in keyof R]: (values: R[C], say: Say) => string };
