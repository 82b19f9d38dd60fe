import { signal } from '../../../src/rules/place/signal.js';
import { placementTable } from '../table.js';

export const table = placementTable(import.meta.url, signal, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}: no power protector, and a person confirms (IEEE C62.72, value from memory)`,
    given: { basis, kind: 'signal-line' as const, port: 'terminals' as const, tag: 'NET-1' },
    then: 'not-placed' as const,
    because: 'a signal line takes no power protector; its protection is outside this plan',
    notes: [
      'place/signal-line NET-1: NET-1 is a signal line: its protection is outside this plan (see IEEE C62.72 and the maker of what it serves).',
    ],
  })),
  {
    name: 'a control circuit is no signal line',
    given: { kind: 'control-circuit', port: 'terminals' },
    then: 'not-looked-at',
  },
]);
