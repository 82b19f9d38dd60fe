import type { MakeReasons } from '../../../model/reasons/make.js';
import type { Kind } from '../../../model/words.js';
import { conductorText } from '../../conductors.js';
import { list, quantity } from '../../figures.js';
import type { Sayings } from '../sayings.js';

type Values<C extends keyof MakeReasons> = MakeReasons[C];

const FIRST_DEVICES = {
  building: 'this building, on the position nearest to where the feeder comes in',
  system: 'the system that begins here, where its lights can be seen',
  generator: 'the generator, where its cable leaves, where its lights can be seen',
};

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
  'position/first-device': ({ ahead, of }) =>
    `${ahead ? 'Type 1, ahead of' : 'Behind'} the first overcurrent device of ${FIRST_DEVICES[of]}.`,
  'position/load': () => 'At the equipment, where its feeder comes in.',
  'position/feeder': () => 'On the load side of the feeder, on the position nearest to where it comes in.',
  'position/tower-base': () => 'At the base of the tower, where its lights can be seen.',
  'position/cable-leaves': () => 'At the equipment, where its cable leaves, where its lights can be seen.',
  'position/control-cable': () => 'At the equipment, where the control cable comes in.',
  'position/battery-bus': () =>
    'At the battery bus, behind the battery’s disconnect where there is one, so that it can be made dead.',
  'position/terminals': () => 'At the terminals of this port, where its lights can be seen.',
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
