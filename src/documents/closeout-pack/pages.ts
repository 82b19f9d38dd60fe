import { isNec } from '../../model/editions.js';
import type { RenderedDocument } from '../../model/print.js';
import { asBuiltWords, crewLanguage, crewPackWords } from '../../words/crew-language.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';
import { oneLine } from '../drawing/one-line.js';
import { MARGIN, pageRules, SHEETS } from '../parts/css.js';
import type { PageRule, Sheet } from '../parts/css.js';
import type { Prepared } from '../parts/shell.js';
import { checkedView, marginsOf, metadataOf, pageRule, styleOf } from '../parts/shell.js';
import { CloseoutPackSchema, closeoutPackView, type CloseoutPackView } from './view.js';

const MILLIMETRES_A_POINT = 25.4 / 72;

/** Drawings are set in 10 pt; on paper that nobody submits 8.5 pt are enough. */
const SCALE = 0.851;

/** A wiring note is read at arm's length: its type is large, and its page full; points. */
const NOTE_MARGIN = { top: 31, right: 30, bottom: 29 } as const;

/** Above the drawing, its heading; mm. The style takes its height from here. */
const HEAD = 8;

/** The language of the crew: that of the command line, the job's own, that of the settings. */
function languageOf({ plan, context }: Prepared): ReturnType<typeof crewLanguage> {
  const own = plan.facts.find(({ field }) => field === 'crew_language')?.value;
  return crewLanguage(
    context.crewLanguage ?? '',
    typeof own === 'string' ? own : '',
    context.settings.crewLanguage,
  );
}

/** What a landscape page leaves below a heading, mm, for a drawing that is printed at the scale. */
function roomFor(sheet: Sheet): { readonly width: number; readonly height: number } {
  const { width, height } = SHEETS[sheet];
  const room = {
    width: (height - MARGIN.left - MARGIN.right - 1) * MILLIMETRES_A_POINT,
    height: (width - MARGIN.top - MARGIN.bottom) * MILLIMETRES_A_POINT - HEAD,
  };
  return { width: room.width / SCALE, height: room.height / SCALE };
}

/** The pages of the pack, each with the name of its section in the margin. */
function pagesOf(
  { paper }: Prepared,
  { language, sections }: CrewPackWords,
  view: CloseoutPackView,
): PageRule[] {
  const section = (name: string, text: string, landscape = false): PageRule =>
    pageRule(name, paper, text, landscape);
  return [
    section('', sections.cover),
    section('drawing', sections.drawing, true),
    { ...section('isolation', sections.isolation), margin: NOTE_MARGIN },
    ...view.notes.map(({ id, tags }) => ({
      ...section(id, `${sections.notes} · ${tags}`),
      margin: NOTE_MARGIN,
    })),
    ...(view.built === null ? [] : [section('as-built', asBuiltWords(language).section)]),
    section('record', sections.record),
    section('calculations', sections.calculations),
    section('photos', sections.photos),
    section('rejected', sections.rejected),
    section('trace', sections.trace),
    section('bare', sections.bare),
  ];
}

/** The crew's pack: what to fetch, the drawing, how the site is made dead, a note for each kind of protector, checks and record. */
export async function closeoutPack(given: Prepared): Promise<RenderedDocument> {
  const { plan, context, paper, templates, built } = given;
  const words = crewPackWords(languageOf(given));
  const room = roomFor(paper);
  const family = isNec(plan.basis) ? 'ieee-315' : 'iec-60617';
  const drawing = { ...(await oneLine(plan, { first: room, next: room }, family)), scale: SCALE };
  const bare = closeoutPackView(plan, context, words, built, drawing, '');
  const rules = [
    `:root { --drawing-head: ${HEAD}mm; }`,
    pageRules(
      pagesOf(given, words, bare),
      marginsOf(
        given,
        `${words.document} · ${asBuiltWords(words.language).margin[built?.made ?? 'planned']}`,
        words,
      ),
    ),
    ...bare.notes.map(({ id }) => `#${id} { page: ${id}; }`),
  ].join('\n');
  const names = [
    'base',
    'drawing',
    'kit-type',
    'kit-tables',
    'kit-fill',
    'kit-safety',
    'safety',
    'closeout-pack',
    'pack-notes',
  ];
  const view = checkedView('closeout-pack', CloseoutPackSchema, {
    ...bare,
    style: styleOf(given, names, rules),
  });
  const metadata = metadataOf(given, view.title, words.subject, words.keywords, words.language);
  return {
    fileName: 'closeout-pack.pdf',
    html: templates.render('closeout-pack', view),
    metadata: { ...metadata, contents: view.contents.entries.map(({ id }) => id) },
  };
}
