import type { Part } from '../../model/catalogue.js';
import type { FieldGuide } from '../../model/field-guide.js';
import type { PartField } from './catalogue-fields.js';

/** What a page tells of a column of the catalogue. */
export interface PartGuide extends FieldGuide {
  /** What a rule reads of it. */
  readonly reads: readonly (keyof Part)[];
}

const says = (
  reads: readonly (keyof Part)[] | keyof Part,
  means: string,
  example: string,
  unstated?: string,
): PartGuide => ({
  means,
  example,
  reads: typeof reads === 'string' ? [reads] : reads,
  ...(unstated === undefined ? {} : { unstated }),
});

/** Every column of the catalogue: what it is about, a cell of it, and what a blank one means. */
export const PART_GUIDE: { readonly [F in PartField]: PartGuide } = {
  part: says('part', 'the part number; each once', 'EXAMPLE-1', 'the row is left out'),
  maker: says('maker', 'the maker', 'Invented Works'),
  description: says('description', 'what papers call it', 'two-channel protector'),
  channels: says('channels', 'how many conductors it protects', '2', 'the row is left out'),
  mcov_ac: says(
    'mcovAc',
    'maximum continuous operating voltage on AC, conductor to ground',
    '150',
    'not for AC',
  ),
  mcov_dc: says(
    'mcovDc',
    'maximum continuous operating voltage on DC, conductor to ground',
    '75',
    'not for DC',
  ),
  up: says('up', 'the voltage that it limits a surge to, conductor to ground', '600', 'it fits nowhere'),
  up_basis: says('upBasis', 'what that figure is: a VPR to UL 1449, or Up to IEC 61643', 'VPR'),
  in_ka: says('nominalCurrent', 'nominal discharge current', '20'),
  imax_ka: says('maximumCurrent', 'maximum discharge current', '50'),
  iimp_ka: says('impulseCurrent', 'impulse current of a class T1 part', '12.5'),
  sccr_ka: says('sccr', 'short-circuit current rating on AC', '25'),
  sccr_dc_ka: says('sccrDc', 'short-circuit current rating on DC', '10'),
  type: says('type', 'type to UL 1449', '2'),
  iec_class: says('iecClass', 'class to IEC 61643', 'T2'),
  connection: says(
    'connection',
    'each conductor to ground, or lines to N and N to ground',
    '3+1',
    'to-ground',
  ),
  enclosure: says('enclosure', 'NEMA type of the housing', '4X', 'not for outdoors'),
  listed_for: says(
    'listedFor',
    'systems for which it is listed beside solidly grounded ones',
    'ungrounded; corner',
    'none',
  ),
  listing: says('listing', 'the standard that it is listed to', 'UL 1449 5th ed.'),
  listing_file: says('listingFile', 'the file of the listing', 'INVENTED-0000'),
  indicator: says('indicator', 'how it shows its state', 'light'),
  indicator_min_v: says('indicatorMinVoltage', 'the voltage from which on its light is lit', '60'),
  indicator_color: says('indicatorColor', 'the colour of its light', 'green'),
  leakage_ma: says('leakage', 'leakage current', '0.3'),
  lead_length: says(
    'leadLength',
    'line lead plus ground lead as installed',
    '0.5 m',
    '0.5 m (thresholds.leadLength of the settings)',
  ),
  lead_gauge: says(['leadGauge', 'leadDiameter', 'leadArea'], 'size of its leads', '10 AWG', '10 AWG'),
  overcurrent: says(
    'overcurrent',
    'the overcurrent protection that it needs, in words',
    'two-pole breaker, 20 A or less',
  ),
  overcurrent_a: says('overcurrentMost', 'the largest overcurrent device ahead of it', '20'),
  overcurrent_min_a: says('overcurrentLeast', 'the smallest overcurrent device ahead of it', '15'),
  overcurrent_device: says('overcurrentDevice', 'the device of its own that it needs', 'breaker', 'either'),
  in_npe_ka: says(
    'neutralNominalCurrent',
    'nominal discharge current of the path from N to ground of a 3+1 part',
    '20',
  ),
  iimp_npe_ka: says(
    'neutralImpulseCurrent',
    'impulse current of the path from N to ground of a 3+1 part',
    '50',
  ),
  lead_by_instructions: says('leadByInstructions', 'yes where its instructions size its leads', 'no'),
  wire_range: says(
    ['wireRange', 'wireRanges'],
    'the wires that its terminals take',
    '14 to 6 AWG Cu; 12 to 4 AWG Al',
  ),
  torque: says('torque', 'the torque of its terminals', '18 lb-in'),
  price: says('price', 'the price of one', '84.00'),
  currency: says('currency', 'the currency of that price', 'USD'),
  good_flag: says('goodFlag', 'how its flag looks while it is good', 'green'),
  used_flag: says('usedFlag', 'how its flag looks once it is used up', 'red'),
};
