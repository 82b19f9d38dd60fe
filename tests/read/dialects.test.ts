import fc from 'fast-check';
import { expect, it } from 'vitest';
import { FIELD_NAMES } from '../../src/model/fields.js';
import type { Field } from '../../src/model/list.js';
import { defaultSettings } from '../../src/model/settings.js';
import { planJob } from '../../src/plan/plan-job.js';
import { ALIASES } from '../../src/read/table/aliases.js';
import { dimensionOf } from '../../src/read/cell/field-dimension.js';
import { readCatalogue } from '../../src/read/company/catalogue.js';
import { readListText, type ReadResult } from '../../src/read/list/lists.js';
import { difference, plainPlan } from './plain-plan.js';
import { plainJob } from './plain.js';

/** A tidy list: rows of cells by field; lengths in whole mm, so that any unit can write them. */
type Row = Partial<Record<Field, string>>;
interface Tidy {
  readonly fields: readonly Field[];
  readonly rows: readonly Row[];
}

/** How a list is written down. */
interface Dialect {
  readonly delimiter: ',' | ';' | '\t' | '|';
  readonly ends: readonly string[];
  readonly encoding: 'utf8' | 'utf8-mark' | 'utf16le' | 'utf16be';
  readonly quoteAll: boolean;
  readonly separatorLine: boolean;
  readonly titles: readonly string[];
  readonly blanks: boolean;
  readonly merged: boolean;
  readonly total: boolean;
  readonly again: boolean;
  readonly imperial: boolean;
  readonly unitIn: 'cell' | 'heading' | 'line';
  readonly comma: boolean;
  readonly alias: number;
  readonly order: number;
}

const text = fc
  .stringMatching(/^[A-Za-z\u00e4\u00f8][A-Za-z0-9 \u00e4\u00f8"';,|-]{0,10}[A-Za-z0-9]$/)
  .filter(
    (t) =>
      !/^(?:total|sum|note|remark|end|legend|page|printed|prepared|sep)/i.test(t) &&
      t.toLowerCase() !== 'tbd',
  );
const maybe = (cells: fc.Arbitrary<string>): fc.Arbitrary<string> => fc.oneof(fc.constant(''), cells);
const millimetres = fc.integer({ min: 10, max: 900_000 }).map(String);
const row = fc.record({
  kind: fc.constantFrom('array', 'charge-controller', 'grid-tie-inverter', 'battery', 'panel'),
  quantity: maybe(fc.integer({ min: 1, max: 40 }).map(String)),
  description: maybe(text),
  place: maybe(text),
  run_length: maybe(millimetres),
  lead_length: maybe(millimetres),
  voc_stc: maybe(fc.integer({ min: 1, max: 12_000 }).map((n) => String(n / 10))),
  fault_current: maybe(fc.integer({ min: 1, max: 400 }).map((n) => String(n * 50))),
  outdoors: maybe(fc.constantFrom('yes', 'no')),
  ac_in: maybe(fc.constantFrom('120/240', '480Y/277', '240 delta')),
  maker: maybe(text),
});
const tidyList = fc.array(fc.tuple(row, fc.nat(3)), { minLength: 1, maxLength: 8 }).map((made): Tidy => {
  const jobs = made.map(([, job]) => job).sort((a, b) => a - b);
  const rows = made.map(([cells], i): Row => ({
    job: `UF-${jobs[i] ?? 0}`,
    tag: `T-${i + 1}`,
    ...cells,
    connects_to: i > 0 ? `T-${i}` : '',
  }));
  return { fields: ['job', 'tag', 'connects_to', ...(Object.keys(made[0]?.[0] ?? {}) as Field[])], rows };
});
const dialect: fc.Arbitrary<Dialect> = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  ends: fc.array(fc.constantFrom('\n', '\r\n', '\r'), { minLength: 1, maxLength: 3 }),
  encoding: fc.constantFrom('utf8', 'utf8-mark', 'utf16le', 'utf16be'),
  quoteAll: fc.boolean(),
  separatorLine: fc.boolean(),
  titles: fc.array(fc.constantFrom('Equipment schedule', 'Umberfold County (invented)', ''), {
    maxLength: 3,
  }),
  blanks: fc.boolean(),
  merged: fc.boolean(),
  total: fc.boolean(),
  again: fc.boolean(),
  imperial: fc.boolean(),
  unitIn: fc.constantFrom('cell', 'heading', 'line'),
  comma: fc.boolean(),
  alias: fc.nat(50),
  order: fc.nat(1000),
});

/** Unit and size of it in mm, V or A. */
function unitOf(field: Field, imperial: boolean): readonly [string, number] | null {
  const dimension = dimensionOf(field);
  if (dimension === 'length') return imperial ? ['ft', 304.8] : ['m', 1000];
  if (dimension === 'voltage') return ['V', 1];
  return dimension === 'current' ? ['kA', 1000] : null;
}

function cellOf(field: Field, cell: string, d: Dialect): string {
  const unit = unitOf(field, d.imperial);
  if (cell === '' || unit === null) return cell;
  const figure = Number((Number(cell) / unit[1]).toFixed(5));
  // Four decimals or more can be read one way only.
  const written =
    String(figure).includes('.') && /\.\d{3}$/.test(String(figure)) ? `${figure}0` : String(figure);
  const marked = d.comma ? written.replace('.', ',') : written;
  return d.unitIn === 'cell' ? `${marked} ${unit[0]}` : marked;
}

function write({ fields, rows }: Tidy, d: Dialect): Buffer {
  const order = [...fields].sort(
    (a, b) =>
      ((FIELD_NAMES.indexOf(a) * 7919 + d.order) % 97) - ((FIELD_NAMES.indexOf(b) * 7919 + d.order) % 97),
  );
  const heading = order.map((f) => {
    const names = [f, ...(ALIASES[f] ?? [])];
    const name = names[d.alias % names.length] ?? f;
    const unit = unitOf(f, d.imperial);
    return d.unitIn === 'heading' && unit !== null ? `${name} (${unit[0]})` : name;
  });
  const lines: string[][] = [];
  if (d.separatorLine) lines.push([`sep=${d.delimiter}`]);
  for (const title of d.titles) lines.push([title]);
  lines.push(heading);
  if (d.unitIn === 'line') lines.push(order.map((f) => unitOf(f, d.imperial)?.[0] ?? ''));
  for (const [i, row] of rows.entries()) {
    const merged = d.merged && row.job === rows[i - 1]?.job;
    lines.push(order.map((f) => (f === 'job' && merged ? '' : cellOf(f, row[f] ?? '', d))));
    if (d.blanks) lines.push(order.map(() => ''));
    if (d.again && i === 2) lines.push(heading);
  }
  if (d.total) lines.push(['Total', '', '']);
  const quote = (cell: string): string =>
    d.quoteAll || /["\n\r]/.test(cell) || cell.includes(d.delimiter)
      ? `"${cell.replaceAll('"', '""')}"`
      : cell;
  const body = lines
    .map(
      (line, i) =>
        (i === 0 && d.separatorLine ? (line[0] ?? '') : line.map(quote).join(d.delimiter)) +
        (d.ends[i % d.ends.length] ?? '\n'),
    )
    .join('');
  if (d.encoding === 'utf8') return Buffer.from(body);
  if (d.encoding === 'utf8-mark') return Buffer.from(`\ufeff${body}`);
  const wide = Buffer.from(`\ufeff${body}`, 'utf16le');
  return d.encoding === 'utf16le' ? wide : wide.swap16();
}

const PLAIN: Dialect = {
  delimiter: ',',
  ends: ['\n'],
  encoding: 'utf8',
  quoteAll: false,
  separatorLine: false,
  titles: [],
  blanks: false,
  merged: false,
  total: false,
  again: false,
  imperial: false,
  unitIn: 'heading',
  comma: false,
  alias: 0,
  order: 0,
};
const settings = defaultSettings();
const { catalogue } = await readCatalogue('fixtures/demo/catalogue.csv');
const read = (bytes: Buffer): ReadResult => readListText('list.csv', bytes, { settings });

it('a tidy list says the same in any dialect, with any heading, in any unit and any order', () => {
  fc.assert(
    fc.property(tidyList, dialect, (tidy, d) => {
      const plain = read(write(tidy, PLAIN));
      const other = read(write(tidy, d));
      expect(plain.items).toEqual([]);
      expect(plain.jobs.flatMap((j) => j.items)).toEqual([]);
      expect(other.unreadable).toEqual([]);
      expect(other.jobs.flatMap((j) => j.items).filter((i) => i.severity !== 'confirm')).toEqual([]);
      const rounded = (result: ReadResult): string =>
        JSON.stringify(result.jobs.map(plainJob), (_, value: unknown) =>
          typeof value === 'number' ? Number(value.toFixed(3)) : value,
        );
      // Lengths are whole millimetres, and five decimals of a foot are far closer than that.
      expect(rounded(other)).toBe(rounded(plain));
      const plans = (result: ReadResult): unknown[] =>
        result.jobs.map((job) => plainPlan(planJob(job, { catalogue, settings }), ['row/job-from-above']));
      expect(difference(plans(other), plans(plain))).toBe('');
    }),
    { numRuns: 200 },
  );
});
