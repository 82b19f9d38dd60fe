import { OVERCURRENT_DEVICES } from '../../model/catalogue.js';
import type { Dimension } from '../cell/units.js';
import type { Vocabulary } from '../table/headings.js';

/** How a column of the catalogue is read; `figure` with the factor of a bare number into our unit. */
export type PartFieldType =
  | { readonly is: 'text' }
  | { readonly is: 'count' }
  | { readonly is: 'figure'; readonly dimension: Dimension | null; readonly bare: number }
  | { readonly is: 'words'; readonly words: readonly string[]; readonly prefix: RegExp | null }
  | { readonly is: 'several'; readonly words: readonly string[] }
  | { readonly is: 'gauge' }
  | { readonly is: 'yes-no' };

export interface PartFieldInfo {
  readonly type: PartFieldType;
  readonly expected: string;
  /** A cell that can't be understood leaves the part out: a blank would mean something else. */
  readonly decides: boolean;
}

const text = (expected: string): PartFieldInfo => ({ type: { is: 'text' }, expected, decides: false });
const figure = (
  dimension: Dimension | null,
  bare: number,
  expected: string,
  decides = true,
): PartFieldInfo => ({
  type: { is: 'figure', dimension, bare },
  expected,
  decides,
});
const words = (list: readonly string[], prefix: RegExp | null = null): PartFieldInfo => ({
  type: { is: 'words', words: list, prefix },
  expected: list.join(', '),
  decides: true,
});

/** Every column of the catalogue, in the order of the contract; a bare figure is V, kA, mA or m as the heading's name says. */
export const PART_FIELDS = {
  part: text('the part number'),
  maker: text('the maker'),
  description: text('any text'),
  channels: { type: { is: 'count' }, expected: 'a whole number, 1 or more', decides: true },
  mcov_ac: figure('voltage', 1, 'V, conductor to ground; blank: not for AC'),
  mcov_dc: figure('voltage', 1, 'V, conductor to ground; blank: not for DC'),
  up: figure('voltage', 1, 'V, conductor to ground'),
  up_basis: words(['VPR', 'Up']),
  in_ka: figure('current', 1000, 'kA'),
  imax_ka: figure('current', 1000, 'kA'),
  iimp_ka: figure('current', 1000, 'kA'),
  sccr_ka: figure('current', 1000, 'kA'),
  sccr_dc_ka: figure('current', 1000, 'kA'),
  type: words(['1', '2', '3'], /^type-?/),
  iec_class: words(['T1', 'T2', 'T3']),
  connection: words(['to-ground', '3+1']),
  enclosure: text('a NEMA type, such as 4X'),
  listed_for: {
    type: { is: 'several', words: ['ungrounded', 'impedance', 'corner'] },
    expected: 'ungrounded, impedance, corner; several joined by ;',
    decides: true,
  },
  listing: text('the standard that it is listed to'),
  listing_file: text('the file of the listing'),
  indicator: words(['light', 'flag', 'none']),
  indicator_min_v: figure('voltage', 1, 'V below which the light stays dark'),
  indicator_color: text('the colour of the light'),
  leakage_ma: figure('current', 0.001, 'mA', false),
  lead_length: figure('length', 1, 'the total length of line lead and ground lead, such as 0.4 m'),
  lead_gauge: {
    type: { is: 'gauge' },
    expected: 'a wire size with its unit, such as 10 AWG or 6 mm2',
    decides: true,
  },
  overcurrent: text('the overcurrent protection that it needs'),
  overcurrent_a: figure('current', 1, 'A, of the largest overcurrent device ahead of it'),
  overcurrent_min_a: figure('current', 1, 'A, of the smallest overcurrent device ahead of it'),
  overcurrent_device: words(OVERCURRENT_DEVICES),
  in_npe_ka: figure('current', 1000, 'kA, of the path from neutral to ground of a 3+1 part'),
  iimp_npe_ka: figure('current', 1000, 'kA, of the path from neutral to ground of a 3+1 part'),
  lead_by_instructions: { type: { is: 'yes-no' }, expected: 'yes or no', decides: true },
  wire_range: text('the wires that its terminals take, such as 14 to 6 AWG Cu; a further metal after ;'),
  torque: text('the torque of its terminals'),
  price: figure(null, 1, 'a price, figures only', false),
  currency: text('the currency of the price'),
} as const satisfies { readonly [name: string]: PartFieldInfo };

export type PartField = keyof typeof PART_FIELDS;
const PART_FIELD_NAMES = Object.keys(PART_FIELDS) as readonly PartField[];

/** Terms of the trade for the columns of a catalogue. */
const PART_ALIASES: { readonly [F in PartField]?: readonly string[] } = {
  part: ['part no', 'part number', 'sku', 'order number'],
  maker: ['manufacturer', 'make', 'mfr'],
  description: ['desc'],
  channels: ['number of channels', 'no of channels'],
  mcov_ac: ['uc ac', 'mcov (ac)'],
  mcov_dc: ['uc dc', 'ucpv', 'mcov (dc)'],
  up: ['vpr or up', 'protection level', 'voltage protection level'],
  in_ka: ['in', 'nominal discharge current'],
  imax_ka: ['imax', 'maximum discharge current'],
  iimp_ka: ['iimp', 'impulse current'],
  sccr_ka: ['sccr', 'short circuit current rating'],
  sccr_dc_ka: ['sccr dc', 'dc sccr'],
  type: ['spd type', 'ul type'],
  iec_class: ['iec type', 'test class'],
  enclosure: ['nema', 'nema type', 'enclosure type'],
  indicator_min_v: ['indicator min voltage'],
  indicator_color: ['indicator colour', 'light color', 'light colour'],
  leakage_ma: ['leakage', 'leakage current'],
  lead_gauge: ['lead size', 'lead awg'],
  overcurrent: ['overcurrent protection', 'ocpd'],
  overcurrent_a: ['max overcurrent', 'max overcurrent device', 'max ocpd'],
  overcurrent_min_a: ['min overcurrent', 'min overcurrent device', 'min ocpd'],
  overcurrent_device: ['overcurrent device type', 'ocpd type'],
  lead_by_instructions: ['leads by instructions'],
  wire_range: ['terminal wire range', 'wire sizes'],
  in_npe_ka: ['in n-pe', 'in (n-pe)'],
  iimp_npe_ka: ['iimp n-pe', 'iimp (n-pe)'],
  price: ['unit price', 'cost'],
};

/** The headings of a catalogue. */
export const CATALOGUE_VOCABULARY: Vocabulary<PartField> = {
  fields: PART_FIELD_NAMES,
  // Neither says whether it is of AC or of DC.
  doubtful: (field) => (field === 'mcov_ac' ? ['mcov', 'uc'] : []),
  aliases: (field) => PART_ALIASES[field] ?? [],
  dimension: (field) => {
    const { type } = PART_FIELDS[field];
    if (type.is === 'figure') return type.dimension;
    return type.is === 'gauge' ? 'area' : null;
  },
  identity: ['part', 'channels', 'mcov_ac', 'mcov_dc', 'up'],
};
