import { FIELD_NAMES } from '../../model/fields.js';
import type { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { MessageKind } from '../../model/message.js';
import type { PlannedSettled } from '../../model/plan.js';
import { say } from '../reasons/say.js';
import { NOT_KNOWN, type Assumption, type Decides } from './assumption-kit.js';

/** A fact that nobody states and what it was taken for; `value`: as a cell has it, or a code of what isn't known. */
interface Taken {
  readonly field: string;
  readonly value: string;
  readonly tags: readonly string[];
  /** True where the wires of a control circuit are meant. */
  readonly ofControl: boolean;
}

type DefaultUsed = NonNullable<(typeof PLACE_MESSAGES.defaultsUsed)['takes']>;
type Words = readonly [
  decides: Decides,
  says: Readonly<Record<string, string>> | ((value: string) => string),
];

const OCCUPANCY: Readonly<Record<string, string>> = {
  dwelling: 'a dwelling unit',
  sleeping: 'sleeping rooms',
  other: 'neither dwelling unit nor sleeping rooms',
};
const holds = (value: string): string => OCCUPANCY[value] ?? value;

/** What fields were taken for, by value; a value that has no words here is told as it is. */
const WORDS: Readonly<Record<string, Words>> = {
  basis: [
    'whether a clause asks',
    (value) =>
      value === 'iec' ? 'Standards in force: IEC 60364' : `Code in force: NEC ${value.slice('nec-'.length)}`,
  ],
  occupancy: ['whether a clause asks', (value) => `Building with ${holds(value)}`],
  building_occupancy: ['whether a clause asks', (value) => `Building with ${holds(value)}`],
  earthing: ['a voltage', (value) => `Earthing system ${value}`],
  lightning_protection: [
    'whether it protects',
    {
      none: 'No lightning protection system',
      isolated: 'Lightning protection system, isolated from the installation',
      attached: 'Lightning protection system, attached to the structure',
    },
  ],
  surroundings: ['whether a clause asks', (value) => `Surroundings ${value}`],
  lv_overhead_km: ['whether a clause asks', (value) => `Low-voltage overhead line of ${value}`],
  flash_density: ['whether a clause asks', (value) => `Ground flash density ${value}`],
  ahead_of_disconnect: [
    'a device',
    {
      no: 'On the load side of the first disconnect of the service, building or system',
      yes: 'Ahead of the first disconnect of the service, building or system',
    },
  ],
  outdoors: ['the rest', { yes: 'Outdoors', no: 'Indoors' }],
  module_technology: [
    'a voltage',
    (value) => `Modules of ${value === 'crystalline' ? 'crystalline silicon' : value}`,
  ],
  isolated: [
    'a voltage',
    {
      yes: 'Separately derived system behind the transformer',
      no: 'Autotransformer: no separate system behind it',
    },
  ],
  dc_inputs: ['whether it protects', (value) => `${value} DC input${value === '1' ? '' : 's'}`],
  system_grounding: [
    'a voltage',
    {
      solid: 'AC system solidly grounded',
      none: 'AC system ungrounded',
      corner: 'AC system corner-grounded',
      impedance: 'AC system impedance-grounded',
    },
  ],
  dc_grounding: [
    'a voltage',
    {
      floating: 'DC circuits ungrounded, no pole bonded',
      negative: 'DC negative grounded',
      positive: 'DC positive grounded',
      'not known': 'DC circuits: which pole is grounded not known',
    },
  ],
  n_pe_link: [
    'the rest',
    { yes: 'Neutral bonded to ground', no: 'Neutral not bonded to ground at this place itself' },
  ],
  impulse_withstand: [
    'whether it protects',
    (value) =>
      `Impulse withstand ${value === 'by category' ? 'by overvoltage category, IEC 60664-1 Table F.1' : value}`,
  ],
  backfeed_a: ['a device', () => 'No current sent back into the DC inputs'],
  worth_protecting: ['the rest', { yes: 'Worth protecting', no: 'Nothing there worth protecting' }],
};

/** What is said otherwise in the words of the IEC. */
const UNDER_IEC: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  system_grounding: {
    solid: 'AC system directly earthed',
    none: 'AC system unearthed',
    corner: 'AC system corner-earthed',
    impedance: 'AC system impedance-earthed',
  },
  dc_grounding: {
    floating: 'DC circuits unearthed, no pole bonded',
    negative: 'DC negative earthed',
    positive: 'DC positive earthed',
    'not known': 'DC circuits: which pole is earthed not known',
  },
  n_pe_link: { yes: 'Neutral bonded to earth', no: 'Neutral not bonded to earth at this place itself' },
};

/** Defaults that decide nothing a reviewer acts on: what is shown there was planned. */
const OF_OFFICE: ReadonlySet<string> = new Set(['worth_protecting', 'flash_density']);

const CONTROL = {
  decides: 'the rest',
  says: 'Control circuit: grounding of its wires not known',
  underIec: 'Control circuit: earthing of its wires not known',
} as const;

function assumptionOf({ field, value, tags, ofControl }: Taken): Assumption | 'office' {
  if (OF_OFFICE.has(field)) return 'office';
  const fact = factOf(field, value);
  if (ofControl) return { ...CONTROL, tags, at: [], ...fact };
  const words = WORDS[field];
  if (!words) return 'office';
  const [decides, says] = words;
  const underIec = UNDER_IEC[field]?.[value];
  return {
    decides,
    says: typeof says === 'function' ? says(value) : (says[value] ?? value),
    ...(underIec !== undefined && { underIec }),
    tags,
    at: [],
    ...fact,
  };
}

/** What a default stood in for, as a fact of the list. */
function factOf(name: string, value: string): Pick<Assumption, 'fact'> {
  const field = FIELD_NAMES.find((one) => one === name);
  return field === undefined ? {} : { fact: { field, value } };
}

/** Values of defaults that are no words of a cell. */
const VALUES: Readonly<Record<string, string>> = {
  'default-value/not-known': NOT_KNOWN,
  'default-value/by-category': 'by category',
  'default-value/no-backfeed': '0 A',
};

/** A default that decided something, as an assumption. */
export function defaultAssumed({ field, value, rows, why }: DefaultUsed): Assumption | 'office' {
  const ofControl = why?.code === 'default-decides/recorded-lights';
  const text = typeof value === 'string' ? value : (VALUES[value.code] ?? say(value));
  return assumptionOf({ field, value: text, tags: rows, ofControl });
}

/** What the company settled in place of a default, as an assumption. */
export function settledAssumed({ field, value, rows }: PlannedSettled): Assumption | 'office' {
  return assumptionOf({ field, value, tags: rows, ofControl: false });
}

/** The kind of item that `defaultAssumed` is for. */
export type DefaultKind = MessageKind<DefaultUsed>;
