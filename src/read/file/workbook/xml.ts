import { TextDecoder } from 'node:util';
import sax from 'sax';
import { STEP, type InSteps } from '../in-steps.js';
import { WorkbookFault } from './fault.js';

/** Attributes of an element, by name without a prefix. */
export type Attributes = Readonly<Record<string, string | undefined>>;

/** What to do with the elements of a document; names are without a prefix. */
export interface XmlWalk {
  readonly open: (name: string, attributes: Attributes) => void;
  readonly close: (name: string) => void;
  readonly text: (text: string) => void;
}

/** No part of a workbook nests deeper by far. */
const DEEPEST = 200;

/** Entities that a document declares aren't read: they can be made to fill the memory. */
const OPTIONS = { position: false, strictEntities: true };

const withoutPrefix = (name: string): string => name.slice(name.indexOf(':') + 1);

/**
 * Walks through an XML document in steps; entities of its own aren't read.
 * @param bytes UTF-8, or UTF-16 by its mark
 * @param walk called for each element and text
 * @throws WorkbookFault where it isn't well-formed
 */
export function* walkingXml(bytes: Uint8Array, walk: XmlWalk): InSteps<void> {
  const parser = sax.parser(true, OPTIONS);
  let depth = 0;
  parser.onerror = () => {
    throw new WorkbookFault('broken');
  };
  parser.onopentag = ({ name, attributes }) => {
    depth += 1;
    if (depth > DEEPEST) throw new WorkbookFault('broken');
    const bare: Record<string, string> = Object.create(null) as Record<string, string>;
    for (const [key, value] of Object.entries(attributes))
      if (typeof value === 'string') bare[withoutPrefix(key)] = value;
    walk.open(withoutPrefix(name), bare);
  };
  parser.onclosetag = (name) => {
    depth -= 1;
    walk.close(withoutPrefix(name));
  };
  parser.ontext = walk.text;
  parser.oncdata = walk.text;
  const decoder = decoderOf(bytes);
  for (let at = 0; at < bytes.length; at += STEP) {
    if (at > 0) yield;
    parser.write(decoded(decoder, bytes.subarray(at, at + STEP)));
  }
  parser.write(decoded(decoder)).close();
}

function decoderOf([first, second]: Uint8Array): TextDecoder {
  const encoding =
    first === 0xff && second === 0xfe ? 'utf-16le' : first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8';
  return new TextDecoder(encoding, { fatal: true });
}

function decoded(decoder: TextDecoder, piece?: Uint8Array): string {
  try {
    return piece === undefined ? decoder.decode() : decoder.decode(piece, { stream: true });
  } catch {
    throw new WorkbookFault('broken');
  }
}
