import { z } from 'zod';
import { FIELD_NAMES } from '../model/fields.js';
import type { Field } from '../model/list.js';
import type { OpenItem } from '../model/message.js';
import { ENCODINGS } from './decode.js';
import { DELIMITERS } from './find-heading.js';
import { readJson } from './json-file.js';

const field = z.enum(FIELD_NAMES as readonly [Field, ...Field[]]);

/** What a heading means: a field, a field with its unit, or null to leave its cells out. */
const meaning = z.union([field, z.null(), z.strictObject({ field, unit: z.string().optional() })]);

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
  /** By field: words of the source and the words of the contract that they stand for. */
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
  return reading.ok ? { map: reading.value, unreadable: [] } : { map: null, unreadable: reading.items };
}
