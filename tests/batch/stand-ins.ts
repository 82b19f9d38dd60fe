import { saying } from '../in-english.js';
import { mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { BatchSteps } from '../../src/batch/batch-context.js';
import type { BatchOptions } from '../../src/batch/batch-options.js';
import type { JobList } from '../../src/model/list.js';
import type { Plan } from '../../src/model/plan.js';
import type { RenderedDocument } from '../../src/model/print.js';

/** A plan that holds what the batch looks at: made from nothing but the job's rows, so that tests know what to expect. */
export function smallPlan(job: JobList): Plan {
  const tags = job.rows.map((row) => row.facts.tag?.value ?? '');
  const missing = job.rows.filter((row) => row.facts.kind === undefined);
  return {
    version: 2,
    job: job.job,
    jobName: job.facts.job_name?.value ?? '',
    address: '',
    basis: 'nec-2023',
    earthing: 'TN',
    occupancy: 'dwelling',
    revision: '',
    ownerLanguage: 'en',
    submittable: missing.length === 0,
    facts: [],
    site: {
      equipments: job.rows.map((row) => ({
        tag: row.facts.tag?.value ?? '',
        kind: row.facts.kind?.value ?? 'other',
        maker: '',
        model: '',
        description: row.facts.description?.value ?? '',
        place: '',
        building: '',
        outdoors: false,
        worthProtecting: true,
        file: row.sheet.file,
        line: row.line,
        ports: [],
        facts: [],
      })),
      runs: [],
    },
    protectors: [],
    isolation: { parts: [] },
    notPlaced: [],
    otherClauses: [],
    standings: [],
    settled: [],
    openItems: missing.map((row) => ({
      code: 'test/no-kind',
      severity: 'missing',
      values: saying('The row has no kind.', { expected: 'a kind', hint: 'Add it.' }),
      equipment: row.facts.tag?.value ?? '',
      file: row.sheet.file,
      line: row.line,
      column: 'kind',
      who: 'designer',
    })),
    orders: tags.includes('CC-1') ? [{ part: 'QP-150', quantity: 1 }] : [],
    clauses: [],
    siteCalculations: [],
  };
}

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;');

/** Two documents of a page each. */
export const smallDocuments: BatchSteps['renderDocuments'] = (plan, context) =>
  Promise.resolve(
    ['closeout-pack', 'labels'].map((name): RenderedDocument => {
      const changed = context.previous ? `was ${context.previous.jobName}` : 'first pack';
      const photos =
        context.photos?.map((photo) => `<img alt="${photo.tag}" src="${photo.dataUrl}">`).join('') ?? '';
      const lines = plan.site.equipments
        .map((e) => `<li>${escaped(`${e.tag} ${e.description}`)}</li>`)
        .join('');
      return {
        fileName: `${name}.pdf`,
        html: `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${name}</title><style>@page { size: letter; margin: 20mm } body { font-family: "DejaVu Sans" }</style></head>
          <body><h1>${escaped(plan.jobName)} ${name}</h1><p>${context.date}, ${changed}</p><ul>${lines}</ul>${photos}</body></html>`,
        metadata: { title: `${plan.job} ${name}`, author: '', subject: '', keywords: [], language: 'en' },
      };
    }),
  );

export const smallSteps: BatchSteps = { planJob: smallPlan, renderDocuments: smallDocuments };

/** A folder of lists and an output folder that go away with the test. */
export interface Workshop {
  readonly folder: string;
  readonly lists: string;
  readonly out: string;
  readonly options: (more?: Partial<BatchOptions>) => BatchOptions;
  /** Writes a file below the folder of lists. */
  readonly write: (name: string, text: string) => Promise<void>;
  readonly read: (name: string) => Promise<string>;
  /** Every file below the output folder with its bytes, but our own records. */
  readonly tree: () => Promise<ReadonlyMap<string, Buffer>>;
  readonly remove: () => Promise<void>;
}

export async function workshop(): Promise<Workshop> {
  const folder = await mkdtemp(join(tmpdir(), 'shuntbook-batch-'));
  const lists = join(folder, 'lists');
  const out = join(folder, 'out');
  await mkdir(lists);
  // What a company is asked for until it says it.
  const company = { phone: '555-0100', licence: 'INVENTED-0001' };
  await writeFile(join(lists, 'settings.json'), JSON.stringify({ company }));
  return {
    folder,
    lists,
    out,
    options: (more = {}) => ({
      make: 'pack',
      lists: [lists],
      out,
      date: '2026-05-06',
      dateGiven: false,
      ...more,
    }),
    write: async (name, text) => {
      await mkdir(dirname(join(lists, name)), { recursive: true });
      await writeFile(join(lists, name), text);
    },
    read: (name) => readFile(join(out, name), 'utf8'),
    tree: () => filesBelow(out),
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}

/** Every file below a folder with its bytes, less our own records. */
export async function filesBelow(folder: string): Promise<ReadonlyMap<string, Buffer>> {
  const names = (await readdir(folder, { recursive: true }))
    .filter((name) => !name.startsWith('.shuntbook/'))
    .sort();
  const files = new Map<string, Buffer>();
  for (const name of names) {
    const path = join(folder, name);
    if ((await stat(path)).isFile()) files.set(name, await readFile(path));
  }
  return files;
}

/** A list of jobs, each with a row or two. */
export function listOf(jobs: readonly string[], name = 'Barn'): string {
  const rows = jobs.flatMap((job) => [
    `${job},${name} ${job},CC-1,charge-controller,of ${job}`,
    `${job},,B-1,battery,`,
  ]);
  return ['job,job_name,tag,kind,description', ...rows, ''].join('\n');
}
