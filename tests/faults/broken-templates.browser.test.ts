import { mkdir, readdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runBatch } from '../../src/batch/run-batch.js';
import { browserProcesses, until } from '../print/browser-processes.js';
import { filesBelow, listOf, smallSteps, workshop, type Workshop } from '../batch/stand-ins.js';
import { differences, writeLists } from './program.js';

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
});
afterEach(() => shop.remove());

/** A folder of templates with one of them replaced. */
async function templatesWith(name: string, text: string): Promise<string> {
  const folder = join(shop.folder, 'templates');
  await mkdir(join(folder, name), { recursive: true });
  await writeFile(join(folder, name, 'document.hbs'), text);
  return folder;
}

describe('a template', () => {
  it('that throws fails the jobs that use it, and leaves the packs that were there', async () => {
    await writeLists(shop.lists, 2);
    expect((await runBatch(shop.options())).jobs.map((j) => j.status)).toEqual(['complete', 'complete']);
    const before = await filesBelow(shop.out);
    const templates = await templatesWith('labels', '<p>{{nothing.of.that.name}}</p>');
    const result = await runBatch(shop.options({ templates }));
    expect(result.exitStatus).toBe(70);
    expect(result.jobs.map((j) => `${j.status} ${j.done}`)).toEqual(['failed nothing', 'failed nothing']);
    expect(
      result.items.filter(({ item }) => item.severity === 'conflict').map(({ item }) => item.code),
    ).toEqual(['documents/template', 'documents/template']);
    const packs = differences(await filesBelow(shop.out), before).filter((name) => name.includes('/'));
    expect(packs).toEqual([]);
  });

  it('that calls itself for ever ends as one that throws', async () => {
    await writeLists(shop.lists, 1);
    const templates = await templatesWith('labels', '{{> again}}');
    await mkdir(join(templates, 'partials'));
    await writeFile(join(templates, 'partials', 'again.hbs'), 'x{{> again}}');
    const result = await runBatch(shop.options({ templates }));
    expect(result.exitStatus).toBe(70);
    expect(result.items.map(({ item }) => item.code)).toContain('documents/template');
  });

  it('whose page never finishes is given up, and the other jobs are printed', async () => {
    await shop.write('jobs.csv', listOf(['A-1', 'A-2', 'A-3']));
    // Each level draws the one below ten times: 10^12 shapes, for a page that runs no script at all.
    const levels = Array.from(
      { length: 12 },
      (_, i) => `<g id="l${i + 1}">${`<use href="#l${i}"/>`.repeat(10)}</g>`,
    );
    const endless = `<!doctype html><html lang="en"><head><title>endless</title></head><body><svg><defs><g id="l0"><rect width="1" height="1"/></g>${levels.join('')}</defs><use href="#l12"/></svg></body></html>`;
    const renderDocuments: typeof smallSteps.renderDocuments = async (plan, context) => {
      const documents = await smallSteps.renderDocuments(plan, context);
      // One of its two documents: each that never finishes keeps a core busy until its limit.
      return documents.map((d, index) => (plan.job === 'A-2' && index === 0 ? { ...d, html: endless } : d));
    };
    const result = await runBatch(shop.options({ documentTimeout: 4_000 }), {
      ...smallSteps,
      renderDocuments,
    });
    expect(result.jobs.map((j) => `${j.job} ${j.status}`)).toEqual([
      'A-1 complete',
      'A-2 failed',
      'A-3 complete',
    ]);
    expect(result.items.map(({ item }) => item.code)).toContain('print/document-failed');
    expect(result.exitStatus).toBe(70);
    expect((await readdir(shop.out)).filter((n) => n.startsWith('A-'))).toEqual(['A-1', 'A-3']);
    await until(() => browserProcesses().length === 0);
  });
});

describe('a list', () => {
  it('that is deleted while the lists are read is told, and the others are made', async () => {
    await shop.write('b.csv', listOf(['B-1']));
    await shop.write('c.csv', listOf(['C-1']));
    const lists = ['-', join(shop.lists, 'b.csv'), join(shop.lists, 'c.csv')];
    const stdin = async (): Promise<Uint8Array> => {
      await rm(join(shop.lists, 'b.csv'));
      return Buffer.from(listOf(['A-1']));
    };
    const result = await runBatch(shop.options({ lists, stdin }), smallSteps);
    expect(result.jobs.map((j) => `${j.job} ${j.status}`)).toEqual(['A-1 complete', 'C-1 complete']);
    expect(result.exitStatus).toBe(2);
    expect(result.unreadable.map((item) => item.file)).toEqual(['b.csv']);
  });
});

describe('an output folder', () => {
  it('that is a file is told in one message', async () => {
    await shop.write('a.csv', listOf(['A-1']));
    await writeFile(shop.out, 'a file');
    await expect(runBatch(shop.options(), smallSteps)).rejects.toMatchObject({
      exitStatus: 70,
      note: { code: 'output/not-written' },
    });
  });
});
