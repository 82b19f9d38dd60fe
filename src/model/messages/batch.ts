import { message } from '../message.js';

/** Messages of the batch as a whole, and of jobs that failed. */
export const BATCH_MESSAGES = {
  programFault: message<{ what: string }>('batch/program-fault', 'conflict', 'office'),
  noSuchJob: message<{ job: string; nearest: string }>('batch/no-such-job', 'conflict', 'office'),
  interrupted: message<{ done: number; all: number }>('batch/interrupted', 'conflict', 'office'),
  folderLeft: message<{ folder: string }>('batch/folder-left', 'confirm', 'office'),
  noPhotos: message<{ folder: string }>('batch/no-photos', 'conflict', 'office'),
  pictureNotUsed: message<{ path: string; because: string }>('batch/picture-not-used', 'confirm', 'office'),
  recordIgnored: message<{ name: string }>('batch/record-ignored', 'confirm', 'office'),
  fileEdited: message<{ file: string; folder: string }>('batch/file-edited', 'confirm', 'office'),
} as const;
