import { saidOf } from '../told.js';
import { mkdir, readFile, readdir, stat, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { PDFParse } from '../../bench/pdf-readers.mjs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runBatch } from '../../src/batch/run-batch.js';
import { listOf, smallSteps, workshop, type Workshop } from './stand-ins.js';

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
});
afterEach(() => shop.remove());

/** The text of every file below a folder, our own records and the text of PDFs included. */
async function texts(folder: string): Promise<ReadonlyMap<string, string>> {
  const found = new Map<string, string>();
  for (const name of await readdir(folder, { recursive: true })) {
    const path = join(folder, name);
    if (!(await stat(path)).isFile()) continue;
    const bytes = await readFile(path);
    found.set(name, name.endsWith('.pdf') ? await pdfText(bytes) : bytes.toString('utf8'));
  }
  return found;
}

async function pdfText(bytes: Uint8Array): Promise<string> {
  const parser = new PDFParse({ data: Uint8Array.from(bytes) });
  const { text } = await parser.getText();
  const told = JSON.stringify((await parser.getInfo()).info);
  await parser.destroy();
  return `${text.replace(/\s+/g, '')} ${told}`;
}

const LIST = `job,tag,kind,maker,model,connects_to,run_length,ac_in,lowest_temp,place
A-1,SVC,service,,,,,120/240,-18 C,House
A-1,MP,panel,,,SVC,long,120/240,,House
A-1,INV,grid-tie-inverter,Nobody,N-1,MP,24 ft,,,House
A-1,ARR,array,Glimmerleaf,GL-331,INV,60 ft,,,Roof
A-1,ARR,array,Glimmerleaf,GL-330,INV,60 ft,,,Roof
`;
const LIBRARY = `maker,model,kind,voc_stc,voc_coefficient
Glimmerleaf,GL-330,array,41.2,-0.115 V/C
Glimmerleaf,,array,x,
`;

/** A folder of lists with a fault in every file, so that every kind of file is named somewhere. */
async function faultyLists(): Promise<void> {
  await shop.write('house.csv', LIST);
  await shop.write('other/house.csv', LIST.replaceAll('A-1', 'A-2').replace('SVC,service', 'SVC,nothing'));
  await shop.write('empty.csv', '');
  await shop.write('library.csv', LIBRARY);
  await shop.write(
    'catalogue.csv',
    'part,maker,channels,mcov_ac,up,in_ka\nQP-1,Quill,2,150,600,20\nQP-1,Quill,x,,,\n',
  );
  await shop.write('settings.json', '{ "company": { "logo": "none.png" } }');
  await shop.write('facts.csv', 'job,lowest_temp\nA-1,-20 C\nZ-9,-1\n');
}

describe('what a run writes', () => {
  it('names no folder of the machine where the lists are given by absolute paths', async () => {
    await faultyLists();
    await mkdir(join(shop.folder, 'photos', 'A-1'), { recursive: true });
    await writeFile(join(shop.folder, 'photos', 'A-1', 'stray.jpg'), 'x');
    const result = await runBatch(
      shop.options({
        lists: [shop.lists, join(shop.lists, 'other', 'house.csv'), join(shop.folder, 'none.csv')],
        jobFacts: join(shop.lists, 'facts.csv'),
        photos: join(shop.folder, 'photos'),
        appendices: ['trace'],
      }),
    );
    expect(result.jobs.map((j) => `${j.job} ${j.done}`)).toEqual(['A-1 printed', 'A-2 printed']);
    const written = await texts(shop.out);
    for (const name of ['A-1/plan.json', 'A-1/closeout-pack.pdf', 'report.html', '.shuntbook/packs.ndjson'])
      expect(written.get(name)).toContain('house.csv');
    const items = written.get('open-items.csv') ?? '';
    for (const name of [
      'house.csv',
      'house.csv (2)',
      'empty.csv',
      'library.csv',
      'catalogue.csv',
      'settings.json',
      'facts.csv',
      'none.csv',
    ])
      expect(items).toContain(name);
    for (const [name, text] of written)
      expect(text.includes(shop.folder), `${name} names ${shop.folder}`).toBe(false);
  });

  it('names files as they were given where they lie below the working folder', async () => {
    await shop.write('house.csv', LIST);
    const given = relative(process.cwd(), join(shop.lists, 'house.csv'));
    await runBatch(shop.options({ make: 'plan', lists: [given] }), smallSteps);
    // The folder of the test lies elsewhere.
    expect(given.startsWith('..')).toBe(true);
    expect(await shop.read('A-1/plan.json')).toContain('"file": "house.csv"');
  });

  it('names none where a file of settings or a column map ends the run', async () => {
    await shop.write('a.csv', listOf(['A-1']));
    await shop.write('settings.json', '{ "nothing": 1, ');
    const result = await runBatch(shop.options());
    expect(JSON.stringify(result.items)).toContain('settings.json');
    expect(JSON.stringify(result.items)).not.toContain(shop.folder);
  });

  it('names none where a job fails, and the screen is told the whole of it', async () => {
    await shop.write('a.csv', listOf(['A-1', 'A-2']));
    await mkdir(join(shop.out, 'A-2'), { recursive: true });
    await mkdir(join(shop.out, 'A-2', 'plan.json'));
    const planJob: typeof smallSteps.planJob = (job, context) => {
      if (job.job === 'A-1')
        throw new Error(`ENOENT: no such file or directory, open '${shop.folder}/x y/z.csv'`);
      return smallSteps.planJob(job, context);
    };
    const told: string[] = [];
    const result = await runBatch(shop.options({ onNotice: (n) => told.push(saidOf(n).message ?? '') }), {
      ...smallSteps,
      planJob,
    });
    expect(result.jobs.map((j) => j.status)).toEqual(['failed', 'failed']);
    const written = await texts(shop.out);
    expect(written.get('open-items.csv')).toContain('z.csv');
    for (const [name, text] of written) expect(text.includes(shop.folder), name).toBe(false);
    expect(told.filter((message) => message.includes(shop.folder))).toHaveLength(2);
  });
});
