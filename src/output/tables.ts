import { devicesText, smallestLeadsText } from '../words/overcurrent.js';
import { conductorText } from '../words/conductors.js';
import { say } from '../words/reasons/say.js';
import { told } from '../words/messages/told.js';
import type { JobItem, OpenItem } from '../model/open-item.js';
import type { Catalogue } from '../model/catalogue.js';
import { FIELD_NAMES } from '../model/fields.js';
import type { AskedModel, LibraryHeading } from '../model/list.js';
import type { RecordState } from '../model/record.js';
import type { Plan, PlannedChannel, PlannedProtector } from '../model/plan.js';
import { csvText, type Cell } from './csv.js';

const joined = (values: readonly string[]): string => values.join('; ');

const SCHEDULE_HEADINGS =
  'job,protector,part,place,protects,port,reasons,strength,required_mcov,mcov,up,lead_voltage,impulse_withstand,reach_m,channels,indicators,type,enclosure,overcurrent,smallest_lead'.split(
    ',',
  );

/**
 * `schedule.csv` of a job: one line a housing; V, m.
 * @param plan the job's plan
 */
export function scheduleCsv(plan: Plan): string {
  return csvText(
    SCHEDULE_HEADINGS,
    plan.protectors.map((p) => scheduleRow(plan.job, p)),
  );
}

function scheduleRow(job: string, p: PlannedProtector): Cell[] {
  const { figures, partDetails } = p;
  const equipments = new Set(p.ports.map((port) => port.equipment));
  const type = partDetails?.type ?? null;
  return [
    job,
    p.tag,
    p.part,
    p.place,
    say(p.protects),
    joined(p.ports.map((port) => (equipments.size > 1 ? `${port.equipment}:${port.port}` : port.port))),
    joined(p.reasons.map((reason) => reason.rule)),
    p.strength,
    p.required.mcov,
    figures?.mcov ?? null,
    figures?.up ?? null,
    figures?.leadVoltage ?? null,
    figures?.impulseWithstand ?? null,
    figures?.reach ?? null,
    joined(p.channels.map(({ wire, to }) => `${conductorText(wire)}${to === 'ground' ? '' : ` to ${to}`}`)),
    joined(p.channels.flatMap(indicatorWords)),
    type ?? partDetails?.iecClass ?? null,
    partDetails?.enclosure ?? null,
    joined(devicesText(p)),
    smallestLeadsText(p),
  ];
}

const indicatorWords = (channel: PlannedChannel): string[] =>
  channel.indicator.map((i) => `${conductorText(channel.wire)} ${i.state}: ${i.shows}`);

/** How many of one part a job takes. */
export interface JobOrder {
  readonly job: string;
  readonly part: string;
  readonly quantity: number;
  /** Of a job that isn't complete yet: its parts may change still. */
  readonly draft: boolean;
}

const ORDER_HEADINGS = 'part,maker,description,quantity,complete,draft,jobs,price,currency'.split(',');

/**
 * `order-list.csv` of a batch: one line a part, with the jobs that take it; the price is that of one. The quantity is the sum of
 * what complete jobs take and of what drafts take, which may change still.
 * @param orders of all jobs, in the order of the jobs
 * @param catalogue what a part is and costs; undefined: there is none
 */
export function orderListCsv(orders: readonly JobOrder[], catalogue: Catalogue | undefined): string {
  const byPart = new Map<string, { complete: number; draft: number; jobs: Set<string> }>();
  for (const { job, part, quantity, draft } of orders) {
    const line = byPart.get(part) ?? { complete: 0, draft: 0, jobs: new Set() };
    line[draft ? 'draft' : 'complete'] += quantity;
    line.jobs.add(job);
    byPart.set(part, line);
  }
  const parts = new Map(catalogue?.parts.map((p) => [p.part, p]));
  const rows = [...byPart]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([part, { complete, draft, jobs }]): Cell[] => {
      const known = parts.get(part);
      const what = [known?.maker ?? null, known?.description ?? null];
      const counts = [complete + draft, complete, draft];
      return [part, ...what, ...counts, joined([...jobs]), known?.price ?? null, known?.currency ?? null];
    });
  return csvText(ORDER_HEADINGS, rows);
}

const ITEM_COLUMNS = [
  'severity',
  'code',
  'message',
  'file',
  'line',
  'column',
  'found',
  'expected',
  'hint',
  'who',
] as const;

/** Cells of an item, in the order of the columns. */
function itemCells(item: OpenItem): Cell[] {
  const all = { ...item, ...told(item) };
  return ITEM_COLUMNS.map((column) => all[column]);
}

/**
 * `open-items.csv` of a batch: one line an item; the job is empty for an item of no job.
 * @param items of all jobs, in the order of the jobs, those of no job first
 */
export function openItemsCsv(items: Iterable<JobItem>): string {
  const rows = Array.from(items, ({ job, item }): Cell[] => [job, ...itemCells(item)]);
  return csvText(['job', ...ITEM_COLUMNS], rows);
}

/** How a job went in a batch. */
export interface ReportLine {
  readonly job: string;
  readonly folder: string;
  readonly basis: string;
  readonly status: 'complete' | 'draft' | 'failed';
  readonly done: 'printed' | 'unchanged' | 'nothing';
  readonly protectors: number;
  readonly missing: number;
  readonly conflict: number;
  readonly confirm: number;
  readonly jobName: string;
  readonly address: string;
  readonly revision: string;
  /** How far the record of the work is. */
  readonly record: RecordState;
}

const REPORT_COLUMNS = [
  'job',
  'folder',
  'basis',
  'status',
  'done',
  'protectors',
  'missing',
  'conflict',
  'confirm',
  'jobName',
  'address',
  'revision',
  'record',
] as const;
const REPORT_HEADINGS = REPORT_COLUMNS.map((column) => (column === 'jobName' ? 'job_name' : column));

/**
 * `report.csv` of a batch: one line a job.
 * @param lines in the order of the jobs
 */
export function reportCsv(lines: readonly ReportLine[]): string {
  return csvText(
    REPORT_HEADINGS,
    lines.map((line) => REPORT_COLUMNS.map((column) => line[column])),
  );
}

/** Says in a cell that nothing is asked for there; a library reads it as blank. */
const NOT_ASKED = '-';

/**
 * `missing-models.csv` of a batch: the models that the library lacks, one line each, to be filled in and appended to it.
 * The library's own headings stand in their order, then a field for every fact that was asked for and that it has no
 * heading for. A cell is empty where the rules asked for the fact; every other holds a dash.
 * @param models with the jobs that need them and the facts asked for
 * @param libraryHeadings of the equipment library, as it has them; none: there is no library
 */
export function missingModelsCsv(
  models: readonly AskedModel[],
  libraryHeadings: readonly LibraryHeading[],
): string {
  const own = libraryHeadings.filter(({ field }) => field !== 'maker' && field !== 'model');
  const known = new Set<string | null>(own.map(({ field }) => field));
  const asked = new Set<string>(models.flatMap(({ facts }) => facts));
  const further = FIELD_NAMES.filter((field) => asked.has(field) && !known.has(field));
  const columns = [...own, ...further.map((field) => ({ heading: field, field }))];
  return csvText(
    ['maker', 'model', 'jobs', ...columns.map(({ heading }) => heading)],
    models.map(({ maker, model, jobs, facts }) => [
      maker,
      model,
      joined(jobs),
      ...columns.map(({ field }) => (facts.some((fact) => fact === field) ? null : NOT_ASKED)),
    ]),
  );
}
