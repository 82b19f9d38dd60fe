import type { InSteps } from '../in-steps.js';
import { openArchive } from './archive.js';
import { MOST_OF, WorkbookFault, type WorkbookProblem } from './fault.js';
import { readingOds } from './ods.js';
import type { SheetCells } from './sheet.js';
import { readingXlsx } from './xlsx.js';

/** Endings of files that are read as workbooks. */
export const WORKBOOK_ENDINGS: ReadonlySet<string> = new Set(['.xlsx', '.xlsm', '.ods']);

export type WorkbookReading =
  | { readonly ok: true; readonly sheets: readonly SheetCells[] }
  | { readonly ok: false; readonly problem: WorkbookProblem };

const ZIP = [0x50, 0x4b, 0x03, 0x04];
const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0];

const begins = (bytes: Uint8Array, signature: readonly number[]): boolean =>
  signature.every((byte, i) => bytes[i] === byte);

/** Whether a file is to be read as a workbook: by its name, or as its first bytes say so. */
export function isWorkbook(name: string, bytes: Uint8Array): boolean {
  const dot = name.lastIndexOf('.');
  return begins(bytes, ZIP) || (dot >= 0 && WORKBOOK_ENDINGS.has(name.slice(dot).toLowerCase()));
}

/**
 * Reads the sheets of a workbook (`.xlsx`, `.xlsm`, `.ods`), in steps.
 * @param bytes of the file
 * @param mark of decimals in the text that numbers become
 * @returns all sheets, hidden ones too, or why there are none; never throws
 */
export function* readingWorkbook(bytes: Uint8Array, mark: '.' | ','): InSteps<WorkbookReading> {
  try {
    return { ok: true, sheets: yield* readingSheets(bytes, mark) };
  } catch (error) {
    if (error instanceof WorkbookFault) return { ok: false, problem: error.problem };
    throw error;
  }
}

function* readingSheets(bytes: Uint8Array, mark: '.' | ','): InSteps<SheetCells[]> {
  if (begins(bytes, COMPOUND)) throw new WorkbookFault(isEncrypted(bytes) ? 'encrypted' : 'binary');
  if (bytes.length > MOST_OF.bytes) throw new WorkbookFault('bytes');
  if (!begins(bytes, ZIP)) throw new WorkbookFault('broken');
  const archive = openArchive(bytes);
  if (archive.has('encrypted-package')) throw new WorkbookFault('encrypted');
  const sheets = archive.has('content.xml')
    ? yield* readingOds(archive, mark)
    : archive.has('_rels/.rels')
      ? yield* readingXlsx(archive, mark)
      : [];
  // A document of another sort is packed in the same way.
  if (sheets.length === 0) throw new WorkbookFault('no-workbook');
  return sheets;
}

/** An encrypted workbook is a compound file with a stream of this name (MS-OFFCRYPTO, clause 2.3.4.4). */
function isEncrypted(bytes: Uint8Array): boolean {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).includes(
    Buffer.from('EncryptedPackage', 'utf16le'),
  );
}
