import { message } from '../message.js';

/** Why a photo can't be printed. */
export type PhotoFault =
  | 'link'
  | 'folder'
  | 'no-file'
  | 'unreadable'
  | 'bytes'
  | 'pixels'
  | 'heic'
  | 'svg'
  | 'kind'
  | 'coding'
  | 'broken';

/** Why a data sheet can't be taken. */
export type DataSheetFault = 'no-file' | 'unreadable' | 'no-pdf' | 'locked' | 'broken' | 'empty';

/** Messages of the batch as a whole, and of jobs that failed. */
export const BATCH_MESSAGES = {
  programFault: message<{ what: string }>('batch/program-fault', 'conflict', 'office'),
  noSuchJob: message<{ job: string; nearest: string }>('batch/no-such-job', 'conflict', 'office'),
  interrupted: message<{ done: number; all: number }>('batch/interrupted', 'conflict', 'office'),
  interruptedReading: message<object>('batch/interrupted-reading', 'conflict', 'office'),
  folderLeft: message<{ folder: string }>('batch/folder-left', 'confirm', 'office'),
  noPhotos: message<{ folder: string }>('batch/no-photos', 'conflict', 'office'),
  noCutSheets: message<{ folder: string }>('batch/no-cutsheets', 'conflict', 'office'),
  dataSheetNotTaken: message<{ part: string; sheet: DataSheetFault }>(
    'batch/data-sheet-not-taken',
    'confirm',
    'office',
  ),
  pictureNotUsed: message<{ path: string; fault: PhotoFault; amount: number }>(
    'batch/picture-not-used',
    'confirm',
    'office',
  ),
  recordIgnored: message<{ name: string }>('batch/record-ignored', 'confirm', 'office'),
  questionsKept: message<{ file: string; fresh: string }>('batch/questions-kept', 'confirm', 'office'),
  fileEdited: message<{ file: string; folder: string }>('batch/file-edited', 'confirm', 'office'),
  formKept: message<{ file: string; fresh: string; folder: string }>('batch/form-kept', 'confirm', 'office'),
  labelsRemoved: message<{ file: string; folder: string }>('batch/labels-removed', 'confirm', 'office'),
  recordNotRead: message<{ file: string; job: string }>('batch/record-not-read', 'conflict', 'office'),
  photoNotPrinted: message<{ photo: string; fault: PhotoFault; amount: number }>(
    'photo/not-printed',
    'confirm',
    'office',
  ),
  photoOfNoTag: message<{ photo: string; job: string }>('photo/no-tag', 'confirm', 'office'),
  photosTooLarge: message<{ photos: readonly string[]; job: string; megabytes: number }>(
    'photo/too-much-together',
    'confirm',
    'office',
  ),
  photosOfNoJob: message<{ entry: string }>('photo/no-job', 'confirm', 'office'),
} as const;
