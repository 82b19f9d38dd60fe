import type { Plan } from '../../model/plan.js';

/** The sentence that every document carries. */
export const DEFERENCE =
  'This document does not replace the local code, the decision of the authority having jurisdiction, the instructions of each product, or the judgement of a licensed person. Where they differ from it, they go first.';

/** What a plan of this kind doesn't cover, whatever the site. */
export function limitTexts(plan: Plan): string[] {
  return [
    'A lightning protection system (air terminals, down conductors, earth termination) and a direct strike to the equipment.',
    'Data, telephone and antenna lines: they need protectors of their own kind.',
    'The size of conductors, breakers and grounding electrodes, and the fault currents: they are taken as the list states them.',
    'Bipolar arrays, and the AC output of a variable-speed drive.',
    'Coordination with protectors inside the equipment, which only its maker knows.',
    'The state of what is there already: existing wiring, bonding and grounding were not inspected.',
    ...(plan.basis === 'iec'
      ? ['National rules, which may add to the international standard or replace parts of it.']
      : []),
    ...(plan.basis === 'iec' ? [] : ['Local amendments to the code cycle named on the cover.']),
  ];
}
