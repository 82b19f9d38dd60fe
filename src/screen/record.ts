import { counted, printable, textTable, type Column } from './text-table.js';

/** What was taken of files, and what came of jobs. */
interface Recorded {
  readonly files: readonly {
    readonly file: string;
    readonly rows: number;
    readonly jobs: readonly string[];
  }[];
  readonly jobs: readonly {
    readonly job: string;
    readonly record: string;
    readonly protectors: number;
    readonly missing: number;
    readonly conflict: number;
    readonly confirm: number;
    readonly changed: boolean;
    readonly printed: boolean;
  }[];
}

const number = (heading: string): Column => ({ heading, align: 'right' });
const COLUMNS: readonly Column[] = [
  { heading: 'job' },
  { heading: 'record' },
  number('protectors'),
  number('missing'),
  number('conflict'),
  number('confirm'),
  { heading: 'done' },
];

/** What `record` took, and how far each job is. */
export function recordText({ files, jobs }: Recorded): string {
  const taken = files
    .map(
      ({ file, rows, jobs: of }) =>
        `${printable(file)}: ${counted(rows, 'row')} of ${counted(of.length, 'job')}\n`,
    )
    .join('');
  if (jobs.length === 0) return taken;
  const rows = jobs.map((one) => [
    printable(one.job),
    one.record,
    String(one.protectors),
    String(one.missing),
    String(one.conflict),
    String(one.confirm),
    one.printed ? 'printed' : one.changed ? 'recorded' : 'unchanged',
  ]);
  return `${taken}${textTable(COLUMNS, rows)}`;
}
