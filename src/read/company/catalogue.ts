import { OVERCURRENT_DEVICES, type Catalogue, type Part } from '../../model/catalogue.js';
import type { OpenItem } from '../../model/open-item.js';
import { UL_1449_ED5_VPR } from '../../model/ratings.js';
import { itemAt, note } from '../../model/message.js';
import {
  PART_CELL_IGNORED,
  PART_LEFT_OUT,
  PART_TWICE,
  VPR_OFF_LIST,
  WIRE_RANGE_NOT_READ,
} from '../../model/messages/company-files.js';
import { visible } from '../../words/visible.js';
import { readWireSize } from '../cell/units.js';
import { readWireRanges } from '../cell/wire-range.js';
import { shownPath } from '../../words/shown-path.js';
import { CATALOGUE_VOCABULARY, PART_FIELDS, type PartField } from './catalogue-fields.js';
import { readPartCell, type PartValue } from './catalogue-cells.js';
import type { Column } from '../table/columns.js';
import { headingIndex } from '../table/headings.js';
import { atOneGo, ROWS_A_STEP, withPauses, type InSteps } from '../file/in-steps.js';
import { readBytes } from '../file/sources.js';
import type { Table } from '../table/table.js';
import { readingTables } from '../table/tables.js';

/** The catalogue as read; `unreadable` where it couldn't be read at all. */
export interface CatalogueReading {
  readonly catalogue: Catalogue;
  readonly unreadable: readonly OpenItem[];
}

/**
 * Reads the company's catalogue of protectors.
 * @param path as it was given
 * @param signal ends the reading
 * @returns the parts that can be used (V, A, m, mm2), with an item for every row that can't; never throws for what stands in the file
 * @throws the reason of the signal that ended it
 */
export async function readCatalogue(path: string, signal?: AbortSignal): Promise<CatalogueReading> {
  const file = await readBytes(path);
  return file.ok
    ? withPauses(readingCatalogue(path, file.bytes), signal)
    : { catalogue: { file: shownPath(path), parts: [], items: [] }, unreadable: [file.item] };
}

/** As `readCatalogue`, from a file's content. */
export function readCatalogueText(given: string, content: Uint8Array | string): CatalogueReading {
  return atOneGo(readingCatalogue(given, content));
}

function* readingCatalogue(given: string, content: Uint8Array | string): InSteps<CatalogueReading> {
  const path = shownPath(given);
  const index = headingIndex<PartField>(CATALOGUE_VOCABULARY, new Map());
  const { tables, unreadable, items } = yield* readingTables(path, content, index);
  const found: OpenItem[] = [...items];
  const parts = new Map<string, Part>();
  for (const table of tables) yield* takeParts(table, parts, found);
  // Parts of a sheet that can't be read would be missed by nobody: without it none is used.
  const usable = unreadable.length === 0;
  return {
    catalogue: { file: path, parts: usable ? [...parts.values()] : [], items: usable ? found : [] },
    unreadable,
  };
}

/** Takes the parts of a table, with an item for every row that can't be used. */
function* takeParts(table: Table<PartField>, parts: Map<string, Part>, items: OpenItem[]): InSteps<void> {
  items.push(...table.grave, ...table.slight);
  for (const [r, row] of table.rows.entries()) {
    if (r % ROWS_A_STEP === 0) yield;
    const shifted = table.shifted.get(r);
    if (shifted !== undefined) {
      items.push({ ...shifted, severity: 'confirm' });
      continue;
    }
    const part = readPart(table, row, table.lines[r] ?? 0, items);
    if (part === null) continue;
    const before = parts.get(part.part);
    if (before === undefined) parts.set(part.part, part);
    else {
      const sheet = before.file === table.file ? '' : before.file;
      const said = note(PART_TWICE, { part: visible(part.part), line: before.line, sheet });
      items.push(itemAt(said, placeIn(table, part.line, 'part')));
    }
  }
}

type Values = { [F in PartField]?: PartValue };

function columnOf(table: Table<PartField>, field: PartField): Column<PartField> | undefined {
  return table.columns.find((c) => c.field === field);
}

function placeIn(
  table: Table<PartField>,
  line: number,
  field: PartField,
): { file: string; line: number; column: string } {
  return { file: table.file, line, column: columnOf(table, field)?.heading ?? '' };
}

/** One row as a part, or null where it can't be used; what is wrong is pushed to `items`. */
function readPart(
  table: Table<PartField>,
  row: readonly string[],
  line: number,
  items: OpenItem[],
): Part | null {
  const values: Values = {};
  const name = row[columnOf(table, 'part')?.index ?? -1]?.trim() ?? '';
  const part = visible(name === '' ? `The part on line ${line}` : name);
  const faults: OpenItem[] = [];
  const leftOut = (field: PartField, because: string, found: string): void => {
    const p = { part, because, found, expected: PART_FIELDS[field].expected };
    faults.push(itemAt(note(PART_LEFT_OUT, p), placeIn(table, line, field)));
  };
  for (const { field, index, unit } of table.columns) {
    const text = row[index] ?? '';
    const cell = readPartCell(field, text, unit, table.mark);
    if (cell === null) continue;
    const { expected, decides } = PART_FIELDS[field];
    if (!('because' in cell)) values[field] = cell.value;
    else if (decides) leftOut(field, `its ${field} can’t be understood, ${cell.because}`, visible(text));
    else
      items.push(
        itemAt(
          note(PART_CELL_IGNORED, { part, field, because: cell.because, found: visible(text), expected }),
          placeIn(table, line, field),
        ),
      );
  }
  for (const field of table.refused.keys())
    if (PART_FIELDS[field].decides || field === 'part')
      leftOut(field, `its ${field} can’t be told from the headings`, '');
  if (values.part === undefined) leftOut('part', 'it has no part number', '');
  if (values.channels === undefined) leftOut('channels', 'it states no number of channels', '');
  if (values.mcov_ac === undefined && values.mcov_dc === undefined)
    leftOut('mcov_ac', 'it states no MCOV, neither for AC nor for DC', '');
  const borne = Math.max(Number(values.mcov_ac ?? 0), Number(values.mcov_dc ?? 0));
  if (typeof values.up === 'number' && values.up <= borne)
    leftOut(
      'up',
      `its up of ${values.up} V is not above its MCOV of ${borne} V; look at its unit`,
      `${values.up} V`,
    );
  const [least, most] = [Number(values.overcurrent_min_a ?? 0), Number(values.overcurrent_a ?? Infinity)];
  if (least > most)
    leftOut(
      'overcurrent_min_a',
      `its overcurrent_min_a of ${least} A is more than its overcurrent_a of ${most} A`,
      `${least} A`,
    );
  // One message a row: the first fault is enough to leave it out.
  const [fault] = faults;
  if (fault === undefined) return toPart(table, values, line, items);
  items.push(fault);
  return null;
}

function toPart(table: Table<PartField>, values: Values, line: number, items: OpenItem[]): Part {
  const text = (field: PartField): string => (typeof values[field] === 'string' ? values[field] : '');
  const figure = (field: PartField): number | null =>
    typeof values[field] === 'number' ? values[field] : null;
  const word = <W extends string>(field: PartField, list: readonly W[]): W | null =>
    list.find((w) => w === values[field]) ?? null;
  const type = word('type', ['1', '2', '3'] as const);
  const gauge = text('lead_gauge');
  const size = gauge === '' ? null : readWireSize(gauge);
  const part: Part = {
    part: text('part'),
    maker: text('maker'),
    description: text('description'),
    channels: figure('channels') ?? 0,
    mcovAc: figure('mcov_ac'),
    mcovDc: figure('mcov_dc'),
    up: figure('up'),
    upBasis: word('up_basis', ['VPR', 'Up'] as const),
    nominalCurrent: figure('in_ka'),
    maximumCurrent: figure('imax_ka'),
    impulseCurrent: figure('iimp_ka'),
    neutralNominalCurrent: figure('in_npe_ka'),
    neutralImpulseCurrent: figure('iimp_npe_ka'),
    sccr: figure('sccr_ka'),
    sccrDc: figure('sccr_dc_ka'),
    type: type === null ? null : type === '1' ? 1 : type === '2' ? 2 : 3,
    iecClass: word('iec_class', ['T1', 'T2', 'T3'] as const),
    connection: word('connection', ['to-ground', '3+1'] as const) ?? 'to-ground',
    enclosure: text('enclosure')
      .replace(/^(?:NEMA|TYPE|NEMA TYPE)[\s-]*(?=\d)/i, '')
      .toUpperCase(),
    listedFor: Array.isArray(values.listed_for) ? values.listed_for : [],
    listing: text('listing'),
    listingFile: text('listing_file'),
    indicator: word('indicator', ['light', 'flag', 'none'] as const),
    indicatorMinVoltage: figure('indicator_min_v'),
    indicatorColor: text('indicator_color'),
    leakage: figure('leakage_ma'),
    leadLength: figure('lead_length'),
    leadGauge: gauge,
    leadDiameter: size?.diameter ?? null,
    leadArea: size?.area ?? null,
    overcurrent: text('overcurrent'),
    overcurrentMost: figure('overcurrent_a'),
    overcurrentLeast: figure('overcurrent_min_a'),
    overcurrentDevice: word('overcurrent_device', OVERCURRENT_DEVICES),
    leadByInstructions: typeof values.lead_by_instructions === 'boolean' ? values.lead_by_instructions : null,
    wireRange: text('wire_range'),
    wireRanges: readWireRanges(text('wire_range')) ?? [],
    torque: text('torque'),
    price: figure('price'),
    currency: text('currency'),
    goodFlag: text('good_flag'),
    usedFlag: text('used_flag'),
    file: table.file,
    line,
  };
  if (part.upBasis === 'VPR' && part.up !== null && !UL_1449_ED5_VPR.includes(part.up)) {
    items.push(
      itemAt(
        note(VPR_OFF_LIST, { part: visible(part.part), up: part.up, list: UL_1449_ED5_VPR }),
        placeIn(table, line, 'up'),
      ),
    );
  }
  if (part.wireRange !== '' && part.wireRanges.length === 0) {
    const p = {
      part: visible(part.part),
      found: visible(part.wireRange),
      expected: PART_FIELDS.wire_range.expected,
    };
    items.push(itemAt(note(WIRE_RANGE_NOT_READ, p), placeIn(table, line, 'wire_range')));
  }
  return part;
}
