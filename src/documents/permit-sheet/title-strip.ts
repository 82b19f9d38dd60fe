import { z } from 'zod';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { Plan } from '../../model/plan.js';
import type { DocumentContext } from '../parts/context.js';
import { shortened } from '../parts/css.js';
import { BASIS_TITLES, CompanyViewSchema } from '../parts/job.js';
import type { Blank } from '../parts/blanks.js';
import { wrapped } from '../parts/wrapped.js';
import { runsOf, RunsSchema, wordRuns } from '../parts/contents/runs.js';
import { uncheckedRequired } from './required-checks.js';
import { issuedFor, stampOf, stampWords } from './stamp.js';

/** What the title strip of every sheet says; `` is a blank line to write on. */
export const TitleStripSchema = z.object({
  company: CompanyViewSchema,
  job: z.string(),
  name: z.string(),
  /** One entry a line. */
  address: z.array(z.string()),
  owner: z.string(),
  parcel: z.string(),
  permitNumber: z.string(),
  /** Company, licence, name and address once more, in pieces: no word of theirs is broken at its hyphen. */
  pieces: z.object({
    company: RunsSchema,
    licence: RunsSchema,
    name: RunsSchema,
    address: z.array(RunsSchema),
  }),
  basis: z.string(),
  earthing: z.string(),
  amendments: z.string(),
  drawnBy: z.string(),
  checkedBy: z.string(),
  revision: z.object({ number: z.string(), date: z.string(), what: z.string() }),
  stamp: z.string().describe('FOR PERMIT, or what keeps the sheets from being that'),
  isDraft: z.boolean(),
  blanks: z.array(RunsSchema).describe('What the sheets leave to fill in'),
});
export type TitleStrip = z.infer<typeof TitleStripSchema>;

/** Characters that a text of the strip is printed from at most; the styles cut what its lines have no room for. */
const MOST = {
  company: 80,
  line: 60,
  entry: 300,
  name: 160,
  address: 48,
  addressLines: 4,
  blanks: 150,
} as const;

/** A job's fact as it was typed; `` where nobody states it. */
function factText(plan: Plan, field: string): string {
  return plan.facts.find((fact) => fact.field === field)?.text.trim() ?? '';
}

/** The lines of an address: as it was typed, else parted at its commas where one line hasn't room for it. */
export function addressLines(address: string): string[] {
  const typed = address
    .split(/\r\n|\r|\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  return typed.slice(0, MOST.addressLines).map((line) => shortened(line, 2 * MOST.address));
}

/** The title strip, but for title and number of the sheet. */
export function titleStrip(plan: Plan, context: DocumentContext, blanks: readonly Blank[]): TitleStrip {
  const { company } = context.settings;
  const facts = {
    submittable: plan.submittable,
    unchecked: uncheckedRequired(plan, context.settings),
    blanks,
  };
  const words = stampWords(facts);
  const runs = runsOf(plan);
  const isBasisAssumed = plan.openItems.some(({ code }) => code === PLACE_MESSAGES.basisDefault.code);
  const own = (field: string): string => shortened(factText(plan, field), MOST.entry);
  const by = shortened(company.name, MOST.company);
  const licence = shortened(company.licence, MOST.company);
  const job = shortened(plan.job, MOST.line);
  const name = shortened(plan.jobName, MOST.name);
  const address = addressLines(plan.address);
  return {
    company: {
      ...company,
      name: by,
      licence,
      phone: shortened(company.phone, MOST.line),
      logo: context.logo ?? '',
    },
    pieces: {
      company: wordRuns(by),
      licence: wordRuns(licence),
      name: wordRuns(name === '' ? job : name),
      address: address.map(wordRuns),
    },
    job,
    name,
    address,
    owner: own('owner'),
    parcel: own('parcel'),
    permitNumber: own('permit_number'),
    basis: `${BASIS_TITLES[plan.basis]}${isBasisAssumed ? ', assumed' : ''}`,
    earthing: plan.basis === 'iec' ? plan.earthing : '',
    amendments: own('amendments'),
    drawnBy: own('drawn_by'),
    checkedBy: own('checked_by'),
    revision: {
      number: plan.revision === '' ? '0' : shortened(plan.revision, 12),
      date: context.date,
      what: issuedFor(stampOf(facts)),
    },
    stamp: words.stamp,
    isDraft: stampOf(facts) === 'draft',
    blanks: words.blanks.map((line) => runs(shortened(line, MOST.blanks))),
  };
}

/** Of the strip at the foot of a small sheet, as its styles have it: lines of its first group, their width in mm, points. */
const FOOT = { lines: 8, width: 62, logo: 23, points: 10, most: 2 } as const;
const POINT_MM = 25.4 / 72;

/** Lines of the job's name and of its address that a strip has room for. */
export interface FootLines {
  readonly name: number;
  readonly address: number;
}

/**
 * What the strip at the foot of a small sheet has room for: company and job's number go first, then the name, then the address.
 * @param strip what the strip says
 * @returns at least 1 of each
 */
export function footLines({ company, name, job }: TitleStrip): FootLines {
  const width = FOOT.width - (company.logo === '' ? 0 : FOOT.logo);
  const lines = (text: string, of: number, weight: 400 | 700): number =>
    text === '' ? 0 : Math.min(FOOT.most, wrapped(text, of / POINT_MM, { size: FOOT.points, weight }).length);
  const ofCompany =
    lines(company.name, width, 700) + (company.phone === '' ? 0 : 1) + lines(company.licence, width, 400);
  const left = FOOT.lines - ofCompany - 1;
  const ofName = Math.max(1, Math.min(left - 1, lines(name === '' ? job : name, FOOT.width, 700)));
  return { name: ofName, address: Math.max(1, left - ofName) };
}
