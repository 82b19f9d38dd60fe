import { withoutDust } from '../../model/rounding.js';
import type { DcJoined, SiteEquipment, SitePort } from '../../model/site.js';
import type { DcJoinedFacts } from '../../rules/rating-facts.js';
import { joinedTo } from '../../site/dc-joined.js';
import type { ArraySums } from '../context/array-current.js';
import type { JobContext } from '../context/job-context.js';

function currentOf({ facts }: SiteEquipment): number | undefined {
  const { isc_stc: isc, strings_in_parallel: strings } = facts;
  return isc && strings ? isc.value * strings.value : undefined;
}

function sumsOf({ arraySums: sums }: JobContext, joined: DcJoined): ArraySums {
  const known = sums.get(joined);
  if (known) return known;
  const arrays = [...joined.arrays];
  const current = arrays.reduce((sum, one) => sum + (currentOf(one) ?? 0), 0);
  const found = { current, unknown: new Set(arrays.filter((one) => currentOf(one) === undefined)) };
  sums.set(joined, found);
  return found;
}

/**
 * What feeds a fault at a DC port beside the arrays that feed the port itself: other arrays on its circuit, and what converters send
 * back out of each input on it.
 * @param arrays those that feed the port itself
 */
export function joinedFacts(
  job: JobContext,
  port: SitePort,
  arrays: readonly SiteEquipment[],
): DcJoinedFacts {
  const joined = joinedTo(port);
  const { current, unknown } = sumsOf(job, joined);
  const counts = port.oneOfSources ? [] : arrays.filter((one) => joined.arrays.has(one));
  const own = counts.reduce((sum, one) => sum + (currentOf(one) ?? 0), 0);
  const [first] = joined.inputs;
  const sendBack = new Map<SiteEquipment, number>();
  for (const { equipment } of joined.inputs) sendBack.set(equipment, (sendBack.get(equipment) ?? 0) + 1);
  return {
    at: first ? `${first.equipment.tag} ${first.name}` : '',
    others: joined.arrays.size - counts.length,
    othersCurrent: withoutDust(current - own),
    othersUnknown: unknown.size - counts.filter((one) => unknown.has(one)).length,
    backfeed: [...sendBack].flatMap(([{ tag, facts }, inputs]) =>
      facts.backfeed_a ? [{ tag, inputs, fact: facts.backfeed_a }] : [],
    ),
  };
}
