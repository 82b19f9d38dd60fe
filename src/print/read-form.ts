import type * as PdfLibrary from '@cantoo/pdf-lib';
import type { PDFArray, PDFDict, PDFDocument, PDFObject } from '@cantoo/pdf-lib';
import { unpacksWithin } from './unpacked-size.js';

/** Why a PDF gives no values of fields. */
export type FormFault = 'no-pdf' | 'locked' | 'broken' | 'no-form' | 'too-large';

/** The values of a form's fields by their whole names; `` where nothing was filled in. */
export type FormValues = ReadonlyMap<string, string>;

/** Bytes; the form of a job of 500 housings is a tenth of it. */
const LARGEST = 50_000_000;
/** Bytes that it may unpack to. */
const UNPACKED = 400_000_000;
/** More fields than any form of ours has. */
const MOST_FIELDS = 200_000;
/** Characters of a value; a cell of a list may have as many. */
const LONGEST = 1_000_000;
const DEEPEST = 12;

type Library = typeof PdfLibrary;

class TooLarge extends Error {}

/**
 * Reads the values that somebody typed or chose into the fields of a PDF form. Nothing of it is run, followed or fetched: scripts,
 * actions and attachments are passed over, and so are buttons and signatures.
 * @param bytes of a file that somebody sent
 * @returns values by name, or why there are none; never throws
 */
export async function readForm(
  bytes: Uint8Array,
): Promise<{ readonly values: FormValues } | { readonly fault: FormFault }> {
  if (bytes.length > LARGEST) return { fault: 'too-large' };
  if (!Buffer.from(bytes.subarray(0, 1024)).toString('latin1').includes('%PDF-')) return { fault: 'no-pdf' };
  if (!unpacksWithin(bytes, UNPACKED)) return { fault: 'too-large' };
  const library = await import('@cantoo/pdf-lib');
  try {
    const document = await library.PDFDocument.load(bytes, {
      updateMetadata: false,
      ignoreEncryption: true,
    });
    if (document.isEncrypted) return { fault: 'locked' };
    const values = valuesOf(document, library);
    return values.size === 0 ? { fault: 'no-form' } : { values };
  } catch (error) {
    return { fault: error instanceof TooLarge ? 'too-large' : 'broken' };
  }
}

/** A field, or what stands above several. */
interface Waiting {
  readonly field: PDFDict;
  readonly path: string;
  readonly depth: number;
  /** What it has of those above it. */
  readonly kind: string;
  readonly value: PDFObject | undefined;
  readonly options: PDFObject | undefined;
}

function valuesOf(document: PDFDocument, library: Library): FormValues {
  const { PDFArray: List, PDFDict: Dict, PDFName } = library;
  const look = (of: PDFDict, key: string): PDFObject | undefined => of.lookup(PDFName.of(key));
  const dictionaries = (list: PDFObject | undefined): PDFDict[] =>
    list instanceof List
      ? Array.from({ length: Math.min(list.size(), MOST_FIELDS) }, (_, i) => list.lookup(i)).filter(
          (one): one is PDFDict => one instanceof Dict,
        )
      : [];
  const values = new Map<string, string>();
  const form = look(document.catalog, 'AcroForm');
  if (!(form instanceof Dict)) return values;
  const seen = new Set<PDFDict>();
  const waiting: Waiting[] = dictionaries(look(form, 'Fields')).map((field) => {
    return { field, path: '', depth: 0, kind: '', value: undefined, options: undefined };
  });
  for (let one = waiting.pop(); one; one = waiting.pop()) {
    const { field, depth } = one;
    if (depth > DEEPEST || seen.has(field)) continue;
    if (seen.size >= MOST_FIELDS) throw new TooLarge();
    seen.add(field);
    const name = textOf(look(field, 'T'), library);
    const path = [one.path, name].filter((part) => part !== '').join('.');
    const kind = look(field, 'FT')?.toString() ?? one.kind;
    const value = look(field, 'V') ?? one.value;
    const options = look(field, 'Opt') ?? one.options;
    const kids = dictionaries(look(field, 'Kids')).filter((kid) => look(kid, 'T') !== undefined);
    for (const kid of kids) waiting.push({ field: kid, path, depth: depth + 1, kind, value, options });
    if (kids.length > 0 || path === '' || (kind !== '/Tx' && kind !== '/Ch')) continue;
    const text = chosen(options, valueText(value, library), library);
    // Two fields of one name are one; whichever of them was filled in counts.
    if ((values.get(path) ?? '') === '') values.set(path, text);
  }
  return values;
}

function valueText(value: PDFObject | undefined, library: Library): string {
  if (value instanceof library.PDFArray)
    return Array.from({ length: Math.min(value.size(), 100) }, (_, i) => textOf(value.lookup(i), library))
      .filter((one) => one !== '')
      .join('; ');
  if (value instanceof library.PDFRawStream) {
    // A long text may stand in a stream.
    const bytes = library.decodePDFRawStream(value).decode();
    if (bytes.length > LONGEST * 2) throw new TooLarge();
    return decoded(bytes, library);
  }
  return textOf(value, library);
}

function textOf(value: PDFObject | undefined, library: Library): string {
  if (!(value instanceof library.PDFString || value instanceof library.PDFHexString)) return '';
  const text = decoded(value.asBytes(), library);
  if (text.length > LONGEST) throw new TooLarge();
  return text;
}

/** Bytes that the library decodes at a time: of a longer text it fills the stack. */
const AT_A_TIME = 10_000;

/** A text string of a PDF: UTF-16 or UTF-8 by its mark, else an encoding of its own (ISO 32000-1, 7.9.2.2; ISO 32000-2, 7.9.2.2.1). */
function decoded(bytes: Uint8Array, library: Library): string {
  const [first, second, third] = bytes;
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  if (first === 0xef && second === 0xbb && third === 0xbf) return new TextDecoder().decode(bytes);
  let text = '';
  for (let at = 0; at < bytes.length; at += AT_A_TIME) {
    const hex = Buffer.from(bytes.subarray(at, at + AT_A_TIME)).toString('hex');
    // A letter before it, so that no piece begins with what would be a mark.
    text += library.PDFHexString.of(`61${hex}`).decodeText().slice(1);
  }
  return text;
}

/** The value of what was chosen: some programs keep what they show in its place. */
function chosen(options: PDFObject | undefined, text: string, library: Library): string {
  if (!(options instanceof library.PDFArray) || text === '') return text;
  const pairs = pairsOf(options, library);
  if (pairs.some(([value]) => value === text)) return text;
  return pairs.find(([, shows]) => shows === text)?.[0] ?? text;
}

function pairsOf(options: PDFArray, library: Library): (readonly [value: string, shows: string])[] {
  return Array.from({ length: Math.min(options.size(), 100) }, (_, i) => {
    const option = options.lookup(i);
    if (!(option instanceof library.PDFArray)) return ['', ''] as const;
    return [textOf(option.lookup(0), library), textOf(option.lookup(1), library)] as const;
  });
}
