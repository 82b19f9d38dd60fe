import type { InSteps } from '../in-steps.js';
import type { Archive } from './archive.js';
import { WorkbookFault } from './fault.js';
import { numberFormat, type NumberFormat } from './number-format.js';
import { wholeAllowance, type SheetCells } from './sheet.js';
import { walkingXml, type Attributes, type XmlWalk } from './xml.js';
import { isTrue, unescaped, type Shared } from './xlsx-values.js';
import { readingSheet } from './xlsx-sheet.js';

interface Relation {
  readonly type: string;
  readonly target: string;
}

interface NamedSheet {
  readonly name: string;
  readonly relation: string;
  readonly hidden: boolean;
}

/**
 * Reads the sheets of a workbook as ISO/IEC 29500 (ECMA-376) stores them, `.xlsx` or `.xlsm`, in steps.
 * @param archive opened
 * @param mark of decimals in the text that numbers become
 * @returns sheets of cells in the workbook's order
 * @throws WorkbookFault where it can't be read
 */
export function* readingXlsx(archive: Archive, mark: '.' | ','): InSteps<SheetCells[]> {
  const top = yield* relationsOf(archive, '');
  const main = [...top.values()].find(({ type }) => type === 'officeDocument')?.target ?? '';
  if (main.endsWith('.bin')) throw new WorkbookFault('binary');
  const { sheets, from1904 } = yield* readingMain(archive.part(main));
  const relations = yield* relationsOf(archive, main);
  const partOf = (type: string): string | undefined =>
    [...relations.values()].find((relation) => relation.type === type)?.target;
  const strings = partOf('sharedStrings');
  const styles = partOf('styles');
  const shared: Shared = {
    strings: strings === undefined ? [] : yield* readingStrings(archive.part(strings)),
    formats: styles === undefined ? [] : yield* readingStyles(archive.part(styles)),
    from1904,
    mark,
  };
  const left = wholeAllowance();
  const read: SheetCells[] = [];
  for (const { name, relation, hidden } of sheets) {
    const found = relations.get(relation);
    if (found === undefined) throw new WorkbookFault('broken');
    // A sheet that is a chart, or a dialog, holds no table.
    if (found.type !== 'worksheet') continue;
    read.push(yield* readingSheet(archive.part(found.target), { name, hidden }, shared, left));
  }
  return read;
}

/** What a part refers to, by id: types by their last word, targets as names of parts. */
function* relationsOf(archive: Archive, part: string): InSteps<Map<string, Relation>> {
  const folder = part.slice(0, part.lastIndexOf('/') + 1);
  const relations = new Map<string, Relation>();
  const name = `${folder}_rels/${part.slice(folder.length)}.rels`;
  if (!archive.has(name)) return relations;
  const open = (element: string, { Id, Type = '', Target = '', TargetMode }: Attributes): void => {
    if (element !== 'Relationship' || Id === undefined || TargetMode === 'External') return;
    relations.set(Id, { type: Type.slice(Type.lastIndexOf('/') + 1), target: partName(folder, Target) });
  };
  yield* walkingXml(archive.part(name), { ...NOTHING, open });
  return relations;
}

const NOTHING: XmlWalk = { open: () => undefined, close: () => undefined, text: () => undefined };

/** The name of the part that a target means, seen from a folder. */
function partName(folder: string, target: string): string {
  const steps: string[] = [];
  for (const step of (target.startsWith('/') ? target : `${folder}${target}`).split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '' && step !== '.') steps.push(step);
  }
  return steps.join('/');
}

function* readingMain(part: Uint8Array): InSteps<{ sheets: NamedSheet[]; from1904: boolean }> {
  const sheets: NamedSheet[] = [];
  let from1904 = false;
  const open = (element: string, { name = '', id = '', state = '', date1904 }: Attributes): void => {
    if (element === 'workbookPr') from1904 = isTrue(date1904);
    if (element === 'sheet') sheets.push({ name, relation: id, hidden: /hidden$/i.test(state) });
  };
  yield* walkingXml(part, { ...NOTHING, open });
  return { sheets, from1904 };
}

/** Texts of rich text are joined; what tells how they are spoken isn't text of the cell. */
function* readingStrings(part: Uint8Array): InSteps<string[]> {
  const strings: string[] = [];
  let text = '';
  let inText = false;
  let spoken = false;
  yield* walkingXml(part, {
    open: (element) => {
      if (element === 'si') text = '';
      else if (element === 'rPh') spoken = true;
      else if (element === 't') inText = !spoken;
    },
    close: (element) => {
      if (element === 'si') strings.push(unescaped(text));
      else if (element === 'rPh') spoken = false;
      else if (element === 't') inText = false;
    },
    text: (piece) => {
      if (inText) text += piece;
    },
  });
  return strings;
}

function* readingStyles(part: Uint8Array): InSteps<NumberFormat[]> {
  const codes = new Map<number, string>();
  const ids: number[] = [];
  let inCells = false;
  const open = (element: string, { numFmtId = '0', formatCode }: Attributes): void => {
    if (element === 'numFmt' && formatCode !== undefined) codes.set(Number(numFmtId), formatCode);
    else if (element === 'cellXfs') inCells = true;
    else if (element === 'xf' && inCells) ids.push(Number(numFmtId));
  };
  const close = (element: string): void => {
    if (element === 'cellXfs') inCells = false;
  };
  yield* walkingXml(part, { ...NOTHING, open, close });
  const known = new Map<number, NumberFormat>();
  return ids.map((id) => {
    const format = known.get(id) ?? numberFormat(id, codes.get(id));
    known.set(id, format);
    return format;
  });
}
