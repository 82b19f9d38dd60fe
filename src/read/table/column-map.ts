import { z } from 'zod';
import { FIELD_NAMES } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import type { OpenItem } from '../../model/open-item.js';
import { itemAt, note } from '../../model/message.js';
import { MAP_HEADING_TWICE } from '../../model/messages/list-heading.js';
import { visible } from '../../words/visible.js';
import { ENCODINGS } from '../file/decode.js';
import { shownPath } from '../../words/shown-path.js';
import { DELIMITERS } from './find-heading.js';
import { mapKey } from './headings.js';
import { readJson } from '../file/json-file.js';

const field = z.enum(FIELD_NAMES as readonly [Field, ...Field[]]);

/** What a column means in a file of equipment facts and in a cable schedule only. */
const CABLE = ['from', 'to', 'length'] as const;
const headed = z.enum([...(FIELD_NAMES as readonly [Field, ...Field[]]), ...CABLE]);

/** What a heading means: a field, a field with its unit, or null to leave its cells out; `? field` is a question that nobody settled yet. */
const error = 'it is neither a field of the list, nor null, nor a field and its unit, nor a question (“?”)';
const meaning = z.union(
  [
    headed,
    z.null(),
    z.strictObject({ field: headed, unit: z.string().optional() }),
    z.string().regex(/^\s*\?/, { error }),
  ],
  { error },
);

/** The column map of a design source: how its files are written and what its headings and words mean. */
export const ColumnMapSchema = z.strictObject({
  $schema: z.string().optional(),
  /** How the source writes its files; what isn't stated is found out. */
  dialect: z
    .strictObject({
      encoding: z.enum(ENCODINGS).optional(),
      delimiter: z.enum(DELIMITERS).optional(),
      /** The decimal mark; `1,234` can be read two ways without it. */
      decimal: z.enum(['.', ',']).optional(),
      /** Line of the heading, first line 1. */
      headingLine: z.number().int().positive().optional(),
    })
    .optional(),
  /** By heading as the file has it; `Heading #2` is the second heading of that text. */
  columns: z.record(z.string(), meaning).optional(),
  /** By field: words of the source and the words of the contract that they stand for; `? word` is a question that nobody settled yet. */
  words: z.partialRecord(field, z.record(z.string(), z.string())).optional(),
});

export type ColumnMap = z.infer<typeof ColumnMapSchema>;

/** A column map as read; a map that can't be used is null, with an item. */
export interface ColumnMapReading {
  readonly map: ColumnMap | null;
  readonly unreadable: readonly OpenItem[];
}

/**
 * Reads a column map.
 * @param path of the JSON file
 * @returns the map, or null and why; never throws
 */
export async function readColumnMap(path: string): Promise<ColumnMapReading> {
  const reading = await readJson(path, ColumnMapSchema);
  if (!reading.ok) return { map: null, unreadable: reading.items };
  const twice = headingsTwice(Object.keys(reading.value.columns ?? {}));
  if (twice.length === 0) return { map: reading.value, unreadable: [] };
  const item = itemAt(note(MAP_HEADING_TWICE, { path: shownPath(path), headings: twice.map(visible) }), {
    file: shownPath(path),
    line: 0,
    column: 'columns',
  });
  return { map: null, unreadable: [item] };
}

/** Two headings of a map that are one when case and blanks don't count. */
function headingsTwice(headings: readonly string[]): string[] {
  const seen = new Map<string, string>();
  for (const heading of headings) {
    const key = mapKey(heading);
    const before = seen.get(key);
    if (before !== undefined) return [before, heading];
    seen.set(key, heading);
  }
  return [];
}
