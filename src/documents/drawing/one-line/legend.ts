import { drawingInMillimetres } from '../svg.js';
import { BLANK, heightOf, widthOf } from './measure.js';
import { Pen } from './pen.js';
import { tapSymbolOf } from './hung-taps.js';
import { mainSymbol, tapSymbol, type SymbolFamily, type TapSymbol } from './symbols.js';
import type { TreeNode } from './tree.js';

/** A symbol with what it means. */
export interface LegendEntry {
  readonly svg: string;
  readonly words: string;
}

const DEVICE_WORDS: Readonly<Record<TapSymbol['device'], string>> = {
  breaker: 'behind a breaker of its own',
  fuse: 'behind fuses of its own',
  either: 'behind a device of the kind that stands beside it',
  none: 'without a device of its own',
};

const STANDARD: Readonly<Record<SymbolFamily, string>> = {
  'ieee-315': 'IEEE 315',
  'iec-60617': 'IEC 60617',
};

function words({ device, isThreePlusOne }: TapSymbol, family: SymbolFamily): string {
  const ground = family === 'iec-60617' ? 'earth' : 'ground';
  const what = isThreePlusOne
    ? `Surge protector, lines to N, and N to ${ground} (3+1, symbol of our own)`
    : `Surge protector, channels to ${ground}`;
  return `${what}, ${DEVICE_WORDS[device]}`;
}

/**
 * The symbols that trees use, each once, in the order in which they come.
 * @param hasBlank whether the drawing leaves something to fill in
 */
export function legendOf(trees: readonly TreeNode[], family: SymbolFamily, hasBlank: boolean): LegendEntry[] {
  const found = new Map<string, TapSymbol>();
  const used = new Set<string>();
  const nodes = [...trees];
  // It grows while it is walked.
  for (const node of nodes) {
    for (const { hasMain, nearTaps, farTaps, child } of node.branches) {
      if (hasMain) used.add(MAIN);
      for (const tap of [...nearTaps, ...farTaps]) {
        const symbol = tapSymbolOf(tap);
        for (const { existing } of tap.protectors) used.add(existing === null ? '(N)' : '(E)');
        found.set(JSON.stringify([symbol.isThreePlusOne, symbol.device]), symbol);
      }
      if (child) nodes.push(child);
    }
  }
  const symbols = [...found].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, symbol]) => symbol);
  const drawn = symbols.map((of) => {
    const { parts, height, half } = tapSymbol(of, family);
    const pen = new Pen();
    pen.symbol(parts, half + 0.5, 0.8);
    const text = `${words(of, family)} (after ${STANDARD[family]})`;
    return {
      svg: drawingInMillimetres(2 * half + 1, height + 1.2, text, 'symbol', pen.markup()),
      words: text,
    };
  });
  if (used.has(MAIN)) drawn.push(mainEntry(family));
  return [
    ...drawn,
    ...MARKS.filter(({ mark }) => used.has(mark) || (hasBlank && mark === BLANK)).map(markEntry),
  ];
}

const MAIN = 'main';

function mainEntry(family: SymbolFamily): LegendEntry {
  const { parts, height, half } = mainSymbol(family);
  const pen = new Pen();
  pen.wire(half + 0.5, 0.2, half + 0.5, 1.4);
  pen.symbol(parts, half + 0.5, 1.4);
  pen.wire(half + 0.5, height + 1.4, half + 0.5, height + 2.6);
  const main = family === 'iec-60617' ? 'Main switch of the installation' : 'Main disconnect of the service';
  const told = `${main}, switch or breaker (after ${STANDARD[family]})`;
  return {
    svg: drawingInMillimetres(2 * half + 1, height + 2.8, told, 'symbol', pen.markup()),
    words: told,
  };
}

/** Marks that are letters; the equipment itself and its conductors are shown for orientation. */
const MARKS = [
  { mark: '(N)', words: 'New surge protector; equipment and conductor sizes by others' },
  { mark: '(E)', words: 'Existing surge protector; equipment and conductor sizes by others' },
  { mark: BLANK, words: 'To be filled in: the equipment list does not state it' },
] as const;

function markEntry({ mark, words: told }: (typeof MARKS)[number]): LegendEntry {
  const pen = new Pen();
  const lines = [{ text: mark, bold: mark !== BLANK }];
  pen.text(lines, 0.3, 0);
  const [width, height] = [widthOf(lines) + 0.6, heightOf(lines)];
  return { svg: drawingInMillimetres(width, height, told, 'symbol', pen.markup()), words: told };
}
