import { arcCurves } from '../arcs.js';
import { element, escapeText } from '../svg.js';
import { heightOf, LEADING, TYPE, widthOf, type Line } from './measure.js';

/** A rectangle, mm. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A text as it stands: one element of the drawing. */
export interface TextBlock extends Area {
  readonly lines: readonly Line[];
}

/** A straight line, level or upright. */
export interface Stroke {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** Where protectors of these tags tap a line. */
export interface TapPlace {
  readonly x: number;
  readonly y: number;
  readonly protectors: readonly string[];
}

const mm = (value: number): string => String(Math.round(value * 100) / 100);

/** From the top of a line of text to its base. */
const BASE = 3.25;

/** Collects what is drawn on one sheet; all strokes of a weight become one element. */
export class Pen {
  readonly texts: TextBlock[] = [];
  /** Lines between things: none may cross a text. */
  readonly wires: Stroke[] = [];
  readonly boxes: Area[] = [];
  /** Where protectors tap their lines. */
  readonly taps: TapPlace[] = [];
  /** Symbols of protectors. */
  readonly symbols: Area[] = [];
  private thin = '';
  private bold = '';
  private filled = '';

  /** A conductor. */
  wire(x1: number, y1: number, x2: number, y2: number): void {
    this.wires.push({ x1, y1, x2, y2 });
    this.thin += `M${mm(x1)} ${mm(y1)}L${mm(x2)} ${mm(y2)}`;
  }

  /** A heavy line: a bus. */
  bus(x1: number, y1: number, x2: number, y2: number): void {
    this.wires.push({ x1, y1, x2, y2 });
    this.bold += `M${mm(x1)} ${mm(y1)}L${mm(x2)} ${mm(y2)}`;
  }

  box(area: Area): void {
    this.boxes.push(area);
    this.thin += `M${mm(area.x)} ${mm(area.y)}h${mm(area.width)}v${mm(area.height)}h${mm(-area.width)}Z`;
  }

  /** A part of a symbol, a path in mm from a place. */
  symbol(path: readonly SymbolPart[], x: number, y: number): void {
    for (const part of path) {
      const d = part.commands.map(([letter, ...numbers]) => commandOf(letter, numbers, x, y)).join('');
      if (part.filled) this.filled += d;
      else this.thin += d;
    }
  }

  text(lines: readonly Line[], x: number, y: number): void {
    if (lines.length === 0) return;
    // What is told late is told now: the sheet that is being drawn is part of it.
    const told = lines.map(({ text, bold, late }) => ({ text: late === undefined ? text : late(), bold }));
    this.texts.push({ x, y, width: widthOf(told), height: heightOf(told), lines: told });
  }

  /** The inside of the drawing. */
  markup(): string {
    const stroke = { fill: 'none', stroke: '#000' };
    const paths = [
      this.thin === '' ? '' : element('path', { d: this.thin, ...stroke, 'stroke-width': 0.3 }),
      this.bold === '' ? '' : element('path', { d: this.bold, ...stroke, 'stroke-width': 0.8 }),
      this.filled === '' ? '' : element('path', { d: this.filled }),
    ];
    return paths.join('') + this.texts.map(textMarkup).join('');
  }
}

/** A part of a symbol: commands of a path, relative to the symbol's place where they are capital letters. */
export interface SymbolPart {
  readonly filled: boolean;
  readonly commands: readonly (readonly [
    letter: 'M' | 'L' | 'h' | 'v' | 'l' | 'a' | 'Z',
    ...numbers: number[],
  ])[];
}

function commandOf(letter: string, numbers: readonly number[], x: number, y: number): string {
  if (letter !== 'a') return `${letter}${placed(letter, numbers, x, y).map(mm).join(' ')}`;
  const [radius = 0, , , large = 0, clockwise = 0, dx = 0, dy = 0] = numbers;
  return arcCurves(radius, large === 1, clockwise === 1, dx, dy);
}

function placed(letter: string, numbers: readonly number[], x: number, y: number): readonly number[] {
  return letter === 'M' || letter === 'L' ? numbers.map((n, i) => n + (i % 2 === 0 ? x : y)) : numbers;
}

function textMarkup({ x, y, lines }: TextBlock): string {
  const spans = lines.map(({ text, bold }, index) =>
    element(
      'tspan',
      { x: mm(x), y: mm(y + index * LEADING + BASE), ...(bold ? { 'font-weight': 700 } : {}) },
      escapeText(text) || ' ',
    ),
  );
  return element('text', { 'font-size': TYPE }, spans.join(''));
}
