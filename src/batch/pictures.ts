import { readdir, readFile, stat } from 'node:fs/promises';
import { dirname, extname, join, resolve } from 'node:path';
import type { JobPhoto } from '../documents/context.js';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import type { OpenItem } from '../model/message.js';
import { itemAt, note } from '../text/message-kit.js';
import { BATCH_MESSAGES } from '../text/messages/batch.js';
import { shownPath } from '../text/shown-path.js';
import { dataFingerprint, type Fingerprint } from './fingerprint.js';

// Bytes; larger pictures would make a pack that no mail takes.
const LARGEST = 20_000_000;

/** What a picture's first bytes say that it is, whatever its name says. */
function imageType(bytes: Uint8Array): string | undefined {
  const head = Buffer.from(bytes.subarray(0, 256)).toString('latin1');
  if (head.startsWith('\x89PNG\r\n\x1a\n')) return 'image/png';
  if (head.startsWith('\xff\xd8\xff')) return 'image/jpeg';
  if (/^(?:\xef\xbb\xbf)?\s*<(?:\?xml|svg)[\s>]/.test(head)) return 'image/svg+xml';
  return undefined;
}

const dataUrl = (type: string, bytes: Uint8Array): string =>
  `data:${type};base64,${Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('base64')}`;

/** A picture as a document takes it; undefined: there is none that can be used. */
export interface Logo {
  readonly dataUrl: string | undefined;
  readonly items: readonly OpenItem[];
}

/**
 * Reads the company's logo.
 * @param logo path as the settings have it, beside the settings file; ``: none
 * @param settings path of the settings file
 */
export async function readLogo(logo: string, settings: string | undefined): Promise<Logo> {
  if (logo === '') return { dataUrl: undefined, items: [] };
  const path = settings === undefined ? logo : resolve(dirname(settings), logo);
  const picture = await readPicture(path, ['image/png', 'image/jpeg', 'image/svg+xml']);
  if (typeof picture !== 'string') return { dataUrl: dataUrl(picture.type, picture.bytes), items: [] };
  const told = note(BATCH_MESSAGES.pictureNotUsed, { path: shownPath(logo), because: picture });
  return {
    dataUrl: undefined,
    items: [itemAt(told, { file: shownPath(settings ?? ''), line: 0, column: 'company.logo' })],
  };
}

async function readPicture(
  path: string,
  takes: readonly string[],
): Promise<{ type: string; bytes: Uint8Array } | string> {
  try {
    const { size } = await stat(path);
    if (size > LARGEST) return `it is larger than ${LARGEST / 1_000_000} MB`;
    const bytes = await readFile(path);
    const type = imageType(bytes);
    return type !== undefined && takes.includes(type)
      ? { type, bytes }
      : 'it is no picture of a kind that can be printed';
  } catch {
    return "it can't be read";
  }
}

/** The photos of one job. */
export interface JobPhotos {
  /** Names, sizes and times of what lies in the job's folder of photos. */
  readonly from: Fingerprint;
  /**
   * Reads the photos.
   * @param tags of the job's equipments; the photo of each is named by it
   */
  readonly read: (tags: readonly string[]) => Promise<JobPhoto[]>;
}

/**
 * Finds the photos of jobs in a folder with a folder for each job. Names are compared with what lies there, and never
 * put together to a path, so that no job id or tag can lead elsewhere.
 * @param folder as given; undefined: there are no photos
 * @returns a function that finds those of one job, by its id or by the name of its folder
 * @throws Failure (`batch/no-photos`) where the folder isn't there
 */
export async function photoFinder(
  folder: string | undefined,
): Promise<(job: string, name: string) => Promise<JobPhotos>> {
  if (folder === undefined) return () => Promise.resolve({ from: '', read: () => Promise.resolve([]) });
  const entries = await readdir(folder, { withFileTypes: true }).catch((error: unknown) => {
    throw new Failure(note(BATCH_MESSAGES.noPhotos, { folder }), EXIT.usage, { cause: error });
  });
  const jobs = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  return async (job, name) => {
    const place = jobs.find((entry) => entry === job || entry === name);
    const names = place === undefined ? [] : (await readdir(join(folder, place))).sort();
    const states = await Promise.all(
      names.map(async (file) => {
        const { size, mtimeMs } = await stat(join(folder, place ?? '', file));
        return { file, size, mtimeMs };
      }),
    );
    const read = async (tags: readonly string[]): Promise<JobPhoto[]> => {
      const photos: JobPhoto[] = [];
      for (const tag of tags) {
        for (const file of names.filter((n) => n.slice(0, n.length - extname(n).length) === tag)) {
          const picture = await readPicture(join(folder, place ?? '', file), ['image/png', 'image/jpeg']);
          if (typeof picture !== 'string')
            photos.push({ tag, caption: tag, dataUrl: dataUrl(picture.type, picture.bytes) });
        }
      }
      return photos;
    };
    return { from: states.length === 0 ? '' : dataFingerprint(states), read };
  };
}
