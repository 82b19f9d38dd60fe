import { RECORD_MESSAGES, type RefusedFor } from '../model/messages/record.js';
import type { OpenItem } from '../model/open-item.js';
import type { Reason } from '../model/reason.js';
import type { RecordCheck, RecordDeviation, RecordOrigin, RecordState, SiteRecord } from '../model/record.js';
import { itemOf } from './items.js';

/** What each item is a check of. */
const CHECK_OF: Readonly<Record<string, RecordCheck>> = {
  [RECORD_MESSAGES.otherPlan.code]: 'plan',
  [RECORD_MESSAGES.noSuchProtector.code]: 'plan',
  [RECORD_MESSAGES.noSuchReading.code]: 'plan',
  [RECORD_MESSAGES.noSuchFact.code]: 'plan',
  [RECORD_MESSAGES.serialTwice.code]: 'serial',
  [RECORD_MESSAGES.factOther.code]: 'fact',
  [RECORD_MESSAGES.factDecides.code]: 'fact',
  [RECORD_MESSAGES.partOther.code]: 'part',
  [RECORD_MESSAGES.partFails.code]: 'part',
  [RECORD_MESSAGES.partUnknown.code]: 'part',
  [RECORD_MESSAGES.leadOther.code]: 'lead',
  [RECORD_MESSAGES.leadTooLong.code]: 'lead',
  [RECORD_MESSAGES.faultCurrent.code]: 'fault_current',
  [RECORD_MESSAGES.aboveMcov.code]: 'volts',
  [RECORD_MESSAGES.wrongSign.code]: 'volts',
  [RECORD_MESSAGES.outsideBand.code]: 'volts',
  [RECORD_MESSAGES.requiredGone.code]: 'outcome',
  [RECORD_MESSAGES.gone.code]: 'outcome',
  [RECORD_MESSAGES.movedAway.code]: 'place',
  [RECORD_MESSAGES.moved.code]: 'place',
};

function checkOf({ code, values }: OpenItem): RecordCheck | undefined {
  if (code === RECORD_MESSAGES.lookOther.code && 'kind' in values)
    return values.kind === 'flag' ? 'flag' : 'light';
  return CHECK_OF[code];
}

/** What nobody but the authority can clear, whatever else the item says: a failed rating, or a required protector that isn't there. */
const FOR_AUTHORITY: ReadonlySet<string> = new Set([
  RECORD_MESSAGES.partUnknown.code,
  RECORD_MESSAGES.faultCurrent.code,
  RECORD_MESSAGES.aboveMcov.code,
  RECORD_MESSAGES.requiredGone.code,
  RECORD_MESSAGES.movedAway.code,
  RECORD_MESSAGES.factDecides.code,
]);

/** What of a part isn't a rating of it: its level by its leads, and how it shows that it is used up. */
const NO_RATING = /^(?:level|indication)\//;

function isForAuthority({ code, values }: OpenItem): boolean {
  if (FOR_AUTHORITY.has(code)) return true;
  if (code !== RECORD_MESSAGES.partFails.code || !('fails' in values)) return false;
  return (values.fails as readonly Reason[]).some((fails) => !NO_RATING.test(fails.code));
}

/** A deviation with where it stood. */
export interface SaidDeviation {
  readonly deviation: RecordDeviation;
  readonly origin: RecordOrigin;
}

/** What comes of the deviations that somebody accepted. */
export interface Accepted {
  readonly open: readonly OpenItem[];
  readonly accepted: readonly OpenItem[];
  /** Those that count. */
  readonly deviations: readonly RecordDeviation[];
}

const sameDeviation = (a: RecordDeviation, b: RecordDeviation): boolean =>
  a.protector === b.protector && a.check === b.check;

/**
 * Holds what was accepted against what contradicts the plan.
 * @param items of the record
 * @param before accepted in earlier runs
 * @param said in this run; goes before
 * @param recordedOn day of the entry of a housing that counts; `` not known
 */
export function withDeviations(
  items: readonly OpenItem[],
  before: readonly RecordDeviation[],
  said: readonly SaidDeviation[],
  recordedOn: (tag: string) => string,
): Accepted {
  const fresh = said.map(({ deviation }) => deviation);
  const all: SaidDeviation[] = [
    ...before
      .filter((one) => !fresh.some((other) => sameDeviation(one, other)))
      .map((deviation) => ({ deviation, origin: { file: '', line: 0 } })),
    ...said,
  ];
  let open = items;
  const accepted: OpenItem[] = [];
  const deviations: RecordDeviation[] = [];
  const told: OpenItem[] = [];
  for (const { deviation, origin } of all) {
    const { protector: tag, check, by, date, paper } = deviation;
    const mine = open.filter((item) => item.equipment === tag && checkOf(item) === check);
    const refuse = (because: RefusedFor): void => {
      if (origin.file === '') return;
      told.push(itemOf(RECORD_MESSAGES.deviationRefused, { tag, check, because }, origin, 'check', tag));
    };
    if (mine.length === 0) {
      if (origin.file !== '')
        told.push(itemOf(RECORD_MESSAGES.deviationIdle, { tag, check }, origin, 'check', tag));
      continue;
    }
    if (by === '' || date === '') refuse('unsigned');
    else if (date < recordedOn(tag)) refuse('before');
    else if (paper === '' && mine.some(isForAuthority)) refuse('needs-paper');
    else {
      open = open.filter((item) => !mine.includes(item));
      accepted.push(...mine);
      deviations.push(deviation);
    }
  }
  return { open: [...open, ...told], accepted, deviations };
}

/** How far a job is, by what is open and what was accepted. */
export function stateOf({ open, accepted }: Accepted, housings: SiteRecord['housings']): RecordState {
  if (housings.every(({ entries }) => entries.length === 0))
    return housings.length === 0 ? 'as built' : 'record open';
  if (open.some(({ severity }) => severity !== 'confirm')) return 'record open';
  return accepted.length > 0 ? 'as built with deviations' : 'as built';
}
