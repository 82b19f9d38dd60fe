import { beforeAll, describe, expect, it } from 'vitest';
import type { DocumentContext } from '../../src/documents/parts/context.js';
import { renderDocument } from '../../src/documents/render.js';
import type { Plan, PlannedProtector } from '../../src/model/plan.js';
import { SettingsSchema } from '../../src/model/settings.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { withPrinter } from '../../src/print/printer.js';
import { plan } from './fixtures/builder.js';
import { demoPlan, demoPlans } from './fixtures/demo-plans.js';
import { readPrinted, type PrintedDocument } from './printed.js';

const PLANS = demoPlans();
const PHONE = '555-0100';

/** A site with this many protectors, taken in turn from all jobs of the demo, so that their lights differ as they do there. */
function siteOf(count: number): Plan {
  const plans = PLANS;
  const tagOf = (job: string, tag: string): string => `${tag}-${job.replace(/^UF-/, '')}`;
  const all = plans.flatMap(({ job, protectors }) =>
    protectors.map((p) => ({
      ...p,
      ports: p.ports.map((port) => ({ ...port, equipment: tagOf(job, port.equipment) })),
    })),
  );
  const spread = Array.from({ length: count }, (_, index) => all[(index * 5) % all.length]);
  const protectors = spread.filter((p): p is PlannedProtector => p !== undefined);
  return plan({
    site: {
      equipments: plans.flatMap(({ job, site }) =>
        site.equipments.map((e) => ({ ...e, tag: tagOf(job, e.tag), ports: [] })),
      ),
      runs: [],
    },
    protectors: protectors.map((p, index) => ({ ...p, tag: `P-${index + 1}` })),
  });
}

const CASES = [8, 9, 20, 21, 32, 44].flatMap((count) => [[count, 'en'] as const, [count, 'es'] as const]);
/** Jobs of the demo with the most to say, in the longer language, on both papers. */
const FULLEST = ['UF-106', 'UF-114', 'UF-116'].flatMap((job) => [
  [job, 'letter'] as const,
  [job, 'A4'] as const,
]);
const printed = new Map<string, PrintedDocument>();

beforeAll(async () => {
  const fonts = (await embeddedFonts()).kit;
  const created = new Date('2025-03-14T00:00:00Z');
  // One browser for all of them.
  await withPrinter({ pages: 1 }, async (printer) => {
    const print = async (name: string, plan: Plan, ownerLanguage: string, paper?: string): Promise<void> => {
      const company = { name: 'Invented Surge Works', phone: PHONE };
      const context: DocumentContext = {
        settings: SettingsSchema.parse({ company, ...(paper === undefined ? {} : { paper }) }),
        date: '2025-03-14',
        fonts,
        measure: printer.measure,
        ownerLanguage,
      };
      const { html, metadata } = await renderDocument('owner-sheet', plan, context);
      const bytes = await printer.print({ html, metadata: { ...metadata, created } });
      printed.set(name, await readPrinted(bytes));
    };
    for (const [count, language] of CASES) await print(`${count} ${language}`, siteOf(count), language);
    for (const [job, paper] of FULLEST) await print(`${job} ${paper}`, demoPlan(job), 'es', paper);
  });
});

describe("the owner's sheet", () => {
  it.each(CASES)(
    'of %i protectors in %s is two pages up to eight and one more for each further six',
    (count, ownerLanguage) => {
      const pages = printed.get(`${count} ${ownerLanguage}`)?.pages ?? [];
      const text = pages.map((p) => p.text.replace(/\s+/g, ' ')).join(' ');
      for (let n = 1; n <= count; n += 1) expect(text).toMatch(new RegExp(`\\bP-${n}\\b`));
      expect(pages.length).toBeLessThanOrEqual(2 + Math.ceil(Math.max(0, count - 8) / 6));
    },
  );

  it.each(FULLEST)('of %s, 8 protectors, in Spanish on %s is two pages', (job, paper) => {
    expect(printed.get(`${job} ${paper}`)?.pages).toHaveLength(2);
  });

  it.each(CASES)('of %i protectors in %s has no text below 13 points', (count, ownerLanguage) => {
    const texts = printed.get(`${count} ${ownerLanguage}`)?.pages.flatMap((page) => page.texts) ?? [];
    expect(texts.length).toBeGreaterThan(50);
    expect(texts.filter(({ size }) => size < 12.99).map(({ text, size }) => `${size} ${text}`)).toEqual([]);
  });

  it.each(FULLEST)('of %s in Spanish on %s warns on its first page', (job, paper) => {
    const [page] = printed.get(`${job} ${paper}`)?.pages ?? [];
    expect(page?.text).toContain('ADVERTENCIA');
  });

  it.each(CASES)(
    'of %i protectors in %s has the phone number, large, on its first page',
    (count, language) => {
      const [page] = printed.get(`${count} ${language}`)?.pages ?? [];
      const number = page?.texts.filter(({ text }) => text.includes(PHONE)).map(({ size }) => size) ?? [];
      expect(Math.max(...number)).toBeGreaterThanOrEqual(24);
    },
  );
});
