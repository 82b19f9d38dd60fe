import type { DueCheck, RegisterLine } from '../model/register.js';
import { csvRecords, type Cell } from './csv.js';

const joined = (values: readonly string[]): string => values.join('; ');

const REGISTER_HEADINGS =
  'serial,part,maker,job,job_name,address,place,protector,equipment,port,conductors,date_fitted,by,lead_length,level,first_look,next_check,replaced_by,replaced_on,reason,photo,date_code'.split(
    ',',
  );

/** The heading of `register.csv`. */
export function registerHeading(): string {
  return csvRecords([REGISTER_HEADINGS]);
}

/** Records of `register.csv`: one a serial of a housing; m, V. */
export function registerRecords(lines: Iterable<RegisterLine>): string {
  return csvRecords(Array.from(lines, registerCells));
}

function registerCells(line: RegisterLine): Cell[] {
  return [
    line.serial,
    line.part,
    line.maker,
    line.job,
    line.jobName,
    line.address,
    line.place,
    line.protector,
    joined(line.equipments),
    joined(line.ports),
    joined(line.conductors),
    line.dateFitted,
    line.by,
    line.leadLength,
    line.level,
    joined(line.firstLook.map(({ conductor, state, found }) => `${conductor} ${state}: ${found}`)),
    line.nextCheck,
    joined(line.replacedBy),
    line.replacedOn,
    line.reason,
    joined(line.photos),
    line.dateCode,
  ];
}

const CHECK_HEADINGS =
  'due,overdue,job,job_name,address,place,protector,part,serial,check,kind,state,conductors,expected'.split(
    ',',
  );
/** Records that are made at a time. */
const PIECE = 500;

/**
 * `checks-due.csv`: one line a check.
 * @param checks soonest first
 * @param date `YYYY-MM-DD` of the run; what was due before it is overdue
 * @returns the file in pieces
 */
export function* checksCsv(checks: readonly DueCheck[], date: string): Generator<string> {
  yield csvRecords([CHECK_HEADINGS]);
  for (let at = 0; at < checks.length; at += PIECE)
    yield csvRecords(checks.slice(at, at + PIECE).map((check) => checkCells(check, date)));
}

function checkCells(check: DueCheck, date: string): Cell[] {
  return [
    check.due,
    check.due < date ? 'yes' : 'no',
    check.job,
    check.jobName,
    check.address,
    check.place,
    check.protector,
    check.part,
    joined(check.serials),
    check.what === 'look' ? 'yearly look' : 'reading',
    check.kind,
    check.state,
    joined(check.conductors),
    joined(check.expected),
  ];
}
