import type { ConnectsTo, ListRow } from '../model/list.js';
import type { Kind } from '../model/words.js';

const TAKES_ARRAYS: ReadonlySet<Kind> = new Set<Kind>([
  'combiner',
  'charge-controller',
  'grid-tie-inverter',
  'inverter-charger',
  'pump-drive',
]);

/** A row that an array is joined to, through disconnects. */
interface Partner {
  readonly row: ListRow;
  /** True where the connection names inputs. */
  readonly named: boolean;
}

/**
 * Whether the quantity of an array counts arrays, or may as well count modules, as lists of material do.
 * @param typed the rows of a job by tag
 * @returns a function that is true for an array row whose N is answered: by a group of N, by a converter or combiner of N inputs,
 *   by a group of M with N / M inputs each, or by `modules` of each
 */
export function arrayCounts(typed: ReadonlyMap<string, ListRow>): (tag: string, row: ListRow) => boolean {
  let namers: ReadonlyMap<string, readonly ListRow[]> | undefined;
  return (tag, row) => {
    if (row.facts.modules) return true;
    const count = row.facts.quantity?.value ?? 1;
    namers ??= namersOf(typed);
    return partnersOf(tag, row, typed, namers).some((partner) => answers(count, partner));
  };
}

function answers(count: number, { row, named }: Partner): boolean {
  const { settled } = row;
  const { kind, quantity, dc_inputs: stated } = row.facts;
  if (named || !kind || !TAKES_ARRAYS.has(kind.value)) return false;
  const group = quantity?.value ?? 1;
  if (group === count) return true;
  const unstated = kind.value === 'charge-controller' ? (settled?.dc_inputs?.value ?? 1) : undefined;
  const inputs = stated?.value ?? unstated;
  return inputs !== undefined && inputs * group === count;
}

/** The rows that a connection names. */
function named(
  connection: ConnectsTo | undefined,
  typed: ReadonlyMap<string, ListRow>,
): readonly { readonly tag: string; readonly inputs: boolean }[] {
  if (!connection) return [];
  if (typed.has(connection.whole)) return [{ tag: connection.whole, inputs: false }];
  return connection.each.map((one) =>
    typed.has(one.whole)
      ? { tag: one.whole, inputs: false }
      : { tag: one.tag, inputs: one.inputs.length > 0 },
  );
}

function namersOf(typed: ReadonlyMap<string, ListRow>): ReadonlyMap<string, readonly ListRow[]> {
  const namers = new Map<string, ListRow[]>();
  for (const row of typed.values()) {
    for (const { tag } of named(row.facts.connects_to?.value, typed)) {
      const mine = namers.get(tag);
      if (mine) mine.push(row);
      else namers.set(tag, [row]);
    }
  }
  return namers;
}

function partnersOf(
  tag: string,
  row: ListRow,
  typed: ReadonlyMap<string, ListRow>,
  namers: ReadonlyMap<string, readonly ListRow[]>,
): readonly Partner[] {
  const found: Partner[] = [];
  const seen = new Set<ListRow>([row]);
  const open: { readonly tag: string; readonly row: ListRow }[] = [{ tag, row }];
  for (let at = open.pop(); at; at = open.pop()) {
    for (const to of named(at.row.facts.connects_to?.value, typed)) {
      const target = typed.get(to.tag);
      if (target) meet(to.tag, target, to.inputs);
    }
    for (const namer of namers.get(at.tag) ?? []) meet(namer.facts.tag?.value ?? '', namer, false);
  }
  return found;

  function meet(its: string, other: ListRow, inputs: boolean): void {
    if (seen.has(other)) return;
    seen.add(other);
    if (other.facts.kind?.value === 'disconnect') open.push({ tag: its, row: other });
    else found.push({ row: other, named: inputs });
  }
}
