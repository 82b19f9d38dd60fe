import { mayCause, mayComeOf } from '../model/item-causes.js';
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
    const effects = new Set<JobItem>();
    const causes: { readonly one: JobItem; readonly count: number }[] = [];
    const same = new Map<string, JobItem[]>();
    for (const one of items) {
      if (!mayCause(one.item)) continue;
      const key = JSON.stringify([one.item.code, one.item.values, one.item.column]);
      const before = same.get(key);
      // Said once for each job of the list.
      if (before !== undefined) {
        before.push(one);
        continue;
      }
      same.set(key, [one]);
      const mine = items.filter(({ item }) => item !== one.item && mayComeOf(item, one.item));
      if (mine.length === 0) continue;
      causes.push({ one, count: mine.length });
      for (const effect of mine) effects.add(effect);
    }
    if (causes.length === 0) continue;
    causes.sort((a, b) => b.count - a.count || byLead(a.one.item, b.one.item));
    const shown = causes.slice(0, MOST_OF_A_KIND);
    for (const { one, count } of shown) {
      const { code, values, column } = one.item;
      const key = JSON.stringify([code, values]);
      if (!said.has(key)) told.push(itemText(one.item, `maybe why ${counted(count, 'item')} below`));
      said.add(key);
      for (const again of same.get(JSON.stringify([code, values, column])) ?? []) gone.add(again);
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
