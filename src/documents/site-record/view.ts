import { z } from 'zod';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { FormFields } from '../../model/print.js';
import { FILLED_FACT, FILLED_READING, FILLED_RECORD } from '../../model/site-form-headings.js';
import { ALL_FIELDS, fieldsOf, type FieldOf } from '../../site-forms/field-names.js';
import { plannedReadings, siteForms, type PlannedReading } from '../../site-forms/rows.js';
import { planAssumptions } from '../../words/assumptions/of-plan.js';
import { crewPort } from '../../words/crew-devices.js';
import { CautionSchema, siteCautions } from '../parts/cautions.js';
import type { DocumentContext } from '../parts/context.js';
import { formFields } from './form-fields.js';
import { expectedText, readingName } from './reading-words.js';
import type { SiteWords } from './site-words.js';

/** A field of the form: its name, behind `field:` in a link that takes the room of it. */
const nameSchema = z.string().regex(/^[A-Za-z0-9_~-]+(\.[A-Za-z0-9_~-]+)+$/);
const entrySchema = z.object({ label: z.string(), hint: z.string(), field: nameSchema });

export const SiteRecordSchema = z.object({
  language: z.string().describe('BCP 47 tag'),
  title: z.string().describe('Title of the file, with the id of the job'),
  style: z.string().describe('All CSS: accent colour, styles and page rules'),
  heading: z.string(),
  draft: z.object({ says: z.string(), does: z.string() }).nullable(),
  facts: z.array(z.object({ name: z.string(), text: z.string() })).describe('Job, address, plan, date'),
  how: z.array(z.string()).describe('How it is filled in'),
  deference: z.string(),
  cautionsHeading: z.string(),
  cautions: z.array(CautionSchema).describe('Safety messages after ANSI Z535.6 that fit the site'),
  all: z.object({ heading: z.string(), how: z.string(), entries: z.array(entrySchema) }),
  none: z.string().describe('Said where no protector is placed'),
  housings: z.array(
    z.object({
      heading: z.string(),
      where: z.string(),
      entries: z.array(entrySchema),
      readingsHeading: z.string(),
      closed: z.string().describe('Where the box stays closed; else empty'),
      noReadings: z.string(),
      columns: z.array(z.string()),
      readings: z.array(
        z.object({
          channel: z.string(),
          what: z.string(),
          state: z.string(),
          expected: z.string(),
          fields: z.array(nameSchema).describe('Found, why not, date, name'),
        }),
      ),
    }),
  ),
  assumptions: z.object({
    heading: z.string(),
    how: z.string(),
    columns: z.array(z.string()),
    rows: z.array(
      z.object({
        number: z.string(),
        what: z.string().describe('Empty on the further rows of one assumption'),
        tag: z.string(),
        assumed: z.string(),
        fields: z.array(nameSchema).describe('Found, who, date, photo'),
      }),
    ),
    none: z.string(),
  }),
});
export type SiteRecordView = z.infer<typeof SiteRecordSchema>;

/** Where a housing sits: `Hut / power room: CC-1, DC input 1`. */
function whereText({ place, ports }: PlannedProtector, { pack, note }: SiteWords): string {
  const at = ports.map(({ equipment, port }) => `${equipment}, ${crewPort(port, pack)}`).join('; ');
  return `${place === '' ? note.table.noPlace : place}: ${at}`;
}

/** Names of the fields by cell. */
type Names = (of: FieldOf['of'], row: number, heading: string) => string;

function namesOf(fields: ReadonlyMap<string, FieldOf>): Names {
  const names = new Map(
    Array.from(fields, ([name, { of, row, heading }]) => [JSON.stringify([of, row, heading]), name]),
  );
  return (of, row, heading) => names.get(JSON.stringify([of, row, heading])) ?? '';
}

function housingView(
  protector: PlannedProtector,
  row: number,
  readings: readonly (readonly [index: number, reading: PlannedReading])[],
  names: Names,
  words: SiteWords,
): SiteRecordView['housings'][number] {
  const { site } = words;
  const isClosed = protector.wiring.measuring.state?.code === 'measure-state/do-not-open';
  const { columns } = site.readings;
  return {
    heading: site.housing(protector.tag, protector.part ?? protector.existing ?? site.noPart),
    where: whereText(protector, words),
    entries: FILLED_RECORD.map((heading) => ({
      label: site.record[heading],
      hint: site.hints[heading] ?? '',
      field: names('record', row, heading),
    })),
    readingsHeading: site.readings.heading,
    closed: isClosed ? site.readings.closed : '',
    noReadings: readings.length === 0 ? site.readings.none : '',
    columns: [
      columns.channel,
      columns.what,
      columns.state,
      columns.expected,
      columns.found,
      columns.whyNot,
      columns.date,
      columns.name,
    ],
    readings: readings.map(([index, reading]) => ({
      channel: [protector.tag, String(reading.cells.channel)].filter((one) => one !== '').join(', '),
      ...readingName(reading, words),
      expected: expectedText(reading, words),
      fields: FILLED_READING.map((heading) => names('readings', index, heading)),
    })),
  };
}

/**
 * The view of a job's form, and its fields.
 * @param plan of the job
 * @param words in the crew's language
 * @param style all CSS
 */
export function siteRecordView(
  plan: Plan,
  context: DocumentContext,
  words: SiteWords,
  style: string,
): { readonly view: SiteRecordView; readonly form: FormFields } {
  const { site, pack } = words;
  const forms = siteForms(plan);
  const planned = plannedReadings(plan);
  const names = namesOf(fieldsOf(forms));
  const called = planned.map((reading) => {
    const { what, state } = readingName(reading, words);
    return [
      reading,
      [String(reading.cells.channel), what, state].filter((one) => one !== '').join(', '),
    ] as const;
  });
  const readings = [...planned.entries()];
  const protectors = [...plan.protectors].sort((a, b) => byNaturalOrder(a.tag, b.tag));
  const missing = plan.openItems.filter(({ severity }) => severity !== 'confirm').length;
  const stated = (text: string): string => (text === '' ? pack.notStated : text);
  const { columns } = site.facts;
  const says = new Map(planAssumptions(plan).map(({ number, assumption }) => [number, assumption.says]));
  const view: SiteRecordView = {
    language: pack.language,
    title: site.title(plan.job),
    style,
    heading: site.heading,
    draft: plan.submittable ? null : { says: pack.cover.draft(missing), does: pack.cover.draftDo },
    facts: [
      { name: pack.cover.job, text: plan.jobName === '' ? plan.job : `${plan.job}, ${plan.jobName}` },
      { name: pack.cover.address, text: stated(plan.address.replaceAll('\n', ', ')) },
      { name: site.plan, text: forms.plan },
      { name: pack.cover.date, text: context.date },
    ],
    how: [...site.how],
    deference: pack.cover.deference,
    cautionsHeading: pack.cover.cautions,
    cautions: siteCautions(plan, pack.language),
    all: {
      heading: site.allHeading,
      how: site.allHow,
      entries: ALL_FIELDS.map(({ name, heading }) => ({
        label: site.record[heading],
        hint: site.hints[heading] ?? '',
        field: name,
      })),
    },
    none: protectors.length === 0 ? pack.record.nothing : '',
    housings: protectors.map((protector, row) =>
      housingView(
        protector,
        row,
        readings.filter(([, { cells }]) => cells.protector === protector.tag),
        names,
        words,
      ),
    ),
    assumptions: {
      heading: site.facts.heading,
      how: site.facts.how,
      columns: [
        columns.number,
        columns.what,
        columns.tag,
        columns.assumed,
        columns.found,
        columns.by,
        columns.date,
        columns.photo,
      ],
      rows: forms.facts.map(({ assumption, tag, assumed }, row) => ({
        number: assumption,
        what: forms.facts[row - 1]?.assumption === assumption ? '' : (says.get(assumption) ?? ''),
        tag: tag === '' ? site.facts.site : tag,
        assumed,
        fields: FILLED_FACT.map((heading) => names('facts', row, heading)),
      })),
      none: site.facts.none,
    },
  };
  return { view, form: formFields(forms, called, words) };
}
