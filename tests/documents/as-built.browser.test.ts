import { beforeAll, describe, expect, it } from 'vitest';
import { budgetOf } from '../../bench/measure-paper/budgets.mjs';
import type { DocumentContext } from '../../src/documents/parts/context.js';
import { renderDocuments } from '../../src/documents/render.js';
import type { SiteRecord } from '../../src/model/record.js';
import type { Plan } from '../../src/model/plan.js';
import { SettingsSchema } from '../../src/model/settings.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { withPrinter } from '../../src/print/printer.js';
import { demoPlan } from './fixtures/demo-plans.js';
import { recordOf } from './fixtures/records.js';
import { readPrinted, type PrintedDocument } from './printed.js';

/** A record in which every housing has long serials, a longer lead, a change, and every light was seen otherwise. */
function muchChanged(plan: Plan): SiteRecord {
  return recordOf(plan, {
    state: 'as built with deviations',
    entry: (tag, entry) => ({
      ...entry,
      serials: [
        { serial: `INVENTED-24-000${tag}`, dateCode: '2407' },
        { serial: `INVENTED-24-999${tag}`, dateCode: '2408' },
      ],
      leadLength: 1.4,
      faultCurrent: 9500,
      change: `conduit of ${tag} blocked, the longer way round`,
    }),
    reading: (one) => (one.kind === 'volts' || one.due ? one : { ...one, found: 'dark' }),
    deviations: plan.protectors.map(({ tag }) => ({
      protector: tag,
      check: 'lead',
      by: 'A. Oakapple',
      date: '2025-03-24',
      reason: 'the level still holds',
      paper: 'memo 7',
    })),
  });
}

const CASES = [
  ['UF-102', 'en', 'letter', 'tabloid'],
  ['UF-105', 'es', 'letter', 'letter'],
  ['UF-109', 'en', 'A4', 'a4'],
  ['UF-106', 'es', 'A4', 'arch-d'],
] as const;
type Case = (typeof CASES)[number];

/** The documents of a case by their names, before anything came back and after. */
const printed = new Map<
  string,
  { before: Map<string, PrintedDocument>; after: Map<string, PrintedDocument> }
>();

beforeAll(async () => {
  const fonts = (await embeddedFonts()).kit;
  const created = new Date('2025-03-28T00:00:00Z');
  await withPrinter({ pages: 1 }, async (printer) => {
    const print = async (
      [, language, paper, permitPaper]: Case,
      plan: Plan,
      more: Partial<DocumentContext>,
      wanted: RegExp,
    ): Promise<Map<string, PrintedDocument>> => {
      const documents = await renderDocuments(plan, {
        settings: SettingsSchema.parse({ paper, permitPaper }),
        date: '2025-03-28',
        fonts,
        measure: printer.measure,
        ownerLanguage: language,
        crewLanguage: language,
        ...more,
      });
      const found = new Map<string, PrintedDocument>();
      for (const { fileName, html, metadata } of documents.filter((one) => wanted.test(one.fileName)))
        found.set(
          fileName,
          await readPrinted(await printer.print({ html, metadata: { ...metadata, created } })),
        );
      return found;
    };
    for (const one of CASES) {
      const plan = demoPlan(one[0]);
      const record = muchChanged(plan);
      printed.set(one[0], {
        before: await print(one, plan, {}, /^closeout/),
        after: await print(one, plan, { record }, /^(?:closeout|permit-addendum|owner|labels)/),
      });
    }
  });
}, 120_000);

describe.each(CASES)('%s as built, in %s on %s, its addendum on %s', (job) => {
  const of = (when: 'before' | 'after', name: string): PrintedDocument => {
    const found = printed.get(job)?.[when].get(name);
    if (found === undefined) throw new Error(`${job} has no ${name}`);
    return found;
  };

  it('has at most two pages more than planned', () => {
    const [planned, built] = [of('before', 'closeout-pack.pdf'), of('after', 'closeout-pack.pdf')];
    expect(built.pages.length).toBeLessThanOrEqual(planned.pages.length + 2);
    expect(built.pages.length).toBeGreaterThan(planned.pages.length);
  });

  it('has an addendum of one sheet and owner’s sheets within their budget', () => {
    expect(of('after', 'permit-addendum.pdf').pages).toHaveLength(1);
    const { protectors } = demoPlan(job);
    const most = budgetOf('owner-sheet', protectors.length, 'letter')?.most ?? 3;
    expect(of('after', 'owner-sheet.pdf').pages.length).toBeLessThanOrEqual(most);
  });

  it('tells the changes, and who accepted them, on the page behind the cover', () => {
    const text = of('after', 'closeout-pack.pdf').pages[1]?.text ?? '';
    expect(text).toContain('memo 7');
    expect(text).toContain('A. Oakapple');
  });
});
