import { neutral } from '../../../src/rules/wire/neutral.js';
import { wiringTable } from '../table.js';

const noNeutral = { neutral: 'none', because: 'this circuit has no neutral' } as const;
const iec = { basis: 'iec', system: '400Y/230', lines: ['L1', 'L2', 'L3'] } as const;
const service = { atService: true, bondedHere: true } as const;
const awayFromLink = {
  neutral: 'asked',
  because: 'in a TN system N is protected away from its link to ground',
} as const;

export const table = wiringTable(import.meta.url, neutral, [
  {
    name: 'DC has none',
    given: { current: 'dc', circuit: 'array' },
    fires: false,
    then: noNeutral,
  },
  {
    name: 'a DC circuit said to be power has none either',
    given: { current: 'dc' },
    fires: false,
    then: noNeutral,
  },
  {
    name: 'a control circuit’s N is a wire like the other',
    given: { circuit: 'control' },
    fires: false,
    then: noNeutral,
  },
  {
    name: 'a delta has none, also ungrounded',
    given: { system: '240 delta', hasNeutral: false, grounding: 'none' },
    fires: false,
    then: noNeutral,
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, an ungrounded system: N floats like the lines, also at the service (section 3)`,
    given: { ...service, basis, grounding: 'none' as const },
    fires: true,
    then: { neutral: 'asked' as const, because: 'the system is ungrounded, so N floats like the lines' },
  })),
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).flatMap((basis) => [
    {
      name: `${basis}, away from the bond: a spare channel takes it (common practice, no source)`,
      given: { basis },
      fires: true,
      then: {
        neutral: 'optional' as const,
        because: 'N isn’t bonded to ground here: a spare channel takes it, none is asked for it',
      },
    },
    {
      name: `${basis}, at the bond`,
      given: { ...service, basis },
      fires: false,
      then: { neutral: 'bonded' as const, because: 'N is bonded to ground here' },
    },
  ]),
  {
    name: 'nec, bonded at a panel that isn’t the service',
    given: { bondedHere: true },
    fires: false,
    then: { neutral: 'bonded', because: 'N is bonded to ground here' },
  },
  {
    name: 'nec: the earthing of a job counts under iec only',
    given: { earthing: 'IT' },
    fires: true,
    then: {
      neutral: 'optional',
      because: 'N isn’t bonded to ground here: a spare channel takes it, none is asked for it',
    },
  },
  {
    name: 'iec TN, the service within 0.5 m of its link (IEC 60364-5-53 cl. 534.4, value from memory)',
    given: { ...iec, ...service },
    fires: false,
    then: { neutral: 'bonded', because: 'N is linked to ground at this service' },
  },
  {
    name: 'iec TN, the service away from its link',
    given: { ...iec, atService: true },
    fires: true,
    then: awayFromLink,
  },
  {
    name: 'iec TN, a panel: asked also where the list says that it has a link',
    given: { ...iec, bondedHere: true },
    fires: true,
    then: awayFromLink,
  },
  {
    name: 'iec TN, a panel',
    given: iec,
    fires: true,
    then: awayFromLink,
  },
  {
    name: 'iec IT: always, also at the service',
    given: { ...iec, ...service, earthing: 'IT' },
    fires: true,
    then: { neutral: 'asked', because: 'in an IT system N floats' },
  },
  {
    name: 'iec TT: lines to N, N to ground',
    given: { ...iec, ...service, earthing: 'TT' },
    fires: true,
    then: { neutral: 'asked', because: 'in a TT system lines go to N and N goes to ground' },
  },
]);
