import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DOCUMENT_KINDS, documentsLeftOut, type DocumentContext } from '../../src/documents/parts/context.js';
import { renderDocument, renderDocuments } from '../../src/documents/render.js';
import type { Note } from '../../src/model/open-item.js';
import type { Plan } from '../../src/model/plan.js';
import type { RenderedDocument } from '../../src/model/print.js';
import { defaultSettings, SettingsSchema } from '../../src/model/settings.js';
import { readPlan } from '../../src/output/plan-file.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { withPrinter, type Printer } from '../../src/print/printer.js';
import { exampleOf, shuntbook } from '../commands/command.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { draftPlan, housePlan } from './fixtures/plans.js';
import { stressPlan } from './fixtures/stress.js';
import type { PrintedDocument, PrintedPage, PrintedText } from './printed.js';
import { contentOf, nodesOf, readPrinted } from './printed.js';

// The whole demo from its lists to its files, by the command line and the real printer; and the same documents printed again two
// seconds later, beside others that are larger or odder. The second ones are read back page by page.

const ONE = 'UF-101';
const DATE = '2025-03-14';
const created = new Date(`${DATE}T00:00:00Z`);
const COMPANY = {
  name: 'The Invented Surge Protection and Solar Water Mill Co-operative of Upper Marrow',
  address: '14 the old long lane behind the chapel, Upper Marrow, Fellshire',
  phone: '555-0100',
  licence: 'Fellshire electrical contractor licence INVENTED-0001 and two more that are as long',
};
/** The demo's settings, of a company that has much to say. */
const SETTINGS = {
  ...(JSON.parse(readFileSync('fixtures/demo/settings.json', 'utf8')) as object),
  company: COMPANY,
};
const demo = new Map<string, Plan>(demoPlans().map((plan) => [plan.job, plan]));
const plans = new Map<string, Plan>([
  ...demo,
  ...[housePlan(), draftPlan(), stressPlan()].map((plan) => [plan.job, plan] as const),
]);
const printed = new Map<string, Map<string, PrintedDocument>>();
const bytes = new Map<string, Map<string, Uint8Array>>();
const html = new Map<string, Map<string, string>>();
const notices: Note[] = [];
const folder = mkdtempSync(join(tmpdir(), 'shuntbook-demo-'));
const [first, apart] = [join(folder, 'first'), join(folder, 'apart')];

/** Carries out the example in the help of `pack`, and more arguments, into another folder. */
async function pack(out: string, args: readonly string[], env: Record<string, string> = {}): Promise<string> {
  const example = await exampleOf('pack');
  expect(example).toEqual(['pack', 'fixtures/demo', '--out', 'out/demo']);
  const settings = join(folder, 'settings.json');
  writeFileSync(settings, JSON.stringify(SETTINGS));
  const told = await shuntbook([...example.slice(0, -1), out, '--settings', settings, ...args], { env });
  // One job of the demo is a draft on purpose.
  expect([0, 1], told.err).toContain(told.status);
  return told.out;
}

/** Prints the documents of each plan, those of both kinds of pack and of both languages of the owner, and reads them back. */
async function printAll(printer: Printer): Promise<void> {
  const fonts = (await embeddedFonts()).kit;
  for (const [job, plan] of plans) {
    const settings = demo.has(job)
      ? SettingsSchema.parse(SETTINGS)
      : SettingsSchema.parse({ ...defaultSettings(), company: COMPANY });
    const context: DocumentContext = { settings, date: DATE, fonts, measure: printer.measure };
    const together = await renderDocuments(plan, context);
    const separate = await renderDocuments(plan, { ...context, separate: true });
    const names = new Set(together.map((d) => d.fileName));
    // What is in both packs is one and the same, so that it is printed once.
    const shared = (documents: readonly RenderedDocument[]): readonly RenderedDocument[] =>
      documents.filter((d) => !d.fileName.startsWith('permit-sheet'));
    const leftOut = documentsLeftOut(plan);
    expect(shared(together)).toHaveLength(DOCUMENT_KINDS.length - leftOut.length - 1);
    expect(shared(separate)).toEqual(shared(together));
    const ownerLanguage = plan.ownerLanguage === 'es' ? 'en' : 'es';
    const translated = await Promise.all(
      (['owner-sheet', 'labels'] as const)
        .filter((kind) => !leftOut.includes(kind))
        .map(async (kind) => {
          const document = await renderDocument(kind, { ...plan, ownerLanguage }, context);
          return { ...document, fileName: `${ownerLanguage}-${document.fileName}` };
        }),
    );
    const documents = [...together, ...separate.filter((d) => !names.has(d.fileName)), ...translated];
    // While one is read back, the browser prints the next.
    const read = await Promise.all(
      documents.map(async (document) => {
        const pdf = await printer.print({
          html: document.html,
          metadata: { ...document.metadata, created },
          form: document.form,
        });
        return [document, pdf, await readPrinted(pdf)] as const;
      }),
    );
    html.set(job, new Map(read.map(([d]) => [d.fileName, d.html])));
    bytes.set(job, new Map(read.map(([d, pdf]) => [d.fileName, pdf])));
    printed.set(job, new Map(read.map(([d, , pages]) => [d.fileName, pages])));
  }
}

beforeAll(async () => {
  expect(await pack(first, ['--date', DATE])).not.toBe('');
  const ended = Date.now();
  await pause(2000);
  expect(Date.now() - ended).toBeGreaterThanOrEqual(1990);
  // The same midnight, UTC, in seconds.
  const epoch = String(created.getTime() / 1000);
  await pack(apart, ['--quiet', '--separate', '--job', ONE], { SOURCE_DATE_EPOCH: epoch });
  await withPrinter({ onNotice: (notice) => notices.push(notice) }, printAll);
}, 600_000);

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
  printed.clear();
});

const pdfs = (of: string): string[] => readdirSync(of).filter((name) => name.endsWith('.pdf'));

describe('the packs of the demo', () => {
  it('are the same, byte for byte, made again two seconds later', () => {
    expect(demo.size).toBeGreaterThanOrEqual(10);
    const jobs = readdirSync(first, { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
      .map((entry) => entry.name);
    expect(jobs).toEqual([...demo.keys()].sort());
    for (const job of jobs) {
      const names = pdfs(join(first, job));
      const plan = demo.get(job);
      const kinds = DOCUMENT_KINDS.filter((kind) => plan && !documentsLeftOut(plan).includes(kind));
      expect(names).toEqual(kinds.map((kind) => `${kind}.pdf`).toSorted());
      for (const name of names) {
        const again = bytes.get(job)?.get(name) ?? Buffer.of();
        expect(readFileSync(join(first, job, name)).equals(again), `${job}/${name}`).toBe(true);
      }
    }
  });

  it('are the same by SOURCE_DATE_EPOCH as by --date, and have a file a permit sheet with --separate', () => {
    const names = pdfs(join(apart, ONE));
    const sheets = printed.get(ONE)?.get('permit-sheet.pdf')?.pages.length ?? 0;
    expect(sheets).toBeGreaterThan(1);
    expect(names.filter((n) => n.startsWith('permit-sheet-'))).toHaveLength(sheets);
    const others = names.filter((n) => !n.startsWith('permit-sheet'));
    expect(others).toEqual(pdfs(join(first, ONE)).filter((n) => n !== 'permit-sheet.pdf'));
    for (const name of names) {
      const again = bytes.get(ONE)?.get(name) ?? Buffer.of();
      expect(readFileSync(join(apart, ONE, name)).equals(again), name).toBe(true);
    }
  });
});

/** A text without what only its setting decides. */
const plain = (text: string): string => text.normalize('NFKC').replace(/\s+/g, ' ').trim();

/** The name of its section in the margin of a page. */
const headOf = (page: PrintedPage): string =>
  plain(
    page.texts
      .filter((t) => t.bottom >= page.height - 40)
      .map((t) => t.text)
      .join(' '),
  );

/** Lines of the table of contents: page and name. */
function contentsIn(cover: string): { readonly page: number; readonly name: string }[] {
  const [, after = ''] = cover.split('In this pack\n');
  const [table = ''] = after.split('\nParts and material');
  return [...plain(table).matchAll(/(?<=^| )(\d{1,3}) (\D.*?)(?= \d{1,3} [A-Z]|$)/g)].map(
    ([, page = '', name = '']) => ({ page: Number(page), name }),
  );
}

describe('the closeout packs of the demo, read back', () => {
  const packOf = (job: string): readonly PrintedPage[] =>
    printed.get(job)?.get('closeout-pack.pdf')?.pages ?? [];

  it('name the page of each section', () => {
    for (const [job, plan] of demo) {
      const pages = packOf(job);
      const contents = contentsIn(pages[0]?.text ?? '');
      expect(contents[0]?.name, job).toBe('Drawing and schedule');
      expect(contents.length, job).toBeGreaterThan(plan.protectors.length === 0 ? 2 : 4);
      for (const { page, name } of contents) {
        const head = headOf(pages[page - 1] ?? never());
        const [section = '', tags = ''] = name.split(': ');
        expect(head, `${job}, ${name}`).toContain(section);
        expect(head, `${job}, ${name}`).toContain(tags);
        // It is the first of them.
        expect(headOf(pages[page - 2] ?? never()), `${job}, ${name}`).not.toBe(head);
      }
    }
  });

  it('fetch the parts that plan.json orders, as many of each, and record each protector', () => {
    for (const job of demo.keys()) {
      const plan = readPlan(JSON.parse(readFileSync(join(first, job, 'plan.json'), 'utf8')))?.plan;
      if (!plan) throw new Error(`no plan of ${job}`);
      // The bytes that were read are those of the pack: see above.
      const cover = plain(packOf(job)[0]?.text ?? '');
      const makers = new Map(plan.protectors.map((p) => [p.part, p.partDetails?.maker ?? '']));
      for (const { part, quantity } of plan.orders) {
        const row = `${part} ${makers.get(part) ?? ''} `;
        const counts = cover
          .split(row)
          .slice(1)
          .map((rest) => Number.parseInt(rest, 10));
        expect(
          counts.reduce((sum, one) => sum + one, 0),
          `${job} ${part}`,
        ).toBe(quantity);
      }
      const record = packOf(job)
        .filter((page) => headOf(page).includes('commissioning record'))
        .map(({ text }) => text)
        .join('\n');
      const rows = record.split('Initials\n').slice(1).join('\n');
      const tags = rows.split('\n').filter((line) => plan.protectors.some(({ tag }) => line.startsWith(tag)));
      expect(tags.length, job).toBeGreaterThanOrEqual(plan.protectors.length);
    }
  });
});

function never(): never {
  throw new Error('there is such a page');
}

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

/** A page with fewer lines looks like one that was left over. */
const FEWEST_LINES = 5;

// A third of a point: rounding of the writer, not an overlap that an eye could see.
const SLACK = 0.34;

/** How far a sign may be drawn below the letter before it, on one line: `V,` is set closer than its two boxes. */
const KERNED = 1.3;

function collide(a: PrintedText, b: PrintedText): boolean {
  const [before, after] = a.left <= b.left ? [a, b] : [b, a];
  const isKerned = Math.abs(a.bottom - b.bottom) < SLACK && after.left > before.right - KERNED;
  if (isKerned && /^[,.;)]/.test(after.text)) return false;
  return (
    a.left < b.right - SLACK &&
    b.left < a.right - SLACK &&
    a.bottom < b.top - SLACK &&
    b.bottom < a.top - SLACK
  );
}

/** What lies on other text or off the page. */
function misplaced(page: PrintedPage): string[] {
  return page.texts.flatMap((text, index) => {
    const inside =
      text.left >= 8 && text.right <= page.width - 8 && text.bottom >= 8 && text.top <= page.height - 8;
    const others = page.texts.slice(index + 1).filter((other) => collide(text, other));
    return [
      ...(inside ? [] : [`"${text.text}" is off the page`]),
      ...others.map((other) => `"${text.text}" lies on "${other.text}"`),
    ];
  });
}

function isMargin(page: PrintedPage, text: PrintedText): boolean {
  return text.bottom <= 40 || text.top >= page.height - 40;
}

/** The texts of a page between its margins; of a permit sheet, those that don't stand in its title strip. */
function bodyOf(page: PrintedPage): PrintedText[] {
  const strip = page.texts.find(({ text }) => text === 'Seal and signature');
  return page.texts.filter((t) => (strip === undefined ? !isMargin(page, t) : t.right < strip.left));
}

/** The texts of the lowest line of a page. */
function lowestLine(texts: readonly PrintedText[]): PrintedText[] {
  const lowest = Math.min(...texts.map((t) => t.bottom));
  return texts.filter((t) => t.bottom < lowest + 3);
}

interface Heading {
  readonly role: string;
  readonly text: string;
}

const squeezed = (text: string): string => text.normalize('NFKC').replace(/\s+/g, '');

/** The headings of a page by its tags, each with the text that its tag holds. */
function headingsOf(page: PrintedPage): Heading[] {
  return nodesOf(page.tags, (role) => /^H\d$/.test(role)).map((node) => {
    const content = new Set(contentOf(node));
    const text = page.texts.filter((t) => content.has(t.content)).map((t) => t.text);
    return { role: node.role ?? '', text: squeezed(text.join('')) };
  });
}

/** The headings of an HTML document. */
function headingsIn(source: string): Heading[] {
  return [...source.matchAll(/<h([1-6])[^>]*>([^]*?)<\/h\1>/g)].map(([, level = '', inner = '']) => {
    const text = inner
      .replace(/<[^>]*>/g, '')
      .replace(/&#x([0-9A-F]+);/gi, (_, code: string) => String.fromCodePoint(parseInt(code, 16)))
      .replace(/&lt;/g, '<')
      .replace(/&gt;/g, '>')
      .replace(/&quot;/g, '"')
      .replace(/&amp;/g, '&');
    return { role: `H${level}`, text: squeezed(text) };
  });
}

describe('the measuring of a page', () => {
  async function printedWith(
    printer: Printer,
    style: string,
  ): Promise<{ readonly pages: PrintedPage[]; readonly source: string }> {
    const [sheet] = html.get('HOUSE-3')?.values() ?? [];
    if (sheet === undefined) throw new Error('nothing is printed');
    const source = sheet.replace('</style>', `${style}</style>`);
    const metadata = { title: 'x', author: 'x', subject: 'x', keywords: [], language: 'en', created };
    const { pages } = await readPrinted(await printer.print({ html: source, metadata }));
    return { pages: [...pages], source };
  }

  it('finds text that lies on other text', async () => {
    await withPrinter({ pages: 1 }, async (printer) => {
      expect((await printedWith(printer, '')).pages.flatMap(misplaced)).toEqual([]);
      const close = await printedWith(printer, 'p, li { line-height: 3pt; }');
      expect(close.pages.flatMap(misplaced).join()).toContain('lies on');
      const wide = await printedWith(printer, 'td { white-space: nowrap; max-width: 30pt; }');
      expect(wide.pages.flatMap(misplaced).join()).toContain('lies on');
    });
  });

  it('finds headings that are cut off, for the browser prints no letter beyond the edge', async () => {
    await withPrinter({ pages: 1 }, async (printer) => {
      const whole = await printedWith(printer, '');
      expect(whole.pages.flatMap(headingsOf)).toEqual(headingsIn(whole.source));
      const cut = await printedWith(printer, 'h2 { margin-left: -40pt; }');
      expect(cut.pages.flatMap(headingsOf)).not.toEqual(headingsIn(cut.source));
    });
  });
});

describe('the reading back of a PDF', () => {
  it('tells a font that is not embedded', async () => {
    const objects = [
      '<</Type/Catalog/Pages 2 0 R>>',
      '<</Type/Pages/Kids[3 0 R]/Count 1>>',
      '<</Type/Page/Parent 2 0 R/MediaBox[0 0 99 99]/Contents 4 0 R/Resources<</Font<</F 5 0 R>>>>>>',
      '<</Length 34>>stream\nBT /F 12 Tf 20 50 Td (Hello) Tj ET\nendstream',
      '<</Type/Font/Subtype/Type1/BaseFont/DejaVuSans>>',
    ];
    const body = objects.map((object, index) => `${index + 1} 0 obj${object}endobj\n`).join('');
    const { pages } = await readPrinted(Buffer.from(`%PDF-1.4\n${body}trailer<</Root 1 0 R>>\n`));
    expect(pages[0]?.fonts).toEqual([{ name: 'DejaVuSans', embedded: false, type3: false }]);
  });
});

describe.each([...plans.keys()])('the printed pages of %s', (job) => {
  it('have no text on another, and none off the page', () => {
    eachPage(job, (page, where) => {
      expect(misplaced(page), where).toEqual([]);
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

  it('leave no page all but empty', () => {
    for (const [name, document] of filesOf(job)) {
      // A document may be short; a page after its first must not look left over.
      document.pages.slice(1).forEach((page, index) => {
        const lines = new Set(bodyOf(page).map((t) => Math.round(t.bottom / 3)));
        expect(lines.size, `${job}, ${name}, page ${index + 2}`).toBeGreaterThanOrEqual(FEWEST_LINES);
      });
    }
  });

  it('have each sheet of the drawing on one page', () => {
    for (const [name, document] of filesOf(job)) {
      const drawn = document.pages.filter((p) =>
        nodesOf(p.tags, (role) => role === 'Figure').some((f) => f.alt?.startsWith('One-line drawing')),
      );
      const holds = name === 'closeout-pack.pdf' || /^permit-sheet(-1)?\.pdf$/.test(name);
      if (holds) expect(drawn.length, name).toBeGreaterThan(0);
      else if (!name.startsWith('permit-sheet')) expect(drawn, name).toEqual([]);
      const alts = document.pages.flatMap((p) =>
        nodesOf(p.tags, (role) => role === 'Figure').flatMap(({ alt }) =>
          alt?.startsWith('One-line drawing') === true ? [alt] : [],
        ),
      );
      expect(new Set(alts).size, name).toBe(alts.length);
    }
  });

  it('have the headings of the document in order and without gaps, tables with header cells, figures with words', () => {
    for (const [name, document] of filesOf(job)) {
      let depth = 0;
      const tags = document.pages.map((p) => p.tags);
      const headings = document.pages.flatMap(headingsOf);
      expect(headings[0]?.role, name).toBe('H1');
      for (const heading of headings) {
        const level = Number(heading.role.slice(1));
        expect(level, `${job}, ${name}`).toBeLessThanOrEqual(depth + 1);
        depth = level;
      }
      const source = html.get(job)?.get(name) ?? '';
      // Permit sheets print their headings in capitals.
      const small = (all: readonly Heading[]): Heading[] =>
        all.map(({ role, text }) => ({ role, text: text.toLowerCase() }));
      expect(small(headings), `${job}, ${name}`).toEqual(small(headingsIn(source)));
      expect(source.match(/<th(?![^>]* scope="(?:col|row)(?:group)?")[\s>]/g), `${job}, ${name}`).toBeNull();
      for (const figure of tags.flatMap((t) => nodesOf(t, (role) => role === 'Figure'))) {
        expect(figure.alt ?? '', `${job}, ${name}`).not.toBe('');
      }
      for (const table of tags.flatMap((t) => nodesOf(t, (role) => role === 'Table'))) {
        expect(nodesOf(table, (role) => role === 'TH').length, `${job}, ${name}`).toBeGreaterThan(0);
      }
    }
  });

  it('are painted in the order of their tags, so that whoever reads without tags reads the same', () => {
    eachPage(job, (page, where) => {
      const painted = [...new Set(page.texts.map((t) => t.content))];
      const tagged = contentOf(page.tags).filter((id) => painted.includes(id));
      expect(
        painted.filter((id) => tagged.includes(id)),
        where,
      ).toEqual(tagged);
    });
  });

  it('embed each font, and no font of another kind', () => {
    eachPage(job, (page, where) => {
      expect(page.fonts.length, where).toBeGreaterThan(0);
      for (const font of page.fonts) {
        expect(font, where).toMatchObject({ embedded: true, type3: false });
        expect(font.name, where).toMatch(/DejaVuSans|IBMPlexSansCond|AtkinsonHyperlegibleNext/);
      }
    });
    expect(notices.filter((n) => n.code === 'print/font-missing')).toEqual([]);
  });

  it('say DRAFT on every page of a draft, and nowhere else', () => {
    const draft = plans.get(job)?.submittable === false;
    eachPage(job, (page, where) => {
      expect(/DRAFT|BORRADOR/.test(page.text), where).toBe(draft);
    });
  });

  it('hold every protector and its part', () => {
    const pack = printed.get(job)?.get('closeout-pack.pdf');
    const squashed = (pack?.pages ?? []).map((p) => p.text.replace(/\s+/g, '')).join('');
    for (const { tag, part } of plans.get(job)?.protectors ?? [])
      for (const word of part === null ? [tag] : [tag, part])
        expect(squashed, tag).toContain(word.normalize('NFKC').replace(/\s+/g, ''));
  });

  it('are what a permit office takes: text of 10 pt and up, no layers, no annotations, bookmarks', () => {
    expect(printed.get(job)?.get('permit-sheet.pdf')?.bookmarks).toBeGreaterThan(4);
    const permits = filesOf(job).filter(([name]) => name.startsWith('permit-sheet'));
    expect(permits.length).toBeGreaterThan(0);
    for (const [name, permit] of permits) {
      expect(permit.bookmarks, name).toBeGreaterThan(0);
      expect(permit.hasLayers, name).toBe(false);
      for (const [index, page] of permit.pages.entries()) {
        expect(page.annotations, name).toBe(0);
        for (const text of page.texts) {
          expect(text.size, `${name}, page ${index + 1}: ${text.text}`).toBeGreaterThanOrEqual(9.98);
        }
      }
    }
  });

  it('are two for the owner up to eight protectors, and one more for each further six', () => {
    const count = plans.get(job)?.protectors.length ?? 0;
    const most = 2 + Math.ceil(Math.max(0, count - 8) / 6);
    expect(printed.get(job)?.get('owner-sheet.pdf')?.pages.length).toBeLessThanOrEqual(most);
  });
});
