import { realpath } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import type { OpenItem } from '../model/open-item.js';
import { itemAt, note } from '../model/message.js';
import { BATCH_MESSAGES } from '../model/messages/batch.js';
import { shownPath } from '../words/shown-path.js';
import { dataUrl, readPicture } from './picture-file.js';

/** A picture as a document takes it; undefined: there is none that can be used. */
export interface Logo {
  readonly dataUrl: string | undefined;
  readonly items: readonly OpenItem[];
}

/** Where the company's logo is: beside the settings file; `` where there is none. */
export function logoPath(logo: string, settings: string | undefined): string {
  return logo === '' || settings === undefined ? logo : resolve(dirname(settings), logo);
}

/**
 * Reads the company's logo.
 * @param logo path as the settings have it, beside the settings file; ``: none
 * @param settings path of the settings file
 */
export async function readLogo(logo: string, settings: string | undefined): Promise<Logo> {
  if (logo === '') return { dataUrl: undefined, items: [] };
  const path = logoPath(logo, settings);
  // The settings are the company's own: a link is followed here.
  const picture = await readPicture(await realpath(path).catch(() => path), true);
  if (!('fault' in picture)) return { dataUrl: dataUrl(picture), items: [] };
  const told = note(BATCH_MESSAGES.pictureNotUsed, {
    path: shownPath(logo),
    fault: picture.fault,
    amount: picture.amount,
  });
  return {
    dataUrl: undefined,
    items: [itemAt(told, { file: shownPath(settings ?? ''), line: 0, column: 'company.logo' })],
  };
}
