import { unitOf, type Dimension, type Unit } from '../text/units.js';

/** What the headings of one sort of file may mean. */
export interface Vocabulary<F extends string> {
  readonly fields: readonly F[];
  readonly aliases: { readonly [K in F]?: readonly string[] };
  /** The dimension that a unit in the heading must have; null: the field takes no unit. */
  readonly dimension: (field: F) => Dimension | null;
  /** Fields of which at least one stands in every row that isn't a total or a note. */
  readonly identity: readonly F[];
}

/** What a column map says of one heading: a field, a field with its unit, or null: not to be read. */
export type MappedHeading = string | null | { readonly field: string; readonly unit?: string | undefined };

export type HeadingFault = 'unit-unknown' | 'unit-wrong' | 'field-unknown';

/** How one heading was understood. */
export interface HeadingReading<F extends string> {
  readonly field: F | null;
  readonly how: 'name' | 'alias' | 'map' | 'left-out' | 'unknown' | 'blank';
  readonly unit: Unit | null;
  readonly fault: HeadingFault | null;
  /** The unit as the heading has it, where there is a fault. */
  readonly unitText: string;
}

const IGNORED = /[\s\-_.()[\]]+/g;

/** A heading without what doesn't count: case, spaces, hyphens, underscores, full stops, brackets. */
export function headingKey(text: string): string {
  return text.toLowerCase().replace(IGNORED, '');
}

/** The headings of one vocabulary, ready to be looked up. */
export interface HeadingIndex<F extends string> {
  readonly vocabulary: Vocabulary<F>;
  readonly byKey: ReadonlyMap<string, { readonly field: F; readonly how: 'name' | 'alias' }>;
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
    for (const alias of vocabulary.aliases[field] ?? []) {
      const key = headingKey(alias);
      if (!byKey.has(key)) byKey.set(key, { field, how: 'alias' });
    }
  }
  return { vocabulary, byKey, map: new Map([...map].map(([heading, to]) => [mapKey(heading), to])) };
}

/** The column map forgives case and blanks around and inside a heading, nothing else. */
function mapKey(heading: string): string {
  return heading.trim().replace(/\s+/g, ' ').toLowerCase();
}

const IN_BRACKETS = /^(.*?)\s*[([]([^()[\]]*)[)\]]\s*$/s;
const AFTER_NAME = /^(.*?)[\s,_/]+([^\s,_]+)$/s;

function understood<F extends string>(
  field: F,
  how: HeadingReading<F>['how'],
  unit: Unit | null = null,
): HeadingReading<F> {
  return { field, how, unit, fault: null, unitText: '' };
}

function withUnit<F extends string>(
  index: HeadingIndex<F>,
  field: F,
  how: HeadingReading<F>['how'],
  unitText: string,
): HeadingReading<F> {
  const dimension = index.vocabulary.dimension(field);
  if (dimension === null || unitText.trim() === '') return understood(field, how);
  const unit = unitOf(unitText);
  if (unit?.dimension === dimension) return understood(field, how, unit);
  return { field, how, unit: null, fault: unit === null ? 'unit-unknown' : 'unit-wrong', unitText };
}

function mapped<F extends string>(
  index: HeadingIndex<F>,
  to: MappedHeading,
  own: HeadingReading<F>,
): HeadingReading<F> {
  if (to === null) return { field: null, how: 'left-out', unit: null, fault: null, unitText: '' };
  const name = typeof to === 'string' ? to : to.field;
  const field = index.vocabulary.fields.find((f) => f === name);
  if (field === undefined)
    return { field: null, how: 'map', unit: null, fault: 'field-unknown', unitText: name };
  if (typeof to !== 'string' && to.unit !== undefined) return withUnit(index, field, 'map', to.unit);
  if (own.field === field) return { ...own, how: 'map' };
  const bracket = IN_BRACKETS.exec(own.unitText);
  return bracket === null ? understood(field, 'map') : withUnit(index, field, 'map', bracket[2] ?? '');
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
  return { field: null, how: 'unknown', unit: null, fault: null, unitText: '' };
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
  if (text === '') return { field: null, how: 'blank', unit: null, fault: null, unitText: '' };
  if (text.length > 200) return { field: null, how: 'unknown', unit: null, fault: null, unitText: '' };
  const own = byName(index, text);
  if (index.map.size === 0) return own;
  const key = mapKey(text);
  const to = (occurrence > 1 ? index.map.get(`${key} #${occurrence}`) : undefined) ?? index.map.get(key);
  if (to === undefined && !index.map.has(key)) return own;
  return mapped(index, to ?? null, own.field === null ? { ...own, unitText: text } : own);
}
