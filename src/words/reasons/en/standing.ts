import type { StandingReasons } from '../../../model/reasons/standing.js';
import type { Sayings } from '../sayings.js';

/** How a job stands to a rule, in English. */
export const STANDING: Sayings<StandingReasons> = {};
