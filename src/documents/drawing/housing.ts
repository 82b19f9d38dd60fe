import type { PlannedChannel, PlannedProtector } from '../../model/plan.js';
import type { Basis } from '../../model/words.js';
import { notKnown, plainNumber, shortLength } from '../figures.js';
import { conductorStripe } from './conductor-colour.js';
import { drawing, element, line, rect, textAt } from './svg.js';
import { groundSymbol } from './symbols.js';
import { textWidth, wrapped } from './text-width.js';

const FONT = 9;
const LINE = 11;
const X = {
  wire: 112,
  breaker: 150,
  breakerEnd: 236,
  housing: 290,
  housingEnd: 392,
  states: 400,
  end: 516,
} as const;
const WIRE = { stroke: '#000', 'stroke-width': 1.1, fill: 'none' };

interface ChannelRow {
  readonly channel: PlannedChannel;
  readonly conductor: readonly string[];
  readonly states: readonly string[];
  readonly y: number;
  readonly height: number;
}

function channelRows(protector: PlannedProtector, top: number): ChannelRow[] {
  let y = top;
  return protector.channels.map((channel) => {
    const colour = channel.colour === '' ? 'no colour set' : channel.colour;
    const conductor = [
      ...wrapped(channel.conductor, X.wire - 8, FONT, true),
      ...wrapped(`(${colour})`, X.wire - 8, FONT),
    ];
    const states = channel.indicator.flatMap((i) =>
      wrapped(`${i.state}: ${i.shows}`, X.end - X.states, FONT),
    );
    const height = Math.max(34, Math.max(conductor.length, states.length) * LINE + 8);
    const row = { channel, conductor, states, y: y + height / 2, height };
    y += height;
    return row;
  });
}

/** Lines of text whose middle is at `y`. */
function block(x: number, y: number, lines: readonly string[], boldLines = 0): string {
  const first = y - ((lines.length - 1) * LINE) / 2 + 3.2;
  return lines
    .map((text, index) =>
      textAt(x, first + index * LINE, text, index < boldLines ? { 'font-weight': 700 } : {}),
    )
    .join('');
}

function indicatorMark(protector: PlannedProtector, x: number, y: number): string {
  const kind = protector.partDetails?.indicator ?? null;
  if (kind === 'none') return '';
  if (kind === 'flag') return rect(x - 6, y - 5, 12, 10, { ...WIRE, fill: '#fff' });
  return (
    element('circle', { cx: x, cy: y, r: 6, ...WIRE, fill: '#fff' }) +
    line(x - 4.2, y - 4.2, x + 4.2, y + 4.2, WIRE) +
    line(x - 4.2, y + 4.2, x + 4.2, y - 4.2, WIRE)
  );
}

function rowSvg(protector: PlannedProtector, row: ChannelRow): string {
  const { channel, y } = row;
  return [
    block(2, y, row.conductor, row.conductor.length - 1),
    conductorStripe(X.wire, y, X.housing - X.wire, channel.colour),
    element('circle', { cx: X.housing, cy: y, r: 3.2, fill: '#fff', stroke: '#000' }),
    textAt(X.housing + 8, y + 3.2, `Channel ${channel.channel}`, { 'font-weight': 700 }),
    indicatorMark(protector, X.housingEnd - 12, y),
    block(X.states, y, row.states),
  ].join('');
}

function breakerSvg(protector: PlannedProtector, top: number, bottom: number): string {
  const stated = protector.wiring.overcurrent;
  const lines = wrapped(
    stated === '' ? "overcurrent protection by the part's instructions" : stated,
    X.breakerEnd - X.breaker - 8,
    FONT,
  );
  const height = Math.max(bottom - top, lines.length * LINE + 8);
  const width = X.breakerEnd - X.breaker;
  const frame = rect(X.breaker, top, width, height, {
    fill: '#fff',
    stroke: '#000',
    'stroke-width': 0.9,
    'stroke-dasharray': '5 2',
  });
  return frame + block(X.breaker + 5, top + height / 2, lines);
}

function leadLines(protector: PlannedProtector, basis: Basis): string[] {
  const { wiring } = protector;
  const extra = wiring.voltsPerTenCentimetres;
  const more = extra === null ? notKnown('the part or its lead is not known') : `${plainNumber(extra, 1)} V`;
  return [
    `Line lead plus ground lead: at most ${shortLength(wiring.leadLengthLimit, basis)}.`,
    `Each further 10 cm (4 in) adds ${more} to what the equipment sees.`,
  ].flatMap((text) => wrapped(text, X.housing - 24, FONT));
}

function altText(protector: PlannedProtector): string {
  const channels = protector.channels.map(
    (c) => `channel ${c.channel}: ${c.conductor}, ${c.colour || 'no colour set'}, to ${c.to}`,
  );
  return `Housing of ${protector.tag} with ${protector.channels.length} channels. ${channels.join('; ')}. Ground lead to ${protector.wiring.groundTo}.`;
}

/**
 * The housing of a protector with its channels, the conductors in their colours and labelled, the overcurrent protection,
 * the lead length limit and the ground bar.
 * @param groundColour word of the settings for the ground conductor
 */
export function housingDrawing(protector: PlannedProtector, basis: Basis, groundColour: string): string {
  const part = protector.existing ?? protector.part ?? 'no part chosen';
  const name = wrapped(part, X.housingEnd - X.housing - 10, FONT);
  const title = wrapped(protector.tag, X.housingEnd - X.housing - 10, FONT, true);
  const headHeight = (title.length + name.length) * LINE + 6;
  const rows = channelRows(protector, headHeight + 4);
  const toNeutral = protector.channels.some((c) => c.to === 'N');
  const bottom = rows.reduce((sum, r) => sum + r.height, headHeight + 4) + (toNeutral ? LINE + 2 : 0);
  const head = [...title, ...name].map((text, index) =>
    textAt(X.housing + 6, LINE * (index + 1), text, index < title.length ? { 'font-weight': 700 } : {}),
  );
  const firstRow = rows[0];
  const lastRow = rows.at(-1);
  const breaker =
    firstRow === undefined || lastRow === undefined
      ? ''
      : breakerSvg(protector, firstRow.y - 12, lastRow.y + 12);
  const ground = wrapped(
    `Ground lead (${groundColour}) to ${protector.wiring.groundTo || notKnown('see the open items')}`,
    X.end - X.housing - 90,
    FONT,
  );
  const leads = leadLines(protector, basis);
  const stem = X.housing + 50;
  const barY = bottom + 26;
  const lower = Math.max(ground.length, leads.length) * LINE + 12;
  const inner = [
    rect(X.housing, 1, X.housingEnd - X.housing, bottom, { ...WIRE, fill: '#f3f3f3', 'stroke-width': 1.4 }),
    head.join(''),
    rows.map((row) => rowSvg(protector, row)).join(''),
    breaker,
    toNeutral ? textAt(X.housing + 6, bottom - 3, 'lines to N, N to earth') : '',
    element(
      'g',
      { transform: `rotate(90 ${stem} ${bottom + 1})` },
      conductorStripe(stem, bottom + 1, 22, groundColour),
    ),
    groundSymbol(stem, barY),
    block(stem + 22, bottom + 14 + (ground.length * LINE) / 2, ground),
    block(2, bottom + 14 + (leads.length * LINE) / 2, leads),
  ].join('');
  const widest = Math.max(X.end, ...rows.flatMap((r) => r.states.map((t) => X.states + textWidth(t, FONT))));
  return drawing(
    widest,
    bottom + 14 + Math.max(lower, 30),
    altText(protector),
    'housing',
    element('g', { 'font-size': FONT }, inner),
  );
}
