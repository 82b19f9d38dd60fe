import type { Field } from './list.js';
import { BASES, NEC_CYCLES } from './editions.js';
import {
  AC_SYSTEMS,
  DC_GROUNDINGS,
  EARTHINGS,
  KINDS,
  LIGHTNING_PROTECTIONS,
  OCCUPANCIES,
  OVERVOLTAGE_CATEGORIES,
  SYSTEM_GROUNDINGS,
} from './words.js';

/** How the cell of a field is read. */
export type FieldType =
  | 'text'
  | 'yesno'
  | 'count'
  | 'number'
  | 'voltage'
  | 'current'
  | 'length'
  | 'lengths'
  | 'temperature'
  | 'kilometres'
  | 'coefficient'
  | 'connection'
  | 'control-voltage'
  | 'chemistry'
  | 'mounting'
  | { readonly words: readonly string[] };

/** What is known about a field: whether it is of the job or of the row, its type, what to write in it, and who can supply it. */
export interface FieldInfo {
  readonly of: 'job' | 'row';
  readonly type: FieldType;
  /** What a cell may hold, in words, for messages. */
  readonly expected: string;
  readonly who: 'office' | 'designer' | 'installer' | 'owner' | 'utility' | 'maker';
}

const row = (type: FieldType, expected: string, who: FieldInfo['who'] = 'designer'): FieldInfo => ({
  of: 'row',
  type,
  expected,
  who,
});
const job = (type: FieldType, expected: string, who: FieldInfo['who'] = 'designer'): FieldInfo => ({
  of: 'job',
  type,
  expected,
  who,
});
const words = (list: readonly string[]): FieldType => ({ words: list });
const acUse = words([...AC_SYSTEMS, 'unused']);
const acExpected = `an AC system (${AC_SYSTEMS.join(', ')}) or unused`;

/** Every field of an equipment list, in the order of the contract. */
export const FIELDS: { readonly [F in Field]: FieldInfo } = {
  job: job('text', 'the id of the job', 'office'),
  job_name: job('text', 'the name of the job', 'office'),
  address: job('text', 'the address of the site', 'office'),
  occupancy: job(words(OCCUPANCIES), 'dwelling, sleeping or other', 'office'),
  revision: job('text', 'the revision of the pack', 'office'),
  owner: job('text', 'the name of the owner', 'office'),
  parcel: job('text', 'the number of the parcel', 'office'),
  permit_number: job('text', 'the number of the permit', 'office'),
  amendments: job('text', 'the local amendments to the code', 'office'),
  drawn_by: job('text', 'who drew the permit sheets', 'office'),
  checked_by: job('text', 'who checked the permit sheets', 'office'),
  crew_language: job('text', 'a language code, such as en', 'office'),
  owner_language: job('text', 'a language code, such as en', 'office'),
  basis: job(words(BASES), `${NEC_CYCLES.join(', ')} or iec`, 'office'),
  earthing: job(words(EARTHINGS), 'TN, TT or IT', 'utility'),
  lowest_temp: job('temperature', 'the lowest expected ambient temperature, such as -12 C or 10 F'),
  lowest_temp_source: job('text', 'where the lowest temperature comes from'),
  flash_density: job('number', 'flashes per km2 and year, such as 2.5'),
  thunderstorm_days: job('number', 'thunderstorm days a year, such as 25'),
  lv_overhead_km: job('kilometres', 'km of low-voltage overhead line', 'utility'),
  lv_underground_km: job('kilometres', 'km of low-voltage cable', 'utility'),
  hv_overhead_km: job('kilometres', 'km of high-voltage overhead line', 'utility'),
  hv_underground_km: job('kilometres', 'km of high-voltage cable', 'utility'),
  surroundings: job(words(['rural', 'urban']), 'rural or urban', 'office'),
  lightning_protection: job(words(LIGHTNING_PROTECTIONS), 'none, isolated or attached', 'owner'),
  tag: row('text', 'a tag that no other row of the job has'),
  kind: row(words(KINDS), `one of ${KINDS.join(', ')}`),
  quantity: row('count', 'a whole number, 1 or more'),
  maker: row('text', 'the maker'),
  model: row('text', 'the model'),
  description: row('text', 'any text'),
  connects_to: row('connection', 'the tag of another row: TAG, TAG/2 or TAG/1+2; several as A; B'),
  run_length: row(
    'lengths',
    'a length, such as 100 ft or 30 m; one for each row that connects_to names, or one for all',
  ),
  place: row('text', 'BUILDING / ROOM, or one of them'),
  building: row('text', 'the name of the building'),
  outdoors: row('yesno', 'yes or no'),
  mounting: row('mounting', 'roof or ground; of a panel, recessed or surface'),
  building_occupancy: row(words(OCCUPANCIES), 'dwelling, sleeping or other', 'office'),
  worth_protecting: row('yesno', 'yes or no', 'owner'),
  protect: row('yesno', 'yes or no'),
  existing: row('text', 'the part that is there already', 'installer'),
  dc_inputs: row('count', 'the number of independent DC inputs', 'maker'),
  max_dc_voltage: row('voltage', 'the highest DC voltage that an input bears, such as 600 V', 'maker'),
  isolated: row('yesno', 'yes or no', 'maker'),
  kva: row('number', 'the rated power in kVA, such as 45 kVA', 'maker'),
  impedance_percent: row('number', 'the impedance in per cent, such as 4 %', 'maker'),
  rating_a: row('current', 'the rating of the main, bus or branch device there, such as 200 A'),
  backfeed_a: row('current', 'the current that the converter can send back into its DC input, A', 'maker'),
  parallel: row('yesno', 'yes or no'),
  rapid_shutdown: row('yesno', 'yes or no'),
  neutral_switched: row('yesno', 'yes or no'),
  modules: row('count', 'the number of modules that the array has in all'),
  string: row('text', 'the index of the string, such as 1'),
  voc_stc: row('voltage', 'the open-circuit voltage of one module at STC, such as 49.5 V', 'maker'),
  isc_stc: row('current', 'the short-circuit current of one module at STC, such as 11 A', 'maker'),
  modules_in_series: row('count', 'the number of modules in one string'),
  strings_in_parallel: row('count', 'the number of strings in parallel'),
  voc_coefficient: row(
    'coefficient',
    'a negative figure with its unit, such as -0.27 %/C, -0.13 V/C or -2.1 mV/cell/C',
    'maker',
  ),
  cells: row('count', 'the number of cells in series', 'maker'),
  module_technology: row('text', 'crystalline, or another technology', 'maker'),
  optimizers: row('yesno', 'yes or no'),
  dc_grounding: row(words(DC_GROUNDINGS), 'negative, positive or floating'),
  battery_voltage: row('voltage', 'the nominal voltage, such as 48 V'),
  battery_chemistry: row('chemistry', 'lead-acid, lfp or nicd', 'maker'),
  ac_in: row(acUse, acExpected),
  ac_in_2: row(acUse, acExpected),
  ac_out: row(acUse, acExpected),
  system_grounding: row(words(SYSTEM_GROUNDINGS), 'solid, none, corner or impedance'),
  n_pe_link: row('yesno', 'yes or no'),
  output: row(words(['three-phase', 'dc']), 'three-phase or dc', 'maker'),
  open_circuit_voltage: row('voltage', 'the highest open-circuit voltage, such as 170 V', 'maker'),
  poles: row('count', 'the number of poles of the generator', 'maker'),
  rpm: row('number', 'turns a minute', 'maker'),
  control_voltage: row('control-voltage', 'volts and kind of current, such as 24 V dc or 24 V ac'),
  supply: row('text', 'regulated, or nothing', 'maker'),
  fault_current: row('current', 'the available fault current, such as 10 kA', 'utility'),
  impulse_withstand: row('voltage', 'the rated impulse withstand voltage, such as 2.5 kV', 'maker'),
  overvoltage_category: row(words(OVERVOLTAGE_CATEGORIES), 'I, II, III or IV', 'maker'),
  ahead_of_disconnect: row('yesno', 'yes or no', 'installer'),
  lead_length: row('length', 'the total length of line lead and ground lead, such as 0.4 m', 'installer'),
  protector: row('text', 'a part of the catalogue', 'office'),
  serial: row('text', 'the serial number', 'installer'),
};

/** The names of all fields, in the order of the contract. */
export const FIELD_NAMES = Object.keys(FIELDS) as readonly Field[];
