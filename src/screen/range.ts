import { reasonKey, type Reason } from '../model/reason.js';
import { say } from '../words/reasons/say.js';
import { figure } from '../words/figures.js';
import { counted, printable, textTable } from './text-table.js';

/** A circuit as the screen names it. */
interface CircuitTold {
  readonly basis: string;
  readonly earthing: string;
  readonly circuit: string;
  readonly grounding: string | null;
  readonly current: 'ac' | 'dc';
}

/** What covers one place of a circuit. */
interface CoverTold {
  readonly place: string;
  readonly mcov: number;
  readonly part: string | null;
  readonly nearest: Reason | null;
}

/** A catalogue held against the circuits of a range, as far as the screen shows it. */
export interface RangeTold {
  readonly lines: readonly (CircuitTold & { readonly covers: readonly CoverTold[] })[];
  readonly parts: readonly {
    readonly part: string;
    readonly line: number;
    readonly dcUpTo: number | null;
    readonly because: Reason | null;
    readonly fits: readonly (CircuitTold & { readonly places: readonly string[] })[];
  }[];
}

const GROUNDINGS: Readonly<Record<string, string>> = {
  solid: 'solidly grounded',
  none: 'ungrounded',
  corner: 'corner-grounded',
  impedance: 'impedance-grounded',
};

/** `nec-2023`, `iec TT`: an earthing counts under `iec` alone. */
function basisText({ basis, earthing }: CircuitTold): string {
  return basis === 'iec' ? `iec ${earthing}` : basis;
}

const groundingText = (of: CircuitTold): string =>
  of.grounding === null ? '' : (GROUNDINGS[of.grounding] ?? of.grounding);

/**
 * What each part may be used for: a block a part.
 * @param range a catalogue held against the circuits of a range
 * @returns lines, each ended by a line feed
 */
export function partsText({ parts }: RangeTold): string {
  const blocks = parts.map(({ part, line, dcUpTo, because, fits }) => {
    const groups = new Map<string, { of: string; circuits: string[]; places: string }>();
    for (const fit of fits) {
      const grounded = fit.grounding === null ? '' : ` ${groundingText(fit)}`;
      const of = `${basisText(fit)}${fit.current === 'dc' ? ' DC' : grounded}`;
      const places = fit.places.join(', ');
      const group = groups.get(`${of}|${places}`) ?? { of, circuits: [], places };
      group.circuits.push(fit.circuit);
      groups.set(`${of}|${places}`, group);
    }
    const lines = [...groups.values()].map((g) => `  ${g.of}: ${g.circuits.join(', ')} (${g.places})`);
    if (dcUpTo !== null) lines.push(`  DC up to ${figure(dcUpTo, 'V')} to ground`);
    if (because !== null) lines.push(`  fits none of these circuits; nearest: ${printable(say(because))}`);
    return [`${printable(part, 60)} (line ${String(line)})`, ...lines];
  });
  return blocks.map((lines) => lines.map((l) => `${l}\n`).join('')).join('');
}

/**
 * Which part covers which place of which circuit: a table.
 * @param range a catalogue held against the circuits of a range
 */
export function coverTable({ lines }: RangeTold): string {
  const places = [...new Set(lines.flatMap((l) => l.covers.map((c) => c.place)))];
  return textTable(
    [
      { heading: 'circuit' },
      { heading: 'grounding' },
      { heading: 'basis' },
      { heading: 'MCOV', align: 'right' },
      ...places.map((heading) => ({ heading })),
    ],
    lines.map((line) => [
      line.circuit,
      groundingText(line),
      basisText(line),
      figure(Math.max(0, ...line.covers.map((c) => c.mcov)), 'V'),
      ...places.map((place) => {
        const cover = line.covers.find((c) => c.place === place);
        return cover === undefined ? '' : (cover.part ?? 'none');
      }),
    ]),
    40,
  );
}

/**
 * What the catalogue has no part for, with the part that misses least: a line a circuit and miss.
 * @param range a catalogue held against the circuits of a range
 * @returns lines, each ended by a line feed
 */
export function gapsText({ lines }: RangeTold): string {
  const gaps = lines.flatMap((line) => {
    const misses = new Map<string, { readonly nearest: Reason | null; readonly places: string[] }>();
    const open = line.covers.filter((c) => c.part === null);
    for (const { nearest, place } of open) {
      const key = nearest === null ? '' : reasonKey(nearest);
      const miss = misses.get(key) ?? { nearest, places: [] };
      miss.places.push(place);
      misses.set(key, miss);
    }
    const grounded = line.grounding === null ? '' : ` ${groundingText(line)}`;
    const everywhere = open.length === line.covers.length && misses.size === 1;
    return [...misses.values()].map(({ nearest, places }) => {
      const where = everywhere ? 'at all' : places.join(', ');
      const near = nearest === null ? '' : `; nearest: ${printable(say(nearest))}`;
      return `  ${line.circuit}${grounded} (${basisText(line)}): none ${where}${near}`;
    });
  });
  const head = gaps.length === 0 ? 'No gap in the range.' : `${counted(gaps.length, 'gap')} in the range:`;
  const but = 'Fault current, lightning protection and a stated withstand are of a site, and aren’t in this.';
  return [head, ...gaps, but].map((l) => `${l}\n`).join('');
}

/**
 * Columns that decide overcurrent devices and leads, with the parts that state nothing there: a line a column.
 * @returns lines, each ended by a line feed; `` where none is lacking
 */
export function lacksText({
  lacks,
}: {
  readonly lacks: readonly { readonly column: string; readonly parts: readonly string[] }[];
}): string {
  if (lacks.length === 0) return '';
  const of = (column: string, parts: readonly string[]): string =>
    `  ${column}: ${parts.map((part) => printable(part, 60)).join(', ')}`;
  const head = 'Without these columns overcurrent devices and smallest leads stay open:';
  return [head, ...lacks.map(({ column, parts }) => of(column, parts))].map((l) => `${l}\n`).join('');
}

/** A model of the equipment library with what it lacks. */
export interface ModelTold {
  readonly maker: string;
  readonly model: string;
  readonly line: number;
  readonly kind: string | null;
  readonly lacks: readonly string[];
}

/**
 * The models of an equipment library, with the facts that planning asks of their kind and that they lack.
 * @param models in the order of the library
 */
export function libraryTable(models: readonly ModelTold[]): string {
  return textTable(
    [
      { heading: 'line', align: 'right' },
      { heading: 'maker' },
      { heading: 'model' },
      { heading: 'kind' },
      { heading: 'lacks' },
    ],
    models.map((m) => [String(m.line), m.maker, m.model, m.kind ?? '?', m.lacks.join(', ')]),
    120,
  );
}
