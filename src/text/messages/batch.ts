import type { MessageEntry } from '../message-kit.js';

/** Stands after the sentence that says why a job failed. */
export const PACK_NOT_MADE =
  'The pack of this job was not made; what its folder holds, if anything, is older.';

/** What a picture's file is that can't be printed; figures in MB and megapixels. */
const PHOTO_FAULTS = {
  link: () => "it is a link, and links aren't followed",
  folder: () => 'it is a folder',
  'no-file': () => 'it is no file',
  unreadable: () => "it can't be read",
  bytes: (megabytes: number) => `it holds ${megabytes} MB, more than 50`,
  pixels: (megapixels: number) => `it has ${megapixels} megapixels, more than 50`,
  together: (megabytes: number) => `with it the photos of this job would hold more than ${megabytes} MB`,
  heic: () => 'it is HEIC or AVIF, which no PDF holds',
  svg: () => 'it is a drawing (SVG), not a photo',
  kind: () => 'it is no PNG and no JPEG, whatever its name says',
  coding: () => "it is a JPEG of a coding that browsers don't read",
  broken: () => 'it is damaged or ends too early',
} as const;

/** Why a photo can't be printed. */
export type PhotoFault = keyof typeof PHOTO_FAULTS;

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

/** Messages of the batch as a whole, and of jobs that failed. */
export const BATCH_MESSAGES = {
  programFault: {
    code: 'batch/program-fault',
    severity: 'conflict',
    title: 'A fault of the program met one job',
    message: (p: { what: string }) => `The program met a fault of its own: ${p.what.replace(/[.\s]+$/, '')}.`,
    found: (p) => p.what,
    expected: 'no fault',
    hint: 'Run this job by itself (--job) with --verbose, and report what it prints.',
    who: 'office',
  } satisfies MessageEntry<{ what: string }>,
  noSuchJob: {
    code: 'batch/no-such-job',
    severity: 'conflict',
    title: 'The lists hold no such job',
    message: (p: { job: string; nearest: string }) =>
      `The lists hold no job ${p.job}${p.nearest === '' ? '' : `; the nearest is ${p.nearest}`}.`,
    found: (p) => p.job,
    expected: 'the id of a job on the lists',
    hint: 'Correct --job, or leave it out for all jobs.',
    who: 'office',
  } satisfies MessageEntry<{ job: string; nearest: string }>,
  interrupted: {
    code: 'batch/interrupted',
    severity: 'conflict',
    title: 'The run was stopped',
    message: (p: { done: number; all: number }) =>
      `The run was stopped after ${p.done} of ${p.all} jobs: this report ends there, and order-list.csv and missing-models.csv are those of the last whole run.`,
    found: (p) => `${p.done} of ${p.all} jobs`,
    expected: 'a run that reaches its end',
    hint: 'Run the same command again: it makes what is left.',
    who: 'office',
  } satisfies MessageEntry<{ done: number; all: number }>,
  folderLeft: {
    code: 'batch/folder-left',
    severity: 'confirm',
    title: 'A folder of a job that no list names',
    message: (p: { folder: string }) =>
      `The folder ${p.folder} holds the pack of a job that no list names any more; it is left as it is.`,
    found: (p) => p.folder,
    expected: 'a folder for each job on the lists',
    hint: 'Delete it if the job is given up, or put the job back on a list.',
    who: 'office',
  } satisfies MessageEntry<{ folder: string }>,
  noPhotos: {
    code: 'batch/no-photos',
    severity: 'conflict',
    title: 'The folder of photos is not there',
    message: (p: { folder: string }) => `There is no folder ${p.folder} of photos.`,
    found: (p) => p.folder,
    expected: 'a folder with a folder for each job',
    hint: 'Correct --photos, or leave it out.',
    who: 'office',
  } satisfies MessageEntry<{ folder: string }>,
  photoNotPrinted: {
    code: 'photo/not-printed',
    severity: 'confirm',
    title: "A photo can't be printed",
    message: (p: { photo: string; because: string }) => `The photo ${p.photo} isn't printed: ${p.because}.`,
    found: (p) => p.photo,
    expected: 'a whole PNG or JPEG of at most 50 MB and 50 megapixels',
    hint: 'Save it as a JPEG of a few megabytes under the same name, or take it out.',
    who: 'office',
  } satisfies MessageEntry<{ photo: string; because: string }>,
  photoOfNoTag: {
    code: 'photo/no-tag',
    severity: 'confirm',
    title: 'A photo is named by no tag of its job',
    message: (p: { photo: string; job: string }) =>
      `The photo ${p.photo} isn't printed: ${p.job} has no equipment of that tag.`,
    found: (p) => p.photo,
    expected: "a photo named by the tag of its equipment, such as CC-1.jpg, right in the job's folder",
    hint: 'Name it by the tag of what it shows, or take it out.',
    who: 'office',
  } satisfies MessageEntry<{ photo: string; job: string }>,
  photosOfNoJob: {
    code: 'photo/no-job',
    severity: 'confirm',
    title: 'A folder or file among the photos belongs to no job',
    message: (p: { entry: string }) =>
      `${p.entry}, among the photos, is the folder of no job on the lists: nothing in it is printed.`,
    found: (p) => p.entry,
    expected: 'a folder named by the id of a job, or by its folder in --out',
    hint: 'Name the folder by the id of its job, or take it out.',
    who: 'office',
  } satisfies MessageEntry<{ entry: string }>,
  pictureNotUsed: {
    code: 'batch/picture-not-used',
    severity: 'confirm',
    title: "A picture can't be used",
    message: (p: { path: string; because: string }) => `The picture ${p.path} isn't used: ${p.because}.`,
    found: (p) => p.path,
    expected: 'a PNG, JPEG or SVG of at most 50 MB and 50 megapixels',
    hint: 'Save it as one of those, or take it out.',
    who: 'office',
  } satisfies MessageEntry<{ path: string; because: string }>,
};
