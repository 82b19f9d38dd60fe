import { readdir, stat } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { itemAt, note } from '../model/message.js';
import { BATCH_MESSAGES, type DataSheetFault } from '../model/messages/batch.js';
import type { OpenItem } from '../model/open-item.js';
import { NotAFile, readRegularFile } from '../output/regular-file.js';
import { wholePdf, type WholePdf } from '../print/append-pdfs.js';
import { shownPath } from '../words/shown-path.js';
import { dataFingerprint, type Fingerprint } from './fingerprint.js';

/** Bytes; a longer data sheet is none that anyone reads. Common practice, no source. */
const MOST_BYTES = 50_000_000;

/** The data sheet of a part. */
export interface PartSheet extends WholePdf {
  readonly part: string;
}

/** Data sheets in the order of the parts, and an item for every file that can't be taken. */
export interface SheetsRead {
  readonly sheets: readonly PartSheet[];
  readonly items: readonly OpenItem[];
}

/** The folder of data sheets, a PDF a part, named by it. */
export interface SheetFolder {
  /** Names, sizes and times of what lies there. */
  readonly from: Fingerprint;
  readonly read: (parts: readonly string[]) => Promise<SheetsRead>;
}

// A disk may hold names with their accents apart.
const composed = (name: string): string => name.normalize('NFC');

/**
 * Opens the folder of data sheets. Names are compared with what lies there, and never put together to a path, so that no part's
 * name can lead elsewhere; links aren't followed.
 * @param folder as given
 * @throws Failure (`batch/no-cutsheets`) where the folder isn't there
 */
export async function openSheets(folder: string): Promise<SheetFolder> {
  const names = await readdir(folder).catch((error: unknown) => {
    throw new Failure(note(BATCH_MESSAGES.noCutSheets, { folder }), EXIT.usage, { cause: error });
  });
  const pdfs = names.filter((name) => extname(name).toLowerCase() === '.pdf').sort();
  const states = await Promise.all(
    pdfs.map(async (name) => {
      const state = await stat(join(folder, name)).catch(() => undefined);
      return [name, state?.size ?? 0, state?.mtimeMs ?? 0];
    }),
  );
  const fileOf = new Map(pdfs.map((name) => [composed(name.slice(0, -'.pdf'.length)), name]));
  // Jobs share parts: each file is read once.
  const known = new Map<string, Promise<WholePdf | { readonly fault: DataSheetFault }>>();
  return {
    from: dataFingerprint(states),
    read: async (parts) => {
      const sheets: PartSheet[] = [];
      const items: OpenItem[] = [];
      for (const part of parts) {
        const name = fileOf.get(composed(part));
        if (name === undefined) continue;
        const path = join(folder, name);
        const reading = known.get(name) ?? readSheet(path);
        known.set(name, reading);
        const read = await reading;
        if (!('fault' in read)) {
          sheets.push({ part, ...read });
          continue;
        }
        const told = note(BATCH_MESSAGES.dataSheetNotTaken, { part, sheet: read.fault });
        items.push(itemAt(told, { file: shownPath(path), line: 0, column: '' }));
      }
      return { sheets, items };
    },
  };
}

async function readSheet(path: string): Promise<WholePdf | { readonly fault: DataSheetFault }> {
  try {
    return await wholePdf(await readRegularFile(path, { most: MOST_BYTES, followLinks: false }));
  } catch (error) {
    return { fault: error instanceof NotAFile ? 'no-file' : 'unreadable' };
  }
}
