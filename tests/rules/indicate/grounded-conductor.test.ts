import { groundedConductor } from '../../../src/rules/indicate/grounded-conductor.js';
import { indicatorTable } from '../table.js';

const dark = (what: string): string =>
  `always: dark (grounded-conductor): ${what} has no voltage to ground: normal, and this light can’t show whether the channel is used up: judge by its partner in the housing, by the part’s own test, or replace by age`;

export const table = indicatorTable(import.meta.url, groundedConductor, [
  {
    name: 'a conductor that isn’t grounded',
    given: { conductor: 'N' },
    outside: 'this conductor isn’t grounded',
  },
  {
    name: 'N at its bond (common practice, no source)',
    given: { conductor: 'N', grounded: true },
    shows: [dark('N of a grounded system')],
  },
  {
    name: 'the corner-grounded phase',
    given: { conductor: 'L2', grounded: true },
    shows: [dark('the grounded phase')],
  },
  {
    name: 'N of a control circuit',
    given: { circuit: 'control', conductor: 'N', grounded: true },
    shows: [dark('N of a grounded system')],
  },
  {
    name: 'the grounded pole of a battery (section 5: always)',
    given: { circuit: 'battery', conductor: 'negative', grounded: true },
    shows: [dark('the grounded pole')],
  },
  {
    name: 'the grounded pole of an array: it can light once its ground-fault device has opened (common practice, no source)',
    given: { circuit: 'array', conductor: 'negative', grounded: true },
    shows: [
      dark('the grounded pole'),
      'ground-fault device open: either (ground-fault-device-open): the pole floats once the ground-fault device has opened: if this light is ever lit, call and touch nothing',
    ],
  },
]);
