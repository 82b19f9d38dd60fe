import { unitOf, type Dimension, type Unit } from '../cell/units.js';

/** What the headings of one sort of file may mean. */
export interface Vocabulary<F extends string> {
  readonly fields: readonly F[];
  readonly aliases: (field: F) => readonly string[];
  /** Terms that may mean the field or something else: offered as a hint, never taken. */
  readonly doubtful: (field: F) => readonly string[];
  /** True for a field that decides what is planned, so that a term that may mean it must be settled where no heading states it. */
  readonly decides?: (field: F) => boolean;
  /** The dimension that a unit in the heading must have; null: the field takes no unit. */
  readonly dimension: (field: F) => Dimension | null;
  /** Fields of which at least one stands in every row that isn't a total or a note. */
  readonly identity: readonly F[];
  /** True where a column map says what headings mean. */
  readonly mapped?: true;
}

/**
 * What a column map says of one heading: a field, a field with its unit, or null: not to be read. What begins with a question mark is a
 * question that a draft leaves to whoever corrects it: nothing is said.
 */
export type MappedHeading = string | null | { readonly field: string; readonly unit?: string | undefined };

export type HeadingFault = 'unit-unknown' | 'unit-wrong' | 'two-fields';

/** True for what a draft of a column map leaves open: `?`, or `? nearest`. */
export function isUnsettled(to: unknown): to is string {
  return typeof to === 'string' && to.trimStart().startsWith('?');
}

/** How one heading was understood. */
export interface HeadingReading<F extends string> {
  readonly field: F | null;
  readonly how: 'name' | 'alias' | 'map' | 'left-out' | 'unknown' | 'blank';
  readonly unit: Unit | null;
  readonly fault: HeadingFault | null;
  /** What is at fault: the unit as the heading has it, or the two fields. */
  readonly faultText: string;
}

/** No heading that is understood is longer. */
const LONGEST = 200;

/** So many different cells are remembered. */
const MOST_KNOWN = 10_000;

const UNKNOWN = { field: null, how: 'unknown', unit: null, fault: null, faultText: '' } as const;

const IGNORED = /[\s\-_.()[\]]+/g;

/** A heading without what doesn't count: case, spaces, hyphens, underscores, full stops, brackets. */
export function headingKey(text: string): string {
  return text.toLowerCase().replace(IGNORED, '');
}

/** The headings of one vocabulary, ready to be looked up. */
export interface HeadingIndex<F extends string> {
  readonly vocabulary: Vocabulary<F>;
  readonly byKey: ReadonlyMap<string, { readonly field: F; readonly how: 'name' | 'alias' }>;
  readonly doubtful: ReadonlyMap<string, F>;
  readonly map: ReadonlyMap<string, MappedHeading>;
}

/**
 * Prepares a vocabulary and a column map for look-up.
 * @param vocabulary fields and aliases
 * @param map by heading as the file has it; `Heading #2` is the second heading of that text
 */
export function headingIndex<F extends string>(
  vocabulary: Vocabulary<F>,
  map: ReadonlyMap<string, MappedHeading>,
): HeadingIndex<F> {
  const byKey = new Map<string, { field: F; how: 'name' | 'alias' }>();
  for (const field of vocabulary.fields) byKey.set(headingKey(field), { field, how: 'name' });
  for (const field of vocabulary.fields) {
    for (const alias of vocabulary.aliases(field)) {
      const key = headingKey(alias);
      if (!byKey.has(key)) byKey.set(key, { field, how: 'alias' });
    }
  }
  const doubtful = new Map(
    vocabulary.fields.flatMap((f) => vocabulary.doubtful(f).map((term) => [headingKey(term), f])),
  );
  return {
    vocabulary,
    byKey,
    doubtful,
    map: new Map([...map].map(([heading, to]) => [mapKey(heading), to])),
  };
}

/** The column map forgives case and blanks around and inside a heading, nothing else. */
export function mapKey(heading: string): string {
  return heading.trim().replace(/\s+/g, ' ').toLowerCase();
}

const IN_BRACKETS = /^(.*?)\s*[([]([^()[\]]*)[)\]]\s*$/s;
const AFTER_NAME = /^(.*?)[\s,_/]+([^\s,_]+)$/s;

function understood<F extends string>(
  field: F,
  how: HeadingReading<F>['how'],
  unit: Unit | null = null,
): HeadingReading<F> {
  return { field, how, unit, fault: null, faultText: '' };
}

function withUnit<F extends string>(
  index: HeadingIndex<F>,
  field: F,
  how: HeadingReading<F>['how'],
  faultText: string,
): HeadingReading<F> {
  const dimension = index.vocabulary.dimension(field);
  if (dimension === null || faultText.trim() === '') return understood(field, how);
  const unit = unitOf(faultText);
  if (unit?.dimension === dimension) return understood(field, how, unit);
  return { field, how, unit: null, fault: unit === null ? 'unit-unknown' : 'unit-wrong', faultText };
}

/** What the column map makes of a heading; `own` is what it would be without. */
function mapped<F extends string>(
  index: HeadingIndex<F>,
  to: MappedHeading,
  heading: string,
  own: HeadingReading<F>,
): HeadingReading<F> {
  if (to === null) return { ...UNKNOWN, how: 'left-out' };
  const name = typeof to === 'string' ? to : to.field;
  const field = index.vocabulary.fields.find((f) => f === name);
  // A field of another sort of file: here it is a heading like any other.
  if (field === undefined) return own;
  if (typeof to !== 'string' && to.unit !== undefined) return withUnit(index, field, 'map', to.unit);
  if (own.field === field) return { ...own, how: 'map' };
  return withUnit(index, field, 'map', IN_BRACKETS.exec(heading)?.[2] ?? '');
}

/** The reading by exact name, alias and unit, without the column map. */
function byName<F extends string>(index: HeadingIndex<F>, heading: string): HeadingReading<F> {
  const whole = index.byKey.get(headingKey(heading));
  if (whole !== undefined) return understood(whole.field, whole.how);
  const bracket = IN_BRACKETS.exec(heading);
  const named = bracket === null ? undefined : index.byKey.get(headingKey(bracket[1] ?? ''));
  if (named !== undefined) return withUnit(index, named.field, named.how, bracket?.[2] ?? '');
  const after = AFTER_NAME.exec(heading);
  const before = after === null ? undefined : index.byKey.get(headingKey(after[1] ?? ''));
  if (before !== undefined) {
    const unit = unitOf(after?.[2] ?? '');
    if (unit !== null && unit.dimension === index.vocabulary.dimension(before.field)) {
      return understood(before.field, before.how, unit);
    }
  }
  return twoFields(index, heading) ?? UNKNOWN;
}

/** `Maker / Model`: one heading for two fields, which no cell can be split by for sure. */
function twoFields<F extends string>(index: HeadingIndex<F>, heading: string): HeadingReading<F> | null {
  const parts = heading.split(/\s*(?:[/&+,;|]|\band\b)\s*/i);
  if (parts.length < 2 || parts.length > 4) return null;
  const fields = parts.map((part) => index.byKey.get(headingKey(part))?.field);
  if (fields.includes(undefined) || new Set(fields).size < 2) return null;
  return { field: null, how: 'unknown', unit: null, fault: 'two-fields', faultText: fields.join(' and ') };
}

/**
 * Understands one heading: by the column map, else by exact name, else by alias; its unit in brackets or after the name.
 * @param index the vocabulary and the column map
 * @param heading as the file has it
 * @param occurrence 1 for the first heading of that text, 2 for the second...
 */
export function readHeading<F extends string>(
  index: HeadingIndex<F>,
  heading: string,
  occurrence = 1,
): HeadingReading<F> {
  const text = heading.trim();
  if (text === '') return { ...UNKNOWN, how: 'blank' };
  if (text.length > LONGEST) return UNKNOWN;
  const own = byName(index, text);
  if (index.map.size === 0) return own;
  const key = mapKey(text);
  const numbered = `${key} #${occurrence}`;
  const found = occurrence > 1 && index.map.has(numbered) ? numbered : key;
  const to = index.map.get(found);
  return to === undefined || isUnsettled(to) ? own : mapped(index, to, text, own);
}

/**
 * The two fields of a heading that lost what separated it from the next (`tagkind`); null where it is no such one.
 * @param index the vocabulary and the column map
 * @param heading as the file has it
 */
export function joinedFields<F extends string>(index: HeadingIndex<F>, heading: string): string | null {
  const text = heading.trim();
  if (text.length > LONGEST) return null;
  for (let cut = 2; cut < text.length - 1; cut += 1) {
    const [first, second] = [text.slice(0, cut), text.slice(cut)];
    if (!/[\w)\]%]$/.test(first) || !/^\w/.test(second)) continue;
    const [one, other] = [byName(index, first).field, byName(index, second).field];
    if (one !== null && other !== null && one !== other) return `${one} and ${other}`;
  }
  return null;
}

/**
 * What cells mean as headings: the field and its unit as one text, or null; each different cell is looked at once.
 * @param index the vocabulary and the column map
 */
export function headingMeaning<F extends string>(index: HeadingIndex<F>): (cell: string) => string | null {
  const known = new Map<string, string | null>();
  return (cell) => {
    const before = known.get(cell);
    if (before !== undefined) return before;
    const { field, unit } = readHeading(index, cell.replace(/\s*\n\s*/g, ' '));
    const means = field === null ? null : `${field} ${unit?.symbol ?? ''}`;
    if (known.size < MOST_KNOWN) known.set(cell, means);
    return means;
  };
}
