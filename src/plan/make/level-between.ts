import { computed, taken, workingOf } from '../../electrical/working.js';
import { volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import { subject, type Working } from '../../model/step.js';
import type { PartFigures, Selected } from '../choose/select.js';

const ON_THIS_PAGE = reason('source/on-this-page');
const UNCOMPARED = reason('source/level-between');

/** True where two conductors of one port have a channel to ground. */
function hasPair(housings: Selected['housings']): boolean {
  for (const some of housings) {
    for (const a of some) {
      if (a.to !== 'ground') continue;
      for (const others of housings) {
        for (const b of others)
          if (b.to === 'ground' && b.port === a.port && b.conductor !== a.conductor) return true;
      }
    }
  }
  return false;
}

/**
 * The level between two conductors of one port that each have a channel to ground: up to the sum of both levels, each with its leads.
 * No source says what to hold it against.
 * @returns V; undefined where no two conductors have such a channel, or the level isn't stated
 */
export function levelBetween(
  { part, housings }: Pick<Selected, 'part' | 'housings'>,
  { lead }: Pick<PartFigures, 'lead'>,
): Working | undefined {
  if (!part || part.up === null) return undefined;
  if (!hasPair(housings)) return undefined;
  const between = subject('level/between', { level: volts(part.up), leads: volts(lead) });
  return workingOf(
    [
      taken('Up', subject('reach/level'), part.up, 'V'),
      taken('Ul', subject('reach/leads'), lead, 'V', 'computed', ON_THIS_PAGE),
    ],
    computed('Upp', between, {
      value: 2 * (part.up + lead),
      unit: 'V',
      sure: 'computed',
      uses: ['Up', 'Ul'],
      source: UNCOMPARED,
    }),
  );
}
