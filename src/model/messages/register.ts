import type { Place } from '../fact.js';
import { message } from '../message.js';

/** Why a job's record isn't in the register. */
export type RecordFault = 'no-file' | 'unreadable' | 'no-json' | 'no-record';

/** Why a range of serials can't be told. */
export type RangeFault = 'no-range' | 'not-digits' | 'lengths' | 'backwards';

/** Messages of the register of all jobs. */
export const REGISTER_MESSAGES = {
  recordNotRead: message<{ record: string; recordFault: RecordFault }>(
    'register/record-not-read',
    'conflict',
    'office',
  ),
  jobTwice: message<{ job: string; kept: string; folder: string }>(
    'register/job-twice',
    'conflict',
    'office',
  ),
  serialTwice: message<{
    serial: string;
    part: string;
    maker: string;
    places: readonly { readonly job: string; readonly protector: string }[];
  }>('register/serial-twice', 'conflict', 'office'),
  serialsUntold: message<{ part: string; protectors: number }>(
    'register/serials-untold',
    'confirm',
    'office',
  ),
  rangeNotTold: message<{ found: string; rangeFault: RangeFault }>(
    'register/range-not-told',
    'conflict',
    'office',
  ),
  noSerials: message<{ path: string; unread: boolean }>('register/no-serials', 'conflict', 'office'),
  noFolder: message<{ out: string }>('register/no-folder', 'conflict', 'office'),
} as const;

/** Where an item about a record as a whole stands. */
export const placeOfRecord = (folder: string): Place => ({
  file: `${folder}/record.json`,
  line: 0,
  column: '',
});
