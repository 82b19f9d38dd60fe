import { z } from 'zod';
import { isNec } from '../../../model/editions.js';
import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Plan, PlannedProtector } from '../../../model/plan.js';
import { tagList } from '../../../words/tag-list.js';
import { runsOf, RunsSchema } from './runs.js';
import { inputWords, type InputWords } from './turbine-inputs.js';
import { belowTable } from './schedule-below.js';
import { guardedPorts, scheduleCells, type Cell, type ScheduleCells } from './schedule-row.js';

const CellSchema = z.object({
  lines: z.array(RunsSchema),
  /** True where something is left to be filled in below them. */
  fill: z.boolean(),
  figure: z.boolean(),
  /** True for what may never be broken: a tag. */
  whole: z.boolean(),
});

export const PermitScheduleSchema = z.object({
  title: z.string(),
  /** True where a row is two lines: what and where, then figures. */
  narrow: z.boolean(),
  /** Heads of the first line of a table's head: a pair of columns has one of its own above both. */
  heads: z.array(
    z.object({ text: z.string(), columns: z.number().int(), rows: z.number().int(), figure: z.boolean() }),
  ),
  /** Those of its second line: `needed`, `part`. */
  subheads: z.array(z.object({ text: z.string(), figure: z.boolean() })),
  /** Columns that the first line of a narrow row spans. */
  widthOfWhat: z.number().int(),
  /** What the first line of a narrow row tells, in its order; `` on a wide sheet. */
  whatHead: z.string(),
  rows: z.array(
    z.object({
      tags: RunsSchema,
      /** The first line of a narrow row; `` on a wide sheet. */
      what: RunsSchema,
      cells: z.array(CellSchema),
    }),
  ),
  /** Facts that are equal for all, and what an abbreviation means. */
  below: z.array(RunsSchema),
  none: z.string(),
});
export type PermitScheduleView = z.infer<typeof PermitScheduleSchema>;

/** Housings that differ in nothing but their tags and those of the equipment that they guard. */
interface Row {
  readonly tags: string[];
  /** Ports by equipment. */
  readonly guarded: Map<string, string[]>;
  readonly cells: ScheduleCells;
}

/** A column: its head, or that of the pair that it belongs to. */
interface Column {
  readonly head: string;
  /** Of a pair: its own head below. */
  readonly sub: string;
  readonly figure: boolean;
  readonly cell: (row: Row) => Cell;
}

const one = (text: string): Cell => ({ lines: text === '' ? [] : [text], fill: false });
const text = (head: string, cell: Column['cell']): Column => ({ head, sub: '', figure: false, cell });
const figure = (head: string, sub: string, cell: Column['cell']): Column => ({
  head,
  sub,
  figure: true,
  cell,
});
const joined = (...cells: readonly Cell[]): Cell => ({
  lines: cells.flatMap((c) => c.lines),
  fill: cells.some((c) => c.fill),
});

const DC_INPUT = /^dc-in-\d+$/;

/** Ports that differ in the number of a DC input alone are alike. */
const portClass = (port: string): string => port.replace(DC_INPUT, 'dc-in-');

/** Cells in one line. */
const beside = (...cells: readonly Cell[]): Cell => {
  const { lines, fill } = joined(...cells);
  return { lines: lines.length === 0 ? [] : [lines.join(', ')], fill };
};

function rowsOf(plan: Plan): Row[] {
  const kinds = new Map(plan.site.equipments.map((e) => [e.tag, e.kind]));
  const found = new Map<string, Row>();
  for (const protector of plan.protectors) {
    const cells = scheduleCells(protector, plan);
    const guards = protector.ports.map(({ equipment, port }) => [kinds.get(equipment), portClass(port)]);
    const key = JSON.stringify([cells, guards]);
    const row = found.get(key) ?? { tags: [], guarded: new Map<string, string[]>(), cells };
    found.set(key, row);
    row.tags.push(protector.tag);
    for (const { equipment, port } of protector.ports) {
      const ports = row.guarded.get(equipment) ?? [];
      row.guarded.set(equipment, ports.includes(port) ? ports : [...ports, port]);
    }
  }
  return [...found.values()];
}

/** What all rows have in common in one cell; undefined where they differ, or something is to be filled in. */
function common(rows: readonly Row[], of: (cells: ScheduleCells) => Cell): Cell | undefined {
  const [first] = rows.map((row) => of(row.cells));
  if (first === undefined || first.fill) return undefined;
  const key = JSON.stringify(first);
  return rows.every((row) => JSON.stringify(of(row.cells)) === key) ? first : undefined;
}

const sorted = (tags: readonly string[]): string => tagList([...tags].sort(byNaturalOrder));

/** `INV, DC inputs 1 to 26`; `CC, turbine input 1`; `TRK-1, TRK-2`; `SVC, service`. */
function guardedText({ guarded }: Row, inputs: InputWords): string {
  const byPorts = new Map<string, string[]>();
  for (const [equipment, ports] of guarded) {
    const words = inputs(equipment, ports, guardedPorts([...ports].sort(byNaturalOrder)));
    byPorts.set(words, [...(byPorts.get(words) ?? []), equipment]);
  }
  return [...byPorts]
    .map(([words, tags]) => (words === '' ? sorted(tags) : `${sorted(tags)}, ${words}`))
    .join('; ');
}

/** `VPR`, `Up`, or both where parts are told by different ones. */
function levelName(protectors: readonly PlannedProtector[]): string {
  const names = new Set(protectors.map((p) => p.figures?.upBasis ?? null).filter((n) => n !== null));
  return names.size === 0 ? 'VPR' : [...names].join(' or ');
}

/** What of a lead isn't the same for all. */
interface LeadColumns {
  readonly column: Column | undefined;
  readonly told: string[];
}

function leads(rows: readonly Row[], ground: 'ground' | 'earth'): LeadColumns {
  const parts = [
    { head: 'gauge', of: (c: ScheduleCells) => c.gauge, tell: (t: string) => t },
    {
      head: 'longest',
      of: (c: ScheduleCells) => c.longest,
      tell: (t: string) => `line plus ${ground} at most ${t}`,
    },
    {
      head: `${ground} to`,
      of: (c: ScheduleCells) => c.ground,
      tell: (t: string) => `${ground} to the ${t}`,
    },
  ];
  const shared = parts.flatMap(({ of, tell }) => {
    const cell = common(rows, of);
    return cell === undefined || cell.lines.length === 0 ? [] : [tell(cell.lines.join(' '))];
  });
  const own = parts.filter(({ of }) => common(rows, of) === undefined);
  const column = text(`Leads: ${own.map(({ head }) => head).join(', ')}`, ({ cells }) =>
    beside(...own.map(({ of }) => of(cells))),
  );
  const told = shared.length === 0 ? [] : [`Leads of all: ${shared.join(', ')}.`];
  return { column: own.length === 0 ? undefined : column, told };
}

/** All columns of figures, in their order. */
function figureColumns(plan: Plan, lead: Column | undefined): Column[] {
  const nec = isNec(plan.basis);
  const mcov = nec ? 'MCOV, V' : 'Uc, V';
  return [
    text(nec ? 'Type' : 'Class', (r) => r.cells.type),
    figure(mcov, 'needed', (r) => r.cells.mcovNeeded),
    figure(mcov, 'part', (r) => r.cells.mcov),
    figure(`${levelName(plan.protectors)}, V`, '', (r) => r.cells.level),
    figure('In, kA', 'needed', (r) => r.cells.inNeeded),
    figure('In, kA', 'part', (r) => r.cells.in),
    figure('Fault current, kA', 'there', (r) => r.cells.faultCurrent),
    figure('Fault current, kA', nec ? 'SCCR' : 'ISCCR', (r) => r.cells.sccr),
    text('Overcurrent device', (r) => r.cells.device),
    ...(lead === undefined ? [] : [lead]),
    text(nec ? 'NEMA' : 'Enclosure', (r) => r.cells.enclosure),
  ];
}

/** What is told of parts: a listing only where some part has one. */
function partHead(rows: readonly Row[], sharesListing: boolean): string {
  if (sharesListing) return 'part, maker, file';
  return rows.some(({ cells }) => cells.listing.lines.length > 0) ? 'part, maker, listing' : 'part, maker';
}

/** Columns that say what and where, on a wide sheet. */
function whatColumns(rows: readonly Row[], sharesListing: boolean, inputs: InputWords): Column[] {
  return [
    ...(rows.some((r) => r.tags.length > 1) ? [figure('Qty', '', (r) => one(String(r.tags.length)))] : []),
    text('Protects', (r) => one(guardedText(r, inputs))),
    text('Location', (r) => r.cells.place),
    text('System; channels', (r) => joined(r.cells.system, r.cells.channels)),
    text(`P${partHead(rows, sharesListing).slice(1)}`, (r) => {
      const { lines } = r.cells.listing;
      const [part = '', ...rest] = r.cells.part.lines;
      return joined(one(part), one([...rest, ...(sharesListing ? lines.slice(1) : lines)].join(', ')));
    }),
  ];
}

const ASKED = text('Required by', (r) => r.cells.asked);

/** The first line of a narrow row. */
function whatText(row: Row, sharesListing: boolean, inputs: InputWords): string {
  const { place, system, channels, part, listing, asked } = row.cells;
  const file = sharesListing ? listing.lines.slice(1) : listing.lines;
  return [
    ...(row.tags.length > 1 ? [`quantity ${String(row.tags.length)}`] : []),
    guardedText(row, inputs),
    place.lines.join(', '),
    system.lines.join(' '),
    `channels ${channels.lines.join(' ')}`,
    [...part.lines, ...file].join(', '),
    asked.lines.join(' '),
  ].join('; ');
}

/** What {@link whatText} tells, in its order. */
function whatHead(rows: readonly Row[], sharesListing: boolean): string {
  return ['Protects', 'location', 'system', 'channels', partHead(rows, sharesListing), 'required by'].join(
    '; ',
  );
}

function headsOf(columns: readonly Column[]): Pick<PermitScheduleView, 'heads' | 'subheads'> {
  const heads: PermitScheduleView['heads'] = [];
  const subheads: PermitScheduleView['subheads'] = [];
  columns.forEach((column, index) => {
    if (column.sub === '') {
      heads.push({ text: column.head, columns: 1, rows: 2, figure: column.figure });
      return;
    }
    subheads.push({ text: column.sub, figure: column.figure });
    const last = heads.at(-1);
    if (last && columns[index - 1]?.head === column.head) last.columns += 1;
    else heads.push({ text: column.head, columns: 1, rows: 1, figure: column.figure });
  });
  return { heads, subheads };
}

/**
 * The protection schedule: a row for each housing, or for those that are alike.
 * @param narrow true: a row is two lines, what and where, then figures
 */
export function permitSchedule(plan: Plan, { narrow }: { readonly narrow: boolean }): PermitScheduleView {
  const runs = runsOf(plan);
  const rows = rowsOf(plan);
  const [listing = '', ...others] = [...new Set(rows.map((r) => r.cells.listing.lines[0] ?? ''))];
  const sharesListing = others.length === 0 && listing !== '';
  const lead = leads(rows, isNec(plan.basis) ? 'ground' : 'earth');
  const named = inputWords(plan);
  const inputs: InputWords = (equipment, ports, words) =>
    named(equipment, ports, !isNec(plan.basis) && ports[0] === 'service' ? 'origin' : words);
  const figures = figureColumns(plan, lead.column);
  const columns = narrow ? figures : [...whatColumns(rows, sharesListing, inputs), ...figures, ASKED];
  return {
    title: 'Protection schedule',
    narrow,
    ...headsOf(columns),
    widthOfWhat: columns.length,
    whatHead: narrow ? whatHead(rows, sharesListing) : '',
    rows: rows.map((row) => ({
      tags: runs(sorted(row.tags)),
      what: runs(narrow ? whatText(row, sharesListing, inputs) : ''),
      cells: columns.map((column) => {
        const { lines, fill } = column.cell(row);
        return { lines: lines.map(runs), fill, figure: column.figure, whole: column.head === 'Required by' };
      }),
    })),
    below: belowTable(plan, {
      listing: sharesListing ? listing : '',
      leads: lead.told,
      faults: rows.map((r) => r.cells.faultCurrent),
    }).map(runs),
    none: 'No surge protector is placed on this job.',
  };
}
