import type { RenderedDocument } from '../../model/print.js';
import { pageRules } from '../parts/css.js';
import type { PageRule } from '../parts/css.js';
import { drawPlacement, fitsOn } from '../drawing/placement.js';
import { largeRoom, largeSheet, smallRoom } from '../drawing/rooms.js';
import type { Prepared } from '../parts/shell.js';
import { wiringNotes } from './wiring-note.js';
import type { WiringNote } from './wiring-note-view.js';
import { checkedView, marginsOf, metadataOf, pageRule, styleOf } from '../parts/shell.js';
import { CloseoutPackSchema, closeoutPackView } from './view.js';

/** A wiring note is read at arm's length: its type is large, and its page full. */
const NOTE_MARGIN = { top: 36, right: 32, bottom: 34 } as const;

/**
 * The pages of the pack. Each section has a name of its own in the margin, since a browser can't number the pages of a
 * table of contents; each wiring note has the tag of its protector.
 */
function pagesOf(given: Prepared, notes: readonly WiringNote[], onPaper: boolean): PageRule[] {
  const { paper } = given;
  const section = (name: string, text: string, landscape = false): PageRule =>
    pageRule(name, paper, text, landscape);
  return [
    section('', 'Cover'),
    section('cautions', '1 Cautions'),
    section('isolation', '1 Isolation'),
    section('schedule', '2 Protection schedule', true),
    pageRule('drawing', onPaper ? paper : largeSheet(paper), '3 Placement drawing', true),
    ...notes.map(({ id, tags }) => ({ ...section(id, `4 Wiring notes · ${tags}`), margin: NOTE_MARGIN })),
    section('calculations', '5 Calculations'),
    section('checks', '6 Checks · 7 Commissioning record'),
    section('open', '8 Open items · 9 Bare ports'),
    section('site', '10 Site · 11 Sources · 12 Limits'),
    section('photos', '13 Photos'),
  ];
}

/** The closeout pack: everything that the crew and the office need of a job. */
export async function closeoutPack(given: Prepared): Promise<RenderedDocument> {
  const { plan, context, paper, templates } = given;
  const placement = await given.placement();
  const onPaper = fitsOn(placement, smallRoom(paper));
  const sheets = drawPlacement(plan, placement, onPaper ? smallRoom(paper) : largeRoom(paper));
  const notes = wiringNotes(plan, context.settings, 'en');
  const notePages = notes.map(({ id }) => `#${id} { page: ${id}; }`);
  const rules = [
    pageRules(pagesOf(given, notes, onPaper), marginsOf(given, 'Closeout pack')),
    ...notePages,
  ].join('\n');
  const style = styleOf(
    given,
    [
      'base',
      'kit-safety',
      'safety',
      'drawing',
      'kit-type',
      'kit-tables',
      'kit-fill',
      'closeout-pack',
      'pack-notes',
    ],
    rules,
  );
  const view = checkedView(
    'closeout-pack',
    CloseoutPackSchema,
    closeoutPackView(plan, context, notes, sheets, style),
  );
  return {
    fileName: 'closeout-pack.pdf',
    html: templates.render('closeout-pack', view),
    metadata: metadataOf(
      given,
      view.title,
      'Surge protection: schedule, placement drawing, wiring notes, calculations, checks',
      ['surge protection', 'closeout'],
      'en',
    ),
  };
}
