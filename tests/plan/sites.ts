import fc from 'fast-check';
import { csvOf } from './plan-of.js';

/** One row of a generated list: field by field, as its cells. */
export type SiteRow = Readonly<Record<string, string>>;

/** A generated job: its facts, and its rows in an order in which each names only rows before it. */
export interface MadeSite {
  readonly facts: SiteRow;
  readonly rows: readonly SiteRow[];
}

/** The list of a generated job; its facts stand on the first row. */
export function csvOfSite({ facts, rows }: MadeSite): string {
  return csvOf(rows.map((row, i) => ({ job: 'J', ...(i === 0 ? facts : {}), ...row })));
}

/** What each kind can connect to; in an order in which targets come first. */
const TARGETS: Readonly<Record<string, readonly string[]>> = {
  service: [],
  'transfer-switch': ['service'],
  transformer: ['service'],
  panel: ['service', 'panel', 'transfer-switch', 'transformer'],
  'inverter-charger': ['service', 'panel', 'transformer'],
  'ac-battery': ['panel'],
  'pump-drive': ['panel', 'service'],
  generator: ['transfer-switch', 'panel', 'inverter-charger', 'transformer'],
  'grid-tie-inverter': ['panel', 'service', 'inverter-charger', 'transformer'],
  'ac-module-branch': ['panel', 'service'],
  battery: ['inverter-charger'],
  'charge-controller': ['battery'],
  disconnect: ['panel', 'service', 'charge-controller', 'grid-tie-inverter'],
  load: ['panel', 'service', 'inverter-charger', 'transformer', 'disconnect', 'pump-drive', 'ac-battery'],
  'dc-panel': ['battery'],
  'dc-load': ['battery', 'dc-panel', 'charge-controller'],
  'diversion-load': ['battery', 'charge-controller'],
  combiner: ['charge-controller', 'grid-tie-inverter', 'inverter-charger', 'pump-drive', 'disconnect'],
  array: [
    'combiner',
    'charge-controller',
    'grid-tie-inverter',
    'inverter-charger',
    'pump-drive',
    'disconnect',
  ],
  'wind-turbine': ['charge-controller', 'grid-tie-inverter', 'disconnect'],
  'hydro-turbine': ['charge-controller'],
  'control-circuit': ['load', 'generator', 'panel', 'other'],
  'signal-line': ['panel'],
  other: [],
};
export const SITE_KINDS: readonly string[] = Object.keys(TARGETS);
const SOURCES: ReadonlySet<string> = new Set(['array', 'combiner', 'wind-turbine', 'hydro-turbine']);

/** What a row is made of: numbers that choose, so that a counterexample shrinks to few and plain rows. */
export interface RowSeed {
  readonly kind: string;
  readonly target: number;
  readonly cells: number;
  readonly place: string;
  readonly length: string;
  readonly flags: SiteRow;
}

const length = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: 1, max: 70 }).map((m) => `${m} m`) },
  { weight: 1, arbitrary: fc.constant('') },
);

export const rowSeed: fc.Arbitrary<RowSeed> = fc.record({
  kind: fc.constantFrom(...SITE_KINDS),
  target: fc.nat(30),
  cells: fc.nat(1000),
  place: fc.constantFrom('', 'House / hall', 'House / attic', 'Barn', 'Yard / pole'),
  length,
  flags: fc.oneof(
    { weight: 6, arbitrary: fc.constant({}) },
    { weight: 1, arbitrary: fc.constantFrom<SiteRow>({ outdoors: 'yes' }, { outdoors: 'no' }) },
    { weight: 1, arbitrary: fc.constant<SiteRow>({ worth_protecting: 'no' }) },
    { weight: 1, arbitrary: fc.constant<SiteRow>({ protect: 'yes' }) },
    { weight: 1, arbitrary: fc.constant<SiteRow>({ impulse_withstand: '4 kV' }) },
  ),
});

const facts: fc.Arbitrary<SiteRow> = fc
  .record({
    basis: fc.constantFrom('nec-2017', 'nec-2020', 'nec-2023', 'iec'),
    earthing: fc.constantFrom('TN', 'TT', 'IT'),
    occupancy: fc.constantFrom('dwelling', 'sleeping', 'other'),
    lowest_temp: fc.integer({ min: -39, max: 30 }).map((t) => `${t} C`),
    flash_density: fc.constantFrom('', '0.5', '3', '12'),
    lightning_protection: fc.constantFrom('', 'none', 'isolated'),
  })
  .map((f) => (f.basis === 'iec' ? f : { ...f, earthing: '' }));

const NEC_SYSTEMS = ['120/240', '120', '208Y/120', '240/120 high-leg', '480Y/277', '480 delta', '240'];
const IEC_SYSTEMS = ['230', '400Y/230'];
const pick = <T>(from: readonly T[], by: number): T => {
  const one = from[by % from.length];
  if (one === undefined) throw new Error('nothing to pick from');
  return one;
};

/** The AC system at the end of a row that others are joined to. */
function systemOf(row: SiteRow | undefined): string {
  return row?.['ac_out'] ?? row?.['ac_in'] ?? '';
}

/** The cells that a kind states, chosen by a number; of three in four the AC system is that of what it connects to. */
function cellsOf(kind: string, n: number, iec: boolean, target: SiteRow | undefined): SiteRow {
  const alike = n % 4 === 0 ? '' : systemOf(target);
  const system = alike === '' ? pick(iec ? IEC_SYSTEMS : NEC_SYSTEMS, n >> 2) : alike;
  const volts = String(pick([40, 90, 150, 320], n));
  switch (kind) {
    case 'service':
      return { ac_in: system, fault_current: pick(['', '10 kA', '60 kA'], n >> 3) };
    case 'panel':
      return {
        ac_in: n % 5 === 0 ? '' : system,
        building_occupancy: pick(['', 'dwelling', 'other'], n >> 3),
      };
    case 'transformer':
      return {
        ac_in: system,
        ac_out: pick(iec ? IEC_SYSTEMS : NEC_SYSTEMS, n >> 4),
        isolated: pick(['yes', 'no', ''], n >> 3),
        system_grounding: pick(['', '', 'solid', 'none'], n >> 5),
        kva: pick(['', '25'], n >> 2),
        impedance_percent: pick(['', '2.5'], n >> 3),
      };
    case 'ac-battery':
      return { ac_out: system, fault_current: pick(['', '200 A'], n >> 3) };
    case 'pump-drive':
      return { ac_in: target === undefined ? '' : system, ac_out: system, max_dc_voltage: '600' };
    case 'disconnect':
      return { rapid_shutdown: pick(['', 'yes'], n >> 3) };
    case 'dc-load':
    case 'dc-panel':
      return { battery_voltage: pick(['', '48'], n >> 2) };
    case 'load':
      return { ac_in: system };
    case 'generator':
      return { ac_out: system, fault_current: pick(['', '2 kA'], n >> 3) };
    case 'ac-module-branch':
      return { ac_out: system };
    case 'inverter-charger':
      return {
        ac_in: system,
        ac_out: system,
        dc_inputs: String((n % 2) + 1),
        max_dc_voltage: '250',
        fault_current: pick(['', '100 A'], n >> 3),
        backfeed_a: pick(['', '20'], n >> 4),
      };
    case 'grid-tie-inverter':
      return {
        ac_out: system,
        dc_inputs: String((n % 3) + 1),
        max_dc_voltage: '600',
        isolated: pick(['', 'yes'], n >> 3),
      };
    case 'charge-controller':
      return { dc_inputs: '1', max_dc_voltage: '250' };
    case 'battery':
      return {
        battery_voltage: pick(['12', '24', '48'], n),
        battery_chemistry: pick(['lead-acid', 'lfp', 'nicd'], n >> 2),
      };
    case 'array':
      return {
        voc_stc: '40',
        modules_in_series: String((n % 5) + 1),
        isc_stc: pick(['', '10'], n >> 3),
        strings_in_parallel: '2',
        voc_coefficient: pick(['', '-0.27 %/C'], n >> 4),
        dc_grounding: pick(['', 'positive', 'floating'], n >> 5),
        mounting: pick(['roof', 'ground'], n >> 6),
      };
    case 'wind-turbine':
    case 'hydro-turbine':
      return { output: pick(['three-phase', 'dc'], n), open_circuit_voltage: volts, poles: '12', rpm: '300' };
    case 'control-circuit':
      return {
        control_voltage: pick(['24 V dc', '12 V dc', '24 V ac'], n),
        supply: pick(['', 'regulated'], n >> 2),
      };
    default:
      return {};
  }
}

/** How many DC inputs of each converter are taken: a source takes the next, and names it. */
function connectionOf(
  kind: string,
  tag: string,
  row: SiteRow | undefined,
  taken: Map<string, number>,
): string {
  if (!SOURCES.has(kind) || row?.['dc_inputs'] === undefined) return tag;
  const inputs = Number(row['dc_inputs']);
  const next = (taken.get(tag) ?? 0) % inputs;
  taken.set(tag, (taken.get(tag) ?? 0) + 1);
  return inputs === 1 ? tag : `${tag}/${next + 1}`;
}

/** Rows from seeds: each connects to an earlier row of a kind that makes sense, where there is one. */
export function rowsOf(seeds: readonly RowSeed[], iec: boolean): SiteRow[] {
  const rows: SiteRow[] = [];
  const taken = new Map<string, number>();
  const ordered = [...seeds].sort((a, b) => SITE_KINDS.indexOf(a.kind) - SITE_KINDS.indexOf(b.kind));
  ordered.forEach((seed, i) => rows.push(rowOf(seed, `X${i + 1}`, rows, taken, iec)));
  return rows;
}

/** One more row, after those that are there. */
export function rowOf(
  seed: RowSeed,
  tag: string,
  rows: readonly SiteRow[],
  taken: Map<string, number>,
  iec: boolean,
): SiteRow {
  const candidates = rows.filter((r) => TARGETS[seed.kind]?.includes(r['kind'] ?? ''));
  const target = candidates.length === 0 ? undefined : pick(candidates, seed.target);
  const connection: SiteRow =
    target === undefined
      ? {}
      : { connects_to: connectionOf(seed.kind, target['tag'] ?? '', target, taken), run_length: seed.length };
  const cells = cellsOf(seed.kind, seed.cells, iec, target);
  return { tag, kind: seed.kind, place: seed.place, ...connection, ...cells, ...seed.flags };
}

/** Jobs of up to `most` rows of every kind, under every basis. */
export function sites(most = 14): fc.Arbitrary<MadeSite> {
  return fc
    .record({ facts, seeds: fc.array(rowSeed, { minLength: 1, maxLength: most }) })
    .map((made) => ({ facts: made.facts, rows: rowsOf(made.seeds, made.facts['basis'] === 'iec') }));
}
