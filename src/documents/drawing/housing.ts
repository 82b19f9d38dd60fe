import type { PlainLook } from '../../words/languages/owner-strings.js';
import { wrapped } from '../parts/wrapped.js';
import { conductorStripe, STRIPE } from './conductor-colour.js';
import { circlePath } from './arcs.js';
import { flagSymbol, lightSymbol } from './lights.js';
import { drawing, element, rect, textAt } from './svg.js';

/** A conductor of a housing from its tap to its channel. */
export interface WiredChannel {
  readonly number: number;
  /** As people at the box call it. */
  readonly name: string;
  /** In the language of the page; `` not sure. */
  readonly colourWord: string;
  /** The word of the settings; `` not sure: drawn blank. */
  readonly colour: string;
  readonly look: PlainLook;
  /** How its light or flag should look, in words. */
  readonly caption: string;
  /** Which of the devices of its housing stands in it; -1: none. */
  readonly device: number;
}

/** An overcurrent device, or that there is none of its own: what stands in its box. */
export interface DrawnDevice {
  readonly lines: readonly string[];
  /** False: the box is broken, since nothing is fitted. */
  readonly isFitted: boolean;
}

export interface DrawnHousing {
  readonly title: string;
  readonly channels: readonly WiredChannel[];
  readonly devices: readonly DrawnDevice[];
  /** In each further row that a device stands in apart from its first. */
  readonly same: string;
  readonly isFlag: boolean;
}

/** What the picture of a wiring note shows; all words in the language of the page. */
export interface WiringPicture {
  /** Above the conductors: the circuit or bus. */
  readonly circuit: string;
  /** Above the lights: when they look so; `` where the captions say it. */
  readonly state: string;
  readonly housings: readonly DrawnHousing[];
  readonly lead: { readonly of: string; readonly limit: string; readonly more: readonly string[] };
  readonly ground: { readonly colour: string; readonly words: string };
  /** `` where the system has none. */
  readonly neutralBar: string;
  /** True where neutral and ground are joined in this enclosure. */
  readonly isBonded: boolean;
  readonly alt: string;
}

/** Points: the least size at a box. */
const FONT = 14;
const LINE = 16;
const TEXT = { size: FONT } as const;
const BOLD = { size: FONT, weight: 700 } as const;
const LARGE = 20;
const X = { name: 104, tap: 112, device: 134, deviceEnd: 270, housing: 286, end: 488 } as const;
/** From the housing's edge. */
const LIGHT = 44;
const CAPTION = 64;
const LEAD = 300;
const FRAME = { stroke: '#000', 'stroke-width': 1.5 };

interface Row {
  readonly channel: WiredChannel;
  readonly name: readonly string[];
  readonly caption: readonly string[];
  readonly y: number;
  readonly height: number;
}

/** Channels side by side that one device stands in. */
function runsOf(channels: readonly WiredChannel[]): WiredChannel[][] {
  const runs: WiredChannel[][] = [];
  for (const channel of channels) {
    const last = runs.at(-1);
    if (last && last[0]?.device === channel.device) last.push(channel);
    else runs.push([channel]);
  }
  return runs;
}

/** What stands in the box of a device; its first line is set bold, so all of the first text is measured so. */
function deviceLines({ lines }: DrawnDevice): string[] {
  const room = X.deviceEnd - X.device - 10;
  return lines.flatMap((text, index) => wrapped(text, room, index === 0 ? BOLD : TEXT));
}

function rowsOf({ channels, devices }: DrawnHousing, top: number, least: number): Row[] {
  const asked = new Map<WiredChannel, number>();
  const told = new Set<number>();
  for (const run of runsOf(channels)) {
    const [first] = run;
    const device = first && devices[first.device];
    if (!first || !device || told.has(first.device)) continue;
    told.add(first.device);
    const height = (deviceLines(device).length * LINE + 12) / run.length;
    for (const channel of run) asked.set(channel, height);
  }
  let y = top;
  return channels.map((channel) => {
    const name = wrapped(channel.name, X.name, BOLD);
    const both = `${channel.name} ${channel.colourWord}`;
    const oneLine = channels.length > 2 && wrapped(both, X.name - 4, BOLD).length === 1;
    const names =
      channel.colourWord === ''
        ? name
        : oneLine
          ? [both]
          : [...name, ...wrapped(channel.colourWord, X.name, TEXT)];
    const caption = wrapped(channel.caption, X.end - X.housing - CAPTION - 4, TEXT);
    const lines = Math.max(names.length, caption.length);
    const height = Math.max(least, lines * LINE + 4, asked.get(channel) ?? 0);
    const row = { channel, name: names, caption, y: y + height / 2, height };
    y += height;
    return row;
  });
}

/** Lines of text whose middle is at `y`. */
function block(
  x: number,
  y: number,
  lines: readonly string[],
  styleOf: (index: number) => Parameters<typeof textAt>[3] = () => ({}),
): string {
  const first = y - ((lines.length - 1) * LINE) / 2 + 4.8;
  return lines.map((text, index) => textAt(x, first + index * LINE, text, styleOf(index))).join('');
}

const bold = { 'font-weight': 700 } as const;

function indicator({ look }: WiredChannel, isFlag: boolean, colour: string, x: number, y: number): string {
  if (look === 'none') return '';
  if (isFlag || look === 'good') return flagSymbol(x - 9, y - 12, 'good', colour);
  return lightSymbol(x, y, look, colour);
}

function rowSvg(row: Row, { isFlag }: DrawnHousing, lightColour: string): string {
  const { channel, y, name, caption } = row;
  return [
    block(0, y, name, (index) => (index === 0 || channel.colourWord === '' ? bold : {})),
    // The circuit's conductor goes on; the lead taps it.
    conductorStripe(X.tap - STRIPE / 2, y - 14, STRIPE, 28, channel.colour),
    conductorStripe(X.tap, y - STRIPE / 2, X.housing - X.tap, STRIPE, channel.colour),
    element('path', {
      d: circlePath(X.tap, y, 3) + circlePath(X.housing, y, 4),
      fill: '#fff',
      stroke: '#000',
    }),
    textAt(X.housing + 12, y + 4.8, String(channel.number), bold),
    indicator(channel, isFlag, lightColour, X.housing + LIGHT, y),
    block(X.housing + CAPTION, y, caption, () => bold),
  ].join('');
}

function devicesSvg({ channels, devices, same }: DrawnHousing, rows: readonly Row[]): string {
  const told = new Set<number>();
  return runsOf(channels)
    .map((run) => {
      const number = run[0]?.device ?? -1;
      const device = devices[number];
      const own = rows.filter(({ channel }) => run.includes(channel));
      const [first, last] = [own[0], own.at(-1)];
      if (!device || !first || !last) return '';
      const lines = told.has(number) ? [same] : deviceLines(device);
      told.add(number);
      const top = first.y - first.height / 2 + 2;
      const height = last.y + last.height / 2 - 2 - top;
      const frame = rect(X.device, top, X.deviceEnd - X.device, height, {
        fill: '#fff',
        ...FRAME,
        ...(device.isFitted ? {} : { 'stroke-dasharray': '5 3' }),
      });
      return frame + block(X.device + 6, top + height / 2, lines, (index) => (index === 0 ? bold : {}));
    })
    .join('');
}

interface Drawn {
  readonly svg: string;
  readonly bottom: number;
}

function housingSvg(
  housing: DrawnHousing,
  top: number,
  state: string,
  least: number,
  lightColour: string,
): Drawn {
  const room = X.end - X.housing - 16;
  const title = wrapped(housing.title, room, BOLD);
  // Beside the part where both keep to one line.
  const beside = state === '' ? [...title] : [`${title.join(' ')} · ${state}:`];
  const isOneLine = beside.length === 1 && wrapped(beside.join(''), room, BOLD).length === 1;
  const head = isOneLine ? beside : [...title, ...(state === '' ? [] : wrapped(`${state}:`, room, BOLD))];
  const rows = rowsOf(housing, top + head.length * LINE + 4, least);
  const last = rows.at(-1);
  const bottom = (last ? last.y + last.height / 2 : top + head.length * LINE) + 3;
  const svg = [
    rect(X.housing, top, X.end - X.housing, bottom - top, { ...FRAME, fill: '#f7f7f7', 'stroke-width': 2 }),
    head.map((text, index) => textAt(X.housing + 10, top + LINE * (index + 1), text, bold)).join(''),
    rows.map((row) => rowSvg(row, housing, lightColour)).join(''),
    devicesSvg(housing, rows),
  ].join('');
  return { svg, bottom };
}

/** Below the housings: the leads' limit at the left, the bars of the enclosure at the right. */
function foot(picture: WiringPicture, top: number): Drawn {
  const { lead, ground, neutralBar, isBonded } = picture;
  const bar = top + 24;
  const hasNeutral = neutralBar !== '';
  const groundEnd = hasNeutral ? 384 : X.end;
  const neutral = hasNeutral
    ? rect(398, bar, X.end - 398, 7, { fill: '#fff', ...FRAME }) + textAt(400, bar - 6, neutralBar)
    : '';
  const link = hasNeutral && isBonded ? rect(groundEnd, bar + 2, 14, 3, { fill: '#000' }) : '';
  const words = wrapped(ground.words, X.end - X.housing, TEXT);
  const more = lead.more.flatMap((text) => wrapped(text, X.housing - 20, TEXT));
  const svg = [
    conductorStripe(LEAD, top, STRIPE, bar - top, ground.colour),
    rect(X.housing, bar, groundEnd - X.housing, 7, { fill: '#000' }),
    link,
    neutral,
    words.map((text, index) => textAt(X.housing, bar + 24 + index * LINE, text)).join(''),
    textAt(0, top + 16, lead.of),
    textAt(0, top + 38, lead.limit, { 'font-size': LARGE, ...bold }),
    more.map((text, index) => textAt(0, top + 56 + index * LINE, text)).join(''),
  ].join('');
  const bottom = Math.max(bar + 24 + (words.length - 1) * LINE, top + 56 + (more.length - 1) * LINE) + 5;
  return { svg, bottom };
}

/** A housing's foot and the next one's head; the ground leads of several are joined at the right edge. */
const GAP = 8;

/**
 * The picture of a wiring note: circuit, taps, conductors in the colours that are sure, overcurrent devices with their figures, channels
 * with their lights as they should look, the longest lead, ground and neutral bars of the enclosure.
 * @param lightColour as the catalogue has it
 * @returns an SVG of the width of a page, no text below 14 points
 */
export function wiringPicture(picture: WiringPicture, lightColour: string): string {
  const channels = picture.housings.reduce((sum, { channels: each }) => sum + each.length, 0);
  const least = channels <= 2 ? 42 : channels === 3 ? 40 : 34;
  let top = 1;
  let inner = '';
  const heads = wrapped(picture.circuit, X.device + 100, BOLD);
  inner += heads.map((text, index) => textAt(0, top + LINE * (index + 1), text, bold)).join('');
  for (const [index, housing] of picture.housings.entries()) {
    const drawn = housingSvg(housing, top, index === 0 ? picture.state : '', least, lightColour);
    inner += drawn.svg;
    const isLast = index === picture.housings.length - 1;
    if (!isLast) inner += conductorStripe(LEAD, drawn.bottom, STRIPE, GAP, picture.ground.colour);
    top = drawn.bottom + (isLast ? 0 : GAP);
  }
  const below = foot(picture, top);
  return drawing(
    X.end + 1,
    below.bottom,
    picture.alt,
    'wiring',
    element('g', { 'font-size': FONT }, inner + below.svg),
  );
}
