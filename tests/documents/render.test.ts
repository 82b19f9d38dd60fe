import { told } from '../../src/words/messages/told.js';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DocumentContext } from '../../src/documents/parts/context.js';
import { renderDocument, renderDocuments } from '../../src/documents/render.js';
import { EXIT } from '../../src/model/exit-status.js';
import { Failure } from '../../src/model/failure.js';
import type { Plan } from '../../src/model/plan.js';
import { PlanSchema } from '../../src/model/plan.js';
import type { RenderedDocument } from '../../src/model/print.js';
import { defaultSettings, type Settings } from '../../src/model/settings.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { draftPlan, housePlan, hutPlan } from './fixtures/plans.js';
import { stressPlan } from './fixtures/stress.js';
import { setByHand } from './fixtures/set-by-hand.js';

const context: DocumentContext = {
  settings: defaultSettings(),
  date: '2025-03-14',
  fonts: { css: () => '', covers: (codePoint) => codePoint < 0x2700 },
  measure: setByHand,
};

/** Said here once more by hand; other tests take the names from `DOCUMENT_KINDS`. */
const FILES = ['closeout-pack.pdf', 'permit-sheet.pdf', 'owner-sheet.pdf', 'labels.pdf', 'site-record.pdf'];

const plans = [...demoPlans(), hutPlan(), housePlan(), draftPlan(), stressPlan()];

describe.each(plans.map((p) => [p.job, p] as const))('the documents of %s', (_job, plan) => {
  let documents: RenderedDocument[] = [];
  beforeAll(async () => {
    documents = await renderDocuments(PlanSchema.parse(plan), context);
  });

  it('are those of a pack, whole in themselves and without a script', () => {
    expect(documents.map((d) => d.fileName)).toEqual(
      plan.submittable ? FILES : FILES.filter((name) => name !== 'labels.pdf'),
    );
    for (const { html, metadata } of documents) {
      expect(html).toMatch(/^<!doctype html>\n<html lang="(en|es)">/);
      expect(html).not.toMatch(
        /<script|<iframe|<link|<object|\son\w+=|(?:src|href)="(?!#|data:image|field:)|url\((?!data:)/i,
      );
      expect(html).not.toContain('[object Object]');
      expect(html).not.toMatch(/>\s*(?:undefined|null|NaN)\s*</);
      expect(/DRAFT|BORRADOR/.test(html)).toBe(!plan.submittable);
      expect(metadata.title).toContain(plan.job);
      expect(metadata.keywords).toContain(plan.basis);
    }
  });

  it('are the same each time', async () => {
    expect(await renderDocuments(plan, context)).toEqual(documents);
  });
});

describe('a hostile text', () => {
  const hostile =
    '</style></title><script>alert(1)</script><img src=x onerror=alert(2)> {{x}} {{{y}}} =1+1 "\'`';

  /** Puts the text wherever a list could have put it. */
  function poisoned(plan: Plan): Plan {
    const walk = (value: unknown, key: string): unknown => {
      if (typeof value === 'string')
        return /^(jobName|address|revision|place|maker|model|message|found|because|part|groundTo|overcurrent|protects|position)$/.test(
          key,
        )
          ? `${value} ${hostile}`
          : value;
      if (Array.isArray(value)) return value.map((v) => walk(v, key));
      if (value !== null && typeof value === 'object')
        return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, walk(v, k)]));
      return value;
    };
    return PlanSchema.parse(walk(plan, ''));
  }

  it('prints as typed and runs nowhere', async () => {
    const settings = { ...defaultSettings(), company: { ...defaultSettings().company, name: hostile } };
    for (const { html } of await renderDocuments(poisoned(draftPlan()), { ...context, settings })) {
      expect(html).not.toMatch(/<script|<img src=x/i);
      expect(html.match(/<\/style>/g)).toHaveLength(1);
      expect(html.match(/<\/title>/g)?.length).toBe(html.match(/<title>/g)?.length);
    }
    const { html } = await renderDocument('closeout-pack', poisoned(draftPlan()), context);
    expect(html).toContain('{{x}} {{{y}}} &#x3D;1+1 &quot;&#x27;&#x60;');
  });

  it('shows what hides', async () => {
    const plan = { ...hutPlan(), jobName: 'safe\u202Eexe.txt \u4E2D' };
    const { html } = await renderDocument('closeout-pack', plan, context);
    expect(html).toContain('safe[U+202E]exe.txt [U+4E2D]');
  });
});

describe('the permit sheet in separate files', () => {
  it('has a file a sheet, each whole, with ASCII names under 60 characters', async () => {
    const documents = await renderDocuments(housePlan(), { ...context, separate: true });
    const names = documents.map((d) => d.fileName);
    expect(names.filter((name) => !name.startsWith('permit-sheet-'))).toEqual(
      FILES.filter((name) => name !== 'permit-sheet.pdf'),
    );
    const sheets = names.filter((name) => name.startsWith('permit-sheet-'));
    expect(sheets.length).toBeGreaterThan(1);
    expect(sheets).toEqual(sheets.map((_, index) => `permit-sheet-${index + 1}.pdf`));
    for (const { fileName, html } of documents) {
      expect(fileName).toMatch(/^[a-z0-9.-]{1,59}$/);
      expect(html).toContain('<h1');
    }
  });
});

describe('the permit sheets of a draft', () => {
  it('say so over each sheet and in each title strip', async () => {
    const { html } = await renderDocument('permit-sheet', draftPlan(), context);
    const sheets = html.match(/<section class="sheet"/g)?.length ?? 0;
    expect(sheets).toBeGreaterThan(0);
    expect(html.match(/DRAFT, NOT FOR PERMIT/g)).toHaveLength(sheets);
    expect(html.match(/<svg class="watermark"/g)).toHaveLength(sheets);
    const { html: complete } = await renderDocument('permit-sheet', housePlan(), context);
    expect(complete).not.toMatch(/DRAFT|<svg class="watermark"/);
  });
});

describe('photos and logo', () => {
  const dot = 'data:image/png;base64,iVBORw0KGgo=';

  it('stand in the closeout pack with what they show', async () => {
    const { html } = await renderDocument('closeout-pack', hutPlan(), {
      ...context,
      logo: dot,
      photos: [{ tag: 'CC-1', caption: 'CC-1', dataUrl: dot }],
    });
    expect(html).toContain('alt="Photo of CC-1, Hut / power room: P-1"');
    expect(html).toContain('<img class="logo" src="data:image/png;base64,');
  });

  it('are refused where they are no picture', async () => {
    const photos = [{ tag: 'CC-1', caption: 'x', dataUrl: 'javascript:alert(1)' }];
    await expect(renderDocument('closeout-pack', hutPlan(), { ...context, photos })).rejects.toThrow(Failure);
  });
});

describe('a folder of templates', () => {
  let folder = '';
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'shuntbook-templates-'));
    await mkdir(join(folder, 'contents'), { recursive: true });
    await mkdir(join(folder, 'styles'), { recursive: true });
    await mkdir(join(folder, 'labels'), { recursive: true });
    await writeFile(join(folder, 'contents', 'assumptions.hbs'), '<p>Our own table of assumptions</p>');
    await writeFile(join(folder, 'styles', 'owner-sheet.css'), 'h1 { color: #123456; }');
    await writeFile(join(folder, 'labels', 'document.hbs'), '<p>{{nothing.of.the.kind}}</p>');
  });
  afterAll(async () => {
    await rm(folder, { recursive: true });
  });

  it('overrides partials and styles by their relative path', async () => {
    const own = { ...context, templatesFolder: folder };
    expect((await renderDocument('closeout-pack', hutPlan(), own)).html).toContain(
      'Our own table of assumptions',
    );
    expect((await renderDocument('owner-sheet', hutPlan(), own)).html).toContain('h1 { color: #123456; }');
    expect((await renderDocument('owner-sheet', hutPlan(), context)).html).not.toContain('#123456');
  });

  it('ends with one message that names the file, where a template asks for what is not there', async () => {
    const failure = await renderDocument('labels', hutPlan(), { ...context, templatesFolder: folder }).catch(
      (error: unknown) => error,
    );
    expect(failure).toBeInstanceOf(Failure);
    expect((failure as Failure).exitStatus).toBe(EXIT.failed);
    expect((failure as Failure).note.code).toBe('documents/template');
    expect(told((failure as Failure).note).found).toBe('labels/document.hbs');
  });
});

describe('a template with a fault of syntax', () => {
  it('is named, be it a partial', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'shuntbook-templates-'));
    await mkdir(join(folder, 'contents'));
    await writeFile(join(folder, 'contents', 'schedule.hbs'), '{{#if schedule}}<p>');
    const failure = await renderDocument('closeout-pack', hutPlan(), {
      ...context,
      templatesFolder: folder,
    }).catch((error: unknown) => error);
    await rm(folder, { recursive: true });
    expect(told((failure as Failure).note).found).toBe('contents/schedule.hbs');
  });
});

describe('the paper of permit sheets', () => {
  it('is 11 x 17 in with nec, A3 with iec, and what the settings say', async () => {
    const sizes = async (plan: Plan, more: Partial<Settings> = {}): Promise<string[]> => {
      const settings = { ...defaultSettings(), ...more };
      const { html } = await renderDocument('permit-sheet', plan, { ...context, settings });
      return [...new Set([...html.matchAll(/size: ([\d.]+mm [\d.]+mm)/g)].map((m) => m[1] ?? ''))];
    };
    expect(await sizes(hutPlan())).toEqual(['431.8mm 279.4mm']);
    expect(await sizes(stressPlan())).toEqual(['420mm 297mm']);
    expect(await sizes(hutPlan(), { permitPaper: 'a4' })).toEqual(['297mm 210mm']);
  });
});

describe('the title strip', () => {
  it('has an address of two lines on two lines, what the list states, and lines to write on', async () => {
    const fact = (field: string, text: string): Plan['facts'][number] => ({
      field,
      text,
      value: text,
      unit: '',
      origin: { from: 'list', file: 'list.csv', line: 2, column: field },
    });
    const house = housePlan();
    const plan = {
      ...house,
      address: '4 Thimble Lane\nQuillmarsh',
      facts: [...house.facts, fact('owner', 'A. Owner'), fact('drawn_by', 'Desk')],
    };
    const { html } = await renderDocument('permit-sheet', plan, context);
    expect(html).toContain('>4 Thimble Lane<br>Quillmarsh</p>');
    expect(html).toMatch(/<dt>Owner<\/dt><dd[^>]*>A\. Owner<\/dd>/);
    expect(html).toContain('<dt>Drawn</dt><dd>Desk</dd>');
    expect(html).toMatch(/<dt>Parcel<\/dt><dd[^>]*><\/dd>/);
  });
});

describe('the appendix of the permit sheets', () => {
  it('is there when it is asked for, with what is asked for', async () => {
    const appendix = async (more: Partial<DocumentContext>): Promise<string | undefined> =>
      (await renderDocuments(housePlan(), { ...context, ...more })).find(
        (d) => d.fileName === 'permit-appendix.pdf',
      )?.html;
    expect(await appendix({})).toBeUndefined();
    expect(await appendix({ appendices: ['rejected', 'trace', 'bare'] })).toBeUndefined();
    const working = await appendix({ appendices: ['working'] });
    expect(working).toContain('<h2>Calculations</h2>');
    expect(working).not.toContain('<h2>Where each value comes from</h2>');
    const sources = await appendix({ appendices: ['sources'] });
    expect(sources).toContain('†');
    expect(sources).not.toMatch(/\((?:place|rate|wire|indicate)\/[a-z-]+\)/);
    const sheets = await appendix({ dataSheets: [] });
    expect(sheets).toContain('To follow: ');
  });
});

describe('what is asked for behind the crew’s pack', () => {
  const IDS = ['rejected', 'trace', 'bare'] as const;

  it.each(IDS)('%s is there when it is asked for, in the contents too, and not else', async (id) => {
    const has = async (appendices: readonly (typeof IDS)[number][]): Promise<boolean[]> => {
      const { html } = await renderDocument('closeout-pack', housePlan(), { ...context, appendices });
      return [html.includes(`<section id="${id}"`), html.includes(`<a href="#${id}">`)];
    };
    expect(await has([id])).toEqual([true, true]);
    expect(await has(IDS.filter((other) => other !== id))).toEqual([false, false]);
  });

  it('leaves the office’s items off the paper', async () => {
    const plan = draftPlan();
    const item = plan.openItems.find(({ severity }) => severity !== 'confirm');
    if (!item) throw new Error('a draft has an item');
    const { html } = await renderDocument('closeout-pack', plan, context);
    expect(html).not.toContain(item.file);
    expect(html).toContain('missing or in conflict');
  });
});
