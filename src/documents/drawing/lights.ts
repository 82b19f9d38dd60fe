import { arcCurves, circlePath } from './arcs.js';
import { colourNamed, coloursIn, type ColourName } from '../../words/colours.js';
import { filled } from '../../words/languages.js';
import type { OwnerStrings, PlainLook } from '../../words/languages/owner-strings.js';
import { isToTick } from '../parts/owner-lights.js';
import type { Light, LightGroup, LightsInState } from '../parts/owner-lights.js';
import { drawing, element, rect, textAt } from './svg.js';
import { lineWidth } from '../parts/text-width.js';
import { wrapped } from '../parts/wrapped.js';

/** Points; nothing that an owner reads is smaller. */
const FONT = 13;
const RADIUS = 8;
const PAD = 8;
const LINE = 16;
const TITLE = 17;
const LAMP = 34;
const CAPTION = 61;
/** The widest that a housing gets before its lights stand in two rows. */
const WIDEST = 338;
/** Width of the words of a flag. */
const FLAG_WORDS = 108;
const FLAG = 26;

/** Width of a line in the family of the owner's sheet, points. */
function textWidth(text: string, weight: 400 | 700 = 400): number {
  return lineWidth(text, FONT, weight, 'Atkinson');
}

const OUTLINE = { stroke: '#000', 'stroke-width': 1.4 };

/** As lights and flags are drawn; the word always stands beside. */
const FILLS: { readonly [C in ColourName]: string } = {
  amber: '#ffb000',
  black: '#1a1a1a',
  blue: '#1f6fe0',
  brown: '#7a4a21',
  gray: '#8c8c8c',
  green: '#2e9e3f',
  grey: '#8c8c8c',
  orange: '#ff8000',
  pink: '#e58fb1',
  purple: '#6a1b9a',
  red: '#d32f2f',
  violet: '#6a1b9a',
  white: '#ffffff',
  yellow: '#ffd400',
};

function fillOf(colour: string): string {
  const named = colourNamed(colour);
  return named === undefined ? '#ffffff' : FILLS[named];
}

/**
 * A light by its look. Each look has a shape of its own, so that it is told without colour: a disc in a second ring where it is on (rays would make it a sun), half a
 * disc with two arcs where it blinks, an empty ring where it is off, a dashed one where it can be either.
 * @param colour as the catalogue has it
 */
export function lightSymbol(x: number, y: number, look: PlainLook, colour: string): string {
  const ring = { d: circlePath(x, y, RADIUS), ...OUTLINE };
  if (look === 'lit')
    return (
      element('path', { ...ring, fill: fillOf(colour) }) +
      element('path', { d: circlePath(x, y, RADIUS + 4.5), fill: 'none', stroke: '#000', 'stroke-width': 2 })
    );
  if (look === 'flickers') {
    const half = `M${x} ${y - RADIUS}${arcCurves(RADIUS, false, false, 0, 2 * RADIUS)}Z`;
    const arc = (side: number): string =>
      `M${x + side * 10} ${y - 8}${arcCurves(13, false, side > 0, 0, 16)}`;
    return (
      element('path', { ...ring, fill: '#fff' }) +
      element('path', { d: half, fill: fillOf(colour), ...OUTLINE }) +
      element('path', { d: arc(-1) + arc(1), fill: 'none', stroke: '#000', 'stroke-width': 2 })
    );
  }
  if (look === 'dark') return element('path', { ...ring, fill: '#fff', 'stroke-width': 2.4 });
  const mark = look === 'unknown' ? textAt(x, y + 4.5, '?', { 'text-anchor': 'middle' }) : '';
  return element('path', { ...ring, fill: '#fff', 'stroke-dasharray': '3 3' }) + mark;
}

/** A flag on its staff: plain while good; striped once used up, for paper without colour: no mark that a real flag lacks. */
export function flagSymbol(x: number, y: number, look: 'good' | 'used', colour: string): string {
  const staff = element('path', { d: `M${x} ${y}V${y + FLAG}`, stroke: '#000', 'stroke-width': 2.4 });
  const cloth = { x: x + 1, y, width: 24, height: 15, fill: fillOf(colour), ...OUTLINE };
  if (look === 'good') return staff + element('rect', cloth);
  const stripes = (at: number): string =>
    [0, 6, 12, 18].map((step) => `M${x + at + step} ${y + 1}v13`).join('');
  return (
    staff +
    element('rect', cloth) +
    // White beside the black, so that the stripes are seen on any cloth.
    element('path', { d: stripes(3), fill: 'none', stroke: '#fff', 'stroke-width': 2 }) +
    element('path', { d: stripes(5), fill: 'none', stroke: '#000', 'stroke-width': 2 })
  );
}

/** The colour of a light in the words of the language; `` where the catalogue names none. */
function colourWord(colour: string, strings: OwnerStrings): string {
  return colourNamed(colour) === undefined ? '' : coloursIn(colour, strings.colours.light);
}

/** What stands below a light: `1 ON`, and its colour where it shines. */
function caption({ number, look }: Light, colour: string, strings: OwnerStrings): string[] {
  const shines = look === 'lit' || look === 'flickers';
  const named = shines ? colourWord(colour, strings) : '';
  const words = `${number} ${strings.looks[look]}`;
  return named === '' ? [words] : [`${words},`, named];
}

interface Block {
  readonly inner: string;
  readonly width: number;
  readonly height: number;
}

const bold = { 'font-weight': 700 };

/** The lights in one state, below its name. */
function lightsBlock(
  { state, lights }: LightsInState,
  colour: string,
  strings: OwnerStrings,
  before: string,
): Block {
  const title = `${before}${state}`;
  const captions = lights.map((light) => caption(light, colour, strings));
  const room = (lines: readonly string[]): number =>
    Math.max(40, ...lines.map((line) => textWidth(line) + 9));
  const joined = captions.map((lines) => [lines.join(' ')]);
  const isOneRow = joined.map(room).reduce((sum, own) => sum + own, 0) <= WIDEST - 2 * PAD;
  // Where they don't fit side by side, the colours go below.
  const below = isOneRow ? joined : captions;
  const high = (Math.max(1, ...below.map((lines) => lines.length)) - 1) * LINE;
  let inner = textAt(0, TITLE, title, bold);
  let [x, y, width] = [0, 0, textWidth(title, 700)];
  lights.forEach((light, index) => {
    const lines = below[index] ?? [];
    const own = room(lines);
    if (x > 0 && x + own > WIDEST - 2 * PAD) [x, y] = [0, y + CAPTION + high - TITLE];
    inner += lightSymbol(x + own / 2, y + LAMP, light.look, colour);
    lines.forEach((words, line) => {
      inner += textAt(x + own / 2, y + CAPTION + line * LINE, words, { 'text-anchor': 'middle' });
    });
    x += own;
    width = Math.max(width, x);
  });
  return { inner, width, height: y + CAPTION + high + PAD - 1 };
}

/** Lights whose look of the first day counts: a box to tick for each, a line a light. */
function ticksBlock(
  { state, lights }: LightsInState,
  colour: string,
  strings: OwnerStrings,
  before: string,
): Block {
  const { looks } = strings;
  const named = colourWord(colour, strings);
  const title = `${before}${state}${named === '' ? '' : ` (${named})`}`;
  const lines = lights.map((light) =>
    light.look === 'either'
      ? `${light.number}  ☐ ${looks.lit}  ☐ ${looks.dark}`
      : caption(light, colour, strings).join(' '),
  );
  const rows = [strings.ourTicks, ...lines];
  const width = Math.max(textWidth(title, 700), ...rows.map((text) => textWidth(text))) + 4;
  const height = TITLE + rows.length * (LINE + 2) + PAD;
  const texts = rows.map((text, index) => textAt(0, TITLE + (index + 1) * (LINE + 2), text));
  // Gray: an owner's own form is white.
  const ground = rect(-4, TITLE + 4, width + 8, height - TITLE - PAD, { fill: '#e4e4e4' });
  return { inner: textAt(0, TITLE, title, bold) + ground + texts.join(''), width, height };
}

/** Blocks side by side in the outline of a housing. */
function housing(blocks: readonly Block[], alt: string): string {
  let x = PAD;
  const height = Math.max(...blocks.map((block) => block.height));
  const inner = blocks.map((block) => {
    const part = element('g', { transform: `translate(${x.toFixed(1)} 0)` }, block.inner);
    x += block.width + 2 * PAD;
    return part;
  });
  const width = x - PAD;
  const outline = rect(1, 1, width - 2, height - 2, {
    rx: 5,
    fill: '#fff',
    stroke: '#000',
    'stroke-width': 1.8,
  });
  return drawing(width, height, alt, 'lights', element('g', { 'font-size': FONT }, outline + inner.join('')));
}

/** What a picture of a housing's lights shows. */
export interface PicturedLights {
  readonly groups: readonly LightGroup[];
  /** As the catalogue has it. */
  readonly colour: string;
  /** Stands before the state, where each of several housings has a picture of its own; `` otherwise. */
  readonly tag: string;
  readonly alt: string;
}

/** A housing with its lights as they look in the state that tells. */
export function lightsPicture({ groups, colour, tag, alt }: PicturedLights, strings: OwnerStrings): string {
  const blocks = groups.flatMap(({ states: [drawn] }, index) => {
    if (drawn === undefined) return [];
    const before = tag === '' || index > 0 ? '' : `${tag}: `;
    return [(drawn.lights.some(isToTick) ? ticksBlock : lightsBlock)(drawn, colour, strings, before)];
  });
  return blocks.length === 0 ? '' : housing(blocks, alt);
}

/** What a picture of a housing's flags shows. */
export interface PicturedFlags {
  readonly title: string;
  /** How a good flag and a used-up one look, as the catalogue has it; `` not stated. */
  readonly good: string;
  readonly used: string;
  readonly alt: string;
}

/** A housing with its flag as it looks while good and, beside it, once used up. */
export function flagsPicture({ title, good, used, alt }: PicturedFlags, strings: OwnerStrings): string {
  const block = (look: 'good' | 'used', words: string, heading: string): Block => {
    const named = words === '' ? '' : `: ${coloursIn(words, strings.colours.light)}`;
    const lines = wrapped(`${strings.looks[look]}${named}`, FLAG_WORDS, {
      size: FONT,
      weight: 700,
      family: 'Atkinson',
    });
    const texts = lines.map((text, index) =>
      textAt(FLAG + 8, 38 + index * LINE, text, index === 0 ? bold : {}),
    );
    const width = FLAG + 8 + Math.max(...lines.map((text) => textWidth(text, 700)));
    return {
      inner:
        (heading === '' ? '' : textAt(0, TITLE, heading, bold)) +
        flagSymbol(2, 25, look, words) +
        texts.join(''),
      width: Math.max(width, textWidth(heading, 700)),
      height: Math.max(59, 44 + lines.length * LINE),
    };
  };
  return housing(
    [
      block('good', good, filled(strings.goodHeading, { flags: title.toLocaleLowerCase(strings.language) })),
      block('used', used, strings.usedHeading),
    ],
    alt,
  );
}
