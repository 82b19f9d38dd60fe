import type { Plan, PlannedIndicator, PlannedProtector } from '../../model/plan.js';
import type { SiteRecord } from '../../model/record.js';
import type { BuiltLook } from './as-built.js';

/** What an indicator may look like as it was seen: only where the plan leaves open which. */
function seen(indicator: PlannedIndicator, looks: readonly BuiltLook[]): PlannedIndicator {
  if (indicator.shows !== 'either') return indicator;
  const look = looks.find(({ state }) => state === indicator.state)?.look;
  return look === undefined || look === 'used' ? indicator : { ...indicator, shows: look };
}

/**
 * The plan with what is there in its place: each housing as it was planned anew, without those that aren't there; of lights that may
 * look either way as they were seen.
 */
export function builtPlan(plan: Plan, record: SiteRecord, looks: readonly BuiltLook[]): Plan {
  const anew = new Map(record.asBuilt.protectors.map((one) => [one.tag, one]));
  const gone = new Set(
    record.housings.flatMap(({ tag, current, entries }) => {
      const outcome = entries[current]?.outcome;
      return outcome === 'not fitted' || outcome === 'removed' ? [tag] : [];
    }),
  );
  const asSeen = (one: PlannedProtector): PlannedProtector => ({
    ...one,
    channels: one.channels.map((channel) => {
      const own = looks.filter((look) => look.tag === one.tag && look.channel === channel.channel);
      return { ...channel, indicator: channel.indicator.map((each) => seen(each, own)) };
    }),
  });
  return {
    ...plan,
    protectors: plan.protectors
      .filter(({ tag }) => !gone.has(tag))
      .map((one) => asSeen(anew.get(one.tag) ?? one)),
  };
}
