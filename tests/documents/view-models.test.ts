import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { CloseoutPackSchema } from '../../src/documents/closeout-pack/view.js';
import { LabelsSchema } from '../../src/documents/labels/view.js';
import { OwnerSheetSchema } from '../../src/documents/owner-sheet/view.js';
import type { DocumentKind } from '../../src/documents/parts/context.js';
import { PermitAppendixSchema } from '../../src/documents/permit-appendix/view.js';
import { PermitSheetSchema } from '../../src/documents/permit-sheet/view.js';
import { SiteRecordSchema } from '../../src/documents/site-record/view.js';

const FOLDER = fileURLToPath(new URL('../../docs/view-models', import.meta.url));
/** The compiler asks for that of each document. */
const SCHEMAS: { readonly [K in DocumentKind | 'permit-appendix']: z.ZodType } = {
  'permit-appendix': PermitAppendixSchema,
  'closeout-pack': CloseoutPackSchema,
  'permit-sheet': PermitSheetSchema,
  'owner-sheet': OwnerSheetSchema,
  labels: LabelsSchema,
  'site-record': SiteRecordSchema,
};

// `npm run docs:schemas` writes the files anew; the diff is read before it is committed.
describe.each(Object.entries(SCHEMAS))('docs/view-models/%s.schema.json', (name, schema) => {
  const file = `${FOLDER}/${name}.schema.json`;
  const current = `${JSON.stringify(z.toJSONSchema(schema), null, 2)}\n`;

  it('is the schema that the document is checked against', async () => {
    if (process.env['UPDATE_DOCS'] === '1') {
      await mkdir(FOLDER, { recursive: true });
      await writeFile(file, current);
    }
    expect(await readFile(file, 'utf8')).toBe(current);
  });
});
