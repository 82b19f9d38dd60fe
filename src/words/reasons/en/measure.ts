import type { MeasuredSource, MeasuredSupply, MeasureReasons } from '../../../model/reasons/measure.js';
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

const ABOVE: Readonly<Record<MeasuredSource, string>> = {
  sun: 'more modules in series, other modules or a colder day',
  turbine: 'more speed, or another turbine',
  both: 'more modules in series or more speed',
  battery: 'more cells, or a higher charge',
  control: 'another supply',
};

/** What is measured before a protector is connected, and what a reading means, in English. */
export const MEASURE: Sayings<MeasureReasons> = {
  'reading/full-sun': () => 'the string in full sun',
  'reading/turbine': () => 'the turbine, which changes with its speed',
  'reading/sun-and-turbine': () => 'the array and the turbine, which change with the sun and the speed',
  'reading/battery': () => 'the battery',
  'reading/grounded': ({ what }) => GROUNDED[what],
  'reading/neutral-to-earth': () => 'N to PE of a TT system',
  'reading/supply': ({ nominal, supply }) => `nominal ${quantity(nominal)}${SUPPLIES[supply]}`,
  'reading/either-leg': ({ nominal, highLeg, supply }) =>
    `nominal ${quantity(nominal)}, or ${quantity(highLeg)} if it is the high leg${SUPPLIES[supply]}`,
  'reading/no-band': () => 'no low figure: the system isn’t tied to ground',
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
    'Below: less than full sun, a string that is open or shaded, fewer modules, a shorted module.',
  'reading-below/battery': () =>
    'Below: discharged too far, a failed cell, a battery of a lower voltage, its switch open.',
  'reading-below/utility': () => 'Below: a line or N is open, another tap or system, too long a line.',
  'reading-below/own-source': () => 'Below: overloaded, slow, a line or N open, another system.',
  'reading-above/grounded': () => 'Above: its ground is lost, or conductors are swapped.',
  'reading-above/supply': () => 'Above: N is open, another tap or system, conductors swapped.',
  'reading-above/source': ({ of }) => `Above: ${ABOVE[of]} than the plan knows.`,
  'reading-above/converter-bears': ({ tag }) => `Above: more than ${tag} bears.`,
  'ground-fault/lines': () => 'One line near 0 V and the others near line to line: ground fault, stop.',
  'ground-fault/pair': ({ under, over }) =>
    `One pole under ${under} % and the other over ${over} % of pole to pole: ground fault, stop; both sinking to nothing is the meter.`,
  'reading-due/less-sun': () => 'In less sun: write it down, and measure again in full sun.',
  'reading-due/open-box': () =>
    'In less sun, or behind a rapid-shutdown box that is open: write it down, and measure again in full sun with the box closed.',
  'reading-due/turbine-still': () => 'Standing still: write it down, and measure again while it turns.',
  'meter/rated': ({ category, beside, ...own }) =>
    `Meter and leads: ${category}, rated for at least ${list([own, ...(beside ?? [])].map(ratedFor))}`,
  'clothing/settle-first': ({ practice, most, faultCurrent }) => {
    const current =
      faultCurrent === null ? 'isn’t known' : `is ${quantity(faultCurrent)}, over ${quantity(most)}`;
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
