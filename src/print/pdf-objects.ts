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
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const startMark = file.lastIndexOf('startxref');
  const start = Number(
    file
      .toString('latin1', startMark + 9)
      .trim()
      .split(/\s/)[0],
  );
  if (startMark < 0 || !file.toString('latin1', start, start + 5).startsWith('xref')) throw odd('no table');
  const tail = file.toString('latin1', start, startMark);
  const [table, trailer] = tail.split('trailer');
  const root = /\/Root (\d+) 0 R/.exec(trailer ?? '');
  if (table === undefined || !root) throw odd('no trailer');
  const info = /\/Info (\d+) 0 R/.exec(trailer ?? '');
  const offsets = [...table.matchAll(/^(\d{10}) \d{5} n/gm)].map((m) => Number(m[1])).sort((a, b) => a - b);
  const objects = offsets.map((at, i) => readObject(file, at, offsets[i + 1] ?? start));
  return { objects, root: Number(root[1]), info: info ? Number(info[1]) : undefined };
}

const odd = (what: string): Error => new Error(`the browser's PDF has a form that isn't known: ${what}`);

const STREAM = 'stream\n';
const ENDSTREAM = '\nendstream\nendobj\n';
const ENDOBJ = '\nendobj\n';

function readObject(file: Buffer, at: number, end: number): PdfObject {
  const head = /^(\d+) 0 obj\n/.exec(file.toString('latin1', at, at + 24));
  if (!head) throw odd(`no object at ${at}`);
  const bodyAt = at + head[0].length;
  const number = Number(head[1]);
  if (file.toString('latin1', end - ENDSTREAM.length, end) === ENDSTREAM) {
    const streamAt = file.indexOf(STREAM, bodyAt);
    const text = file.toString('latin1', bodyAt, streamAt).trimEnd();
    const from = streamAt + STREAM.length;
    const stream = file.subarray(from, end - ENDSTREAM.length);
    if (!new RegExp(`/Length ${stream.length}\\b`).test(text)) throw odd(`length of stream ${number}`);
    return { number, text, stream };
  }
  if (file.toString('latin1', end - ENDOBJ.length, end) !== ENDOBJ) throw odd(`end of object ${number}`);
  return { number, text: file.toString('latin1', bodyAt, end - ENDOBJ.length), stream: undefined };
}
