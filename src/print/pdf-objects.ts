/** One indirect object of a PDF: the bytes between `N 0 obj` and `endobj`. */
export interface PdfObject {
  readonly number: number;
  /** The whole body; of a stream: its dictionary. Latin-1, one character a byte. */
  readonly text: string;
  /** The bytes of a stream, as they are (compressed); undefined: no stream. */
  readonly stream: Uint8Array | undefined;
}

/** The objects of a PDF, in the order of the file, and its trailer's two references. */
export interface PdfObjects {
  readonly objects: readonly PdfObject[];
  readonly root: number;
  readonly info: number | undefined;
}

/**
 * Takes a PDF that the browser wrote apart. It knows that writer's form only: one cross-reference table, one object
 * after another, every `/Length` a number; anything else is refused.
 * @param bytes a PDF as the browser's print command returns it
 * @throws Error where the file hasn't that form
 */
export function readPdfObjects(bytes: Uint8Array): PdfObjects {
  // One character a byte: places in the text are places in the file, and a piece of it costs nothing.
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  const startMark = text.lastIndexOf('startxref');
  const start = Number(/\d+/.exec(text.slice(startMark + 9))?.[0] ?? -1);
  if (startMark < 0 || !text.startsWith('xref', start)) throw odd('no table');
  const trailerMark = text.indexOf('trailer', start);
  const trailer = text.slice(trailerMark, startMark);
  const root = /\/Root (\d+) 0 R/.exec(trailer);
  if (trailerMark < 0 || !root) throw odd('no trailer');
  const info = /\/Info (\d+) 0 R/.exec(trailer);
  const table = text.slice(start, trailerMark);
  const offsets = [...table.matchAll(/^(\d{10}) \d{5} n/gm)].map((m) => Number(m[1])).sort((a, b) => a - b);
  const objects = offsets.map((at, i) => readObject(text, bytes, at, offsets[i + 1] ?? start));
  return { objects, root: Number(root[1]), info: info ? Number(info[1]) : undefined };
}

const odd = (what: string): Error => new Error(`the browser’s PDF has a form that isn’t known: ${what}`);

const OBJ = ' 0 obj\n';
const STREAM = 'stream\n';
const ENDSTREAM = '\nendstream\nendobj\n';
const ENDOBJ = '\nendobj\n';

function readObject(file: string, bytes: Uint8Array, at: number, end: number): PdfObject {
  const headEnd = file.indexOf(OBJ, at);
  const number = Number(file.slice(at, headEnd));
  if (!Number.isInteger(number) || number < 1) throw odd(`no object at ${at}`);
  const bodyAt = headEnd + OBJ.length;
  if (file.startsWith(ENDSTREAM, end - ENDSTREAM.length)) {
    const streamAt = file.indexOf(STREAM, bodyAt);
    const text = file.slice(bodyAt, streamAt).trimEnd();
    const stream = bytes.subarray(streamAt + STREAM.length, end - ENDSTREAM.length);
    if (!new RegExp(`/Length ${stream.length}\\b`).test(text)) throw odd(`length of stream ${number}`);
    return { number, text, stream };
  }
  if (!file.startsWith(ENDOBJ, end - ENDOBJ.length)) throw odd(`end of object ${number}`);
  return { number, text: file.slice(bodyAt, end - ENDOBJ.length), stream: undefined };
}
