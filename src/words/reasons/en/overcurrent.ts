import type { OvercurrentReasons } from '../../../model/reasons/overcurrent.js';
import type { Quantity } from '../../../model/quantity.js';
import { list, quantity } from '../../figures.js';
import { leadName } from '../../../model/lead.js';
import type { Sayings } from '../sayings.js';

const MEMORY = 'value from memory';

/** `the 30 A that the part allows`. */
const allowed = (most: Quantity | null): string =>
  most === null
    ? 'what the part allows, which the catalogue doesn’t state'
    : `the ${quantity(most)} that the part allows`;

const see = (nec: boolean, clause: string): string => (nec ? ` (NEC ${clause})` : '');

/** Overcurrent devices of protectors and the least of their leads, in English. */
export const OVERCURRENT: Sayings<OvercurrentReasons> = {
  'overcurrent/no-part': () => 'no part is chosen',
  'overcurrent/size-not-stated': () =>
    'the catalogue doesn’t state how large a device the part allows: as its instructions say',
  'overcurrent/not-needed': () => 'the part needs none of its own',
  'overcurrent/ahead-of-disconnect': ({ nec }) =>
    `ahead of the first disconnect none but what the part is listed with${nec ? ' (see NEC 230.82(4), from memory)' : ''}`,
  'overcurrent/circuit-will-do': ({ rating, most }) =>
    `the circuit’s own device of ${quantity(rating)} is no larger than ${allowed(most)}: it will do`,
  'overcurrent/circuit-too-large': ({ rating, most }) =>
    `the circuit’s own device of ${quantity(rating)} is larger than ${allowed(most)}`,
  'overcurrent/circuit-not-stated': ({ most }) =>
    `the circuit’s own device isn’t stated (rating_a), so that it can’t stand for ${allowed(most)}`,
  'overcurrent/grounded-only': ({ nec }) =>
    `this housing takes a grounded conductor alone, in which no device stands${see(nec, '240.22')}`,
  'overcurrent/array-below': ({ current, most, ampacity, nec }) =>
    `arrays and converters send at most ${quantity(current)}, no more than ${allowed(most)}: no device would open${
      ampacity === null
        ? ''
        : `; leads for at least ${quantity(ampacity)}${nec ? ' (see NEC 690.8(B), from memory)' : ''}`
    }`,
  'overcurrent/array-above': ({ current, most }) =>
    `arrays and converters send up to ${quantity(current)}, more than ${allowed(most)}`,
  'overcurrent/array-not-known': ({ most }) =>
    `what arrays and converters send isn’t known, so that it may be more than ${allowed(most)}`,
  'overcurrent/of-battery-bus': ({ most }) => `a battery bus: its own, no larger than ${allowed(most)}`,
  'overcurrent/by-maker-of-turbine': ({ most }) =>
    `as the maker of the turbine says, no larger than ${allowed(most)}`,
  'overcurrent/by-supply-of-control': ({ most }) =>
    `the limit of the circuit’s own supply (class 2), or as the part says, no larger than ${allowed(most)}`,
  'overcurrent-outside/ac': () => 'no AC circuit of the site',
  'overcurrent-outside/array': () => 'no array reaches it',
  'overcurrent-outside/battery': () => 'no battery bus',
  'overcurrent-outside/turbine': () => 'no turbine',
  'overcurrent-outside/control': () => 'no control circuit',
  'overcurrent-note/straight-through': ({ conductor, nec }) =>
    `${conductor} is grounded: it goes straight to the protector, without a fuse or a breaker${see(nec, '240.22')}.`,
  'overcurrent-note/single-and-three-phase': () =>
    'A two-pole breaker on this system is marked for one and three phases (see NEC 240.85, from memory).',
  'overcurrent-note/battery-gas': ({ batteries, nec }) =>
    `Its device can spark, and gas of ${list(batteries)} can gather in this room: mount it only where the battery’s maker says that none gathers, never above or beside open cells (see ${nec ? 'NEC Article 480' : 'IEC 62485-2'}, value from memory); where the maker says nothing, ask the office first.`,
  'overcurrent-note/poles-in-words': ({ words, named, poles }) =>
    `The catalogue says of the device “${words}”, which names ${String(named)} ${named === 1 ? 'pole' : 'poles'} where ${String(poles)} ${poles === 1 ? 'is' : 'are'} planned here: ask the maker of the part.`,
  'overcurrent-note/one-for-each-port': ({ ports, nec }) =>
    `This housing has a device for each port that it serves: ${list(ports)}. Never two wires under one terminal${see(nec, '110.14(A)')}.`,
  'overcurrent-note/one-wire-a-terminal': ({ conductor, nec }) =>
    `Two channels are on ${conductor}: one lead leaves the device and parts at a listed connector; never two wires under one terminal${see(nec, '110.14(A)')}.`,
  'lead/device-not-stated': () =>
    'its overcurrent_a isn’t stated, and the device decides how thick the leads are',
  'lead/range-not-stated': () => 'its wire_range isn’t stated',
  'lead/beyond-table': ({ current }) => `no lead of the table of ampacities is for ${quantity(current)}`,
  'lead/larger-than-range': ({ lead, needs, most }) =>
    `${lead} lead of at least ${leadName(needs)}, and its terminals take no more than ${leadName(most)}`,
  'calculation/overcurrent': ({ port }) => `Largest overcurrent device that the part allows at ${port}`,
  'calculation/overcurrent-of-circuit': ({ port }) => `The circuit’s own device at ${port}`,
  'calculation/overcurrent-none': ({ port }) => `Least ampacity of the leads at ${port}, without a device`,
  'calculation/overcurrent-sum': ({ port }) => `All that can flow through ${port}`,
  'calculation/smallest-lead': ({ metal }) => `Smallest leads of ${metal}`,
  'source/small-conductors': () => `NEC 240.4(D); above 10 AWG Table 310.16 at 60 °C and 240.4(B), ${MEMORY}`,
  'source/ampacity': () => `NEC Table 310.16 at 60 °C, ${MEMORY}`,
  'source/array-conductors': () => `NEC 690.8(B), ${MEMORY}`,
  'source/lead-by-instructions': () =>
    `lead_by_instructions of the catalogue; NEC 240.21(B)(1)(1)b exception, ${MEMORY}`,
  'source/backfeed-taken-as-none': () =>
    'assumption: a grid-tie inverter without a battery sends nothing back; to be confirmed',
};
