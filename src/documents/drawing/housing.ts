import { channelText } from '../../words/conductors.js';
import { deviceInShort, devicesText } from '../../words/overcurrent.js';
import { BY_INSTRUCTIONS } from '../../words/protectors.js';
import { say } from '../../words/reasons/say.js';
import type { PlannedChannel, PlannedProtector } from '../../model/plan.js';
import type { Basis } from '../../model/editions.js';
import { leadLength, leadLimitText } from '../../words/lengths.js';
import { notKnown, plainNumber } from '../parts/figures.js';
import { conductorStripe } from './conductor-colour.js';
import { drawing, element, line, rect, textAt } from './svg.js';
import { groundSymbol } from './symbols.js';
import { wrapped } from '../parts/wrapped.js';

const FONT = 9;
const TEXT = { size: FONT } as const;
const BOLD = { size: FONT, weight: 700 } as const;
const LINE = 11;
const X = {
  wire: 104,
  breaker: 126,
  breakerEnd: 214,
  housing: 246,
  housingEnd: 352,
  words: 362,
  end: 502,
} as const;
const WIRE = { stroke: '#000', 'stroke-width': 1.1, fill: 'none' };

interface ChannelRow {
  readonly channel: PlannedChannel;
  readonly conductor: readonly string[];
  readonly y: number;
  readonly height: number;
}

function channelRows(protector: PlannedProtector, top: number): ChannelRow[] {
  let y = top;
  // The words of the overcurrent protection stand across the rows that it breaks: the fewest together have to hold them.
  const words = wrapped(overcurrentOf(protector), X.breakerEnd - X.breaker - 8, TEXT).length * LINE + 12;
  const runs = brokenRuns(protector, protector.channels).map((run) => run.length);
  const least = Math.max(30, words / Math.max(1, Math.min(...runs)));
  return protector.channels.map((channel) => {
    const colour = channel.colour === '' ? 'no colour set' : channel.colour;
    const conductor = [
      ...wrapped(channelText(channel), X.wire - 8, BOLD),
      ...wrapped(`(${colour})`, X.wire - 8, TEXT),
    ];
    const height = Math.max(isBroken(protector, channel) ? least : 30, conductor.length * LINE + 6);
    const row = { channel, conductor, y: y + height / 2, height };
    y += height;
    return row;
  });
}

/** True where the device stands in this conductor; where the plan names none, in each but N. */
function isBroken({ overcurrent }: PlannedProtector, { wire }: PlannedChannel): boolean {
  const own = overcurrent.find(({ port }) => wire.port === null || wire.port === port);
  return own === undefined || own.conductors.length === 0
    ? wire.name !== 'N'
    : own.conductors.includes(wire.name);
}

/** A plan that an earlier shuntbook wrote has the catalogue's words alone. */
function overcurrentOf(protector: PlannedProtector): string {
  const devices = devicesText(protector, deviceInShort);
  return devices.length > 0 ? devices.join('; ') : (protector.wiring.overcurrent ?? BY_INSTRUCTIONS);
}

/** Lines of text whose middle is at `y`; `styleOf` a line's number. */
function block(
  x: number,
  y: number,
  lines: readonly string[],
  styleOf: (index: number) => Parameters<typeof textAt>[3] = () => ({}),
): string {
  const first = y - ((lines.length - 1) * LINE) / 2 + 3.2;
  return lines.map((text, index) => textAt(x, first + index * LINE, text, styleOf(index))).join('');
}

/** The name of a conductor and its colour, close to where it begins. */
function conductorWords({ conductor, y }: ChannelRow): string {
  return block(X.wire - 6, y, conductor, (index) => {
    const weight = index < conductor.length - 1 ? { 'font-weight': 700 } : {};
    return { 'text-anchor': 'end', ...weight };
  });
}

/** The place of a channel's light (a lamp) or flag on the housing. */
function indicatorMark(protector: PlannedProtector, x: number, y: number): string {
  const kind = protector.partDetails?.indicator ?? null;
  if (kind === 'none') return '';
  if (kind === 'flag') return rect(x - 6, y - 5, 12, 10, { ...WIRE, fill: '#fff' });
  const ring = element('circle', { cx: x, cy: y, r: 6, ...WIRE, fill: '#fff' });
  return (
    ring + line(x - 4.2, y - 4.2, x + 4.2, y + 4.2, WIRE) + line(x - 4.2, y + 4.2, x + 4.2, y - 4.2, WIRE)
  );
}

function rowSvg(protector: PlannedProtector, row: ChannelRow): string {
  const { channel, y } = row;
  return [
    conductorWords(row),
    conductorStripe(X.wire, y, X.housing - X.wire, channel.colour),
    element('circle', { cx: X.housing, cy: y, r: 3.2, fill: '#fff', stroke: '#000' }),
    textAt(X.housing + 8, y + 3.2, `Channel ${channel.channel}`, { 'font-weight': 700 }),
    indicatorMark(protector, X.housingEnd - 12, y),
  ].join('');
}

/** Channels side by side that the overcurrent protection breaks: N and a grounded conductor go past it. */
function brokenRuns(protector: PlannedProtector, channels: readonly PlannedChannel[]): PlannedChannel[][] {
  const runs: PlannedChannel[][] = [[]];
  for (const channel of channels) {
    if (isBroken(protector, channel)) runs.at(-1)?.push(channel);
    else runs.push([]);
  }
  return runs.filter((run) => run.length > 0);
}

function breakerSvg(protector: PlannedProtector, rows: readonly ChannelRow[]): string {
  return brokenRuns(protector, protector.channels)
    .map((run) => rows.filter(({ channel }) => run.includes(channel)))
    .map((run) => breakerFrame(run, overcurrentOf(protector)))
    .join('');
}

function breakerFrame(rows: readonly ChannelRow[], words: string): string {
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) return '';
  const lines = wrapped(words, X.breakerEnd - X.breaker - 8, TEXT);
  const top = first.y - first.height / 2 + 2;
  const height = last.y + last.height / 2 - 2 - top;
  const frame = rect(X.breaker, top, X.breakerEnd - X.breaker, height, {
    fill: '#fff',
    stroke: '#000',
    'stroke-width': 0.9,
    'stroke-dasharray': '5 2',
  });
  return frame + block(X.breaker + 5, top + height / 2, lines);
}

/** What stands beside the housing: the limit of the leads, what more costs, and where the ground lead goes. */
function words(protector: PlannedProtector, basis: Basis, groundColour: string): string[] {
  const { wiring } = protector;
  const extra = wiring.voltsPerTenCentimetres;
  const more = extra === null ? notKnown('the part or its lead is not known') : `${plainNumber(extra, 1)} V`;
  const toNeutral = protector.channels.some((c) => c.to === 'N');
  return [
    `Line lead plus ground lead: ${leadLimitText(wiring, basis)}.`,
    `Planned: ${leadLength(wiring.leadLengthPlanned, basis)}. Each further 10 cm (4 in) adds up to ${more}.`,
    ...(toNeutral ? ['Inside: lines to N, N to earth.'] : []),
    `Ground lead (${groundColour}): to ${say(wiring.groundTo)}.`,
  ].flatMap((text) => wrapped(text, X.end - X.words, TEXT));
}

function altText(protector: PlannedProtector): string {
  const channels = protector.channels.map(
    (c) =>
      `channel ${c.channel}: ${channelText(c)}, ${c.colour === '' ? 'no colour set' : c.colour}, to ${c.to}`,
  );
  return `Housing of ${protector.tag} with ${protector.channels.length} channels. ${channels.join('; ')}. Ground lead to ${say(protector.wiring.groundTo)}.`;
}

/**
 * The housing of a protector with its channels, the conductors in their colours and labelled, the overcurrent protection,
 * the lead length limit and the ground bar.
 * @param groundColour word of the settings for the ground conductor
 */
export function housingDrawing(protector: PlannedProtector, basis: Basis, groundColour: string): string {
  const room = X.housingEnd - X.housing - 10;
  const title = wrapped(protector.tag, room, BOLD);
  const name = wrapped(protector.existing ?? protector.part ?? 'no part chosen', room, TEXT);
  const headHeight = (title.length + name.length) * LINE + 6;
  const rows = channelRows(protector, headHeight);
  const bottom = rows.reduce((sum, r) => sum + r.height, headHeight);
  const head = [...title, ...name].map((text, index) =>
    textAt(X.housing + 6, LINE * (index + 1), text, index < title.length ? { 'font-weight': 700 } : {}),
  );
  const beside = words(protector, basis, groundColour);
  const stem = X.housing + 50;
  const lead = conductorStripe(stem, bottom + 1, 16, groundColour);
  const inner = [
    rect(X.housing, 1, X.housingEnd - X.housing, bottom, { ...WIRE, fill: '#f3f3f3', 'stroke-width': 1.4 }),
    head.join(''),
    rows.map((row) => rowSvg(protector, row)).join(''),
    breakerSvg(protector, rows),
    element('g', { transform: `rotate(90 ${stem} ${bottom + 1})` }, lead),
    groundSymbol(stem, bottom + 19),
    block(X.words, Math.max((bottom + 20) / 2, (beside.length * LINE) / 2), beside),
  ].join('');
  const height = Math.max(bottom + 28, beside.length * LINE + 4);
  return drawing(X.end, height, altText(protector), 'housing', element('g', { 'font-size': FONT }, inner));
}
