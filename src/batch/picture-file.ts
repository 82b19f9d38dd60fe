import { constants } from 'node:fs';
import { lstat, open } from 'node:fs/promises';
import type { PhotoFault } from '../model/messages/batch.js';
import { jpegSize, pngSize, type PictureSize } from './picture-size.js';

/** A picture that a document can show. */
export interface Picture {
  readonly type: 'image/png' | 'image/jpeg' | 'image/svg+xml';
  readonly bytes: Uint8Array;
}

/** Why there is none; the amount is MB or megapixels, or 0. */
export interface NoPicture {
  readonly fault: PhotoFault;
  readonly amount: number;
}

/** A picture as a document takes it, inlined. */
export function dataUrl({ type, bytes }: Picture): string {
  return `data:${type};base64,${Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('base64')}`;
}

/** Limits of a photo. */
export const MOST_BYTES = 50_000_000;
const MOST_PIXELS = 50_000_000;

/**
 * Reads a picture. Links aren't followed, and what is no regular file is never waited for.
 * @param path of the file
 * @param takesDrawings true: an SVG too
 * @returns the picture, or why it can't be printed; never throws
 */
export async function readPicture(path: string, takesDrawings: boolean): Promise<Picture | NoPicture> {
  try {
    const entry = await lstat(path);
    if (entry.isSymbolicLink()) return none('link');
    if (entry.isDirectory()) return none('folder');
    if (!entry.isFile()) return none('no-file');
    const bytes = await bytesOf(path);
    return 'fault' in bytes ? bytes : pictureOf(bytes, takesDrawings);
  } catch {
    return none('unreadable');
  }
}

const none = (fault: PhotoFault, amount = 0): NoPicture => ({ fault, amount });

async function bytesOf(path: string): Promise<Uint8Array | NoPicture> {
  // Someone may have put a link or a pipe there meanwhile.
  const file = await open(path, constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK);
  try {
    const state = await file.stat();
    if (!state.isFile()) return none('no-file');
    if (state.size > MOST_BYTES) return none('bytes', Math.ceil(state.size / 1e6));
    return await file.readFile();
  } finally {
    await file.close();
  }
}

/** What a file's bytes say that it is, whatever its name says. */
function pictureOf(bytes: Uint8Array, takesDrawings: boolean): Picture | NoPicture {
  const head = Buffer.from(bytes.subarray(0, 256)).toString('latin1');
  if (head.startsWith('\x89PNG\r\n\x1a\n')) return sized('image/png', bytes, pngSize(bytes));
  if (head.startsWith('\xff\xd8\xff')) return sized('image/jpeg', bytes, jpegSize(bytes));
  if (/^(?:\xef\xbb\xbf)?\s*<(?:\?xml|svg|!DOCTYPE svg)[\s>]/i.test(head))
    return takesDrawings ? { type: 'image/svg+xml', bytes } : none('svg');
  return none(/^.{4}ftyp(?:hei|hev|mif1|msf1|avi[fs])/s.test(head) ? 'heic' : 'kind');
}

function sized(type: Picture['type'], bytes: Uint8Array, size: PictureSize): Picture | NoPicture {
  if (typeof size === 'string') return none(size);
  const pixels = size.width * size.height;
  return pixels > MOST_PIXELS ? none('pixels', Math.ceil(pixels / 1e6)) : { type, bytes };
}
