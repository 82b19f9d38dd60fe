import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFName,
  PDFRawStream,
  PDFString,
  PDFHexString,
  type PDFObject,
} from '@cantoo/pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../src/model/plan.js';
import type { FormFields } from '../../src/model/print.js';
import { defaultSettings } from '../../src/model/settings.js';
import { renderDocument } from '../../src/documents/render.js';
import { siteTables } from '../../src/output/site-tables.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { withPrinter } from '../../src/print/printer.js';
import { readForm, type FormValues } from '../../src/print/read-form.js';
import { fieldsOf } from '../../src/site-forms/field-names.js';
import { rowsOfValues, type ValueRows } from '../../src/site-forms/value-rows.js';
import { siteForms } from '../../src/site-forms/rows.js';
import { filledByAnother, filledByOne } from '../site-forms/fill-forms.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { draftPlan } from './fixtures/plans.js';
import { setByHand } from './fixtures/set-by-hand.js';
import { nodesOf, readPrinted, type PrintedDocument } from './printed.js';

// The form as the browser prints it, filled in by two libraries, and read back into the rows of the tables.

const created = new Date('2025-03-14T00:00:00Z');

interface Printed {
  readonly bytes: Uint8Array;
  readonly again: Uint8Array;
  readonly form: FormFields;
  readonly read: PrintedDocument;
}

async function print(plan: Plan, crewLanguage: string): Promise<Printed> {
  const { kit } = await embeddedFonts();
  const context = {
    settings: defaultSettings(),
    date: '2025-03-14',
    fonts: kit,
    measure: setByHand,
    crewLanguage,
  };
  const { html, metadata, form } = await renderDocument('site-record', plan, context);
  if (!form) throw new Error('the document has no form');
  const order = { html, metadata: { ...metadata, created }, form };
  return withPrinter({ pages: 1 }, async (printer) => {
    const bytes = await printer.print(order);
    const again = await printer.print(order);
    return { bytes, again, form, read: await readPrinted(bytes) };
  });
}

const demo = (job: string): Plan => {
  const plan = demoPlans().find((one) => one.job === job);
  if (!plan) throw new Error(`the demo has no job ${job}`);
  return plan;
};
const plan = demo('UF-106');
const forms = siteForms(plan);
let printed: Printed;
beforeAll(async () => {
  printed = await print(plan, 'en');
}, 120_000);

const valuesOf = async (bytes: Uint8Array): Promise<FormValues> => {
  const read = await readForm(bytes);
  if ('fault' in read) throw new Error(read.fault);
  return read.values;
};
const rowsOf = async (bytes: Uint8Array): Promise<ValueRows> => {
  const rows = rowsOfValues(await valuesOf(bytes));
  if (!rows) throw new Error('the form carries no rows');
  return rows;
};
/** The three tables that the rows of a form would stand in. */
const tablesOf = ({ job, plan: mark, record, readings, facts }: ValueRows): string[] => {
  const cells = <C>(rows: readonly { readonly cells: C }[]): C[] => rows.map((row) => row.cells);
  return siteTables({
    job,
    plan: mark,
    record: cells(record),
    readings: cells(readings),
    facts: cells(facts),
  }).map(({ content }) => String(content));
};

/** What someone writes into every field; what is chosen is one of its choices. */
function written({ fields }: FormFields, shown: boolean): Map<string, string> {
  return new Map(
    fields
      .filter(({ name }) => !name.startsWith('all.'))
      .map(({ name, options }, i) => {
        const option = options[i % Math.max(1, options.length)];
        return [name, option === undefined ? `${String(i)} é` : shown ? option.shows : option.value];
      }),
  );
}

describe('the form of a job', () => {
  it('has a field for every cell that is filled in, with a tooltip, in the order of the tags', async () => {
    const names = printed.form.fields.map(({ name }) => name);
    expect(names.filter((name) => !name.startsWith('all.'))).toEqual([...fieldsOf(forms).keys()]);
    const document = await PDFDocument.load(printed.bytes, { updateMetadata: false });
    const fields = document.getForm().getFields();
    const visible = fields.filter((field) => field.getName() !== 'form.rows');
    expect(visible.map((field) => field.getName()).toSorted()).toEqual(names.toSorted());
    for (const { acroField } of visible) {
      const tip = acroField.dict.lookup(PDFName.of('TU'));
      expect(tip instanceof PDFString || tip instanceof PDFHexString).toBe(true);
    }
    expect(document.getPages().every((page) => page.node.get(PDFName.of('Tabs')) === PDFName.of('S'))).toBe(
      true,
    );
    expect(printed.form.fields.find(({ name }) => name === 'P-1.serial')?.tooltip).toMatch(
      /^P-1, Serial number/,
    );
  });

  it('tags each field as Form, by the place where it stands, and no link is left', async () => {
    const roles = printed.read.pages.flatMap(({ tags }) => nodesOf(tags, () => true).map(({ role }) => role));
    expect(roles.filter((role) => role === 'Form')).toHaveLength(printed.form.fields.length);
    expect(roles).not.toContain('Link');
    const document = await PDFDocument.load(printed.bytes, { updateMetadata: false });
    const kinds = document
      .getPages()
      .flatMap((page) => page.node.Annots()?.asArray() ?? [])
      .map((ref) => document.context.lookup(ref, PDFDict).get(PDFName.of('Subtype'))?.toString());
    expect(new Set(kinds)).toEqual(new Set(['/Widget']));
    expect(printed.read.bookmarks).toBeGreaterThan(plan.protectors.length);
  });

  it('embeds the font that fields are filled in with, whole, and none of its fields runs anything', async () => {
    const document = await PDFDocument.load(printed.bytes, { updateMetadata: false });
    const look = (of: PDFObject | undefined, ...keys: string[]): PDFObject | undefined =>
      keys.reduce((dict, key) => (dict instanceof PDFDict ? dict.lookup(PDFName.of(key)) : undefined), of);
    const font = look(document.catalog, 'AcroForm', 'DR', 'Font', 'Form');
    const file = look(font, 'FontDescriptor', 'FontFile2');
    expect(file instanceof PDFRawStream && file.contents.length).toBeGreaterThan(10_000);
    const widths = look(font, 'Widths');
    expect(widths instanceof PDFArray && widths.size()).toBe(224);
    for (const [, object] of document.context.enumerateIndirectObjects()) {
      const dict = object instanceof PDFDict ? object : undefined;
      expect(dict?.has(PDFName.of('AA')) ?? false).toBe(false);
      expect(dict?.has(PDFName.of('JS')) ?? false).toBe(false);
    }
  });

  it('is the same bytes twice', () => {
    expect(Buffer.compare(printed.bytes, printed.again)).toBe(0);
  });

  it('carries the safety messages, and defers to local code', () => {
    const text = printed.read.pages.map((page) => page.text).join(' ');
    for (const words of [
      'DANGER',
      'WARNING',
      'Qualified persons only',
      'Local code, the authority having jurisdiction',
    ])
      expect(text).toContain(words);
  });

  it('gives the rows of the tables, untouched', async () => {
    expect(tablesOf(await rowsOf(printed.bytes))).toEqual(siteTables(forms).map(({ content }) => content));
  });

  it('gives, filled in by either of two libraries, what the tables filled in alike hold', async () => {
    const [one, another] = [written(printed.form, true), written(printed.form, false)];
    const first = await rowsOf(await filledByOne(printed.bytes, one));
    const second = await rowsOf(await filledByAnother(printed.bytes, another));
    const values = new Map([...another]);
    const expected = { record: [], readings: [], facts: [] } as Record<
      keyof typeof forms & ('record' | 'readings' | 'facts'),
      object[]
    >;
    for (const of of ['record', 'readings', 'facts'] as const)
      expected[of] = forms[of].map((row, index) => ({
        ...row,
        ...Object.fromEntries(
          [...fieldsOf(forms)]
            .filter(([, field]) => field.of === of && field.row === index)
            .map(([name, { heading }]) => [heading, values.get(name) ?? '']),
        ),
      }));
    const tables = siteTables({ ...forms, ...expected } as typeof forms).map(({ content }) => content);
    expect(tablesOf(first)).toEqual(tables);
    expect(tablesOf(second)).toEqual(tables);
  });
});

describe('the form in Spanish, of a draft, and of a job without protectors', () => {
  it('speaks the crew’s language, and keeps the words of the tables', async () => {
    const spanish = await print(demo('UF-102'), 'es');
    const text = spanish.read.pages.map((page) => page.text).join(' ');
    expect(text).toContain('PELIGRO');
    expect(text).toContain('Número de serie');
    const shown = spanish.form.fields.find(({ name }) => name === 'P-3.1.light.utility-on');
    expect(shown?.options.map(({ value, shows }) => [value, shows])).toEqual([
      ['lit', 'ENCENDIDA'],
      ['dark', 'APAGADA'],
      ['flickers', 'PARPADEA'],
    ]);
    const filled = await filledByOne(
      spanish.bytes,
      new Map([
        ['P-3.1.light.utility-on', 'APAGADA'],
        ['P-1.outcome', 'instalado'],
      ]),
    );
    expect((await valuesOf(filled)).get('P-3.1.light.utility-on')).toBe('dark');
    expect((await valuesOf(filled)).get('P-1.outcome')).toBe('fitted');
  });

  it('says on every page that it is of a draft', async () => {
    const { read } = await print(draftPlan(), 'en');
    for (const page of read.pages) expect(page.text).toContain('DRAFT');
  });

  it('asks for nothing where nothing is placed', async () => {
    const { form, bytes } = await print({ ...plan, protectors: [] }, 'en');
    expect(form.fields.filter(({ name }) => name.startsWith('P-'))).toEqual([]);
    expect((await rowsOf(bytes)).record).toEqual([]);
  });
});
