import type {
  MeasuredPlace,
  MeasuredSource,
  MeasuredSupply,
  MeasureReasons,
} from '../../../model/reasons/measure.js';
import { list, quantity } from '../../figures.js';
import type { Sayings } from '../sayings.js';

const SUPPLIES: Readonly<Record<MeasuredSupply, string>> = {
  utility: ', on the utility',
  own: ', on an inverter or a generator alone',
  any: '',
};

const GROUNDED = {
  pole: 'this pole is grounded',
  neutral: 'N is grounded',
  phase: 'this phase is grounded',
  wire: 'this wire is grounded',
};

const NO_BAND = {
  impedance: {
    lines: 'no low figure: the system is tied to ground through an impedance, not solidly',
    neutral: 'N is tied to ground through an impedance: near 0 V in a sound system',
  },
  nothing: {
    lines: 'no low figure: the system isn’t solidly tied to ground',
    neutral: 'no low figure: N isn’t tied to ground',
  },
};

/** What a grounded conductor is called where its reading is told of. */
const CONDUCTORS = {
  pole: 'A grounded pole',
  neutral: 'N',
  phase: 'A grounded phase',
  wire: 'The grounded wire of a control circuit',
};

const SOURCES: Readonly<Record<MeasuredSource, string>> = {
  sun: 'An array',
  turbine: 'A turbine',
  both: 'An array beside a turbine',
  battery: 'A battery',
  control: 'A control circuit',
};

const ABOVE: Readonly<Record<MeasuredSource, string>> = {
  sun: 'more modules in series, other modules or a colder day',
  turbine: 'more speed, or another turbine',
  both: 'more modules in series or more speed',
  battery: 'more cells, or a higher charge',
  control: 'another supply',
};

type StateOfSources = MeasureReasons['measure-state/sources-on'];

/** What is on at the place itself; `tags`: what gives it its voltage, as one list; empty: nothing on the list, or too many. */
const SOURCES_ON: Readonly<Record<MeasuredPlace, (tags: string, values: StateOfSources) => string>> = {
  ac: (tags, { sources }) =>
    tags === ''
      ? 'what feeds this place on'
      : `${tags} on${sources.length > 1 ? ', as each reading says' : ''}`,
  sun: (tags) => `${tags === '' ? 'the array' : tags} in the sun and connected`,
  turbine: (tags, values) => `${tags === '' ? 'the turbine' : tags} turning under load${loadedBy(values)}`,
  both: (tags, values) =>
    `${tags === '' ? 'array and turbine' : tags} connected, in the sun and turning under load${loadedBy(values)}`,
  battery: (tags) => `${tags === '' ? 'the battery' : tags} connected`,
  control: () => 'the control supply on',
};

/** Without what loads it a turbine runs away: what that is, and what it needs, stays on. */
function loadedBy({ here, needs }: StateOfSources): string {
  return here.length === 0 ? '' : `: ${list([...here, ...needs])} on`;
}

/** An inverter without the supply that it keeps step with, or a controller without its battery, loads nothing. */
function keptWith(kept: readonly string[], one: boolean): string {
  return kept.length === 0 ? '' : `, and so ${list(kept)}, which ${one ? 'it needs' : 'they need'}`;
}

function sourcesOn(values: StateOfSources): string {
  const { of, sources, stops, loads, kept = [], off, more } = values;
  const loading = [
    ...loads,
    ...(more.loads ? ['every other converter that loads a turbine, with its battery or its supply'] : []),
  ];
  const rest = [...off, ...(more.off ? ['every other converter'] : [])];
  return [
    ...(stops.length === 0
      ? []
      : [
          `first stop ${list(stops)} (section 1), since what loads ${stops.length === 1 ? 'it' : 'them'} goes off`,
        ]),
    SOURCES_ON[of](list(sources), values),
    ...(loading.length === 0
      ? []
      : [
          `${list(loading)} left on, since ${loading.length === 1 ? 'it loads' : 'they load'} a turbine${keptWith(kept, loading.length === 1)}`,
        ]),
    ...(rest.length === 0 ? [] : [`${list(rest)} off`]),
  ].join('; ');
}

/** What is measured before a protector is connected, and what a reading means, in English. */
export const MEASURE: Sayings<MeasureReasons> = {
  'measure-state/sources-on': sourcesOn,
  'measure-state/control': () => 'the supply of the control circuit on',
  'measure-state/do-not-open': ({ turbines }) =>
    `Do not open or measure here until the maker’s voltage of ${list(turbines)} is known: no figure can be told before, and no meter chosen.`,
  'reading/full-sun': () => 'the string in full sun',
  'reading/turbine': () => 'the turbine, which changes with its speed',
  'reading/sun-and-turbine': () => 'the array and the turbine, which change with the sun and the speed',
  'reading/battery': () => 'the battery',
  'reading/grounded': ({ what }) => GROUNDED[what],
  'reading/neutral-to-earth': () => 'N to PE of a TT system',
  'reading/supply': ({ nominal, supply }) => `nominal ${quantity(nominal)}${SUPPLIES[supply]}`,
  'reading/either-leg': ({ nominal, highLeg, supply }) =>
    `nominal ${quantity(nominal)}, or ${quantity(highLeg)} if it is the high leg${SUPPLIES[supply]}`,
  'reading/no-band': ({ by, what }) => NO_BAND[by][what],
  'reading/floating-pole': () => 'no low figure: no pole is grounded',
  'reading/grounding-not-known': () => 'no low figure: which pole is grounded isn’t known',
  'reading/turbine-phases': () => 'the turbine under its load, by its speed',
  'reading/turbine-to-ground': () => 'no low figure: its phases float',
  'reading/control': ({ nominal }) =>
    nominal === null
      ? 'the control voltage, or nothing where it is switched off'
      : `${quantity(nominal)} nominal, or nothing where it is switched off`,
  'reading/not-known': () => 'not known: the AC system isn’t stated. Ask before you connect',
  'reading-below/array': () =>
    'An array below its figures: less than full sun, a string that is open or shaded, fewer modules, a shorted module.',
  'reading-below/battery': () =>
    'A battery below its figures: discharged too far, a failed cell, a battery of a lower voltage, its switch open.',
  'reading-below/utility': () =>
    'A line below its figures: a line or N is open, another tap or system, too long a line.',
  'reading-below/own-source': () =>
    'A line on an inverter or a generator alone below its figures: overloaded, slow, a line or N open, another system.',
  'reading-below/utility-delta': () =>
    'A line below its figures: a line is open, another tap or system, too long a line.',
  'reading-below/own-source-delta': () =>
    'A line on an inverter or a generator alone below its figures: overloaded, slow, a line open, another system.',
  'reading-above/grounded': ({ what }) =>
    `${CONDUCTORS[what]} above its figures: its ground is lost, or conductors are swapped.`,
  'reading-above/supply': () =>
    'A line above its figures: N is open, another tap or system, conductors swapped.',
  'reading-above/supply-delta': () => 'A line above its figures: another tap or system, conductors swapped.',
  'reading-above/source': ({ of }) => `${SOURCES[of]} above its figures: ${ABOVE[of]} than the plan knows.`,
  'reading-above/converter-bears': ({ tag }) =>
    `What leads to ${tag} above its figures: more than ${tag} bears.`,
  'ground-fault/lines': () =>
    'Lines of a system that isn’t solidly grounded: one near 0 V to ground and the others near line to line: ground fault, stop.',
  'ground-fault/neutral': () =>
    'N of a system that isn’t solidly grounded: to ground near the voltage of a line to N: ground fault on a line, stop.',
  'ground-fault/pair': ({ under, over }) =>
    `A floating pair: one pole under ${under} % and the other over ${over} % of pole to pole: ground fault, stop; both sinking to nothing is the meter.`,
  'reading-due/less-sun': () => 'In less sun: write it down, and measure again in full sun.',
  'reading-due/open-box': () =>
    'In less sun, or behind a rapid-shutdown box that is open: write it down, and measure again in full sun with the box closed.',
  'reading-due/turbine-still': () => 'Standing still: write it down, and measure again while it turns.',
  'meter/rated': ({ category, beside, ...own }) =>
    `Meter and leads: ${category}, rated for at least ${list([own, ...(beside ?? [])].map(ratedFor))}`,
  'clothing/settle-first': ({ practice, most, faultCurrent, known = null }) => {
    const least =
      known === null
        ? 'isn’t known'
        : `is at least ${quantity(known)}: not all that feeds this enclosure is known`;
    const current = faultCurrent === null ? least : `is ${quantity(faultCurrent)}, over ${quantity(most)}`;
    return `First of all settle shock and arc-flash protection (${SAFE_WORK[practice]}): the fault current here ${current}. Never open the enclosure live without it.`;
  },
  'clothing/as-usual': ({ practice }) =>
    `Never open the enclosure live without shock and arc-flash protection (${SAFE_WORK[practice]}).`,
};

/** `528 V AC`. */
function ratedFor({ volts, current }: Omit<MeasureReasons['meter/rated'], 'category' | 'beside'>): string {
  const kind = current === null ? '' : ` ${current.toUpperCase()}`;
  return volts === null
    ? `the most${kind} that may stand there, which isn’t known`
    : `${quantity(volts)}${kind}`;
}

const SAFE_WORK = { nec: 'NFPA 70E or local rules', iec: 'local rules for live work' };
