import type { Place } from '../fact.js';
import { message } from '../message.js';

/** Messages about files of answers, of equipment facts and of cables. */
export const ANSWER_MESSAGES = {
  noColumns: message<{ path: string; lacks: readonly string[] }>('answers/no-columns', 'conflict', 'office'),
  unknownJob: message<{ job: string }>('answers/no-such-job', 'conflict', 'office'),
  rowGone: message<{ tag: string; field: string; answer: string }>('answers/row-gone', 'conflict', 'office'),
  cellChanged: message<{
    tag: string;
    field: string;
    answer: string;
    asked: string;
    cell: string;
    cellPlace: Place;
  }>('answers/cell-changed', 'conflict', 'office'),
  notTaken: message<{ field: string; answer: string }>('answers/not-taken', 'conflict', 'office'),
  needsValue: message<{ code: string }>('answers/needs-a-value', 'conflict', 'office'),
  acceptedOther: message<{ code: string; tags: readonly string[]; asked: string }>(
    'answers/accepted-otherwise',
    'conflict',
    'office',
  ),
  differ: message<{ tag: string; field: string; first: string; firstPlace: Place; second: string }>(
    'answers/differ',
    'conflict',
    'office',
  ),
  unsigned: message<{ count: number }>('answers/unsigned', 'confirm', 'office'),
} as const;

export const GIVEN_FACT_MESSAGES = {
  noColumns: message<{ path: string; lacks: readonly string[] }>('facts/no-columns', 'conflict', 'office'),
  unknownJob: message<{ job: string }>('facts/no-such-job', 'confirm', 'office'),
  rowGone: message<{ tag: string }>('facts/no-such-row', 'conflict', 'office'),
  differ: message<{ tag: string; field: string; first: string; firstPlace: Place; second: string }>(
    'facts/differ',
    'conflict',
    'office',
  ),
  overridden: message<{ tag: string; field: string; list: string; given: string; givenPlace: Place }>(
    'facts/overridden',
    'confirm',
    'office',
  ),
  noConnection: message<{ from: string; to: string; length: string }>(
    'facts/no-such-connection',
    'confirm',
    'designer',
  ),
  cablesShort: message<{ tag: string; lacks: readonly string[] }>(
    'facts/cables-short',
    'confirm',
    'designer',
  ),
} as const;
