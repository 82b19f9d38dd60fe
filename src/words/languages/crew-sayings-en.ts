import { ISOLATE } from '../reasons/en/isolate.js';
import { MEASURE } from '../reasons/en/measure.js';
import { list, neededVolts } from '../figures.js';
import type { CrewSayings } from './crew-note-words.js';
import { tagList } from '../tag-list.js';
import { portInWords } from '../port-words.js';
import type { MeasureReasons } from '../../model/reasons/measure.js';

const SAFE_WORK = { nec: 'NFPA 70E or local rules', iec: 'local rules for live work' };

type Sources = MeasureReasons['measure-state/sources-on'];

/** What is on at the place itself. */
function onText({ of, sources, here, needs }: Sources): string {
  const tags = tagList(sources);
  const loaded = here.length === 0 ? '' : `, ${list([...here, ...needs])} on`;
  switch (of) {
    case 'sun':
      return `On: ${tags === '' ? 'the array' : tags}, in the sun`;
    case 'turbine':
      return `On: ${tags === '' ? 'the turbine' : tags}, turning under load${loaded}`;
    case 'both':
      return `On: ${tags === '' ? 'array and turbine' : tags}, in the sun and turning under load${loaded}`;
    case 'control':
      return 'On: the control supply';
    case 'ac':
    case 'battery':
      return `On: ${tags === '' ? 'what feeds this place' : tags}`;
  }
}

/** Converters and turbines beside the place, each as it is while it is measured. */
function sourcesOn(values: Sources): string {
  const { stops, loads, kept = [], off, more } = values;
  const left = [
    ...loads,
    ...kept,
    ...(more.loads ? ['every other converter that loads a turbine, with its battery or its supply'] : []),
  ];
  const rest = [...off, ...(more.off ? ['every other converter'] : [])];
  return [
    ...(stops.length === 0 ? [] : [`First stop ${list(stops)}: isolation page.`]),
    `${onText(values)}.`,
    ...(left.length === 0 ? [] : [`Left on for a turbine: ${tagList(left)}.`]),
    ...(rest.length === 0 ? [] : [`Off: ${tagList(rest)}.`]),
  ].join(' ');
}

/** `528 V AC`. */
function ratedFor({ volts, current }: Omit<MeasureReasons['meter/rated'], 'category' | 'beside'>): string {
  const kind = current === null ? '' : ` ${current.toUpperCase()}`;
  return volts === null ? `the most${kind} there, not known` : `${neededVolts(volts.value)} V${kind}`;
}

/** What wiring notes and the isolation page say by code, in English. */
export const CREW_SAYINGS_EN: CrewSayings = {
  ...ISOLATE,
  ...MEASURE,
  'live/ahead-of-main': () => 'all of this place: it is ahead of the main disconnect',
  'live/line-side-of-service': () => 'the line side of the service, ahead of its main disconnect',
  'live/battery-terminals': () => 'the battery’s terminals, up to its first device',
  'live/array-side': () => 'in daylight all from the modules to the opened disconnect',
  'live/array-conductors': () => 'in daylight the conductors here, up to the opened disconnect',
  'live/turbine-side': () => 'all between the turbine and its opened disconnect, whenever it turns',
  'live/turbine-conductors': () => 'the turbine’s conductors here, whenever it turns',
  'live-who/utility-first': () =>
    'the utility makes the service dead first and the crew proves it; until then do not connect',
  'measure-state/sources-on': sourcesOn,
  'measure-state/control': () => 'On: the control supply.',
  'measure-state/do-not-open': ({ turbines }) =>
    `DO NOT OPEN OR MEASURE HERE until the maker’s voltage of ${list(turbines)} is known.`,
  'ground-fault/lines': () =>
    'One line near 0 V to ground, the others near line to line: ground fault, STOP.',
  'ground-fault/neutral': () => 'N to ground near the voltage of a line to N: ground fault, STOP.',
  'ground-fault/pair': ({ under, over }) =>
    `One pole under ${under} %, the other over ${over} % of + to −: ground fault, STOP; both sinking to nothing is the meter.`,
  'reading-due/less-sun': () => 'Less sun, less volts: write them down, measure again in full sun.',
  'reading-due/open-box': () =>
    'Less sun, or the rapid-shutdown box open: write it down, measure again in full sun, box closed.',
  'reading-due/turbine-still': () => 'Standing still: write it down, measure again while it turns.',
  'meter/rated': ({ category, beside, ...own }) =>
    `Meter ${category}, at least ${list([own, ...(beside ?? [])].map(ratedFor))}.`,
  'clothing/settle-first': ({ practice }) =>
    `FIRST settle shock and arc-flash protection (${SAFE_WORK[practice]}).`,
  'clothing/as-usual': ({ practice }) => `Shock and arc-flash protection (${SAFE_WORK[practice]}).`,
  'ground-lead/bonded-bar': () => 'the bonded bar of the service equipment',
  'ground-lead/electrode-bar': () => 'the bar where the grounding electrode conductor lands',
  'ground-lead/equipment-ground-bar': () =>
    'the equipment-ground bar here, not the neutral bar, not a rod of its own',
  'ground-lead/equipment-ground-terminal': () =>
    'the equipment-ground bar or terminal here, not a rod that isn’t bonded',
  'ground-lead/main-earthing-terminal': () =>
    'the main earthing terminal or protective earth bar, not the neutral bar',
  'ground-lead/protective-earth-bar': () =>
    'the protective earth bar here, not the neutral bar, not an electrode of its own',
  'ground-lead/protective-earth-terminal': () =>
    'the protective earth bar or terminal here, not an electrode that isn’t bonded',
  'ground-terminal/fit': () => 'No ground bar here? Fit a ground terminal',
  'ground-terminal/lead': () => 'the ground lead',
  'ground-terminal/conductor': ({ practice }) =>
    practice === 'nec' ? 'the cable’s equipment grounding conductor' : 'the cable’s protective conductor',
  'ground-terminal/electrode': ({ of }) =>
    of === 'tower'
      ? 'the bond to the tower’s electrode'
      : `the bond to the ${{ circuit: 'equipment', frame: 'array frame', casing: 'casing' }[of]}’s electrode, if any`,
  'ground-terminal/never': () => 'Never an electrode alone',
  'ground-terminal/ask': ({ practice }) =>
    `${practice === 'nec' ? 'No such conductor' : 'No protective conductor'} in the cable: stop, ask`,
  'position/ahead-of-main': () =>
    'Ahead of the main breaker, nearest to the feed; at the meter only with the utility’s consent.',
  'position/service': () => 'Behind the main breaker, nearest to the feed.',
  'position/first-device': ({ ahead }) =>
    `${ahead ? 'Ahead of' : 'Behind'} the first overcurrent device, lights in view.`,
  'position/load': () => 'At the equipment, where its feeder comes in.',
  'position/feeder': () => 'Load side of the feeder, nearest to where it comes in.',
  'position/tower-base': () => 'Base of the tower, lights in view.',
  'position/cable-leaves': () => 'Where the cable leaves, lights in view.',
  'position/control-cable': () => 'Where the control cable comes in.',
  'position/battery-bus': () => 'At the battery bus, behind the battery’s disconnect.',
  'position/terminals': () => 'At these terminals, lights in view.',
  'wiring-note/current-not-known': () => 'Whether AC or DC comes here is not known: ask before you connect.',
  'wiring-note/stay-charged': ({ tags }) => `DC terminals of ${tagList(tags)} stay charged: wait, then test.`,
  'wiring-note/thin-lead': ({ least }) => `Ground lead at least ${least.gauge}.`,
  'wiring-note/grounded-conductor': ({ conductor }) =>
    `${conductor === 'positive' ? 'Positive' : conductor === 'negative' ? 'Negative' : conductor}: colour not sure (solidly grounded: white or gray, and no fuse in it); go by the reading.`,
  'neutral/no-channel-left': () => 'N to ground is not protected here.',
  'overcurrent-note/straight-through': ({ conductor }) =>
    `${conductor} goes straight through: no fuse, no breaker.`,
  'overcurrent-note/single-and-three-phase': () => 'The breaker is marked for one and three phases.',
  'overcurrent-note/poles-in-words': ({ named, poles }) =>
    `The catalogue names ${named === 1 ? '1 pole' : `${named} poles`}, here it is ${poles}: ask the maker of the part.`,
  'overcurrent-note/one-for-each-port': ({ ports }) =>
    `A device each: ${list(ports.map(portInWords))}. Never two wires under one terminal.`,
  'overcurrent-note/one-wire-a-terminal': ({ conductor }) =>
    `${conductor}: one lead from the device, parted at a listed connector; never two wires under one terminal.`,
  'overcurrent-note/battery-gas': ({ batteries }) =>
    `BATTERY GAS of ${tagList(batteries)}: its device can spark. Mount it only where the battery’s maker says no gas gathers; else ask.`,
  'reading-below/array': () => 'Array low: less than full sun, a string open or shaded, fewer modules.',
  'reading-below/battery': () =>
    'Battery low: discharged too far, a failed cell, another battery, a switch open.',
  'reading-below/utility': () => 'Line low: a line or N open, another tap or system, too long a line.',
  'reading-below/own-source': () =>
    'Line low on an inverter or generator: overloaded, slow, a line or N open, another system.',
  'reading-above/supply': () => 'Line high: N open, another tap or system, conductors swapped.',
  'reading-below/utility-delta': () => 'Line low: a line open, another tap or system, too long a line.',
  'reading-below/own-source-delta': () =>
    'Line low on an inverter or generator: overloaded, slow, a line open, another system.',
  'reading-above/supply-delta': () => 'Line high: another tap or system, conductors swapped.',
  'reading-above/converter-bears': ({ tag }) => `High at ${tag}: more than ${tag} bears.`,
};
