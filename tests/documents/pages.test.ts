import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DocumentContext } from '../../src/documents/context.js';
import { renderDocuments } from '../../src/documents/render.js';
import type { Plan } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { withPrinter } from '../../src/print/printer.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { draftPlan, housePlan } from './fixtures/plans.js';
import { stressPlan } from './fixtures/stress.js';
import type { PrintedDocument, PrintedPage, PrintedText } from './printed.js';
import { nodesOf, readPrinted } from './printed.js';

const plans = new Map<string, Plan>(
  [...demoPlans(), housePlan(), draftPlan(), stressPlan()].map((plan) => [plan.job, plan]),
);
const COMPANY = {
  ...defaultSettings().company,
  name: 'The Invented Surge Protection and Solar Water Mill Co-operative of Upper Marrow',
  address: '14 the old long lane behind the chapel, Upper Marrow, Fellshire',
  phone: '555-0100',
  licence: 'Fellshire electrical contractor licence INVENTED-0001 and two more that are as long',
};
const printed = new Map<string, Map<string, PrintedDocument>>();

beforeAll(async () => {
  const fonts = (await embeddedFonts()).kit;
  const context: DocumentContext = {
    settings: { ...defaultSettings(), company: COMPANY },
    date: '2025-03-14',
    fonts,
  };
  await withPrinter({}, async (printer) => {
    for (const [job, plan] of plans) {
      const files = new Map<string, PrintedDocument>();
      for (const { fileName, html, metadata } of await renderDocuments(plan, context)) {
        const created = new Date('2025-03-14T00:00:00Z');
        files.set(
          fileName,
          await readPrinted(await printer.print({ html, metadata: { ...metadata, created } })),
        );
      }
      printed.set(job, files);
    }
  });
}, 600_000);

afterAll(() => {
  printed.clear();
});

function filesOf(job: string): [string, PrintedDocument][] {
  return [...(printed.get(job) ?? [])];
}

function eachPage(job: string, check: (page: PrintedPage, where: string) => void): void {
  for (const [name, document] of filesOf(job)) {
    document.pages.forEach((page, index) => {
      check(page, `${job}, ${name}, page ${index + 1}`);
    });
  }
}

// A third of a point: rounding of the writer, not an overlap that an eye could see.
const SLACK = 0.34;

function collide(a: PrintedText, b: PrintedText): boolean {
  return (
    a.left < b.right - SLACK &&
    b.left < a.right - SLACK &&
    a.bottom < b.top - SLACK &&
    b.bottom < a.top - SLACK
  );
}

function isMargin(page: PrintedPage, text: PrintedText): boolean {
  return text.bottom <= 40 || text.top >= page.height - 40;
}

/** The texts of a page between its margins. */
function bodyOf(page: PrintedPage): PrintedText[] {
  return page.texts.filter((t) => !isMargin(page, t));
}

/** The texts of the lowest line of a page. */
function lowestLine(texts: readonly PrintedText[]): PrintedText[] {
  const lowest = Math.min(...texts.map((t) => t.bottom));
  return texts.filter((t) => t.bottom < lowest + 3);
}

describe.each([...plans.keys()])('the printed pages of %s', (job) => {
  it('have no text on another, and none off the page', () => {
    eachPage(job, (page, where) => {
      page.texts.forEach((text, index) => {
        const what = `${where}: "${text.text}"`;
        expect(text.left, what).toBeGreaterThanOrEqual(8);
        expect(text.right, what).toBeLessThanOrEqual(page.width - 8);
        expect(text.bottom, what).toBeGreaterThanOrEqual(8);
        expect(text.top, what).toBeLessThanOrEqual(page.height - 8);
        for (const other of page.texts.slice(index + 1)) {
          if (collide(text, other)) throw new Error(`${what} lies on "${other.text}"`);
        }
      });
    });
  });

  it('are never blank, and never end with a heading or the head of a table', () => {
    eachPage(job, (page, where) => {
      const body = bodyOf(page);
      expect(body.length, where).toBeGreaterThan(0);
      // The owner's log has a month and blanks in each row.
      const last = lowestLine(body);
      const isHead = (t: PrintedText): boolean =>
        !/^\d+$/.test(t.text) && t.roles.some((r) => /^(H\d|Caption|HeadRow)$/.test(r));
      expect(last.every(isHead), `${where}: ${last.map((t) => t.text).join(' ')}`).toBe(false);
    });
  });

  it('have each sheet of the drawing on one page', () => {
    for (const [name, document] of filesOf(job)) {
      const sheets = document.pages.filter((p) =>
        nodesOf(p.tags, (role) => role === 'Figure').some((f) => f.alt?.startsWith('Single-line drawing')),
      );
      const named = document.pages.filter((p) =>
        p.texts.some((t) => isMargin(p, t) && t.text.includes('Placement drawing')),
      );
      expect(named.length, name).toBe(sheets.length);
      expect(sheets.length > 0, name).toBe(/closeout|permit/.test(name));
    }
  });

  it('have headings without gaps, and alternative text on every figure', () => {
    for (const [name, document] of filesOf(job)) {
      let depth = 0;
      const tags = document.pages.map((p) => p.tags);
      const headings = tags.flatMap((t) => nodesOf(t, (role) => /^H\d$/.test(role)));
      expect(headings[0]?.role, name).toBe('H1');
      for (const heading of headings) {
        const level = Number(heading.role?.slice(1));
        expect(level, `${job}, ${name}`).toBeLessThanOrEqual(depth + 1);
        depth = level;
      }
      for (const figure of tags.flatMap((t) => nodesOf(t, (role) => role === 'Figure'))) {
        expect(figure.alt ?? '', `${job}, ${name}`).not.toBe('');
      }
      for (const table of tags.flatMap((t) => nodesOf(t, (role) => role === 'Table'))) {
        expect(nodesOf(table, (role) => role === 'TH').length, `${job}, ${name}`).toBeGreaterThan(0);
      }
    }
  });

  it('say DRAFT on every page of a draft, and nowhere else', () => {
    const draft = plans.get(job)?.submittable === false;
    eachPage(job, (page, where) => {
      expect(/DRAFT|BORRADOR/.test(page.text), where).toBe(draft);
    });
  });

  it('hold every protector, its part, its conductors and its lights', () => {
    const pack = printed.get(job)?.get('closeout-pack.pdf');
    const text = (pack?.pages ?? []).map((p) => p.text).join('\n');
    const plain = text.replace(/\s+/g, '');
    const holds = (value: string): boolean => plain.includes(value.normalize('NFKC').replace(/\s+/g, ''));
    for (const protector of plans.get(job)?.protectors ?? []) {
      const note = (pack?.pages ?? [])
        .filter((p) => p.text.includes(`4 Wiring notes · ${protector.tag}\n`))
        .map((p) => p.text.replace(/\s+/g, ' '))
        .join(' ');
      for (const word of protector.channels.flatMap((c) =>
        c.indicator.flatMap((l) => [c.conductor, l.state, l.shows]),
      )) {
        expect(note, protector.tag).toContain(word);
      }
      if (protector.part !== null) expect(holds(protector.part), protector.part).toBe(true);
      for (const channel of protector.channels) {
        for (const light of channel.indicator) {
          expect(
            holds(`${channel.channel}${channel.conductor}${light.state}${light.shows}`),
            protector.tag,
          ).toBe(true);
        }
      }
    }
  });

  it('are what a permit office takes: text of 10 pt and up, no layers, no annotations, bookmarks', () => {
    const permit = printed.get(job)?.get('permit-sheet.pdf');
    expect(permit?.bookmarks).toBeGreaterThan(4);
    expect(permit?.hasLayers).toBe(false);
    for (const [index, page] of (permit?.pages ?? []).entries()) {
      expect(page.annotations).toBe(0);
      for (const text of page.texts) {
        expect(text.size, `page ${index + 1}: ${text.text}`).toBeGreaterThanOrEqual(9.99);
      }
    }
  });

  it('are two for the owner up to eight protectors, and one more for each further twelve', () => {
    const count = plans.get(job)?.protectors.length ?? 0;
    const most = 2 + Math.ceil(Math.max(0, count - 8) / 12);
    expect(printed.get(job)?.get('owner-sheet.pdf')?.pages.length).toBeLessThanOrEqual(most);
  });
});
