import type { MeasuredBlock, RenderedDocument } from '../../model/print.js';
import type { AsBuilt } from '../parts/as-built.js';
import type { DocumentContext } from '../parts/context.js';
import { checkedView, type Prepared } from '../parts/shell.js';
import { AddendumSchema, addendumView, permitChanges } from './contents/addendum.js';
import { isDone, START, take } from './flow.js';
import { measuring } from './measuring.js';
import { laidOut } from './pages.js';
import { Panels, type Panel } from './panels.js';
import type { Room } from '../drawing/one-line/figure.js';
import { permitPage, roomOf } from './paper.js';
import { sheetDocument, sheetStyle, sheetViews, withStrip } from './sheet-document.js';
import { titleStrip, type TitleStrip } from './title-strip.js';

const SUBJECT = 'Surge protection: what changed from the permit sheets, as built';

/** True where something of what the permit sheets say changed. */
export function hasAddendum(
  given: Prepared,
): given is Prepared & { readonly built: NonNullable<Prepared['built']> } {
  return given.built !== undefined && permitChanges(given.built).length > 0;
}

/** The revision behind one: the next number or letter; of another word that word and what came behind it. */
export function nextRevision(revision: string): string {
  if (revision === '') return '1';
  if (/^\d{1,4}$/.test(revision)) return String(Number(revision) + 1);
  if (/^[A-Ya-y]$/.test(revision)) return String.fromCharCode(revision.charCodeAt(0) + 1);
  return `${revision.slice(0, 10)}+1`;
}

const STAMPS = { planned: 'AS BUILT', built: 'AS BUILT', deviating: 'AS BUILT WITH DEVIATIONS' } as const;

/** The title strip of the permit sheets as that of a revision. */
function stripOf({ plan, context, built }: Prepared & { readonly built: AsBuilt }): TitleStrip {
  const strip = titleStrip(plan, context, []);
  const { made } = built;
  const isDraft = made === 'open' || !plan.submittable;
  return {
    ...strip,
    revision: { number: nextRevision(strip.revision.number), date: dateOf(built, context), what: 'As built' },
    stamp: isDraft ? 'DRAFT, NOT FOR PERMIT' : STAMPS[made],
    isDraft,
    blanks: isDraft ? [[{ text: made === 'open' ? 'Record open' : 'Plan is a draft', whole: false }]] : [],
  };
}

/** The last day of the work; the day of printing where nobody says. */
function dateOf({ housings }: AsBuilt, { date }: DocumentContext): string {
  const days = Array.from(housings.values(), (housing) => housing.date).filter((day) => day !== '');
  return days.sort().at(-1) ?? date;
}

/** A block over the whole width; what is higher than a sheet goes on on the next. */
function onPanels(flow: readonly MeasuredBlock[], { width, height }: Room): readonly Panel[] {
  const panels = new Panels(height);
  for (let place = START; !isDone(flow, place);) {
    const taken = take(flow, place, height, { forced: true });
    panels.begin();
    panels.add({ height: taken.height, columns: [{ width, parts: taken.parts }] }, taken.height);
    place = taken.next;
  }
  return panels.done;
}

/** What changed against the permit sheets, on a sheet of its own, as a revision. */
export async function permitAddendum(
  given: Prepared & { readonly built: AsBuilt },
): Promise<RenderedDocument> {
  const { plan, context, built } = given;
  const page = permitPage(plan, context.settings);
  const room = roomOf(page);
  const permit = await laidOut(given);
  const view = checkedView(
    'permit-sheet',
    AddendumSchema,
    addendumView(
      plan,
      built,
      permit.sheets.map(({ number }) => number),
    ),
  );
  const style = sheetStyle(given, page);
  const blocks = [
    { name: 'addendum', template: 'permit-sheet/addendum', view },
    { name: 'notes', template: 'permit-sheet/notes', view: view.notes },
  ];
  const [wide = []] = await measuring(given, style)([{ width: room.width, blocks }]);
  const { prefix, first } = context.settings.permitSheets;
  const sheets = sheetViews(onPanels(wide, room), {
    panels: page.panels,
    prefix,
    first: first + permit.sheets.length,
    drawings: [],
    titleOf: () => 'Surge protection: addendum, as built',
  });
  const strip = stripOf(given);
  return sheetDocument(given, { style: withStrip(style, page, strip), strip }, sheets, {
    fileName: 'permit-addendum.pdf',
    title: `Permit addendum, job ${plan.job}`,
    subject: SUBJECT,
  });
}
