import { z } from 'zod';
import { SettingsSchema } from '../../model/settings.js';
import { ColumnMapSchema } from '../table/column-map.js';

/** A JSON schema and the file of docs/ that publishes it. */
export interface PublishedSchema {
  readonly path: string;
  readonly text: string;
}

function published(path: string, title: string, schema: z.ZodType): PublishedSchema {
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: 'input' });
  return { path, text: `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n` };
}

/** The JSON schemas of the settings and of the column map, so that an editor helps and other programs can check them. */
export function jsonSchemas(): readonly PublishedSchema[] {
  return [
    published('docs/settings.schema.json', 'Settings of shuntbook', SettingsSchema),
    published('docs/columns.schema.json', 'Column map of shuntbook', ColumnMapSchema),
  ];
}
