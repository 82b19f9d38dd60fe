import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import { renderDocuments } from '../../src/documents/render.js';
import { FIELD_NAMES, FIELDS } from '../../src/model/fields.js';
import type { Field } from '../../src/model/list.js';
import type { Plan } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import { planJson } from '../../src/output/plan-file.js';
import { openItemsCsv, reportCsv, scheduleCsv } from '../../src/output/tables.js';
import { planJob } from '../../src/plan/plan-job.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { readListText } from '../../src/read/list/lists.js';
import { itemText } from '../../src/screen/item-text.js';
import { batchTable } from '../../src/screen/tell.js';
import { setByHand } from '../documents/fixtures/set-by-hand.js';

const PAYLOADS = [
  '"><img src=x onerror=alert(1)><iframe src=http://host.invalid/>',
  '</style></title></svg><script src=http://host.invalid/x.js>alert(1)</script>',
  '{{{constructor}}}{{> head}}{{#each this}}x',
  '"; } @import url(http://host.invalid/x.css); a { b: url(http://host.invalid/y)',
  '=HYPERLINK("http://host.invalid","x")',
  '@SUM(1;2)',
  '+1;=1+1',
  '../../../../x',
  '\u001b]0;x\u0007\u001b[2J\u202ex',
];

type Row = Partial<Record<Field, string>>;
const SOUND: readonly Row[] = [
  { tag: 'SVC', kind: 'service', place: 'Barn / hall', ac_in: '120/240', fault_current: '5000' },
  {
    tag: 'PNL',
    kind: 'panel',
    connects_to: 'SVC',
    run_length: '20 ft',
    place: 'Barn / hall',
    ac_in: '120/240',
  },
  { tag: 'CC', kind: 'charge-controller', place: 'Barn / loft', max_dc_voltage: '250', dc_inputs: '1' },
  {
    tag: 'BAT',
    kind: 'battery',
    connects_to: 'CC',
    run_length: '6 ft',
    place: 'Barn / loft',
    maker: 'M',
    model: 'N',
  },
];
const JOB = {
  job: 'J',
  job_name: 'Barn',
  address: 'Lane',
  revision: 'A',
  lowest_temp_source: 'a table',
} as const;

/** A list of one job; the change is made to each of its rows. */
function listWith(change: (row: Row, index: number) => Row): string {
  const rows = SOUND.map((row, index) => change({ ...JOB, ...row }, index));
  return stringify([[...FIELD_NAMES], ...rows.map((row) => FIELD_NAMES.map((field) => row[field] ?? ''))]);
}

function planOf(list: string): Plan[] {
  const settings = defaultSettings();
  const { jobs } = readListText('list.csv', list, { settings });
  return jobs.map((job) => planJob(job, { catalogue: undefined, settings }));
}

async function pagesOf(plan: Plan): Promise<string[]> {
  const { kit } = await embeddedFonts();
  const context = { settings: defaultSettings(), date: '2025-03-14', fonts: kit, measure: setByHand };
  return (await renderDocuments(plan, context)).map((d) => d.html);
}

/** Names of the elements and attributes of a page, its styles left out. */
function markupOf(html: string): string[] {
  const bare = html.replace(/<style>[^<]*<\/style>/g, '<style></style>');
  return [...bare.matchAll(/<([a-z][\w:-]*)((?:[^<>"]|"[^"]*")*)>/gi)].flatMap(([, name = '', rest = '']) => [
    name.toLowerCase(),
    ...[...rest.replace(/"[^"]*"/g, '').matchAll(/[\w:-]+(?==)/g)].map(
      ([attribute]) => `${name}[${attribute}]`,
    ),
  ]);
}

/** Every address that a page names. */
function addressesOf(html: string): string[] {
  const attributes = [...html.matchAll(/\s(?:src|href|xlink:href|action|data|poster|srcset)="([^"]*)"/g)];
  const style = [...html.matchAll(/<style>([^<]*)<\/style>/g)].map(([, css]) => css ?? '').join('\n');
  // Texts of margins are strings of letters and escapes; what stands in one is no rule.
  const rules = style.replace(/"(?:[^"\\]|\\.)*"/g, '""');
  return [...attributes.map(([, address = '']) => address), ...(rules.match(/@import|url\([^)]*\)/g) ?? [])];
}

let known: ReadonlySet<string>;
beforeAll(async () => {
  const sound = [listWith((row) => row), listWith((row) => ({ ...row, kind: 'nothing', ac_in: 'nothing' }))];
  const pages = (await Promise.all(sound.flatMap(planOf).map(pagesOf))).flat();
  known = new Set(pages.flatMap(markupOf));
});

async function expectHarmless(list: string): Promise<number> {
  const plans = planOf(list);
  for (const plan of plans) {
    for (const html of await pagesOf(plan)) {
      expect(markupOf(html).filter((name) => !known.has(name))).toEqual([]);
      // Fields of the crew's form are placed by links to tags and names of ours.
      const ours = /^(?:data:|#|url\(data:|field:[\w-]+(?:\.[\w~-]+)+$)/;
      expect(addressesOf(html).filter((address) => !ours.test(address))).toEqual([]);
    }
    const items = plan.openItems.map((item) => ({ job: plan.job, item }));
    const line = { job: plan.job, folder: 'x', basis: plan.basis, status: 'draft', done: 'nothing' } as const;
    const told = { jobName: plan.jobName, address: plan.address, revision: plan.revision } as const;
    const counts = {
      ...told,
      record: 'planned',
      protectors: 0,
      missing: 0,
      conflict: 0,
      confirm: 0,
    } as const;
    for (const text of [scheduleCsv(plan), openItemsCsv(items), reportCsv([{ ...line, ...counts }])]) {
      for (const delimiter of [',', ';', '\t']) {
        const cells: string[][] = parse(text, { delimiter, relax_quotes: true, relax_column_count: true });
        const runs = cells.flat().filter((cell) => /^[\s"]*[=+@\t\r]/.test(cell));
        expect(runs).toEqual([]);
      }
    }
    expect(JSON.parse(planJson(plan))).toMatchObject({ job: plan.job });
    const shown = items.map(({ item }) => itemText(item)).join('') + batchTable([{ ...line, ...counts }]);
    expect(shown.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u);
  }
  return plans.length;
}

const texts = FIELD_NAMES.filter((field) => FIELDS[field].type === 'text');

describe('a hostile text', () => {
  it('is looked for in pages that show what they are made of', () => {
    expect(known.size).toBeGreaterThan(30);
    expect(markupOf('<p><img src=x onerror=alert(1)></p>')).toContain('img[onerror]');
    expect(addressesOf('<style>a { b: url(http://host.invalid/) }</style>')).toHaveLength(1);
  });

  it.each(PAYLOADS)(
    'in all texts of a job, %j, adds no element and no address to a page',
    async (payload) => {
      const list = listWith((row, index) => ({
        ...row,
        ...Object.fromEntries(texts.map((field) => [field, payload])),
        tag: index === 3 ? payload : (row.tag ?? ''),
        place: `${payload} / ${payload}`,
      }));
      expect(await expectHarmless(list)).toBe(1);
    },
  );

  const others = FIELD_NAMES.filter((field) => FIELDS[field].type !== 'text');
  it.each(others)('in %s is told of, and adds no element and no address to a page', async (field) => {
    // Each of the nine meets five fields and more; all nine in each would take a minute.
    const payload = PAYLOADS[others.indexOf(field) % PAYLOADS.length] ?? '';
    await expectHarmless(listWith((row, index) => (index === 2 ? { ...row, [field]: payload } : row)));
  });
});

it('no template names a host or a file beside it', async () => {
  const folder = fileURLToPath(new URL('../../templates', import.meta.url));
  const names = (await readdir(folder, { recursive: true })).filter((name) => /\.(?:hbs|css|js)$/.test(name));
  expect(names.length).toBeGreaterThan(20);
  for (const name of names) {
    const text = (await readFile(join(folder, name), 'utf8')).replaceAll('http://www.w3.org/', '');
    expect(text, name).not.toMatch(/https?:|\/\/\w+\.\w|@import|url\(|<(?:iframe|object|embed|link|base)\b/);
  }
});
