import { becauseOf } from '../photo-faults.js';
import { BATCH_MESSAGES, type DataSheetFault } from '../../model/messages/batch.js';
import { says } from '../message-kit.js';

const SHEET_FAULTS: { readonly [F in DataSheetFault]: string } = {
  'no-file': 'it is no file of at most 50 MB, or a link',
  unreadable: 'it can’t be read',
  'no-pdf': 'it is no PDF',
  locked: 'it is locked by a password',
  broken: 'it is damaged',
  empty: 'it has no page',
};

/** Stands after the sentence that says why a job failed. */
export const PACK_NOT_MADE =
  'The pack of this job was not made; what its folder holds, if anything, is older.';

/** Words of the messages of model/messages/batch.ts. */
export const BATCH_WORDS = [
  says(BATCH_MESSAGES.programFault, {
    title: 'A fault of the program met one job',
    message: (p) => `The program met a fault of its own: ${p.what.replace(/[.\s]+$/, '')}.`,
    found: (p) => p.what,
    expected: 'no fault',
    hint: 'Run this job by itself (--job) with --verbose, and report what it prints.',
  }),
  says(BATCH_MESSAGES.noSuchJob, {
    title: 'The lists hold no such job',
    message: (p) =>
      `The lists hold no job ${p.job}${p.nearest === '' ? '' : `; the nearest is ${p.nearest}`}.`,
    found: (p) => p.job,
    expected: 'the id of a job on the lists',
    hint: 'Correct --job, or leave it out for all jobs.',
  }),
  says(BATCH_MESSAGES.interrupted, {
    title: 'The run was stopped',
    message: (p) =>
      `The run was stopped after ${p.done} of ${p.all} jobs: this report ends there, and order-list.csv and missing-models.csv are those of the last whole run.`,
    found: (p) => `${p.done} of ${p.all} jobs`,
    expected: 'a run that reaches its end',
    hint: 'Run the same command again: it makes what is left.',
  }),
  says(BATCH_MESSAGES.interruptedReading, {
    title: 'The run was stopped while it read the lists',
    message: () => 'The run was stopped while it read the lists: nothing was made.',
    expected: 'a run that reaches its end',
    hint: 'Run the same command again.',
  }),
  says(BATCH_MESSAGES.folderLeft, {
    title: 'A folder of a job that no list names',
    message: (p) =>
      `The folder ${p.folder} holds the pack of a job that no list names any more; it is left as it is.`,
    found: (p) => p.folder,
    expected: 'a folder for each job on the lists',
    hint: 'Delete it if the job is given up, or put the job back on a list.',
  }),
  says(BATCH_MESSAGES.noPhotos, {
    title: 'The folder of photos is not there',
    message: (p) => `There is no folder ${p.folder} of photos.`,
    found: (p) => p.folder,
    expected: 'a folder with a folder for each job',
    hint: 'Correct --photos, or leave it out.',
  }),
  says(BATCH_MESSAGES.noCutSheets, {
    title: 'The folder of data sheets is not there',
    message: (p) => `There is no folder ${p.folder} of data sheets.`,
    found: (p) => p.folder,
    expected: 'a folder with a PDF for each part, named by it',
    hint: 'Correct --cutsheets, or leave it out.',
  }),
  says(BATCH_MESSAGES.dataSheetNotTaken, {
    title: 'A data sheet can’t be appended',
    message: (p) => `The data sheet of ${p.part} isn’t appended: ${SHEET_FAULTS[p.sheet]}.`,
    found: (p) => SHEET_FAULTS[p.sheet],
    expected: 'a PDF of at most 50 MB that opens without a password',
    hint: 'Save it as one, or hand the data sheet in by itself.',
  }),
  says(BATCH_MESSAGES.pictureNotUsed, {
    title: 'A picture can’t be used',
    message: (p) => `The picture ${p.path} isn’t used: ${becauseOf(p)}.`,
    found: (p) => p.path,
    expected: 'a PNG, JPEG or SVG of at most 50 MB and 50 megapixels',
    hint: 'Save it as one of those, or take it out.',
  }),
  says(BATCH_MESSAGES.recordIgnored, {
    title: 'A record in the output folder that no run of ours wrote',
    message: (p) =>
      `The record of packs in the output folder names ${p.name}, which no pack can hold: that line is ignored.`,
    found: (p) => p.name,
    expected: 'names that packs, folders and plans of ours have',
    hint: 'Find out who else writes to the output folder; the pack that the line told of is made again.',
  }),
  says(BATCH_MESSAGES.questionsKept, {
    title: 'Questions that someone filled in are left as they are',
    message: (p) =>
      `${p.file} isn’t as an earlier run wrote it, as where someone fills in answers: it is left alone, and what is asked now stands in ${p.fresh}.`,
    found: (p) => p.file,
    expected: 'the file as it was written',
    hint: 'Hand it over by --answers; put it away elsewhere once its answers are kept.',
  }),
  says(BATCH_MESSAGES.fileEdited, {
    title: 'A file of ours that someone had edited was made again',
    message: (p) =>
      `${p.file} in ${p.folder} was edited by someone since it was made; that pack was made again, and what was written into the file is gone.`,
    found: (p) => p.file,
    expected: 'files of a pack as they were made',
    hint: 'Keep notes in a file of another name beside it: it is never touched. What the pack says is corrected on the list.',
  }),
  says(BATCH_MESSAGES.formKept, {
    title: 'A form that someone filled in is left as it is',
    message: (p) =>
      `${p.file} in ${p.folder} isn’t as an earlier run wrote it, as where a crew fills it in: it is left alone. The plan asks for something else by now, and the form of today is ${p.fresh}.`,
    found: (p) => p.file,
    expected: 'the form as it was given out',
    hint: 'Take the record in that the crew filled in, put the file away elsewhere, and give the new form to the crew.',
  }),
  says(BATCH_MESSAGES.labelsRemoved, {
    title: 'A draft’s labels of an earlier run were removed',
    message: (p) => `The job of ${p.folder} is a draft now: its ${p.file} of an earlier run was removed.`,
    found: (p) => p.file,
    expected: 'labels of a job that is no draft',
    hint: 'Fix none of the labels that were printed before. Once nothing is missing, run again: labels are made then.',
  }),
  says(BATCH_MESSAGES.recordNotRead, {
    title: 'The record of a job can’t be read',
    message: (p) =>
      `What came back from the work of ${p.job} can’t be read: its papers show what is planned.`,
    found: (p) => p.file,
    expected: 'a record as `shuntbook record` writes it, of this job',
    hint: 'Take in what the crew filled in once more with `shuntbook record`, or move the file away.',
  }),
  says(BATCH_MESSAGES.photoNotPrinted, {
    title: 'A photo can’t be printed',
    message: (p) => `The photo ${p.photo} isn’t printed: ${becauseOf(p)}.`,
    found: (p) => p.photo,
    expected: 'a whole PNG or JPEG of at most 50 MB and 50 megapixels',
    hint: 'Save it as a JPEG of a few megabytes under the same name, or take it out.',
  }),
  says(BATCH_MESSAGES.photosTooLarge, {
    title: 'The photos of a job hold more than is printed',
    message: ({ photos, job, megabytes }) =>
      `${photos.length === 1 ? 'The photo' : 'The photos'} ${photos.slice(0, 8).join(', ')}${photos.length > 8 ? ` and ${photos.length - 8} more` : ''} of job ${job} ${photos.length === 1 ? 'isn’t' : 'aren’t'} printed: photos of one job hold at most ${megabytes} MB together.`,
    found: ({ photos }) => photos.slice(0, 8).join(', '),
    expected: ({ megabytes }) => `photos of at most ${megabytes} MB a job`,
    hint: 'Save the photos of this job as JPEGs of a few megabytes, or take out what needn’t be shown.',
  }),
  says(BATCH_MESSAGES.photoOfNoTag, {
    title: 'A photo is named by no tag of its job',
    message: (p) => `The photo ${p.photo} isn’t printed: ${p.job} has no equipment of that tag.`,
    found: (p) => p.photo,
    expected: 'a photo named by the tag of its equipment, such as CC-1.jpg, right in the job’s folder',
    hint: 'Name it by the tag of what it shows, or take it out.',
  }),
  says(BATCH_MESSAGES.photosOfNoJob, {
    title: 'A folder or file among the photos belongs to no job',
    message: (p) =>
      `${p.entry}, among the photos, is the folder of no job on the lists: nothing in it is printed.`,
    found: (p) => p.entry,
    expected: 'a folder named by the id of a job, or by its folder in --out',
    hint: 'Name the folder by the id of its job, or take it out.',
  }),
];
