/** A file that `start` writes: its name, and its text. */
export interface StartFile {
  readonly name: string;
  readonly text: string;
}

/** A heading with its example cell; everything here is invented. */
type Example = readonly (readonly [heading: string, cell: string])[];

const CATALOGUE: Example = [
  ['part', 'EXAMPLE-1'],
  ['maker', 'Invented Works'],
  ['description', 'Example: two-channel protector for 120 V to ground; take this row out'],
  ['channels', '2'],
  ['mcov_ac', '150'],
  ['mcov_dc', ''],
  ['up', '600'],
  ['up_basis', 'VPR'],
  ['in_ka', '20'],
  ['imax_ka', '50'],
  ['iimp_ka', ''],
  ['sccr_ka', '25'],
  ['sccr_dc_ka', ''],
  ['type', '2'],
  ['iec_class', ''],
  ['connection', ''],
  ['enclosure', '4X'],
  ['listed_for', ''],
  ['listing', 'UL 1449 5th ed.'],
  ['listing_file', 'INVENTED-0000'],
  ['indicator', 'light'],
  ['indicator_min_v', '60'],
  ['indicator_color', 'green'],
  ['leakage_ma', ''],
  ['lead_length', '0.5 m'],
  ['lead_gauge', '10 AWG'],
  ['overcurrent', 'two-pole breaker, 20 A or less'],
  ['overcurrent_a', '20'],
  ['overcurrent_min_a', '15'],
  ['overcurrent_device', 'breaker'],
  ['in_npe_ka', ''],
  ['iimp_npe_ka', ''],
  ['lead_by_instructions', 'no'],
  ['wire_range', '14 to 6 AWG Cu'],
  ['torque', '18 lb-in'],
  ['price', ''],
  ['currency', ''],
  ['good_flag', ''],
  ['used_flag', ''],
];

const LIBRARY: Example = [
  ['maker', 'Invented Works'],
  ['model', 'EXAMPLE-INVERTER'],
  ['kind', 'grid-tie-inverter'],
  ['dc_inputs', '2'],
  ['max_dc_voltage', '600 V'],
  ['ac_out', '240'],
  ['voc_stc', ''],
  ['isc_stc', ''],
  ['voc_coefficient', ''],
  ['cells', ''],
  ['module_technology', ''],
  ['battery_voltage', ''],
  ['ac_in', ''],
  ['ac_in_2', ''],
  ['output', ''],
  ['open_circuit_voltage', ''],
  ['poles', ''],
  ['rpm', ''],
  ['impulse_withstand', ''],
];

const LIST: Example = [
  ['job', 'EXAMPLE-1'],
  ['job_name', 'Example: take this row out'],
  ['address', 'An invented place'],
  ['occupancy', 'dwelling'],
  ['basis', 'nec-2023'],
  ['lowest_temp', ''],
  ['lowest_temp_source', ''],
  ['lightning_protection', 'none'],
  ['tag', 'SVC'],
  ['kind', 'service'],
  ['quantity', '1'],
  ['maker', ''],
  ['model', ''],
  ['description', 'Utility service'],
  ['connects_to', ''],
  ['run_length', ''],
  ['place', 'House / hall'],
  ['outdoors', ''],
  ['worth_protecting', ''],
  ['modules_in_series', ''],
  ['strings_in_parallel', ''],
  ['battery_voltage', ''],
  ['battery_chemistry', ''],
  ['ac_in', '120/240'],
  ['ac_in_2', ''],
  ['ac_out', ''],
  ['control_voltage', ''],
  ['fault_current', '10 kA'],
];

const SETTINGS = {
  company: { name: '', address: '', phone: '', email: '', licence: '', logo: '' },
  paper: 'by-basis',
  units: { length: 'by-basis', temperature: 'C' },
  basis: 'nec-2023',
  ownerLanguage: 'en',
  crewLanguage: 'en',
};

const COLUMNS = { columns: { 'Example heading of your design source': 'description' } };

const csv = (example: Example): string => {
  const cell = (text: string): string => (/[",]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return `${example.map(([heading]) => cell(heading)).join(',')}\n${example.map(([, text]) => cell(text)).join(',')}\n`;
};
const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** The templates of one document, to be put into a company's own words: it is the one that its customers read. */
const TEMPLATES = ['owner-sheet/document.hbs', 'styles/owner-sheet.css'] as const;

/**
 * The files of a company that begins: settings, catalogue, library, column map, and a list; one invented row each; and the templates
 * of the owner's sheet, as the program has them, with comments.
 * @param shipped the text of a template of the program's, by its path below the folder of templates
 */
export function startFiles(shipped: (relative: string) => string): readonly StartFile[] {
  return [
    { name: 'settings.json', text: json(SETTINGS) },
    { name: 'catalogue.csv', text: csv(CATALOGUE) },
    { name: 'library.csv', text: csv(LIBRARY) },
    { name: 'columns.json', text: json(COLUMNS) },
    { name: 'list.csv', text: csv(LIST) },
    ...TEMPLATES.map((relative) => ({ name: `templates/${relative}`, text: shipped(relative) })),
  ];
}
