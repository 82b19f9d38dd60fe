import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import type { DocumentMetadata, FormFields } from '../model/print.js';
import { withFormFields } from './form-fields.js';
import { withGlyphRuns } from './glyph-runs.js';
import { withLeanTags } from './lean-tags.js';
import { withPageNumbers } from './page-numbers.js';
import { numberedAnew } from './numbered-anew.js';
import { readPdfObjects, type PdfObject } from './pdf-objects.js';
import { pdfText } from './pdf-text.js';

/** What a PDF says about itself, with the day on which it was made. */
export interface PdfMetadata extends DocumentMetadata {
  readonly created: Date;
}

/** A font that a PDF names, and how it is drawn. */
export interface PdfFont {
  /** PostScript name without the subset's prefix; `` for a nameless font. */
  readonly name: string;
  readonly embedded: boolean;
  /** True for a font made of drawings (Type 3): what a font that failed to load can land as. */
  readonly type3: boolean;
}

/** A finished PDF and the fonts that it names. */
export interface FinishedPdf {
  readonly bytes: Uint8Array;
  readonly fonts: readonly PdfFont[];
}

// Objects in one object stream: a reader unpacks a whole stream to see one of them, and a stream of its own for each
// few costs more than what is in it.
const OBJECTS_A_STREAM = 1000;

/**
 * Writes the browser's PDF anew: metadata of ours, object streams (tags are bulky), and no trace of when or in which
 * page it was printed, so that two prints of one page of HTML give the same bytes.
 * Source: ISO 32000-1, 7.5.7 (object streams), 7.5.8 (cross-reference streams), 14.3.3 (document information), 14.4 (file identifiers).
 * @param printed the PDF as the browser returns it
 * @param metadata what the PDF shall say about itself
 * @param marks how many page numbers of a table of contents are to be put in
 * @param form the fields that the page has room for
 * @throws Error where the browser's PDF has an unknown form
 */
export function finishPdf(
  printed: Uint8Array,
  metadata: PdfMetadata,
  marks = 0,
  form?: FormFields,
): FinishedPdf {
  const { objects: read, root, info } = readPdfObjects(printed);
  const numbered = marks === 0 ? read : withPageNumbers(read, root, metadata.contents ?? [], marks);
  const filled = form === undefined ? numbered : withFormFields(numbered, root, form);
  const lean = withLeanTags(withGlyphRuns(filled)).filter(({ number }) => number !== info);
  const { objects, anew } = numberedAnew(lean);
  const catalog = anew.get(root) ?? 0;
  const plain: PdfObject[] = [];
  const streams: PdfObject[] = [];
  for (const object of objects) {
    if (object.stream) streams.push(object);
    else if (object.number !== catalog) plain.push(object);
    else plain.push({ ...object, text: withLanguage(object.text, metadata.language) });
  }
  const infoNumber = objects.length + 1;
  plain.push({ number: infoNumber, text: infoDictionary(metadata), stream: undefined });
  return { bytes: assemble(plain, streams, catalog, infoNumber), fonts: fontsOf(objects) };
}

/**
 * The browser numbers table cells by a counter that goes on from document to document of one page. The names are of
 * fixed width and ascend through a document, so numbering them anew keeps every place, and keeps the sorted tree of
 * names sorted.
 */
function withOwnNames(texts: readonly string[]): readonly string[] {
  const declared = new Set(texts.flatMap((text) => text.match(/(?<=^\/ID )\(node\d{8}\)/gm) ?? []));
  if (declared.size === 0) return texts;
  const names = new Map(
    [...declared].sort().map((old, i) => [old, `(node${String(i + 1).padStart(8, '0')})`]),
  );
  // Never in what a person wrote: titles, alternative and actual texts.
  const name = /\(node\d{8}\)(?<!\/(?:Title|Alt|ActualText|E|T) \(node\d{8}\))/g;
  return texts.map((text) => text.replace(name, (old) => names.get(old) ?? old));
}

function withLanguage(catalog: string, language: string): string {
  const bare = catalog.replace(/\n\/Lang (?:\((?:[^()\\]|\\.)*\)|<[^>]*>)/, '');
  return `${bare.slice(0, bare.lastIndexOf('>>'))}\n/Lang ${pdfText(language)}>>`;
}

function infoDictionary(metadata: PdfMetadata): string {
  const stamp = metadata.created.toISOString().replace(/[-:T]/g, '').slice(0, 14);
  const date = `(D:${stamp}+00'00')`;
  const entries: [string, string][] = [
    ['Title', pdfText(metadata.title)],
    ['Author', pdfText(metadata.author)],
    ['Subject', pdfText(metadata.subject)],
    ['Keywords', pdfText(metadata.keywords.join(', '))],
    ['Creator', '(shuntbook)'],
    ['Producer', '(shuntbook)'],
    ['CreationDate', date],
    ['ModDate', date],
  ];
  const filled = entries.filter(([, value]) => value !== '()');
  return `<<${filled.map(([key, value]) => `/${key} ${value}`).join('\n')}>>`;
}

function assemble(
  plain: readonly PdfObject[],
  streams: readonly PdfObject[],
  root: number,
  info: number,
): Uint8Array {
  const packs: { number: number; members: readonly PdfObject[] }[] = [];
  for (let from = 0; from < plain.length; from += OBJECTS_A_STREAM) {
    packs.push({ number: info + 1 + packs.length, members: plain.slice(from, from + OBJECTS_A_STREAM) });
  }
  const bodies = withOwnNames(packs.map((pack) => pack.members.map((object) => object.text).join('\n')));
  const tableNumber = info + 1 + packs.length;
  const entries = new Map<number, readonly [type: number, where: number, index: number]>([
    [0, [0, 0, 65535]],
  ]);
  const chunks: Uint8Array[] = [];
  let length = 0;
  const put = (chunk: Uint8Array | string): void => {
    const bytes = typeof chunk === 'string' ? Buffer.from(chunk, 'latin1') : chunk;
    chunks.push(bytes);
    length += bytes.length;
  };
  const putStream = (number: number, dictionary: string, body: Uint8Array): void => {
    entries.set(number, [1, length, 0]);
    put(`${number} 0 obj\n${dictionary} stream\n`);
    put(body);
    put('\nendstream\nendobj\n');
  };
  put('%PDF-1.7\n%\xd3\xeb\xe9\xe1\n');
  for (const object of streams) putStream(object.number, object.text, object.stream ?? new Uint8Array());
  for (const [p, { number, members }] of packs.entries()) {
    members.forEach((object, index) => entries.set(object.number, [2, number, index]));
    const index = packIndex(members);
    const body = deflated(Buffer.from(index + (bodies[p] ?? ''), 'latin1'));
    const sizes = `/N ${members.length}\n/First ${index.length}\n/Filter /FlateDecode\n/Length ${body.length}`;
    putStream(number, `<</Type /ObjStm\n${sizes}>>`, body);
  }
  const tableAt = length;
  entries.set(tableNumber, [1, tableAt, 0]);
  const id = createHash('sha256');
  for (const chunk of chunks) id.update(chunk);
  const hex = id.digest('hex').slice(0, 32).toUpperCase();
  const table = deflated(crossReferences(entries, tableNumber + 1));
  const what = `/Size ${tableNumber + 1}\n/W [1 4 2]\n/Root ${root} 0 R\n/Info ${info} 0 R\n/ID [<${hex}> <${hex}>]`;
  const packed = `/Filter /FlateDecode\n/DecodeParms <</Predictor 12\n/Columns ${COLUMNS}>>\n/Length ${table.length}`;
  putStream(tableNumber, `<</Type /XRef\n${what}\n${packed}>>`, table);
  put(`startxref\n${tableAt}\n%%EOF\n`);
  return Buffer.concat(chunks, length);
}

/** Number and place of each object of a pack, as they stand before the objects themselves. */
function packIndex(members: readonly PdfObject[]): string {
  let at = 0;
  const index: string[] = [];
  for (const { number, text } of members) {
    index.push(`${number} ${at}`);
    at += text.length + 1;
  }
  return `${index.join(' ')}\n`;
}

// Level 4: a tenth larger than level 9, at a tenth of its time.
const deflated = (body: Uint8Array): Buffer => deflateSync(body, { level: 4 });

const COLUMNS = 7;

/** Rows of a table, each as what differs from the row above: neighbours are nearly alike (ISO 32000-1, 7.4.4.4: predictor 12). */
function crossReferences(
  entries: ReadonlyMap<number, readonly [number, number, number]>,
  size: number,
): Uint8Array {
  const table = Buffer.alloc(size * COLUMNS);
  for (let number = 0; number < size; number += 1) {
    const [type, where, index] = entries.get(number) ?? [0, 0, 65535];
    table.writeUInt8(type, number * COLUMNS);
    table.writeUInt32BE(where, number * COLUMNS + 1);
    table.writeUInt16BE(index, number * COLUMNS + 5);
  }
  const UP = 2;
  const rows = Buffer.alloc(size * (COLUMNS + 1));
  for (let number = 0; number < size; number += 1) {
    rows[number * (COLUMNS + 1)] = UP;
    for (let i = 0; i < COLUMNS; i += 1) {
      const at = number * COLUMNS + i;
      rows[at + number + 1] = (table[at] ?? 0) - (table[at - COLUMNS] ?? 0);
    }
  }
  return rows;
}

function fontsOf(objects: readonly PdfObject[]): PdfFont[] {
  const byNumber = new Map(objects.map((o) => [o.number, o.text]));
  const fonts: PdfFont[] = [];
  for (const { text } of objects) {
    if (!/\/Type \/Font\b/.test(text)) continue;
    if (/\/Subtype \/Type0\b/.test(text)) continue; // its descendant has the descriptor
    const descriptor = /\/FontDescriptor (\d+) 0 R/.exec(text);
    const described = descriptor ? (byNumber.get(Number(descriptor[1])) ?? '') : '';
    const name = /\/BaseFont \/(?:[A-Z]{6}\+)?(\S+)/.exec(text)?.[1] ?? '';
    fonts.push({
      name,
      embedded: /\/FontFile[23]? /.test(described),
      type3: /\/Subtype \/Type3\b/.test(text),
    });
  }
  return fonts;
}
