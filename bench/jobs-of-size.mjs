// Lists of one job each, of as many protectors as the budgets of the papers speak of. Invented; they go with the catalogue, the
// library and the settings of the demo.
import { stringify } from 'csv-stringify/sync';

const HEADING = [
  'job,job_name,address,occupancy,basis,lowest_temp (C),lowest_temp_source,flash_density,lightning_protection,tag,kind',
  'maker,model,description,connects_to,run_length (ft),place,outdoors,mounting,modules_in_series,strings_in_parallel',
  'dc_inputs,max_dc_voltage (V),isolated,ac_in,ac_out,overvoltage_category,control_voltage,fault_current (A)',
].flatMap((line) => line.split(','));

/** What a job's first row says of it. */
const facts = (job_name, address, occupancy) => ({
  job_name,
  address,
  occupancy,
  basis: 'nec-2023',
  'lowest_temp (C)': -18,
  lowest_temp_source: 'Umberfold County weather tables (invented), extreme annual mean minimum',
  flash_density: 2.5,
  lightning_protection: 'none',
});

/** An array of the library's modules. */
const array = (tag, connects_to, run, place, description, modules_in_series) => ({
  tag,
  kind: 'array',
  maker: 'Glimmerleaf',
  model: 'GL-330',
  description,
  connects_to,
  'run_length (ft)': run,
  place,
  mounting: 'roof',
  modules_in_series,
  strings_in_parallel: 1,
});

const inverter = (tag, connects_to, run, place, description) => ({
  tag,
  kind: 'grid-tie-inverter',
  maker: 'Hobnail & Thrum',
  model: 'HG-71',
  description,
  connects_to,
  'run_length (ft)': run,
  place,
});

const panel = (tag, connects_to, run, place, description, ac_in = '120/240') => ({
  tag,
  kind: 'panel',
  description,
  connects_to,
  'run_length (ft)': run,
  place,
  ac_in,
});

/** A house with two roofs and a workshop: six protectors. */
function house() {
  return [
    {
      ...facts('Sorrelbank house', '3 Sorrel Bank, Quillmarsh, Umberfold County', 'dwelling'),
      tag: 'SVC',
      kind: 'service',
      description: 'Utility service with meter and main breaker',
      place: 'House / north wall',
      outdoors: 'yes',
      ac_in: '120/240',
      'fault_current (A)': 10000,
    },
    panel('MP', 'SVC', 34, 'House / utility room', 'Main panel of the house'),
    panel('WP', 'MP', 130, 'Workshop / bench wall', 'Panel of the workshop'),
    inverter('INV', 'MP', 18, 'House / garage', 'Inverter in the garage'),
    array('ARR-E', 'INV/1', 52, 'House / roof', 'East roof', 10),
    array('ARR-W', 'INV/2', 66, 'House / roof', 'West roof', 9),
    {
      tag: 'GAT',
      kind: 'control-circuit',
      description: 'Push button at the gate',
      'run_length (ft)': 140,
      place: 'Yard / gate',
      outdoors: 'yes',
      control_voltage: '24 V dc',
    },
  ];
}

/** A farmyard of three buildings with five inverters: fourteen protectors. */
function farmyard() {
  const arrays = [1, 2, 3, 4, 5].flatMap((n) => [
    inverter(
      `INV-${n}`,
      n < 4 ? 'BP' : 'MP',
      12 + n,
      n < 4 ? 'Barn / feed room' : 'House / cellar',
      `Inverter ${n}`,
    ),
    ...[1, 2].map((input) =>
      array(
        `ARR-${2 * n - 2 + input}`,
        `INV-${n}/${input}`,
        48 + 6 * n + input,
        n < 4 ? 'Barn / roof' : 'House / roof',
        `${input === 1 ? 'Upper' : 'Lower'} row at inverter ${n}`,
        n < 4 ? 10 : 8,
      ),
    ),
  ]);
  return [
    {
      ...facts('Hazelcombe farm', 'Hazelcombe Drove, Umberfold County', 'other'),
      tag: 'SVC',
      kind: 'service',
      description: 'Utility service of the farm, on a pole',
      place: 'Yard / service pole',
      outdoors: 'yes',
      ac_in: '120/240',
      'fault_current (A)': 14000,
    },
    panel('MP', 'SVC', 70, 'House / cellar', 'Main panel in the house'),
    panel('BP', 'MP', 130, 'Barn / feed room', 'Panel of the barn'),
    panel('DP', 'MP', 210, 'Dairy / wash room', 'Panel of the dairy'),
    ...arrays,
  ];
}

/** A hall whose roof has 26 strings alike, on one inverter: 32 protectors. */
function hall() {
  const system = '480Y/277';
  return [
    {
      ...facts('Quernstone cold store', 'Quernstone Yard, Umberfold County', 'other'),
      tag: 'SVC',
      kind: 'service',
      description: 'Utility service of the cold store',
      place: 'Hall / switch room',
      ac_in: system,
      'fault_current (A)': 22000,
    },
    panel('MSB', 'SVC', 60, 'Hall / plant room', 'Switchboard of the hall', system),
    panel('CP', 'MSB', 180, 'Chill house / pump room', 'Panel of the chill house', system),
    panel('GP', 'MSB', 240, 'Gatehouse / hall', 'Panel of the gatehouse', system),
    {
      tag: 'INV',
      kind: 'grid-tie-inverter',
      description: 'Inverter with 26 tracker inputs',
      connects_to: 'MSB',
      'run_length (ft)': 45,
      place: 'Hall / plant room',
      dc_inputs: 26,
      'max_dc_voltage (V)': 1000,
      isolated: 'no',
      ac_out: system,
      overvoltage_category: 'II',
    },
    ...Array.from({ length: 26 }, (_, at) =>
      array(`ARR-${at + 1}`, `INV/${at + 1}`, 95, 'Hall / roof', 'String of the hall’s roof', 17),
    ),
    { tag: 'OPR', kind: 'other', description: 'Controller of the gate', place: 'Hall / plant room' },
    {
      tag: 'CTL',
      kind: 'control-circuit',
      description: 'Push buttons at the gate',
      connects_to: 'OPR',
      'run_length (ft)': 150,
      place: 'Yard / gate',
      outdoors: 'yes',
      control_voltage: '24 V dc',
    },
  ];
}

const JOBS = { 6: house, 14: farmyard, 32: hall };

/**
 * A list of one job, `SIZE-6`, `SIZE-14` or `SIZE-32`.
 * @param {6 | 14 | 32} protectors how many its plan has; 26 of the 32 are alike
 * @returns {string} CSV with its heading
 */
export function jobOf(protectors) {
  const rows = JOBS[protectors]();
  return stringify([
    HEADING,
    ...rows.map((row) => HEADING.map((name) => (name === 'job' ? `SIZE-${protectors}` : (row[name] ?? '')))),
  ]);
}
