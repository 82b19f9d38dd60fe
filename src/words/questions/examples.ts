import type { Field } from '../../model/list.js';
import type { Kind } from '../../model/words.js';

/** Fields that no answer can state: what a row is called, and the job that it is of. */
type Named = 'job' | 'tag';

/** An answer to each field that would be taken. What it is about is invented: it shows how to write, not what. */
const EXAMPLES: { readonly [F in Exclude<Field, Named>]: string } = {
  job_name: 'Alder Lane barn',
  address: '1 Alder Lane',
  occupancy: 'dwelling',
  revision: '1',
  owner: 'R. Example',
  parcel: '12-345',
  permit_number: '2026-001',
  amendments: 'none known',
  drawn_by: 'R. Example',
  checked_by: 'S. Example',
  crew_language: 'en',
  owner_language: 'en',
  basis: 'nec-2023',
  earthing: 'TN',
  lowest_temp: '10 F',
  lowest_temp_source: 'weather station of the county',
  flash_density: '2.5',
  thunderstorm_days: '25',
  lv_overhead_km: '0.5 km',
  lv_underground_km: '0.5 km',
  hv_overhead_km: '0.5 km',
  hv_underground_km: '0.5 km',
  surroundings: 'rural',
  lightning_protection: 'isolated',
  kind: 'panel',
  quantity: '1',
  maker: 'Exampleworks',
  model: 'EX-1',
  description: 'any text',
  connects_to: 'TAG',
  run_length: '100 ft',
  place: 'House / garage',
  building: 'House',
  outdoors: 'yes',
  mounting: 'roof',
  building_occupancy: 'other',
  worth_protecting: 'yes',
  protect: 'yes',
  existing: 'EX-1',
  dc_inputs: '2',
  max_dc_voltage: '600 V',
  isolated: 'yes',
  kva: '45 kVA',
  impedance_percent: '4 %',
  rating_a: '200 A',
  backfeed_a: '0 A',
  parallel: 'yes',
  rapid_shutdown: 'yes',
  neutral_switched: 'no',
  modules: '16',
  string: '1',
  voc_stc: '49.5 V',
  isc_stc: '11 A',
  modules_in_series: '10',
  strings_in_parallel: '2',
  voc_coefficient: '-0.27 %/C',
  cells: '16',
  module_technology: 'crystalline',
  optimizers: 'no',
  dc_grounding: 'negative',
  battery_voltage: '48 V',
  battery_chemistry: 'lfp',
  ac_in: '120/240',
  ac_in_2: '120/240',
  ac_out: '120/240',
  system_grounding: 'solid',
  n_pe_link: 'yes',
  output: 'three-phase',
  open_circuit_voltage: '170 V',
  poles: '12',
  rpm: '400',
  control_voltage: '24 V dc',
  supply: 'regulated',
  fault_current: '10 kA',
  impulse_withstand: '2.5 kV',
  overvoltage_category: 'III',
  ahead_of_disconnect: 'no',
  lead_length: '0.4 m',
  protector: 'EX-1',
  serial: 'EX-0001',
};

/**
 * An answer that would be taken.
 * @param field a list may state
 * @param kind of the row, where it is known
 * @returns undefined for a field that no answer can state
 */
export function exampleOf(field: Field, kind: Kind | undefined): string | undefined {
  if (field === 'job' || field === 'tag') return undefined;
  return field === 'mounting' && kind === 'panel' ? 'surface' : EXAMPLES[field];
}
