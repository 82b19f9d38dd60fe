import { MARGIN, SHEETS } from '../parts/css.js';
import type { Sheet } from '../parts/css.js';
import { lineWidth } from '../parts/text-width.js';
import type { NoteDensity, WiringNote } from './wiring-note-view.js';

/** What is left of a note's height where it is set dense. */
const DENSE_SAVES = 0.89;

/** Size of a note's text in points, line height and padding of its cells, as the style has them. */
const TEXT = { size: 8.5, line: 1.27 * 8.5, cell: 4.6 };
/** Around each block: margins, captions. */
const BLOCK = 6;
const CAPTION = 14;
/** Lines break at blanks, so that they hold a little less than their width. */
const FILLED = 0.94;

type Parts = Omit<WiringNote, 'density'>;

function lines(text: string, width: number): number {
  return Math.max(1, Math.ceil(lineWidth(text, TEXT.size) / (width * FILLED)));
}

/** Height of a table's body: each row is as high as its highest cell. */
function rowsHeight(rows: readonly (readonly string[])[], widths: readonly number[]): number {
  return rows.reduce((sum, row) => {
    const most = Math.max(1, ...row.map((text, index) => lines(text, (widths[index] ?? 100) - 8)));
    return sum + most * TEXT.line + TEXT.cell;
  }, 0);
}

function factsHeight(note: Parts, width: number): number {
  const facts = [
    `${note.part}, ${note.description}. ${note.housing}`,
    `${note.place}; ${note.position}`,
    `${note.ports}; system ${note.system}, grounding ${note.grounding}`,
    ...note.reasons,
    ...note.isolation.first,
    note.isolation.steps,
    ...note.isolation.live,
    `${note.doNotOpen} ${note.clothing} ${note.meter}`,
  ];
  return facts.reduce((sum, text) => sum + lines(text, width - 100) * TEXT.line + 1, 0);
}

function cautionsHeight(note: Parts, width: number): number {
  return note.cautions.reduce((sum, c) => {
    const count = lines(`${c.hazard} ${c.consequence}`, width - 108) + lines(c.avoidance, width - 108);
    return sum + count * TEXT.line + 16;
  }, 0);
}

function tablesHeight(note: Parts, width: number): number {
  const share = (...shares: number[]): number[] => shares.map((s) => (s / 100) * width);
  const head = CAPTION + BLOCK + TEXT.line + TEXT.cell;
  const channels = note.channels.map((c) => ['', c.conductor, c.colour, c.to]);
  const readings = note.readings.map((r) => [r.between, r.band, r.reads]);
  const leads = [
    ['', note.groundTo],
    ...note.leads.map((l) => [l.what, l.value, l.second?.what ?? '', l.second?.value ?? '']),
  ];
  const lights = note.lights.map((l) => [l.channel, l.conductor, l.state, l.shows, l.because]);
  // Channels and readings stand side by side; the caption of the readings says in which state they are taken.
  const caption = `Measure first: ${note.measuredState}. Outside: stop, do not connect (section 1)`;
  const captionLines = lines(caption, 0.6 * width);
  return (
    Math.max(
      rowsHeight(channels, share(7, 12, 8, 8)),
      rowsHeight(readings, share(19, 19, 25)) + CAPTION + (captionLines - 2) * TEXT.line,
    ) +
    rowsHeight(leads, share(20, 30, 20, 30)) +
    rowsHeight(lights, share(10, 16, 18, 9, 47)) +
    3 * head
  );
}

/**
 * Height that a wiring note takes in its usual size, in points, estimated; the browser alone knows it for sure.
 * @param note all but the size
 * @param sheet of its page, upright
 */
export function noteHeight(note: Parts, sheet: Sheet): number {
  const width = SHEETS[sheet].width - MARGIN.left - MARGIN.right;
  const drawing = Number(/ height="([\d.]+)/.exec(note.housingDrawing)?.[1] ?? 0);
  const texts = [
    ...note.notes,
    note.watch.join(' '),
    ...note.unprotected.map((u) => `Not protected here: ${u.conductor} to ground: ${u.because}`),
  ];
  const heading = (note.first ? 28 : 0) + lines(`${note.tag}: ${note.protects}`, width * 0.75) * 14 + BLOCK;
  return (
    heading +
    factsHeight(note, width) +
    cautionsHeight(note, width) +
    drawing +
    tablesHeight(note, width) +
    texts.reduce((sum, text) => sum + lines(text, width - 20) * TEXT.line + 3, 0)
  );
}

/** The closest setting that a note of this height keeps to its page with. */
export function noteDensity(note: Parts, sheet: Sheet): NoteDensity {
  const share = (SHEETS[sheet].height - MARGIN.top - MARGIN.bottom) / noteHeight(note, sheet);
  return share >= 1 ? 'usual' : share > DENSE_SAVES ? 'dense' : 'densest';
}
