import { RECORD_MESSAGES } from '../model/messages/record.js';
import { isNec } from '../model/editions.js';
import type { OpenItem } from '../model/open-item.js';
import type { Plan } from '../model/plan.js';
import type { RecordFact, RecordOrigin, RecordReading } from '../model/record.js';
import type { Settings } from '../model/settings.js';
import { cellOf, type AnyHeading, type FormRow } from '../model/site-form-rows.js';
import { deviationRow, factRow, housingRow, readingRow } from '../read/record/typed-rows.js';
import type { SaidDeviation } from '../record/deviations.js';
import { sameText, type RowOfHousing } from '../record/entries.js';
import { itemOf } from '../record/items.js';
import { askedFacts, askedReadings, factKey, readingKey, type FoundReading } from '../record/readings.js';
import type { CameBack } from '../record/record-of-job.js';
import { decisionChanges, decisionsOf, type HousingDecision } from '../site-forms/decisions.js';
import { siteForms } from '../site-forms/rows.js';
import type { KeptPhoto } from './record-photos.js';

/** A row, and the folder that its file lies in. */
export interface PlacedRow {
  readonly row: FormRow;
  readonly folder: string;
}

/** What rows of one job are held against. */
export interface JobOfRows {
  readonly plan: Plan;
  readonly settings: Settings;
  /** What a plan decided whose forms were given out, by its fingerprint. */
  readonly given: (mark: string) => Promise<readonly HousingDecision[] | undefined>;
  readonly photo: (name: string, beside: string) => Promise<KeptPhoto>;
}

const originOf = ({ file, line, columns }: FormRow): RecordOrigin => {
  const named = Object.entries(columns).filter(([, column]) => column !== '');
  return { file, line, ...(named.length === 0 ? {} : { columns: Object.fromEntries(named) }) };
};

/**
 * The rows of one job as its record takes them; rows that its plan doesn't have are items.
 * @param files what is taken, for the record
 */
export async function cameBack(
  rows: readonly PlacedRow[],
  files: CameBack['files'],
  job: JobOfRows,
): Promise<CameBack> {
  const { plan, settings } = job;
  const items: OpenItem[] = [];
  const byTag = new Map(plan.protectors.map((one) => [one.tag, one]));
  const bareLength = bareUnit(plan, settings);
  const asked = askedReadings(plan);
  const readings = new Map<string, FoundReading[]>();
  const housings: RowOfHousing[] = [];
  const deviations: SaidDeviation[] = [];
  const facts: RecordFact[] = [];
  const assumptions = askedFacts(siteForms(plan));
  const photosOf = async (
    names: readonly string[],
    at: PlacedRow,
    tag: string,
  ): Promise<{ file: string; sha256: string }[]> =>
    Promise.all(
      names.map(async (name) => {
        const kept = await job.photo(name, at.folder);
        if (kept.sha256 === '')
          items.push(
            itemOf(RECORD_MESSAGES.photoNotThere, { photo: kept.file }, originOf(at.row), 'photo', tag),
          );
        return { ...kept };
      }),
    );
  items.push(...(await otherPlans(rows, job)));
  for (const at of rows) {
    const { row } = at;
    const origin = originOf(row);
    const tag = tagOf(cellOf(row, row.form === 'facts' ? 'tag' : 'protector'), byTag);
    const refuse = (item: OpenItem): void => void items.push(item);
    if (row.form === 'facts') {
      const typed = factRow(row);
      if (typed.row.found === '' && typed.row.photos.length === 0) continue;
      const fact = factOf(row, assumptions);
      if (!fact) {
        refuse(
          itemOf(
            RECORD_MESSAGES.noSuchFact,
            { assumption: cellOf(row, 'assumption'), tag: cellOf(row, 'tag') },
            origin,
            'assumption',
            '',
          ),
        );
        continue;
      }
      items.push(...typed.items);
      const { found, by, date, photos } = typed.row;
      facts.push({ ...fact, found, by, date, photos: await photosOf(photos, at, fact.tag), origin });
    } else if (row.form === 'deviations') {
      const typed = deviationRow(row);
      items.push(...typed.items);
      if (typed.row)
        deviations.push({ deviation: { ...typed.row, protector: tag ?? typed.row.protector }, origin });
    } else if (tag === undefined) {
      if (isBlank(row)) continue;
      const there = [...byTag.keys()];
      refuse(
        itemOf(
          RECORD_MESSAGES.noSuchProtector,
          { tag: cellOf(row, 'protector'), there },
          origin,
          'protector',
          '',
        ),
      );
    } else if (row.form === 'record') {
      const typed = housingRow(row, bareLength);
      items.push(...typed.items);
      const photos = await photosOf(typed.row.photos, at, tag);
      housings.push({ tag, row: typed.row, photos, origin });
    } else {
      const reading = readingOf(row, tag, asked);
      if (!reading) {
        if (isBlank(row)) continue;
        const [channel, kind, state] = [cellOf(row, 'channel'), cellOf(row, 'kind'), cellOf(row, 'state')];
        refuse(itemOf(RECORD_MESSAGES.noSuchReading, { tag, channel, kind, state }, origin, 'channel', tag));
        continue;
      }
      const part = byTag.get(tag)?.partDetails;
      const typed = readingRow(row, reading.kind, { good: part?.goodFlag ?? '', used: part?.usedFlag ?? '' });
      items.push(...typed.items);
      const key = readingKey(reading);
      readings.set(key, [...(readings.get(key) ?? []), { ...typed.row, origin }]);
    }
  }
  return { rows: housings, readings, facts, deviations, items, files };
}

/** A bare length, as the company's settings have it for the job's basis. */
function bareUnit({ basis }: Plan, { units }: Settings): 'ft' | 'm' {
  if (units.length !== 'by-basis') return units.length;
  return isNec(basis) ? 'ft' : 'm';
}

/** A tag as the plan has it, whatever its case; undefined: the plan has none. */
function tagOf(text: string, byTag: ReadonlyMap<string, unknown>): string | undefined {
  return byTag.has(text) ? text : [...byTag.keys()].find((tag) => sameText(tag, text));
}

const FILLED: Readonly<Record<'record' | 'readings', readonly AnyHeading[]>> = {
  record: [
    'outcome',
    'part_fitted',
    'serial',
    'date_code',
    'lead_length',
    'torque',
    'change',
    'date',
    'name',
  ],
  readings: ['found', 'why_not'],
};

/** True where nobody filled anything in. */
function isBlank(row: FormRow): boolean {
  const headings = row.form === 'readings' ? FILLED.readings : FILLED.record;
  return headings.every((heading) => cellOf(row, heading) === '');
}

/** The reading that a row is of: a spreadsheet may have made another figure of its channel, or sorted its rows. */
function readingOf(row: FormRow, tag: string, asked: readonly RecordReading[]): RecordReading | undefined {
  const channel = cellOf(row, 'channel');
  const own = asked.filter(
    (one) =>
      one.tag === tag && sameText(one.kind, cellOf(row, 'kind')) && sameText(one.state, cellOf(row, 'state')),
  );
  return own.find((one) =>
    one.kind === 'volts'
      ? sameText(one.from, cellOf(row, 'from')) && sameText(one.to, cellOf(row, 'to'))
      : channel === ''
        ? sameText(one.conductor, cellOf(row, 'conductor'))
        : one.channel === Number(channel.replace(',', '.')),
  );
}

function factOf(row: FormRow, asked: readonly RecordFact[]): RecordFact | undefined {
  const [tag, fact] = [cellOf(row, 'tag'), cellOf(row, 'fact')];
  const key = factKey({ tag, fact });
  return asked.find((one) => factKey(one) === key || (sameText(one.tag, tag) && sameText(one.fact, fact)));
}

/** An item for each other plan that a file's forms were given out for, at its first line. */
async function otherPlans(rows: readonly PlacedRow[], { plan, given }: JobOfRows): Promise<OpenItem[]> {
  const now = siteForms(plan).plan;
  const seen = new Set<string>();
  const items: OpenItem[] = [];
  for (const { row } of rows) {
    const mark = cellOf(row, 'plan');
    const key = JSON.stringify([row.file, mark]);
    if (
      row.form === 'deviations' ||
      mark === '' ||
      mark === now ||
      seen.has(key) ||
      (isBlank(row) && row.form !== 'facts')
    )
      continue;
    seen.add(key);
    const before = await given(mark);
    const changes = before === undefined ? null : decisionChanges(before, decisionsOf(plan));
    items.push(itemOf(RECORD_MESSAGES.otherPlan, { given: mark, now, changes }, originOf(row), 'plan', ''));
  }
  return items;
}
