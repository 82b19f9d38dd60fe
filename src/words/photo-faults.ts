import type { PhotoFault } from '../model/messages/batch.js';

/** What a picture's file is that can't be printed; figures in MB and megapixels. */
const PHOTO_FAULTS = {
  link: () => 'it is a link, and links aren’t followed',
  folder: () => 'it is a folder',
  'no-file': () => 'it is no file',
  unreadable: () => 'it can’t be read',
  bytes: (megabytes: number) => `it holds ${megabytes} MB, more than 50`,
  pixels: (megapixels: number) => `it has ${megapixels} megapixels, more than 50`,
  heic: () => 'it is HEIC or AVIF, which no PDF holds',
  svg: () => 'it is a drawing (SVG), not a photo',
  kind: () => 'it is no PNG and no JPEG, whatever its name says',
  coding: () => 'it is a JPEG of a coding that browsers don’t read',
  broken: () => 'it is damaged or ends too early',
} as const satisfies { readonly [F in PhotoFault]: (amount: number) => string };

/** Why a picture isn't used, for a sentence; the amount is MB or megapixels. */
export function becauseOf({
  fault,
  amount,
}: {
  readonly fault: PhotoFault;
  readonly amount: number;
}): string {
  return PHOTO_FAULTS[fault](amount);
}
