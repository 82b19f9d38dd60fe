import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import { asBuiltWords } from '../../words/crew-language.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';
import type { OneLine } from '../drawing/one-line.js';
import { SvgSchema } from '../drawing/svg.js';
import { CautionSchema, siteCautions } from '../parts/cautions.js';
import { assumptionRows, AssumptionsSchema } from '../parts/contents/assumptions.js';
import { calculationSummary, CalculationSummarySchema } from '../parts/contents/calculations.js';
import { permitSchedule, PermitScheduleSchema } from '../parts/contents/schedule.js';
import type { AsBuilt } from '../parts/as-built.js';
import type { DocumentContext } from '../parts/context.js';
import { limitTexts } from '../parts/limits.js';
import { packAppendixView, PackAppendixSchema } from './appendix-view.js';
import { AsBuiltSchema, asBuiltView } from './as-built-view.js';
import { changeTexts } from './changes.js';
import { ChecksSchema, checksView } from './checks.js';
import { ContentsSchema, contentsView } from './contents.js';
import { CoverSchema, coverView } from './cover-view.js';
import { FetchSchema, fetchView } from './fetch-view.js';
import { isolationView, IsolationViewSchema } from './isolation-view.js';
import { PhotoSchema, photoViews, recordPhotoViews } from './photos.js';
import { RecordSchema, recordView, SignOffSchema, signOffView } from './record.js';
import { WiringNoteSchema } from './wiring-note-view.js';
import { wiringNotes } from './wiring-note.js';

const LegendSchema = z.array(z.object({ svg: SvgSchema, words: z.string() }));

export const CloseoutPackSchema = z.object({
  language: z.string().describe('BCP 47 tag of what the crew holds in its hands'),
  title: z.string().describe('Title of the file, with the id of the job'),
  style: z.string().describe('All CSS: fonts, accent colour, styles and page rules'),
  cover: CoverSchema.describe('Job, company, code, and what makes the pack a draft'),
  /** Absent before the first pack. */
  changes: z.object({ heading: z.string(), lines: z.array(z.string()), none: z.string() }).nullable(),
  contents: ContentsSchema.describe('What is in the pack, by page'),
  fetch: FetchSchema.describe('Parts and material to fetch'),
  cautionsHeading: z.string(),
  cautions: z.array(CautionSchema).describe('Safety messages after ANSI Z535.6 that fit the site'),
  sections: z.record(z.string(), z.string()).describe('Headings of the sections by their ids'),
  drawings: z
    .array(z.object({ svg: SvgSchema, width: z.number() }))
    .describe('Sheets of the one-line drawing; width as it is printed, mm'),
  legend: LegendSchema.describe('The symbols that the drawing uses'),
  built: AsBuiltSchema.nullable().describe('What came back from the work; absent before any of it did'),
  schedule: PermitScheduleSchema.describe('One row for each housing, or for those that are alike'),
  isolation: IsolationViewSchema.describe(
    'How the site is made dead, step by step, and live again, with its log',
  ),
  notes: z
    .array(WiringNoteSchema)
    .describe('A page of the wiring notes each: kinds of places that are wired alike'),
  checks: ChecksSchema.describe('The checks of the installer, protector by check'),
  record: RecordSchema.describe('The commissioning record, a row a protector'),
  signOff: SignOffSchema.describe('Who signs'),
  calculations: CalculationSummarySchema.describe('One line for each kind of quantity'),
  assumptions: AssumptionsSchema.describe('Numbered as on the permit sheets'),
  limits: z.array(z.string()).describe('What the plan does not cover'),
  appendix: PackAppendixSchema.describe('What was asked for with `--with`'),
  hasPhotos: z.boolean(),
  photos: z.array(PhotoSchema).describe('Photos with their captions'),
  notPrinted: z
    .object({ heading: z.string(), names: z.array(z.string()) })
    .describe('Photos of the record that can’t be printed, by name'),
});
export type CloseoutPackView = z.infer<typeof CloseoutPackSchema>;

/** Ids of the sections behind the notes and whether a pack has them. */
function lastSections(
  { rejected, trace, bare }: CloseoutPackView['appendix'],
  hasPhotos: boolean,
): readonly (keyof CrewPackWords['sections'])[] {
  return [
    'record',
    'calculations',
    ...(hasPhotos ? (['photos'] as const) : []),
    ...(rejected === null ? [] : (['rejected'] as const)),
    ...(trace === null ? [] : (['trace'] as const)),
    ...(bare === null ? [] : (['bare'] as const)),
  ];
}

/** The view of the pack. */
export function closeoutPackView(
  plan: Plan,
  context: DocumentContext,
  words: CrewPackWords,
  built: AsBuilt | undefined,
  drawing: OneLine & { readonly scale: number },
  style: string,
): CloseoutPackView {
  const { previous } = context;
  const { sections } = words;
  const own = asBuiltWords(words.language);
  const recorded = context.recordPhotos;
  const photos = [
    ...photoViews(plan, context.photos ?? []),
    ...recordPhotoViews(recorded?.printed ?? [], own),
  ];
  const notPrinted = recorded?.notPrinted ?? [];
  const hasPhotos = photos.length + notPrinted.length > 0;
  const appendix = packAppendixView(plan, context);
  const notes = wiringNotes(plan, context.settings, words.language, built);
  const contents: (readonly [id: string, name: string])[] = [
    ...(built === undefined ? [] : [['as-built', own.section] as const]),
    ['drawing', sections.drawing],
    ...(plan.protectors.length === 0
      ? []
      : [
          ['isolation', sections.isolation] as const,
          ...notes.map(({ id, tags }) => [id, `${sections.notes}: ${tags}`] as const),
        ]),
    ...lastSections(appendix, hasPhotos).map((id) => [id, sections[id]] as const),
  ];
  return {
    language: words.language,
    title: words.title(plan.job),
    style,
    cover: coverView(plan, context, words, built, own),
    changes:
      previous === undefined
        ? null
        : {
            heading: words.changes.heading,
            lines: changeTexts(previous, plan, words),
            none: words.changes.none,
          },
    contents: contentsView(words.cover.contents, contents),
    fetch: fetchView(plan, words),
    cautionsHeading: words.cover.cautions,
    cautions: siteCautions(plan, words.language),
    sections: { ...sections },
    drawings: drawing.sheets.map(({ svg, width }) => ({ svg, width: width * drawing.scale })),
    legend: [...drawing.legend],
    built: built === undefined ? null : asBuiltView(plan, built, words, own),
    schedule: permitSchedule(plan, { narrow: true }),
    isolation: isolationView(plan, words.language),
    notes,
    checks: checksView(plan, words),
    record: recordView(plan, words, built),
    signOff: signOffView(words, built),
    calculations: calculationSummary(plan),
    assumptions: assumptionRows(plan),
    limits: limitTexts(plan),
    appendix,
    hasPhotos,
    photos,
    notPrinted: {
      heading: own.photos.notPrinted,
      names: notPrinted.map(({ name, why }) => `${name} (${own.photos.because[why]})`),
    },
  };
}
