import { lstat, readdir } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import type { JobPhoto } from '../documents/parts/context.js';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { LIMITS } from '../model/limits.js';
import type { OpenItem } from '../model/open-item.js';
import { itemAt, note } from '../model/message.js';
import { BATCH_MESSAGES } from '../model/messages/batch.js';
import { shownPath } from '../words/shown-path.js';
import { dataFingerprint, type Fingerprint } from './fingerprint.js';
import { dataUrl, MOST_BYTES, readPicture, type NoPicture } from './picture-file.js';

/** What systems leave in folders that were looked at. */
const LEAVINGS = /^(?:\.|thumbs\.db$|desktop\.ini$)/i;

/** The photos of one job. */
export interface JobPhotos {
  /** Names, sizes and times of what lies in the job's folder of photos. */
  readonly from: Fingerprint;
  /**
   * Reads the photos.
   * @param tags of the job's equipments; the photo of each is named by it
   */
  readonly read: (tags: readonly string[]) => Promise<PhotosRead>;
}

/** Photos in the order of the tags, and an item for every file that isn't one of them. */
export interface PhotosRead {
  readonly photos: readonly JobPhoto[];
  readonly items: readonly OpenItem[];
}

/** The folder of photos, with a folder for each job. */
export interface PhotoFolder {
  /**
   * Finds the photos of one job.
   * @param job its id
   * @param name of its folder in the output folder
   */
  readonly ofJob: (job: string, name: string) => Promise<JobPhotos>;
  /**
   * Names what belongs to no job.
   * @param names ids and names of the folders of all jobs on the lists
   */
  readonly ofNoJob: (names: Iterable<string>) => readonly OpenItem[];
}

const NO_PHOTOS: JobPhotos = { from: '', read: () => Promise.resolve({ photos: [], items: [] }) };

// A disk may hold names with their accents apart.
const composed = (name: string): string => name.normalize('NFC');

/**
 * Opens the folder of photos. Names are compared with what lies there, and never put together to a path, so that no job
 * id or tag can lead elsewhere; links aren't followed.
 * @param folder as given; undefined: there are no photos
 * @throws Failure (`batch/no-photos`) where the folder isn't there
 */
export async function openPhotos(folder: string | undefined): Promise<PhotoFolder> {
  if (folder === undefined) return { ofJob: () => Promise.resolve(NO_PHOTOS), ofNoJob: () => [] };
  const all = await readdir(folder, { withFileTypes: true }).catch((error: unknown) => {
    throw new Failure(note(BATCH_MESSAGES.noPhotos, { folder }), EXIT.usage, { cause: error });
  });
  const entries = all.filter((entry) => !LEAVINGS.test(entry.name));
  return {
    ofJob: async (job, name) => {
      const named = entries.filter((e) => composed(e.name) === composed(job) || e.name === name);
      const inside = named.filter((e) => e.isDirectory()).map((e) => join(folder, e.name));
      const paths = (await Promise.all(inside.map(pathsIn))).flat();
      paths.push(...named.filter((e) => !e.isDirectory()).map((e) => join(folder, e.name)));
      return paths.length === 0 ? NO_PHOTOS : photosAt(paths, job);
    },
    ofNoJob: (names) => {
      const known = new Set(Array.from(names, composed));
      return entries
        .filter((entry) => !known.has(composed(entry.name)))
        .map((entry) =>
          itemAt(
            note(BATCH_MESSAGES.photosOfNoJob, { entry: entry.name }),
            placeOf(join(folder, entry.name)),
          ),
        );
    },
  };
}

async function pathsIn(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch(() => []);
  return names
    .filter((name) => !LEAVINGS.test(name))
    .sort()
    .map((name) => join(folder, name));
}

const placeOf = (path: string): { file: string; line: number; column: string } => ({
  file: shownPath(path),
  line: 0,
  column: '',
});

async function photosAt(paths: readonly string[], job: string): Promise<JobPhotos> {
  const states = await Promise.all(
    paths.map(async (path) => {
      // Of a link the link itself: where it leads is nobody's matter here, and may be nowhere.
      const state = await lstat(path).catch(() => undefined);
      return [shownPath(path), state?.mode ?? 0, state?.size ?? 0, state?.mtimeMs ?? 0];
    }),
  );
  const read = async (tags: readonly string[]): Promise<PhotosRead> => {
    const tagOf = new Map(tags.map((tag) => [composed(tag), tag]));
    const found = new Map<string, JobPhoto[]>();
    const items: OpenItem[] = [];
    let together = 0;
    const beyond: { path: string; tag: string }[] = [];
    for (const path of paths) {
      const name = basename(path);
      const tag = tagOf.get(composed(name.slice(0, name.length - extname(name).length)));
      const notPrinted = (why: NoPicture): void => {
        const told = note(BATCH_MESSAGES.photoNotPrinted, {
          photo: name,
          fault: why.fault,
          amount: why.amount,
        });
        items.push(itemAt(told, placeOf(path), tag ?? ''));
      };
      // Asked before it is read: there may be gigabytes of them.
      if (tag !== undefined && together + (await printableBytes(path)) > LIMITS.jobPhotos) {
        beyond.push({ path, tag });
        continue;
      }
      const picture = tag === undefined ? await entryAt(path) : await readPicture(path, false);
      if (picture !== undefined && 'fault' in picture) notPrinted(picture);
      else if (picture === undefined || tag === undefined)
        items.push(itemAt(note(BATCH_MESSAGES.photoOfNoTag, { photo: name, job }), placeOf(path)));
      else {
        together += picture.bytes.length;
        const photo = { tag, caption: tag, dataUrl: dataUrl(picture) };
        found.set(tag, [...(found.get(tag) ?? []), photo]);
      }
    }
    const [first] = beyond;
    if (first !== undefined) {
      const names = beyond.map((photo) => basename(photo.path));
      const told = note(BATCH_MESSAGES.photosTooLarge, {
        photos: names,
        job,
        megabytes: LIMITS.jobPhotos / 1e6,
      });
      items.push(itemAt(told, placeOf(first.path), beyond.length === 1 ? first.tag : ''));
    }
    return { photos: [...new Set(tags)].flatMap((tag) => found.get(tag) ?? []), items };
  };
  return { from: dataFingerprint(states), read };
}

/** The bytes that a photo would add; 0 where its file is none that is read. */
async function printableBytes(path: string): Promise<number> {
  const state = await lstat(path).catch(() => undefined);
  return state?.isFile() === true && state.size <= MOST_BYTES ? state.size : 0;
}

/** What keeps a file from being a photo whatever its name is; undefined: nothing. */
async function entryAt(path: string): Promise<NoPicture | undefined> {
  const state = await lstat(path).catch(() => undefined);
  if (state?.isSymbolicLink() === true) return { fault: 'link', amount: 0 };
  return state?.isDirectory() === true ? { fault: 'folder', amount: 0 } : undefined;
}
