import type { PlacedNote } from '../../model/message.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { figure, list } from '../../words/figures.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { ALL, practice, sources } from '../sources.js';

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

export const dcInput = {
  id: 'place/dc-input',
  title: 'At each DC input that an exposed source feeds',
  why: 'The long wires of an array or a turbine gather surges and bring them to each input by itself.',
  sources: sources(
    { of: ['iec'], cite: ['pv-dc-protection'] },
    { of: ALL, also: practice('One two-channel protector for each DC input, not for each housing.') },
  ),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['required', 'recommended'],
  },
  looksAt: { kinds: ['charge-controller', 'grid-tie-inverter', 'inverter-charger'], ports: ['dc-in'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.inputUse === 'spare') {
      return { outcome: 'not-placed', because: 'no source on the list uses this input: it is spare' };
    }
    const kinds = f.sourceKinds.length > 0 ? list([...new Set(f.sourceKinds)]) : 'combiner';
    const fed =
      f.inputUse === 'assumed'
        ? 'no source on the list names this converter, so this input counts as fed'
        : `${kinds} feeds this input`;
    if (f.basis !== 'iec') return { outcome: 'placed', strength: 'recommended', because: fed };
    return underIec(f, fed);
  },
} satisfies AnyPlacementRule;

function underIec(f: Given<PlacementFacts, typeof FACTS>, fed: string): PlacementDecision {
  // What isn't on the list counts as an array, as it does where the voltage is rated.
  const fromArray = f.inputUse === 'assumed' || f.sourceKinds.length === 0 || f.sourceKinds.includes('array');
  if (fromArray && f.serviceRequired) {
    return {
      outcome: 'placed',
      strength: 'required',
      because: `${fed}, and protection is required at the service of this site`,
    };
  }
  if (!fromArray) return { outcome: 'placed', strength: 'recommended', because: fed };
  if (f.criticalLength === undefined || f.arraysLength === undefined) {
    return {
      outcome: 'placed',
      strength: 'recommended',
      because: `${fed}; its length isn’t compared with the critical length`,
      notes: [notCompared(f)],
    };
  }
  const compared = `the runs of its arrays, ${figure(f.arraysLength, 'm')}, against the critical length of ${figure(f.criticalLength, 'm')}`;
  return f.arraysLength >= f.criticalLength
    ? { outcome: 'placed', strength: 'required', because: `${fed}; ${compared}: not shorter` }
    : { outcome: 'placed', strength: 'recommended', because: `${fed}; ${compared}: shorter` };
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
