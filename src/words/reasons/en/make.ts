import type { MakeReasons } from '../../../model/reasons/make.js';
import type { Sayings } from '../sayings.js';

/** What a protector guards, where it sits, how it is wired and measured, in English. */
export const MAKE: Sayings<MakeReasons> = {
  several: ({ reasons }, say) => reasons.map(say).join('; '),
};
