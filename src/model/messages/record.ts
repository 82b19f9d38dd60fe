import type { RecordCheck } from '../record.js';
import type { Decided, DecisionIs } from '../record-change.js';
import { message } from '../message.js';
import type { Quantity } from '../quantity.js';
import type { Reason } from '../reason.js';

/** Why a cell of a form isn't understood. */
export type CellFault =
  | 'number'
  | 'two-ways'
  | 'shortened'
  | 'unit'
  | 'negative'
  | 'date'
  | 'date-two-ways'
  | 'time'
  | 'outcome'
  | 'look'
  | 'check'
  | 'fact'
  | 'too-long';

/** How the decisions about one housing differ between two plans. */
export interface ChangedHousing {
  readonly tag: string;
  readonly is: DecisionIs;
  readonly what: readonly { readonly of: Decided; readonly before: string; readonly now: string }[];
}

/** A part in another's place. */
interface OtherPart {
  readonly tag: string;
  readonly planned: string;
  readonly fitted: string;
}

/** Leads as they are, with what comes of them. */
interface LeadAsBuilt {
  readonly tag: string;
  readonly lead: Quantity;
  readonly planned: Quantity;
  /** Null: not known. */
  readonly level: Quantity | null;
  readonly margin: Quantity | null;
  readonly reach: Quantity | 'unknown' | 'unlimited';
}

interface OtherFact {
  readonly fact: string;
  readonly tag: string;
  readonly assumed: string;
  readonly found: string;
  readonly changes: readonly ChangedHousing[];
}

interface Gone {
  readonly tag: string;
  readonly is: 'not fitted' | 'removed';
}

interface Moved {
  readonly tag: string;
  readonly from: string;
  readonly to: string;
  /** Along the cable between the two places; null: not known. */
  readonly distance: Quantity | null;
  readonly reach: Quantity | 'unknown' | 'unlimited';
}

/** Why a deviation doesn't count. */
export type RefusedFor = 'unsigned' | 'before' | 'needs-paper' | 'nothing';

/** Messages about the record of the work. */
export const RECORD_MESSAGES = {
  noForm: message<{ path: string; headings: readonly string[] }>('record/no-form', 'conflict', 'office'),
  noPdfForm: message<{ path: string; pdfFault: 'no-pdf' | 'locked' | 'broken' | 'no-form' | 'too-large' }>(
    'record/no-pdf-form',
    'conflict',
    'office',
  ),
  nothingToRead: message<{ path: string }>('record/nothing-to-read', 'conflict', 'office'),
  cellWrong: message<{ heading: string; text: string; cellFault: CellFault }>(
    'record/cell-wrong',
    'missing',
    'installer',
  ),
  noSuchJob: message<{ job: string }>('record/no-such-job', 'conflict', 'office'),
  noPlan: message<{ job: string; plan: string }>('record/no-plan', 'conflict', 'office'),
  notRead: message<{ job: string; record: string }>('record/not-read', 'conflict', 'office'),
  noSuchProtector: message<{ tag: string; there: readonly string[] }>(
    'record/no-such-protector',
    'conflict',
    'installer',
  ),
  noSuchReading: message<{ tag: string; channel: string; kind: string; state: string }>(
    'record/no-such-reading',
    'conflict',
    'installer',
  ),
  noSuchFact: message<{ assumption: string; tag: string }>('record/no-such-fact', 'conflict', 'installer'),
  otherPlan: message<{ given: string; now: string; changes: readonly ChangedHousing[] | null }>(
    'record/other-plan',
    'conflict',
    'designer',
  ),
  twoAtOnce: message<{ tag: string; date: string; time: string }>(
    'record/two-at-once',
    'confirm',
    'installer',
  ),
  serialTwice: message<{
    serial: string;
    part: string;
    maker: string;
    places: readonly { readonly job: string; readonly protector: string }[];
  }>('record/serial-twice', 'conflict', 'installer'),
  factOther: message<OtherFact>('record/fact-other', 'confirm', 'designer'),
  factDecides: message<OtherFact>('record/fact-other-decides', 'conflict', 'designer'),
  partOther: message<OtherPart>('record/part-other', 'confirm', 'designer'),
  partFails: message<OtherPart & { fails: readonly Reason[] }>('record/part-fails', 'conflict', 'designer'),
  partUnknown: message<OtherPart>('record/part-unknown', 'conflict', 'office'),
  leadOther: message<LeadAsBuilt>('record/lead-longer', 'confirm', 'installer'),
  leadTooLong: message<LeadAsBuilt>('record/lead-too-long', 'conflict', 'installer'),
  faultCurrent: message<{ tag: string; found: Quantity; rating: Quantity; of: 'part' | 'device' }>(
    'record/fault-current-above',
    'conflict',
    'designer',
  ),
  aboveMcov: message<{ tag: string; from: string; to: string; volts: Quantity; mcov: Quantity }>(
    'record/volts-above-mcov',
    'conflict',
    'designer',
  ),
  wrongSign: message<{
    tag: string;
    from: string;
    to: string;
    volts: Quantity;
    expected: 'positive' | 'negative';
  }>('record/volts-wrong-sign', 'conflict', 'installer'),
  outsideBand: message<{
    tag: string;
    from: string;
    to: string;
    volts: Quantity;
    low: Quantity | null;
    high: Quantity | null;
  }>('record/volts-outside-band', 'confirm', 'designer'),
  lookOther: message<{
    tag: string;
    channel: number | null;
    kind: 'light' | 'flag';
    state: string;
    expected: readonly string[];
    found: string;
  }>('record/look-other', 'conflict', 'installer'),
  requiredGone: message<Gone>('record/required-not-there', 'conflict', 'installer'),
  gone: message<Gone>('record/not-there', 'confirm', 'installer'),
  movedAway: message<Moved>('record/moved-out-of-reach', 'conflict', 'designer'),
  moved: message<Moved>('record/moved', 'confirm', 'designer'),
  nothingRecorded: message<{ tag: string }>('record/nothing-recorded', 'missing', 'installer'),
  lacks: message<{ tag: string; heading: string }>('record/not-recorded', 'missing', 'installer'),
  notSaid: message<{ tag: string; heading: string }>('record/not-said', 'confirm', 'installer'),
  noReading: message<{
    tag: string;
    channel: number | null;
    kind: string;
    state: string;
    from: string;
    to: string;
  }>('record/no-reading', 'missing', 'installer'),
  photoNotThere: message<{ photo: string }>('record/photo-not-there', 'confirm', 'office'),
  notPlannedAnew: message<{
    because: 'company-gone' | 'plan-differs' | 'job-too-large';
    tags: readonly string[];
  }>('record/not-planned-anew', 'missing', 'office'),
  notPrinted: message<{ folder: string }>('record/not-printed', 'missing', 'office'),
  deviationRefused: message<{ tag: string; check: RecordCheck; because: RefusedFor }>(
    'record/deviation-refused',
    'conflict',
    'office',
  ),
  deviationIdle: message<{ tag: string; check: RecordCheck }>('record/deviation-idle', 'confirm', 'office'),
} as const;
