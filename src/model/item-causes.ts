import { FIELDS } from './fields.js';
import type { Field } from './list.js';
import type { OpenItem } from './open-item.js';

/** What is looked at of an item to tell what it comes of. */
type Looked = Pick<OpenItem, 'code' | 'severity' | 'column' | 'values'>;

/** What the cells of a column hold. */
export type Holds = 'words' | 'figures' | 'nothing';

/** Items about a column, or a mark of the file, whose cells aren't read, or not as they were meant. */
const CAUSES: ReadonlySet<string> = new Set([
  'heading/tag-missing',
  'heading/near',
  'heading/same-field',
  'heading/two-fields',
  'heading/unit',
  'heading/unknown',
  'heading/many-unknown',
  'heading/blank',
  'file/encoding-guessed',
  'file/decimal-unsure',
]);

/** True for an item of which others of its file may come. */
export function mayCause({ code }: Pick<OpenItem, 'code'>): boolean {
  return CAUSES.has(code);
}

/** The kind of a row is its own, or that of its maker and model. */
const OF_A_KIND: readonly Field[] = ['kind', 'maker', 'model'];

/** The fields of which each may be what an item lacks; none: it lacks no cell. */
function lacks({ code, severity, column }: Looked): readonly Field[] {
  if (code === 'row/kind-missing' || code === 'fact/kind') return OF_A_KIND;
  if (code === 'site/connection-to-nothing' || code === 'heading/tag-missing') return ['tag'];
  if (severity !== 'missing' || column !== '' || !code.startsWith('fact/')) return [];
  const field = code.slice('fact/'.length).replaceAll('-', '_');
  return isField(field) ? [field] : [];
}

function isField(name: string): name is Field {
  return Object.hasOwn(FIELDS, name);
}

const FIGURES: ReadonlySet<unknown> = new Set([
  'count',
  'number',
  'voltage',
  'current',
  'length',
  'lengths',
  'temperature',
  'kilometres',
  'coefficient',
]);

/** What a cell of a field of the list holds; words of what is none. */
export function holdsOf(field: string): Holds {
  return isField(field) && FIGURES.has(FIELDS[field].type) ? 'figures' : 'words';
}

/** The value of an item, where it is a text. */
function textOf({ values }: Looked, name: string): string {
  const value = (values as Readonly<Record<string, unknown>>)[name];
  return typeof value === 'string' ? value : '';
}

/** A letter that another encoding would show otherwise. */
const BEYOND_ASCII = /[^\0-\u007f]/;

/** How surely an item comes of another: the cause is about the very field, or mark, that it lacks; or what it lacks may stand there. */
export type Comes = 'named' | 'maybe' | null;

/**
 * Whether an item may come of another of the same file: what it lacks may stand in the column that isn't read, or its cell was read with
 * another mark or encoding than it was written with.
 */
export function comesOf(effect: Looked, cause: Looked): Comes {
  const { code } = cause;
  if (code === 'file/decimal-unsure') return textOf(effect, 'problem') === 'two-ways' ? 'named' : null;
  if (code === 'file/encoding-guessed')
    return effect.code === 'cell/wrong' && BEYOND_ASCII.test(textOf(effect, 'text')) ? 'named' : null;
  const fields = lacks(effect);
  if (fields.length === 0) return null;
  if (code === 'heading/tag-missing') return effect.code !== code && fields.includes('tag') ? 'named' : null;
  const near = textOf(cause, 'field') || textOf(cause, 'near');
  const named = `${near} and ${textOf(cause, 'fields')}`.split(' and ');
  if (fields.some((field) => named.includes(field))) return 'named';
  if (code === 'heading/many-unknown' || code === 'heading/blank') return 'maybe';
  if (code !== 'heading/unknown') return null;
  const holds = textOf(cause, 'holds');
  return holds === '' || fields.some((field) => field !== 'tag' && holdsOf(field) === holds) ? 'maybe' : null;
}
