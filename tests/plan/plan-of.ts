import { isDeepStrictEqual } from 'node:util';
import { expect } from 'vitest';
import {
  defaultSettings,
  planJob,
  PlanSchema,
  readCatalogueText,
  readLibraryText,
  readListText,
  SettingsSchema,
  type Catalogue,
  type Plan,
  type Settings,
} from '../../src/index.js';
import { englishPlan, type EnglishItem, type EnglishPlan } from '../in-english.js';

export type PlanItem = EnglishItem;
type PlannedProtector = EnglishPlan['protectors'][number];

/** What a plan is made with beside its list. */
export interface PlanOptions {
  /** CSV of a catalogue; null: there is none. Default: `STOCK`. */
  readonly catalogue?: string | null;
  /** A part of a settings file. */
  readonly settings?: object;
  /** CSV of an equipment library. */
  readonly library?: string;
  /** File name of the list. */
  readonly name?: string;
  /** True where a test makes so many plans that holding each against its schema would take too long. */
  readonly unchecked?: boolean;
}

type Cells = Record<string, string>;

/** `key=value; key=value` as cells; `|` stands for a semicolon inside a cell. */
function cellsOf(text: string): Cells {
  const cells: Cells = {};
  for (const one of text.split(';')) {
    const cut = one.indexOf('=');
    if (cut > 0)
      cells[one.slice(0, cut).trim()] = one
        .slice(cut + 1)
        .trim()
        .replaceAll('|', '; ');
  }
  return cells;
}

const quoted = (cell: string): string => (/[",\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/** Writes records as CSV with one heading line. */
export function csvOf(records: readonly Cells[]): string {
  const headings = [...new Set(records.flatMap((r) => Object.keys(r)))];
  const lines = records.map((r) => headings.map((h) => quoted(r[h] ?? '')).join(','));
  return `${[headings.join(','), ...lines].join('\n')}\n`;
}

/**
 * An equipment list as CSV, from a shorthand: one line a row, `TAG kind; field=cell; field=cell`. Line 1 of the file is the
 * heading, so that the first row is line 2.
 * @param facts of the job, `basis=iec; lowest_temp=-18 C`; they stand on the first row
 */
export function listOf(facts: string, rows: string): string {
  const lines = rows
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const records = lines.map((line, i): Cells => {
    const [head = '', ...rest] = line.split(';');
    const [tag = '', kind = ''] = head.trim().split(/\s+/);
    const job = i === 0 ? cellsOf(facts) : {};
    return { job: 'J', ...job, tag, kind: kind === '-' ? '' : kind, ...cellsOf(rest.join(';')) };
  });
  return csvOf(records);
}

const DEFAULTS = defaultSettings();

/** The settings of a test: defaults, and what is given. */
export function settingsOf(some: object = {}): Settings {
  return Object.keys(some).length === 0 ? DEFAULTS : SettingsSchema.parse(some);
}

const readings = new Map<string, Catalogue>();

/** A catalogue as read from its text; the same text is read once. */
function catalogueFrom(text: string): Catalogue {
  const before = readings.get(text);
  if (before) return before;
  const { catalogue, unreadable } = readCatalogueText('catalogue.csv', text);
  expect(unreadable).toEqual([]);
  readings.set(text, catalogue);
  return catalogue;
}

/**
 * Plans the only job of a list, as text in, plan out; the plan is held against its schema.
 * @param csv the list, as a file would hold it
 */
export function dataOfCsv(csv: string, options: PlanOptions = {}): Plan {
  const settings = settingsOf(options.settings);
  const library =
    options.library === undefined ? undefined : readLibraryText('library.csv', options.library).library;
  const read = readListText(options.name ?? 'list.csv', csv, { settings, library });
  const [job, ...others] = read.jobs;
  if (!job || others.length > 0 || read.unreadable.length > 0) {
    throw new Error(`the list must hold one job: ${JSON.stringify(read.unreadable)}`);
  }
  const text = options.catalogue === undefined ? STOCK : options.catalogue;
  const plan = planJob(job, { catalogue: text === null ? undefined : catalogueFrom(text), settings });
  for (const { code, equipment, values } of plan.openItems) {
    if (code !== 'place/undecided') continue;
    const port = 'port' in values ? String(values.port) : '';
    throw new Error(`${equipment} has a port of which no rule says anything: ${port}`);
  }
  if (options.unchecked !== true) {
    const parsed = PlanSchema.parse(plan);
    // Asked first, since it costs a tenth; where they differ, `expect` says where.
    if (!isDeepStrictEqual(parsed, plan)) expect(parsed).toEqual(plan);
  }
  return plan;
}

/** As `dataOfCsv`, with its sentences in English. */
export function planOfCsv(csv: string, options: PlanOptions = {}): EnglishPlan {
  return englishPlan(dataOfCsv(csv, options));
}

/** As `planOfCsv`, from the shorthand of `listOf`. */
export function planOf(facts: string, rows: string, options: PlanOptions = {}): EnglishPlan {
  return planOfCsv(listOf(facts, rows), options);
}

/** As `dataOfCsv`, from the shorthand of `listOf`. */
export function dataOf(facts: string, rows: string, options: PlanOptions = {}): Plan {
  return dataOfCsv(listOf(facts, rows), options);
}

/** `CC-1:dc-in-1` as its two parts. */
function portOf(at: string): { equipment: string; port: string } {
  const cut = at.lastIndexOf(':');
  return { equipment: at.slice(0, cut), port: at.slice(cut + 1) };
}

/** The housings at one port, named `TAG:port`. */
export function at(plan: EnglishPlan, where: string): readonly PlannedProtector[] {
  const { equipment, port } = portOf(where);
  return plan.protectors.filter((p) => p.ports.some((o) => o.equipment === equipment && o.port === port));
}

/** The first housing at one port; the test fails where there is none. */
export function one(plan: EnglishPlan, where: string): PlannedProtector {
  const [first] = at(plan, where);
  if (!first) throw new Error(`no protector at ${where}: ${JSON.stringify(because(plan, where))}`);
  return first;
}

/** The rules behind the protector of a port, sorted; empty: none is there. */
export function rulesAt(plan: EnglishPlan, where: string): readonly string[] {
  return (at(plan, where)[0]?.reasons ?? []).map((r) => r.rule).toSorted();
}

/** The strength of the protector of a port; undefined: none is there. */
export function strengthAt(plan: EnglishPlan, where: string): string | undefined {
  return at(plan, where)[0]?.strength;
}

/** What each rule said about a bare port. */
export function because(plan: EnglishPlan, where: string): readonly { rule: string; because: string }[] {
  const { equipment, port } = portOf(where);
  return plan.notPlaced
    .filter((n) => n.equipment === equipment && n.port === port)
    .map((n) => ({ rule: n.rule, because: n.because }));
}

/** The open items of one code (or of a severity). */
export function items(plan: EnglishPlan, code: string): readonly PlanItem[] {
  return plan.openItems.filter((i) => i.code === code || i.severity === code);
}

/** The items of a default that stands in for one field. */
export function defaultsOf(plan: EnglishPlan, field: string): readonly string[] {
  return items(plan, 'default/used')
    .map((i) => i.message)
    .filter((m) => m.startsWith(`${field} `));
}

/** Codes of the items that make the pack a draft, sorted. */
export function faults(plan: EnglishPlan): readonly string[] {
  return plan.openItems
    .filter((i) => i.severity !== 'confirm')
    .map((i) => i.code)
    .toSorted();
}

/** Every port on the list as `TAG:port`. */
export function allPorts(plan: EnglishPlan): readonly string[] {
  return plan.site.equipments.flatMap((e) => e.ports.map((p) => `${e.tag}:${p}`));
}

/** The conductors of all housings at a port, in order. */
export function conductorsAt(plan: EnglishPlan, where: string): readonly string[] {
  return at(plan, where).flatMap((p) => p.channels.map((c) => c.conductor));
}

/** What the light of a conductor shows, `state: shows`. */
export function lightsOf(plan: EnglishPlan, where: string, conductor: string): readonly string[] {
  const channel = at(plan, where)
    .flatMap((p) => p.channels)
    .find((c) => c.conductor === conductor);
  return (channel?.indicator ?? []).map((i) => `${i.state}: ${i.shows}`);
}

const HEADINGS =
  'part,channels,mcov_ac,mcov_dc,up,up_basis,in_ka,iimp_ka,in_npe_ka,iimp_npe_ka,sccr_ka,sccr_dc_ka,type,iec_class,connection,enclosure,listed_for,listing,indicator,indicator_min_v,lead_length,lead_gauge,overcurrent,overcurrent_a,overcurrent_min_a,overcurrent_device,lead_by_instructions,wire_range,price';

/** One line of a catalogue of tests. */
export function partLine(part: string, facts: string): string {
  const cells: Cells = {
    up_basis: 'VPR',
    in_ka: '20',
    sccr_ka: '50',
    sccr_dc_ka: '50',
    type: '2',
    iec_class: 'T2',
    enclosure: '4X',
    listing: 'invented',
    indicator: 'light',
    overcurrent_a: '30',
    wire_range: '14 to 2 AWG Cu',
    ...cellsOf(facts),
    part,
  };
  return HEADINGS.split(',')
    .map((h) => quoted(cells[h] ?? ''))
    .join(',');
}

/** A catalogue of those parts. */
export function catalogueOf(...lines: readonly string[]): string {
  return `${[HEADINGS, ...lines].join('\n')}\n`;
}

// Invented parts. VPR steps as UL 1449 has them (value from memory); the rest is round figures of our own.
const DC_STEPS: readonly [part: string, mcov: number, up: number][] = [
  ['WREN', 20, 330],
  ['FINCH', 40, 330],
  ['LARK', 75, 400],
  ['SWIFT', 150, 600],
  ['THRUSH', 190, 700],
  ['ROOK', 350, 1200],
  ['HERON', 500, 1800],
  ['STORK', 600, 2000],
  ['SWAN', 1000, 3000],
  ['CONDOR', 1500, 5000],
];
const AC_STEPS: readonly [part: string, mcov: number, up: number][] = [
  ['ROWAN', 40, 330],
  ['ALDER', 150, 600],
  ['BEECH', 275, 900],
  ['ELM', 320, 1200],
  ['MAPLE', 420, 1500],
  ['LARCH', 640, 2000],
];

/** The stock of most tests: what fits nearly every place under every basis. */
export const STOCK = catalogueOf(
  ...DC_STEPS.map(([part, mcov, up]) => partLine(part, `channels=2; mcov_dc=${mcov}; up=${up}`)),
  ...AC_STEPS.flatMap(([part, mcov, up]) =>
    [2, 3, 4].map((n) => partLine(`${part}-${n}`, `channels=${n}; mcov_ac=${mcov}; up=${up}`)),
  ),
  ...AC_STEPS.flatMap(([part, mcov, up]) =>
    [2, 3, 4].map((n) =>
      partLine(
        `${part}-FIRST-${n}`,
        `channels=${n}; mcov_ac=${mcov}; up=${up}; type=1; listed_for=ungrounded|impedance|corner`,
      ),
    ),
  ),
  partLine('MINT', 'channels=2; mcov_ac=275; up=900; connection=3+1; in_npe_ka=10'),
  partLine('SAGE', 'channels=4; mcov_ac=275; up=900; connection=3+1; in_npe_ka=20'),
);
