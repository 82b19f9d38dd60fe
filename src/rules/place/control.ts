import type { PlacedNote } from '../../model/open-item.js';
import { metres, volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { mayLeaveBuilding, placesAsked } from '../unknown-place.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = [
  'basis',
  'tag',
  'outdoors',
  'runs',
  'connected',
  'ownLength',
  'controlVolts',
  'controlVoltageLimit',
  'longRunLimit',
] as const;

const END_UNKNOWN: PlacementDecision = {
  outcome: 'not-placed',
  because: reason('control/end-unknown'),
  open: true,
};
const LENGTH_UNKNOWN: PlacementDecision = {
  outcome: 'not-placed',
  because: reason('control/length-unknown'),
  open: true,
};
const NOTHING_ASKS: PlacementDecision = { outcome: 'not-placed', because: reason('control/nothing-asks') };
const OUTDOORS = reason('control/outdoors');

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice('One at the equipment, and one at the other end where the list names it.'),
];

export const control = {
  id: 'place/control',
  title: 'At a low-voltage control circuit out of doors, between buildings or on a long run',
  why: 'A thin control wire carries a surge as well as a thick one, and what hangs on it is more delicate.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['recommended'],
  },
  looksAt: {
    kinds: ['control-circuit'],
    ports: ['terminals'],
  },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.controlVolts !== undefined && f.controlVolts > f.controlVoltageLimit) {
      const p = {
        tag: f.tag,
        voltage: volts(f.controlVolts),
        limit: volts(f.controlVoltageLimit),
      };
      return {
        outcome: 'not-placed',
        because: reason('control/above-low-voltage', { voltage: p.voltage }),
        notes: [about(PLACE_MESSAGES.controlNotLow, p, f.tag, 'control_voltage')],
      };
    }
    // Without an end the list may still say how long it is.
    const lengths = f.connected ? f.runs.map((r) => r.length) : [f.ownLength];
    const long = lengths.find((length) => length !== undefined && length > f.longRunLimit);
    const between = f.runs.find((r) => r.betweenBuildings);
    const outdoors = f.outdoors || f.runs.some((r) => r.outdoors);
    const unplaced = outdoors || between || long !== undefined ? [] : f.runs.filter(mayLeaveBuilding);
    const isPlaced = outdoors || between !== undefined || long !== undefined || unplaced.length > 0;
    const notes: PlacedNote[] = unplaced.flatMap((r) => placesAsked(r.unplaced));
    if (!f.connected) {
      const p = { tag: f.tag, placed: isPlaced };
      notes.push(about(PLACE_MESSAGES.controlOtherEnd, p, f.tag, 'connects_to'));
    }
    if (!isPlaced) {
      if (f.runs.length === 0) return { ...END_UNKNOWN, notes };
      return f.runs.some((r) => r.length === undefined) ? LENGTH_UNKNOWN : NOTHING_ASKS;
    }
    if (!outdoors && long === undefined && between?.betweenByDefault) {
      notes.push(
        about(PLACE_MESSAGES.buildingDefault, { tag: f.tag, other: between.otherTag }, f.tag, 'building'),
      );
    }
    return {
      outcome: 'placed',
      strength: 'recommended',
      because: outdoors
        ? OUTDOORS
        : between
          ? reason('control/between-buildings', { to: between.otherTag })
          : long === undefined
            ? reason('control/place-unknown', { to: unplaced[0]?.otherTag ?? '' })
            : reason('control/long-run', { length: metres(long), basis: f.basis }),
      notes,
    };
  },
} satisfies AnyPlacementRule;
