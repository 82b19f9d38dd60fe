import { message } from '../message.js';
import type { Who } from '../words.js';

/** Messages about what is larger than a run takes. */
export const LIMIT_MESSAGES = {
  jobRows: message<{ job: string; rows: number; most: number }>('job/too-many-rows', 'conflict', 'office'),
  jobHousings: message<{ job: string; most: number }>('job/too-many-housings', 'conflict', 'designer'),
  jobRuns: message<{ job: string; most: number }>('job/too-many-runs', 'conflict', 'designer'),
  jobs: message<{ jobs: number; most: number }>('batch/too-many-jobs', 'conflict', 'office'),
  cell: message<{ field: string; characters: number; most: number; who: Who }>(
    'cell/too-large',
    'conflict',
    'given',
  ),
} as const;
