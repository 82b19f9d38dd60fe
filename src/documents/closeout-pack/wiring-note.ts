import { isNec } from '../../model/editions.js';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { Settings } from '../../model/settings.js';
import { crewSay, crewNoteWords } from '../../words/crew-notes.js';
import type { CrewNoteWords } from '../../words/languages/crew-note-words.js';
import type { CrewLanguage } from '../../words/crew-language.js';
import { asBuiltWords } from '../../words/crew-language.js';
import type { AsBuiltWords } from '../../words/languages/as-built-words.js';
import { lengthUnitOf, longestLead, paperLead } from '../../words/lengths.js';
import { unparted } from '../../words/unparted.js';
import type { AsBuilt } from '../parts/as-built.js';
import { lineWidth } from '../parts/text-width.js';
import { bareSerials, foundOf } from './found.js';
import { noteDanger } from './note-danger.js';
import { noteDevice } from './note-device.js';
import { BESIDE, noteKinds, pagesOfKind, type NoteKind } from './note-kinds.js';
import { partName, placeName, placeTag, protectsName, systemName, tagsName } from './note-names.js';
import { notePicture, type PictureOf } from './note-picture.js';
import { noteReadings, watchTexts } from './note-readings.js';
import { charged, isShared, measuredOn, noteSteps, sourcesOf } from './note-steps.js';
import { groundingNumbers } from '../parts/contents/assumptions.js';
import { runsOf } from '../parts/contents/runs.js';
import type { WiringNote } from './wiring-note-view.js';

interface NoteOf extends PictureOf {
  /** Numbers of the assumptions on which the grounding of a place rests. */
  readonly grounded: (protector: PlannedProtector) => string[];
  /** What came back from the work; undefined: nothing yet. */
  readonly built: AsBuilt | undefined;
}

const tagsOf = (page: NoteKind): string[] => page.flatMap((picture) => picture.map(({ tag }) => tag));

/** Points of probes that still have a column each beside the tags. */
const COLUMNS = 4;

function headsOf(
  page: NoteKind,
  readings: WiringNote['readings'],
  points: readonly string[],
  { table }: CrewNoteWords,
): WiringNote['heads'] {
  const { tag, measure, expect, stop, place, protects, torque, lead, serial } = table;
  const source = isShared(page) ? '' : table.source;
  return {
    ...{ tag, measure, expect, stop, place, protects, torque, lead, serial, source },
    found: page.length > 1 ? '' : table.found,
    foundInRow: table.found,
    points: [...points],
    columns: 6 + points.length + (source === '' ? 0 : 1),
    hasTags: readings.some(({ tags }) => tags !== ''),
  };
}

/** The points that volts are found at, where each row of the tags has boxes of its own. */
function pointsOf(page: NoteKind, words: CrewNoteWords): string[] {
  if (page.length === 1) return [];
  return noteReadings([page[0]], words).flatMap(({ probes }) => probes.map(({ full }) => full));
}

/** mm that a text of the record has in its row, so that a note stays on its page; type of a note's tables in points. */
const ROOM = { torque: 17, serial: 24, wideSerial: 38 } as const;
const TABLE_TYPE = 11;
const POINT_MM = 25.4 / 72;

/** What was recorded, or where it is to be read. */
function short(text: string, room: number, { found }: AsBuiltWords): string {
  return lineWidth(text, TABLE_TYPE) * POINT_MM <= room ? text : found.seeRecord;
}

/** A row for each tag; of two housings of one place the first has the boxes for volts. */
function rowsOf(
  plan: Plan,
  page: NoteKind,
  points: readonly string[],
  { words, unit, built }: NoteOf,
): WiringNote['rows'] {
  const found = foundOf(built);
  const own = asBuiltWords(words.language);
  const isColumns = points.length <= COLUMNS;
  const serialRoom = points.length > 0 && isColumns ? ROOM.serial : ROOM.wideSerial;
  const runs = runsOf(plan);
  return page.flatMap((picture) => {
    const volts = noteReadings([picture], words, found).flatMap(({ probes }) => probes);
    return picture.map((one, index) => {
      const housing = built?.housings.get(one.tag);
      return {
        tag: one.tag,
        place: placeName(one, words),
        protects: runs(page.length > 1 ? placeTag(plan, page, one, words) : protectsName(plan, one, words)),
        source: runs(isShared(page) ? '' : sourcesOf(one).join(', ')),
        serial: housing === undefined ? one.serial : short(bareSerials(housing), serialRoom, own),
        torque: short(unparted(housing?.torque ?? ''), ROOM.torque, own),
        lead: housing?.lead == null ? '' : unparted(paperLead(housing.lead, unit)),
        boxes: isColumns ? points.map((_, at) => volts[at]?.found ?? '') : [],
        probes:
          isColumns || index > 0 ? [] : points.map((label, at) => ({ label, found: volts[at]?.found ?? '' })),
      };
    });
  });
}

/** On a page without the picture: whose it is, and part, device, lead and torque once more. */
function continuedTexts(kind: NoteKind, one: PlannedProtector, of: NoteOf): string[] {
  const { words, unit } = of;
  const [first] = pagesOfKind(kind);
  const devices = one.overcurrent.map((device) => noteDevice(device, one, words).lines.join(', '));
  const { torque, groundTo } = one.wiring;
  return [
    words.header.continued(tagsName(first === undefined ? [] : tagsOf(first), words)),
    `${[...new Set(devices)].join('; ')}. ${words.picture.leads}: ${words.picture.atMost(unparted(longestLead(one.wiring, unit)))}.`,
    `${torque === null ? '' : `${words.say.eachTerminal(unparted(torque))} `}${words.say.groundTo(crewSay(groundTo, words.language))}`,
  ];
}

/** System and grounding; a grounding that was taken for granted with the numbers of its assumptions. */
function systemText(page: NoteKind, { words, grounded }: NoteOf): string {
  const numbers = [...new Set(page.flatMap((picture) => picture.flatMap(grounded)))];
  const name = systemName(page[0][0], words);
  return numbers.length === 0 ? name : `${name} (${words.header.verify(unparted(numbers.join(', ')))})`;
}

function pageOf(
  plan: Plan,
  kind: NoteKind,
  page: NoteKind,
  index: number,
  of: NoteOf,
): Omit<WiringNote, 'id'> {
  const { words } = of;
  const [picture] = page;
  const [first] = picture;
  // A page of few tags has room for picture and steps, and is whole where it is torn out.
  const isDrawn = index === 0 || tagsOf(page).length <= BESIDE;
  const readings = noteReadings(page, words, foundOf(of.built));
  const points = pointsOf(page, words);
  return {
    heading: '',
    tags: tagsName(tagsOf(page), words),
    part: partName(first, words),
    system: systemText(page, of),
    danger: noteDanger(plan, picture, words),
    picture: isDrawn ? notePicture(page, of) : '',
    continued: isDrawn ? [] : continuedTexts(kind, first, of),
    conditions: measuredOn(page, words),
    heads: headsOf(page, readings, points.length <= COLUMNS ? points : [], words),
    readings,
    readingColumns: 3 + (page.length > 1 ? 0 : 1) + (readings.some(({ tags }) => tags !== '') ? 1 : 0),
    watch: [...watchTexts(page, words), ...(isDrawn ? [] : charged(page, words))],
    rows: rowsOf(plan, page, points, of),
    steps: isDrawn ? noteSteps(plan, page, words) : [],
  };
}

/**
 * The wiring notes of a job, one a kind of place, each for a page of its own; a kind of many tags goes on on further pages.
 * @param language of the crew
 * @param built what came back from the work, which fills in its boxes; undefined: nothing yet
 */
export function wiringNotes(
  plan: Plan,
  settings: Settings,
  language: CrewLanguage,
  built?: AsBuilt,
): WiringNote[] {
  const of: NoteOf = {
    plan,
    built,
    grounded: groundingNumbers(plan),
    groundColour: settings.conductorColours[isNec(plan.basis) ? 'nec' : 'iec'].ground,
    unit: lengthUnitOf(plan),
    words: crewNoteWords(language),
  };
  const pages = noteKinds(plan).flatMap((kind) =>
    pagesOfKind(kind).map((page, index) => pageOf(plan, kind, page, index, of)),
  );
  return pages.map((page, index) => ({
    ...page,
    id: `note-${index + 1}`,
    heading: index === 0 ? of.words.header.notes : '',
  }));
}
