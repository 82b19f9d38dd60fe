import type { MakeReasons } from '../../../model/reasons/make.js';
import type { Kind, PortClass } from '../../../model/words.js';
import { conductorText } from '../../conductors.js';
import { figure, list, quantity } from '../../figures.js';
import type { Sayings } from '../sayings.js';

type Values<C extends keyof MakeReasons> = MakeReasons[C];

/** What a protector guards, where it sits, how it is wired and measured, in English. */
export const MAKE: Sayings<MakeReasons> = {
  several: ({ reasons }, say) => reasons.map(say).join('; '),
  'protects/control-end': ({ equipment, circuit }) =>
    `${equipment}: the end of the control circuit ${circuit}`,
  'protects/ports': ({ equipment, ports }) => `${equipment}: ${list(ports.map(portWords))}`,
  'position/ahead-of-main': () =>
    'Ahead of the main breaker, nearest to the incoming feed: type 1; at the meter only with the utility’s consent.',
  'position/service': () =>
    'In or immediately beside the service equipment, behind the main breaker, on the position nearest to the incoming feed.',
  'position/load': () => 'At the equipment, where its feeder comes in.',
  'position/feeder': () => 'On the load side of the feeder, on the position nearest to where it comes in.',
  'position/tower-base': () => 'At the base of the tower, where its lights can be seen.',
  'position/cable-leaves': () => 'At the equipment, where its cable leaves, where its lights can be seen.',
  'position/control-cable': () => 'At the equipment, where the control cable comes in.',
  'position/battery-bus': () =>
    'At the battery bus, behind the battery’s disconnect where there is one, so that it can be made dead.',
  'position/terminals': () => 'At the terminals of this port, where its lights can be seen.',
  'source/control-supply': ({ circuit }) => `Supply of the control circuit ${circuit}: switch it off.`,
  'source/utility': ({ tag }) =>
    `Utility service ${tag}: open its main disconnect; ahead of it only the utility can open.`,
  'source/utility-ahead': ({ tag }) =>
    `Utility service ${tag}: this place is ahead of its main disconnect and stays live when that is open; only the utility can open it.`,
  'source/generator': ({ tag }) => `Generator ${tag}: lock it out, it may start by itself.`,
  'source/battery': ({ tag }) => `Battery ${tag}: open its disconnect; its own terminals stay live.`,
  'source/array': ({ tag }) => `Array ${tag}: open its disconnect; its conductors stay live in daylight.`,
  'source/turbine': ({ tag }) =>
    `Turbine ${tag}: stop it and open its disconnect; it is live while it turns.`,
  'source/inverter': ({ tag }) => `Inverter ${tag}: open its AC disconnect.`,
  'source/inverter-at': ({ tag, ports }) =>
    `Inverter ${tag}: open the disconnect of its ${list(ports.map((port) => AC_PORTS[port] ?? port))}.`,
  'source/other': ({ tag }) => `${tag}: open its disconnect.`,
  'source/each-of': ({ kind, count }) =>
    `Every ${kind.replaceAll('-', ' ')} that can feed this place, ${count} in all: ${EACH_OF[kind] ?? 'open its disconnect'}.`,
  'source/named-elsewhere': () =>
    'More sources than this note has room for: find the tag of each in the closeout pack, under “The site as it was read”, and open, lock out and tag every one.',
  'wiring-note/current-not-known': () =>
    'Whether alternating or direct current comes here isn’t known: the conductors stand for the most that there may be.',
  'wiring-note/stay-charged': ({ tags }) =>
    `The DC terminals of ${list(tags)} can stay charged after every source is open: wait as the instructions say, then measure.`,
  'wiring-note/thin-lead': ({ least, gauge, area }) => {
    const planned = gauge === quantity(area) ? gauge : `${gauge} (${quantity(area)})`;
    return `Earth lead of at least ${least.gauge}, not the ${planned} that is planned.`;
  },
  'wiring-note/grounded-conductor': ({ conductor }) =>
    `Conductor ${conductor} is grounded: where solidly, it is white or gray (see NEC 200.6), whatever colour stands above.`,
  'wiring-note/second-channel': ({ channel, wire }) =>
    `Channel ${channel} is a second channel of ${conductorText(wire)}, since this place has more channels than conductors.`,
  'neutral/no-channel-left': () => 'no channel is left for it, and none is asked for',
  'expected-voltage/about': ({ nominal }) => `about ${quantity(nominal)}`,
  'expected-voltage/near-zero': () => NEAR_ZERO,
  'expected-voltage/grounded-pole': () => `${NEAR_ZERO}: this pole is grounded`,
  'expected-voltage/whole': whole,
  'expected-voltage/floating-pair': (values) =>
    `not fixed, since no pole is grounded: from ${NEAR_ZERO} to ${whole(values)}`,
  'expected-voltage/grounding-not-known': (values) =>
    `not known, since the list grounds its sources differently: from ${NEAR_ZERO} to ${whole(values)}`,
  'expected-voltage/turbine-phase': ({ most }) => `from ${NEAR_ZERO} to ${whole({ of: 'turbine', most })}`,
  'expected-voltage/control-circuit': (values) => `${NEAR_ZERO} or the control voltage, ${atMost(values)}`,
  'expected-voltage/floating-system': ({ between }) =>
    `not fixed, since the system isn’t solidly grounded; ${quantity(between)} between conductors`,
  'expected-voltage/system-not-stated': () => 'not known: the AC system isn’t stated',
  'expected-voltage/not-known': () => 'not known',
  'stop/any-voltage': () => 'any steady voltage: its ground is lost, or conductors are swapped',
  'stop/converter-bears': ({ tag }) => `${tag} bears no more`,
};

const NEAR_ZERO = `near ${figure(0, 'V')}`;

const WHOLE = {
  sun: 'the voltage of the string, which changes with the sun',
  turbine: 'the voltage of the turbine, which changes with its speed',
  both: 'the voltage of the array and the turbine, which changes with the sun and the turbine’s speed',
  battery: 'the voltage of the battery',
};

function whole(values: Values<'expected-voltage/whole'>): string {
  return `${WHOLE[values.of]}, ${atMost(values)}`;
}

function atMost({ most }: Pick<Values<'expected-voltage/whole'>, 'most'>): string {
  return most === null
    ? 'at most what the maker states, which isn’t known here'
    : `at most ${quantity(most)}`;
}

const AC_PORTS: { readonly [C in PortClass]?: string } = {
  'ac-in': 'AC input',
  'ac-in-2': 'second AC input',
  'ac-out': 'AC output',
};

const OUTPUTS: { readonly [K in Kind]?: string } = {
  array: 'the array',
  combiner: 'the combiner',
  generator: 'the generator',
};

function portWords({ port, kind, input }: Values<'protects/ports'>['ports'][number]): string {
  switch (port) {
    case 'service':
      return 'the utility service';
    case 'feeder':
      return kind === 'load' ? 'the supply of the load' : 'the feeder of the panel';
    case 'dc-in':
      return `DC input ${input}`;
    case 'dc-bus':
      return 'the DC supply';
    case 'battery':
      return kind === 'battery' ? 'the battery bus' : 'the end of the battery cable';
    case 'ac-in':
      return 'AC in';
    case 'ac-in-2':
      return 'the second AC in';
    case 'ac-out':
      return 'AC out';
    case 'output':
      return OUTPUTS[kind] ?? 'the output';
    case 'terminals':
      return 'the control circuit';
  }
}

/** What to do about each source of a kind, and what stays live of it. */
const EACH_OF: { readonly [K in Kind]?: string } = {
  service: 'open its main disconnect; ahead of it only the utility can open',
  generator: 'lock it out, it may start by itself',
  battery: 'open its disconnect; its own terminals stay live',
  array: 'open its disconnect; its conductors stay live in daylight',
  'wind-turbine': 'stop it and open its disconnect; it is live while it turns',
  'hydro-turbine': 'stop it and open its disconnect; it is live while it turns',
  'grid-tie-inverter': 'open its AC disconnect',
  'ac-battery': 'open its AC disconnect; its cells stay live',
  'ac-module-branch': 'open its AC disconnect',
  'inverter-charger': 'open the disconnect of each of its AC ports',
};
