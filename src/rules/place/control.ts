import type { PlacedNote } from '../../model/message.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { figure, length } from '../../words/figures.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = [
  'tag',
  'outdoors',
  'runs',
  'connected',
  'controlVolts',
  'controlVoltageLimit',
  'longRunLimit',
] as const;

export const control = {
  id: 'place/control',
  title: 'At a low-voltage control circuit out of doors, between buildings or on a long run',
  why: 'A thin control wire carries a surge as well as a thick one, and what hangs on it is more delicate.',
  sources: sources({
    of: ALL,
    also: practice('One at the equipment, and one at the other end where the list names it.'),
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
        volts: figure(f.controlVolts, 'V'),
        limit: figure(f.controlVoltageLimit, 'V'),
      };
      return {
        outcome: 'not-placed',
        because: `${p.volts} is more than a low-voltage control circuit`,
        notes: [about(PLACE_MESSAGES.controlNotLow, p, f.tag, 'control_voltage')],
      };
    }
    const long = f.runs.find((r) => r.length !== undefined && r.length > f.longRunLimit);
    const between = f.runs.find((r) => r.betweenBuildings);
    const outdoors = f.outdoors || f.runs.some((r) => r.outdoors);
    if (!outdoors && !between && !long) {
      const place = 'it is neither outdoors nor between buildings';
      if (f.runs.length === 0) {
        return { outcome: 'not-placed', because: `${place}; where it leads isn’t on the list`, open: true };
      }
      return f.runs.some((r) => r.length === undefined)
        ? { outcome: 'not-placed', because: `${place}; the length of its run isn’t stated`, open: true }
        : { outcome: 'not-placed', because: `${place} nor on a long run` };
    }
    const notes: PlacedNote[] = [];
    if (!f.connected) notes.push(about(PLACE_MESSAGES.controlOtherEnd, { tag: f.tag }, f.tag, 'connects_to'));
    if (!outdoors && !long && between?.betweenByDefault) {
      notes.push(
        about(PLACE_MESSAGES.buildingDefault, { tag: f.tag, other: between.otherTag }, f.tag, 'building'),
      );
    }
    return {
      outcome: 'placed',
      strength: 'recommended',
      because: outdoors
        ? 'a control circuit out of doors'
        : between
          ? `a control circuit between buildings, to ${between.otherTag}`
          : `a control circuit of ${length(long?.length ?? 0)}`,
      notes,
    };
  },
} satisfies AnyPlacementRule;
