import { createHash } from 'node:crypto';
import { lstat, readdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { RecordPhoto, RecordPhotos } from '../documents/parts/context.js';
import { LIMITS } from '../model/limits.js';
import type { SiteRecord } from '../model/record.js';
import type { Unprinted } from '../words/languages/as-built-words.js';
import { dataUrl, readPicture } from './picture-file.js';

/** A photo that a record names, and where it lies. */
export interface FoundPhoto {
  readonly tags: readonly string[];
  /** Its name, without folders. */
  readonly name: string;
  /** As the record has it; `` unknown. */
  readonly sha256: string;
  /** Undefined: it isn't there. */
  readonly path: string | undefined;
  readonly size: number;
  readonly modified: number;
}

/** Where photos of a record can lie. */
export interface PhotoPlaces {
  /** The job's folder in the output folder; photos lie in `photos` in it. */
  readonly folder: string;
  /** What `--photos` names; undefined: nothing. */
  readonly photos: string | undefined;
  /** Names that the job's folder can have there. */
  readonly jobs: readonly string[];
}

/** A name as it stands behind the last stroke of a path, whichever system wrote it. */
const nameOf = (file: string): string => basename(file.replaceAll('\\', '/'));

const composed = (name: string): string => name.normalize('NFC');

/** Folders are read and their names compared: no name of a record becomes part of a path. */
async function filesIn(folder: string): Promise<Map<string, string>> {
  const names = await readdir(folder).catch(() => []);
  return new Map(names.map((name) => [composed(name), join(folder, name)]));
}

async function placesOf({ folder, photos, jobs }: PhotoPlaces): Promise<Map<string, string>[]> {
  const own = photos === undefined ? new Map<string, string>() : await filesIn(photos);
  const named = [...new Set(jobs.map(composed))].flatMap((job) => own.get(job) ?? []);
  return Promise.all([join(folder, 'photos'), ...named].map(filesIn));
}

/**
 * Finds the photos that a record names.
 * @param record of a job
 * @param places where they can lie
 * @returns each file once, in the order of the record
 */
export async function findRecordPhotos(record: SiteRecord, places: PhotoPlaces): Promise<FoundPhoto[]> {
  const named = new Map<string, { name: string; sha256: string; tags: string[] }>();
  const all = [
    ...record.housings.map(({ tag, entries }) => ({ tag, photos: entries.flatMap((entry) => entry.photos) })),
    ...record.facts,
  ];
  for (const { tag, photos } of all) {
    for (const { file, sha256 } of photos) {
      const key = JSON.stringify([file, sha256]);
      const known = named.get(key) ?? { name: nameOf(file), sha256, tags: [] };
      named.set(key, known);
      if (!known.tags.includes(tag)) known.tags.push(tag);
    }
  }
  if (named.size === 0) return [];
  const folders = await placesOf(places);
  return Promise.all(
    Array.from(named.values(), async (photo) => {
      const path = folders.flatMap((files) => files.get(composed(photo.name)) ?? [])[0];
      const state = path === undefined ? undefined : await lstat(path).catch(() => undefined);
      return { ...photo, path, size: state?.size ?? 0, modified: state?.mtimeMs ?? 0 };
    }),
  );
}

/**
 * Reads the photos of a record.
 * @param photos as they were found
 * @returns those that can be printed, and the others by name, with why
 */
export async function readRecordPhotos(photos: readonly FoundPhoto[]): Promise<RecordPhotos> {
  const printed: RecordPhoto[] = [];
  const notPrinted: RecordPhotos['notPrinted'][number][] = [];
  let together = 0;
  for (const { name, tags, path, size, sha256 } of photos) {
    const left = (why: Unprinted): void => void notPrinted.push({ name, why });
    if (path === undefined) left('missing');
    else if (together + size > LIMITS.jobPhotos) left('too-much');
    else {
      const picture = await readPicture(path, false);
      if ('fault' in picture) left('no-picture');
      else if (sha256 !== '' && createHash('sha256').update(picture.bytes).digest('hex') !== sha256)
        left('another');
      else {
        together += picture.bytes.length;
        printed.push({ tags, file: name, dataUrl: dataUrl(picture) });
      }
    }
  }
  return { printed, notPrinted };
}
