import { shortened } from '../parts/css.js';
import type { PlannedProtector } from '../../model/plan.js';
import { kindWords } from '../../words/kind-words.js';
import type { PortRow, Side, Unit } from './site-graph.js';
import { SYMBOL_HEIGHT } from './symbols.js';
import { lineWidth } from '../parts/text-width.js';
import { wrapped } from '../parts/wrapped.js';

/** Font size of all text of the drawing; a sheet is never shrunk below 10 pt. */
export const FONT = 10.5;
export const LINE = 12.8;
export const TEXT = { size: FONT } as const;
const BOLD = { size: FONT, weight: 700 } as const;
const PAD = 6;
const LABEL_WIDTH = 112;
const REACH_WIDTH = 86;
const SHARED_HEIGHT = 62;
/** A drop line's distance from the box, and from the next drop line. */
const DROP = 8;
/** Room of an arrow head at the end of a line. */
const ARROW = 9;

/** A protector on a row's line: where its stem is, and its label. */
export interface TapShape {
  readonly protector: PlannedProtector;
  /** From the left of the cell. */
  readonly x: number;
  readonly lines: readonly string[];
}

/** A line of text over a stub. */
export interface LabelLine {
  readonly text: string;
  /** Key of a row on another strip, whose sheet is named before the text; it isn't known while cells are measured. */
  readonly target: string | null;
}

/** A row as it is drawn. */
export interface RowShape {
  readonly row: PortRow;
  /** y of its line, from the top of the cell. */
  readonly y: number;
  readonly labels: readonly LabelLine[];
  readonly taps: readonly TapShape[];
  /** True where its line goes to the edge of the cell: a run, or something outside the sheet. */
  readonly toEdge: boolean;
  readonly arrow: boolean;
}

/** A protector under the box that two rows share. */
export interface SharedShape {
  readonly protector: PlannedProtector;
  /** Top of its frame. */
  readonly top: number;
  readonly lines: readonly string[];
  readonly drop: number;
}

/** The measured cell of one equipment: its box with the stubs and protectors on both sides. */
export interface CellShape {
  readonly unit: Unit;
  /** The tag, over the ports. */
  readonly tag: readonly string[];
  /** Kind and make, below the ports, where the protectors beside the box leave room. */
  readonly details: readonly string[];
  readonly detailsTop: number;
  readonly width: number;
  readonly height: number;
  readonly boxLeft: number;
  readonly boxRight: number;
  readonly boxBottom: number;
  readonly rows: readonly RowShape[];
  readonly shared: readonly SharedShape[];
}

/** What a sheet tells a cell about its rows: whether a line ends on the sheet, and where the others go. */
export interface RowLinks {
  /** True where a line of this sheet ends at the row. */
  readonly drawn: (row: PortRow) => boolean;
  /** The rows where the lines that leave the strip here go on. */
  readonly elsewhere: (row: PortRow) => readonly PortRow[];
}

/**
 * So many lines that leave the strip at one row are named there; each of the others names this row where it arrives. A label is a line
 * high or two, and a sheet holds some fifty.
 */
const MOST_NAMED = 24;

/** Room before the name of a row on another strip while the sheets aren't counted; as wide as any two digits. */
const PLACEHOLDER = 'sheet 88:';

/** The name of a row on another strip, on lines that leave room for its sheet. */
function elsewhereLines(row: PortRow, room: number): { label: LabelLine; width: number }[] {
  const [first = '', ...more] = wrapped(`${row.tag} ${row.port}`, room, {
    size: FONT,
    before: `${PLACEHOLDER} `,
  });
  return [
    { label: { text: first, target: row.key }, width: widest([`${PLACEHOLDER} ${first}`.trimEnd()]) },
    ...more.map((text) => ({ label: { text, target: null }, width: widest([text]) })),
  ];
}

/**
 * A label with the number of the sheet put in where its line goes on.
 * @param sheetOf the sheet of a row, `null` for the sheet on which the label stands
 */
export function labelText(label: LabelLine, sheetOf: (key: string) => number | null): string {
  if (label.target === null) return label.text;
  const sheet = sheetOf(label.target);
  return `${sheet === null ? 'to' : `sheet ${sheet}:`} ${label.text}`.trimEnd();
}

/** How far a protector covers, in few words. */
export type ReachWord = (protector: PlannedProtector) => string;

function detailsOf(unit: Unit, width: number): string[] {
  const { kind, maker, model } = unit.equipment;
  // The whole name stands in the table of the equipment.
  const make = shortened([maker, model].filter((t) => t !== '').join(' '), 48);
  return [...wrapped(kindWords(kind), width, TEXT), ...wrapped(make, width, TEXT)];
}

function tapLines(protector: PlannedProtector, reach: ReachWord): string[] {
  return [...wrapped(protector.tag, REACH_WIDTH, BOLD), ...wrapped(reach(protector), REACH_WIDTH, TEXT)];
}

function widest(lines: readonly string[]): number {
  return lines.reduce((most, text) => Math.max(most, lineWidth(text, FONT, 700)), 0);
}

interface Measured {
  readonly row: PortRow;
  readonly labels: readonly LabelLine[];
  readonly taps: readonly { protector: PlannedProtector; lines: string[]; width: number }[];
  readonly width: number;
  readonly toEdge: boolean;
  readonly arrow: boolean;
}

function measureRow(row: PortRow, links: RowLinks, reach: ReachWord): Measured {
  const elsewhere = links.elsewhere(row);
  const named = elsewhere.length > MOST_NAMED ? MOST_NAMED - 1 : elsewhere.length;
  const more = elsewhere.length > named ? `and ${elsewhere.length - named} more` : '';
  const taps = row.taps.map((protector) => {
    const lines = tapLines(protector, reach);
    return { protector, lines, width: 26 + widest(lines) };
  });
  const tapsWidth = taps.reduce((sum, tap) => sum + tap.width, 0);
  const room = Math.max(LABEL_WIDTH, tapsWidth);
  const lines = [
    ...row.labels.flatMap((text) =>
      wrapped(text, room, TEXT).map((t) => ({ label: { text: t, target: null }, width: widest([t]) })),
    ),
    ...elsewhere.slice(0, named).flatMap((other) => elsewhereLines(other, room)),
    ...(more === '' ? [] : [{ label: { text: more, target: null }, width: widest([more]) }]),
  ];
  const labels = lines.map((l) => l.label);
  const labelsWidth = lines.reduce((most, l) => Math.max(most, l.width), 0);
  const arrow = row.outside || elsewhere.length > 0;
  const drops = row.shared.length === 0 ? 0 : DROP * (row.shared.length + 1);
  const width = Math.max(tapsWidth + (arrow ? ARROW : 0), labelsWidth + 10) + drops;
  return { row, labels, taps, width, toEdge: links.drawn(row) || arrow, arrow };
}

function placeRows(
  measured: readonly Measured[],
  wing: number,
  boxWidth: number,
  titleHeight: number,
): { rows: RowShape[]; bottom: number } {
  let bottom = 2;
  const rows = measured.map((m) => {
    const y = Math.max(bottom + m.labels.length * LINE + 5, titleHeight + LINE);
    const tapHeight = m.taps.reduce(
      (most, tap) => Math.max(most, SYMBOL_HEIGHT + 4, 8 + tap.lines.length * LINE),
      8,
    );
    bottom = y + tapHeight;
    const drops = DROP * m.row.shared.length;
    let x = m.row.side === 'west' ? 4 + (m.arrow ? ARROW : 0) : wing + boxWidth + 10 + drops;
    const taps = m.taps.map((tap) => {
      const shape = { protector: tap.protector, x: x + 9, lines: tap.lines };
      x += tap.width;
      return shape;
    });
    return { row: m.row, y, labels: m.labels, taps, toEdge: m.toEdge, arrow: m.arrow };
  });
  return { rows, bottom };
}

/**
 * Measures the cell of an equipment. Everything that belongs to it (stubs, lengths, protectors, their labels) lies inside
 * the cell, so that a layout that keeps cells apart keeps every label apart.
 */
export function cellShape(unit: Unit, links: RowLinks, reach: ReachWord): CellShape {
  const measured = unit.rows.map((row) => measureRow(row, links, reach));
  const of = (side: Side): Measured[] => measured.filter((m) => m.row.side === side);
  const wingOf = (side: Side): number => of(side).reduce((most, m) => Math.max(most, m.width + 6), 2);
  const portWidth = (side: Side): number =>
    of(side).reduce((most, m) => Math.max(most, lineWidth(m.row.port, FONT)), 0);
  const ports = portWidth('west') + portWidth('east') + 3 * PAD;
  const boxWidth = Math.max(96, ports, unit.shared.length === 0 ? 0 : 136);
  const tag = wrapped(unit.equipment.tag, boxWidth - 2 * PAD, BOLD);
  const titleHeight = tag.length * LINE + 3;
  const details = detailsOf(unit, boxWidth - 2 * PAD);
  const wing = wingOf('west');
  const west = placeRows(of('west'), wing, boxWidth, titleHeight);
  const east = placeRows(of('east'), wing, boxWidth, titleHeight);
  const detailsTop = [...west.rows, ...east.rows].reduce((most, r) => Math.max(most, r.y + 8), titleHeight);
  const boxBottom = Math.max(west.bottom, east.bottom, detailsTop + details.length * LINE + PAD);
  const shared = unit.shared.map((protector, index) => ({
    protector,
    top: boxBottom + 8 + index * (SHARED_HEIGHT + 6),
    lines: [
      ...wrapped(protector.tag, boxWidth - 60, BOLD),
      ...wrapped(reach(protector), boxWidth - 60, TEXT),
    ],
    drop: DROP * (index + 1),
  }));
  return {
    unit,
    tag,
    details,
    detailsTop,
    width: wing + boxWidth + wingOf('east'),
    height: boxBottom + shared.length * (SHARED_HEIGHT + 6) + (shared.length > 0 ? 6 : 0),
    boxLeft: wing,
    boxRight: wing + boxWidth,
    boxBottom,
    rows: [...west.rows, ...east.rows],
    shared,
  };
}

/** Height of a shared protector's frame. */
export const SHARED_FRAME = SHARED_HEIGHT;
