import type { Field } from './list.js';

/** What a page tells of a field beside how its cell is read. */
export interface FieldGuide {
  /** Of what it is, and what it says. */
  readonly means: string;
  /** A cell that is taken as it stands; invented. */
  readonly example: string;
  /** What holds where nobody states it; absent: nothing is taken for granted. */
  readonly unstated?: string;
}

const says = (means: string, example: string, unstated?: string): FieldGuide =>
  unstated === undefined ? { means, example } : { means, example, unstated };

const MODULE = 'of one module at STC, by its data sheet';

/** Every field of an equipment list: what it is about, a cell of it, and its default. */
export const FIELD_GUIDE: { readonly [F in Field]: FieldGuide } = {
  job: says('the job that the row belongs to', 'J-1', 'the name of the file without its ending'),
  job_name: says('the name of the job', 'Sedge cottage'),
  address: says('where it is', '1 Invented Lane'),
  occupancy: says('what the building is', 'dwelling', 'dwelling, to confirm'),
  revision: says('the revision of the pack', 'B'),
  owner: says('for the title strip of permit sheets', 'A. Example'),
  parcel: says('for the title strip of permit sheets', 'INVENTED 12-0417'),
  permit_number: says('for the title strip of permit sheets', 'P-0001'),
  amendments: says('for the title strip of permit sheets', 'county ordinance (invented)'),
  drawn_by: says('for the title strip of permit sheets', 'B. Example'),
  checked_by: says('for the title strip of permit sheets', 'C. Example'),
  crew_language: says('the language of the crew', 'en', 'en'),
  owner_language: says('the language of the owner’s sheet', 'es', 'that of the settings, else en'),
  basis: says(
    'the rule set that the job is planned by',
    'nec-2020',
    'that of the settings, else nec-2023, to confirm',
  ),
  earthing: says('under iec: the earthing system', 'TT', 'TN, to confirm'),
  lowest_temp: says('the lowest expected ambient temperature at the site', '-18 C'),
  lowest_temp_source: says('where that figure comes from', 'county weather tables (invented)'),
  flash_density: says('lightning flashes to ground at the site', '2.5'),
  thunderstorm_days: says('thunderstorm days a year, where the flash density isn’t known', '25'),
  lv_overhead_km: says('length of the low-voltage overhead line that feeds the site', '0.5'),
  lv_underground_km: says('length of the low-voltage cable that feeds the site', '0.1'),
  hv_overhead_km: says('length of the high-voltage overhead line that feeds the site', '1.2'),
  hv_underground_km: says('length of the high-voltage cable that feeds the site', '0.3'),
  surroundings: says('what is around the site', 'urban', 'rural, to confirm'),
  lightning_protection: says('the lightning protection system of the building', 'none', 'none, to confirm'),
  tag: says('the name of the equipment, by which other rows, papers and labels call it', 'INV-1'),
  kind: says('what the equipment is', 'grid-tie-inverter', 'the kind that the library has of its model'),
  quantity: says(
    'how many there are; of an array only with as many inputs or converters that it feeds',
    '2',
    '1',
  ),
  maker: says('the maker; with the model it is looked up in the library', 'Invented Works'),
  model: says('the model; with the maker it is looked up in the library', 'EX-7'),
  description: says('anything that papers shall say of it', 'on the north wall'),
  connects_to: says(
    'what the row feeds or is fed by, each pair of rows once; the run between them belongs to this row',
    'INV-1/2',
  ),
  run_length: says('the length of that cable, one way', '45 ft'),
  place: says(
    'building and room',
    'House / hall',
    'that of the first equipment that it connects to, through disconnects',
  ),
  building: says('the building, where the place doesn’t say it', 'Barn', 'the place up to “ / ”'),
  outdoors: says(
    'whether it stands outdoors',
    'yes',
    'yes of an array, combiner or turbine, else no; to confirm where it decides',
  ),
  mounting: says('of an array; of a panel in a wall or on it', 'roof'),
  building_occupancy: says(
    'of a panel or load in another building: what that building holds',
    'other',
    'other in another building, else that of the job; to confirm',
  ),
  worth_protecting: says(
    'no where nothing there is worth a protector',
    'no',
    'yes, to confirm where it decides',
  ),
  protect: says('yes asks for a protector, no refuses one that isn’t required', 'yes'),
  existing: says('a protector that is there already', 'EXAMPLE-1'),
  dc_inputs: says(
    'of a converter: its independent DC inputs',
    '2',
    'of a charge controller 1, or the highest input that a connection names; to confirm',
  ),
  max_dc_voltage: says('of a converter: the highest DC voltage that an input bears', '600 V'),
  isolated: says(
    'of a converter or transformer: whether its two sides are isolated; no of a transformer is an autotransformer',
    'yes',
    'yes of a transformer, to confirm',
  ),
  kva: says('of a transformer', '45 kVA'),
  impedance_percent: says('of a transformer', '4 %'),
  rating_a: says('the rating of the main, bus or branch device there', '200 A'),
  backfeed_a: says(
    'of a converter: what it can send back into its DC input',
    '0 A',
    'nothing, to confirm where it decides',
  ),
  parallel: says('of sources that are meant to run together on one bus', 'yes'),
  rapid_shutdown: says('of a disconnect: whether it is a rapid-shutdown box', 'yes'),
  neutral_switched: says('of a transfer switch: whether it switches the neutral', 'no'),
  modules: says('of an array: how many modules it has in all', '18'),
  string: says('index of a string: rows of one tag that state it are strings of one array', '1'),
  voc_stc: says(`open-circuit voltage ${MODULE}`, '49.5 V'),
  isc_stc: says(`short-circuit current ${MODULE}`, '11 A'),
  modules_in_series: says('of an array: the modules of one string', '9'),
  strings_in_parallel: says('of an array: its strings in parallel on one input', '2'),
  voc_coefficient: says(
    `temperature coefficient of the open-circuit voltage ${MODULE}; negative`,
    '-0.27 %/C',
  ),
  cells: says('of a module or battery: its cells in series', '72'),
  module_technology: says('of a module', 'crystalline', 'crystalline, to confirm where it decides'),
  optimizers: says('of an array: whether each module has a converter of its own', 'no'),
  dc_grounding: says(
    'which pole is grounded',
    'floating',
    'an array on a charge controller: that of its battery, else negative; on a grid-tie inverter, inverter-charger or pump drive floating; a battery: negative up to 60 V nominal, above it floating; to confirm',
  ),
  battery_voltage: says('nominal voltage of a battery, and of what hangs on it', '48 V'),
  battery_chemistry: says('of a battery', 'lfp'),
  ac_in: says(
    'the AC system of the port, or unused; of a service, panel or load its own',
    '120/240',
    'of a panel or load that of what feeds it',
  ),
  ac_in_2: says('the AC system of the second AC input of an inverter-charger, or unused', '120/240'),
  ac_out: says('the AC system of the output, or unused; of a generator its own', '240'),
  system_grounding: says(
    'how the AC system is grounded, at the row that feeds it',
    'solid',
    'solid or none, by the AC system; to confirm',
  ),
  n_pe_link: says(
    'whether the neutral is linked to ground at this row',
    'yes',
    'yes at a service or transformer, else no; to confirm',
  ),
  output: says('of a wind or hydro turbine', 'three-phase'),
  open_circuit_voltage: says(
    'of a turbine at its highest unloaded speed, line to line or DC; of an array: of its string',
    '170 V',
  ),
  poles: says('of the generator of a turbine', '12'),
  rpm: says('the speed at which that voltage holds', '600'),
  control_voltage: says('of a control circuit: volts and kind of current', '24 V dc'),
  supply: says('of a control circuit: whether its supply is regulated', 'regulated'),
  fault_current: says(
    'of a service, panel or load: what is available there; of a generator, inverter or battery: what it gives',
    '10 kA',
  ),
  impulse_withstand: says(
    'the rated impulse withstand voltage',
    '4 kV',
    'by its overvoltage category, to confirm',
  ),
  overvoltage_category: says('its overvoltage category', 'III', 'III of a service or panel, else II'),
  ahead_of_disconnect: says(
    'whether the protector sits ahead of the first overcurrent device there',
    'no',
    'no, to confirm',
  ),
  lead_length: says(
    'total length of line lead and ground lead as installed',
    '0.4 m',
    'that of the catalogue, else 0.5 m',
  ),
  protector: says('a part chosen by hand', 'EXAMPLE-1'),
  serial: says('the serial number of the protector as built', 'INVENTED-7'),
};
