import type { ChooseReasons } from '../../../model/reasons/choose.js';
import type { Sayings } from '../sayings.js';

/** Why a part fits, or doesn't, in English. */
export const CHOOSE: Sayings<ChooseReasons> = {};
