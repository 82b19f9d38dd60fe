import type { PlacedNote } from '../../model/open-item.js';
import { metres } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = [
  'basis',
  'tag',
  'inputUse',
  'sourceKinds',
  'runs',
  'criticalLength',
  'arraysLength',
  'serviceRequired',
] as const;

const SPARE: PlacementDecision = { outcome: 'not-placed', because: reason('dc-input/spare') };
const ASSUMED_FED = reason('dc-input/assumed-fed');
const FED_BY_COMBINER = reason('dc-input/fed', { by: ['combiner'] });

const ONE_FOR_EACH_INPUT = practice('One two-channel protector for each DC input, not for each housing.');
const CITED_UNDER_NEC: readonly Cited[] = [ONE_FOR_EACH_INPUT];

export const dcInput = {
  id: 'place/dc-input',
  title: 'At each DC input that an exposed source feeds',
  why: 'The long wires of an array or a turbine gather surges and bring them to each input by itself.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['pv-dc-protection', ONE_FOR_EACH_INPUT],
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['required', 'recommended'],
  },
  looksAt: {
    kinds: ['charge-controller', 'grid-tie-inverter', 'inverter-charger', 'pump-drive'],
    ports: ['dc-in'],
  },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.inputUse === 'spare') return SPARE;
    const fed = whyFed(f);
    if (f.basis !== 'iec') return { outcome: 'placed', strength: 'recommended', because: fed };
    return underIec(f, fed);
  },
} satisfies AnyPlacementRule;

function whyFed(f: Given<PlacementFacts, typeof FACTS>): Reason {
  if (f.inputUse === 'assumed') return ASSUMED_FED;
  if (f.sourceKinds.length === 0) return FED_BY_COMBINER;
  return reason('dc-input/fed', { by: [...new Set(f.sourceKinds)] });
}

function underIec(f: Given<PlacementFacts, typeof FACTS>, fed: Reason): PlacementDecision {
  // What isn't on the list counts as an array, as it does where the voltage is rated.
  const fromArray = f.inputUse === 'assumed' || f.sourceKinds.length === 0 || f.sourceKinds.includes('array');
  if (fromArray && f.serviceRequired) {
    return {
      outcome: 'placed',
      strength: 'required',
      because: reason('dc-input/service-required', { fed }),
    };
  }
  if (!fromArray) return { outcome: 'placed', strength: 'recommended', because: fed };
  if (f.criticalLength === undefined || f.arraysLength === undefined) {
    return {
      outcome: 'placed',
      strength: 'recommended',
      because: reason('dc-input/length-not-compared', { fed }),
      notes: [notCompared(f)],
    };
  }
  const shorter = f.arraysLength < f.criticalLength;
  return {
    outcome: 'placed',
    strength: shorter ? 'recommended' : 'required',
    because: reason('dc-input/length-compared', {
      fed,
      length: metres(f.arraysLength),
      critical: metres(f.criticalLength),
      shorter,
      basis: f.basis,
    }),
  };
}

/** Why nothing is compared: the flash density of the job, or the length of a run. */
function notCompared(f: Given<PlacementFacts, typeof FACTS>): PlacedNote {
  if (f.criticalLength === undefined) {
    return about(PLACE_MESSAGES.criticalLengthUnknown, {}, '', 'flash_density');
  }
  const row = f.runs.find((r) => r.unknownRow !== '')?.unknownRow;
  const p = { tag: f.tag };
  return row === undefined
    ? about(PLACE_MESSAGES.arraysLengthUnknown, p, f.tag, '')
    : about(PLACE_MESSAGES.arraysLengthUnknown, p, row, 'run_length');
}
