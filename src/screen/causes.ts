import { comesOf, mayCause } from '../model/item-causes.js';
import { byLead } from '../model/item-order.js';
import type { JobItem, OpenItem } from '../model/open-item.js';
import { placeText } from '../words/origin.js';
import { itemText, MOST_OF_A_KIND } from './item-text.js';
import { counted, printable } from './text-table.js';

/** So many lines are named of what comes of a cause. */
const MOST_LINES = 12;

/** What is told first, and the items that are left to tell in their order. */
interface CausesTold {
  readonly told: readonly string[];
  readonly left: readonly JobItem[];
}

/**
 * The causes among the items of a run: columns that aren't read, marks that aren't known. Each is told before all else, and what may come
 * of it, all of one file together, is one line with a count; mending the cause shows what is left of it.
 * @param listed the items to be told
 * @param rest where all of them can be seen
 */
export function causesTold(listed: readonly JobItem[], rest: string): CausesTold {
  const told: string[] = [];
  const gone = new Set<JobItem>();
  // The same heading of many exports of one source is told once.
  const said = new Set<string>();
  for (const [file, items] of byFile(listed)) {
    // What is said once for each job of the list is one cause.
    const same = new Map<string, JobItem[]>();
    for (const one of items) {
      if (!mayCause(one.item)) continue;
      const before = same.get(keyOf(one.item));
      if (before === undefined) same.set(keyOf(one.item), [one]);
      else before.push(one);
    }
    const known = [...same.values()].flatMap(([one]) => one ?? []);
    const { causes, effects } = attributed(known, items);
    if (causes.length === 0) continue;
    causes.sort((a, b) => b.count - a.count || byLead(a.one.item, b.one.item));
    const shown = causes.slice(0, MOST_OF_A_KIND);
    for (const { one, count } of shown) {
      const key = JSON.stringify([one.item.code, one.item.values]);
      if (!said.has(key)) told.push(itemText(one.item, `maybe why ${counted(count, 'item')} below`));
      said.add(key);
      for (const again of same.get(keyOf(one.item)) ?? []) gone.add(again);
    }
    // One by itself is told whole: a line about it would be no shorter.
    if (effects.size < 2) continue;
    for (const effect of effects) gone.add(effect);
    told.push(
      foldedText(
        file,
        [...effects].map(({ item }) => item),
        shown.length,
        rest,
      ),
    );
  }
  return { told, left: listed.filter((one) => !gone.has(one)) };
}

interface Attributed {
  /** Those of which something may come, with how much. */
  readonly causes: { readonly one: JobItem; readonly count: number }[];
  readonly effects: ReadonlySet<JobItem>;
}

/** What comes of which cause: of those that are about the very thing that is lacking, where there are any. */
function attributed(known: readonly JobItem[], items: readonly JobItem[]): Attributed {
  const roots = known.filter((one) => !known.some(({ item }) => comesOf(one.item, item) === 'named'));
  const counts = new Map<JobItem, number>();
  const effects = new Set<JobItem>();
  for (const effect of items) {
    const named = roots.filter((one) => comesOf(effect.item, one.item) === 'named');
    const mine = named.length > 0 ? named : roots.filter((one) => comesOf(effect.item, one.item) !== null);
    for (const one of mine) if (one !== effect) counts.set(one, (counts.get(one) ?? 0) + 1);
    if (mine.some((one) => one !== effect)) effects.add(effect);
  }
  return {
    causes: roots.flatMap((one) => ({ one, count: counts.get(one) ?? 0 })).filter((c) => c.count > 0),
    effects,
  };
}

const keyOf = ({ code, values, column }: OpenItem): string => JSON.stringify([code, values, column]);

function byFile(items: readonly JobItem[]): ReadonlyMap<string, readonly JobItem[]> {
  const files = new Map<string, JobItem[]>();
  for (const one of items) {
    const mine = files.get(one.item.file);
    if (mine) mine.push(one);
    else files.set(one.item.file, [one]);
  }
  return files;
}

/** `missing  list.csv  7 items may come of it: 7 of row/kind-missing (lines 2 to 8); settle it first, ...`. */
function foldedText(file: string, effects: readonly OpenItem[], causes: number, rest: string): string {
  const [gravest] = effects.toSorted(byLead);
  const codes = new Map<string, OpenItem[]>();
  for (const item of effects.toSorted(byLead)) codes.set(item.code, [...(codes.get(item.code) ?? []), item]);
  const each = [...codes].map(([code, items]) => `${String(items.length)} of ${code} (${linesText(items)})`);
  const place = printable(placeText({ file, line: 0, column: '' }));
  const it = causes === 1 ? 'it' : 'these';
  return `${gravest?.severity ?? 'confirm'}  ${place}  ${counted(effects.length, 'item')} may come of ${it}: ${each.join(', ')}; settle ${it} first (${rest})\n`;
}

/** `line 3`, `lines 3, 5 and 9 to 14`, as far as a line has room. */
function linesText(items: readonly OpenItem[]): string {
  const lines = [...new Set(items.map(({ line }) => line))].sort((a, b) => a - b);
  const runs: [number, number][] = [];
  for (const line of lines) {
    const last = runs.at(-1);
    if (last?.[1] === line - 1) last[1] = line;
    else runs.push([line, line]);
  }
  const texts = runs
    .slice(0, MOST_LINES)
    .map(([from, to]) => (from === to ? String(from) : `${String(from)} to ${String(to)}`));
  const more = runs.length > MOST_LINES ? ` and more` : '';
  return `${lines.length === 1 ? 'line' : 'lines'} ${texts.join(', ')}${more}`;
}
