import { list } from '../../figures.js';
import { kindWords } from '../../kind-words.js';
import type { StandingReasons } from '../../../model/reasons/standing.js';
import type { Kind, Strength } from '../../../model/words.js';
import type { Sayings } from '../sayings.js';

/** What is recommended here no code requires. */
const AS_PLACED: Readonly<Record<Strength, string>> = {
  required: 'required',
  recommended: 'recommended, not required',
  optional: 'optional',
};

/** How a job stands to a rule, in English. */
export const STANDING: Sayings<StandingReasons> = {
  'standing/placed': ({ strength }) => AS_PLACED[strength],
  'standing/no-part': () => 'no part is chosen',
  'standing/not-rated': () => 'what this place asks for isn’t known',
  'standing/ratings-unknown': () => 'the ratings of what is there aren’t known',
  'standing/backfeed-unknown': ({ converters }) =>
    `what ${list(converters)} ${converters.length === 1 ? 'sends back into its DC input' : 'send back into their DC inputs'} isn’t known (backfeed_a)`,
  'standing/no-protector': () => 'no protector is planned',
  'standing/no-such-channel': () => 'no channel of this plan is of that kind',
  'standing/no-equipment': ({ kinds }) => `no ${anyOf(kinds)} is on the list`,
  'standing/no-port': ({ kinds }) => `no ${anyOf(kinds)} on the list has a port that it looks at`,
};

/** `service`, `service or panel`, `service, panel or wind turbine`. */
function anyOf(kinds: readonly Kind[]): string {
  const names = kinds.map(kindWords);
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} or ${last}`;
}
