import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { changesSince, runToKeep } from '../../src/batch/last-run.js';
import { reportPage } from '../../src/batch/report-page.js';
import { planJob, readInputs, renderDocuments, type JobItem, type Plan } from '../../src/index.js';
import type * as Told from '../../src/words/messages/told.js';
import type * as Say from '../../src/words/reasons/say.js';
import { say } from '../../src/words/reasons/say.js';

// Every sentence of a reason or a message gives way to its code, each time another one. Where its English is put back in the finished
// document, the document must be what it is in English: then nothing in it was decided, grouped or put in order by a sentence.

const codes = vi.hoisted(() => {
  // The quick tests of a worker share its modules: one that was loaded before holds the real sentences, whatever is mocked.
  vi.resetModules();
  const english: string[] = [];
  const state = { on: false };
  const standIn = (sentence: string, code: string): string =>
    // What isn't said is no sentence.
    !state.on || sentence === '' ? sentence : `\uE000${code}#${english.push(sentence) - 1}\uE001`;
  return { english, state, standIn };
});

vi.mock('../../src/words/reasons/say.js', async (original) => {
  const actual = await original<typeof Say>();
  const replaced: typeof Say.say = (of, language) =>
    codes.standIn(actual.say(of, language), typeof of === 'string' ? 'text' : of.code) as ReturnType<
      typeof Say.say
    >;
  return { ...actual, say: replaced };
});

vi.mock('../../src/words/messages/told.js', async (original) => {
  const actual = await original<typeof Told>();
  const replaced: typeof Told.told = (note) => {
    const parts = Object.entries(actual.told(note));
    return Object.fromEntries(
      parts.map(([part, sentence]) => [part, codes.standIn(String(sentence), `${note.code}.${part}`)]),
    ) as unknown as ReturnType<typeof Told.told>;
  };
  return { ...actual, told: replaced };
});

/** Puts the English of each code back, of those inside a sentence too. */
function inEnglish(text: string): string {
  const back = text.replace(
    /\uE000[^\uE000\uE001]*#(\d+)\uE001/g,
    (_, n: string) => codes.english[Number(n)] ?? '?',
  );
  return back === text ? text : inEnglish(back);
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };
const decoded = (html: string): string =>
  html.replace(
    /&(?:#x([0-9A-F]+)|#(\d+)|(\w+));/gi,
    (whole, hex?: string, decimal?: string, name?: string) =>
      hex !== undefined
        ? String.fromCodePoint(parseInt(hex, 16))
        : decimal !== undefined
          ? String.fromCodePoint(Number(decimal))
          : (ENTITIES[name ?? ''] ?? whole),
  );

/** A document in English whatever its sentences were, without what only the length of a text decides: breaks of lines, sizes. */
function compared(html: string): string {
  return html
    .replace(/<section class="note (?:usual|dense|densest)"/g, '<section class="note"')
    .split(/(<svg class="housing"[^]*?<\/svg>)/)
    .map((part, index) =>
      index % 2 === 0
        ? inEnglish(decoded(part))
        : inEnglish(decoded(part.replace(/<[^>]*>/g, ''))).replace(/\s+/g, ''),
    )
    .join('');
}

type Made = () => Promise<readonly string[]>;

/** What is made in English, and what is made of codes with the English put back. */
async function bothWays(make: Made): Promise<{ english: string[]; ofCodes: string[]; replaced: number }> {
  codes.state.on = false;
  const english = (await make()).map(compared);
  codes.english.length = 0;
  codes.state.on = true;
  try {
    const ofCodes = (await make()).map(compared);
    return { english, ofCodes, replaced: codes.english.length };
  } finally {
    codes.state.on = false;
  }
}

const folder = mkdtempSync(join(tmpdir(), 'shuntbook-sentences-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
  vi.doUnmock('../../src/words/reasons/say.js');
  vi.doUnmock('../../src/words/messages/told.js');
  vi.resetModules();
});
const generate = (await import(new URL('../../bench/generate.mjs', import.meta.url).href)) as {
  writeBatch: (folder: string, jobs: number) => string[];
};
generate.writeBatch(folder, 200);
const batches = await Promise.all(
  ['fixtures/demo', folder].map((list) =>
    readInputs({ make: 'pack', lists: [list], date: '2026-01-01', dateGiven: true }),
  ),
);
const jobs = batches.flatMap((inputs) => inputs.jobs.map((job) => ({ job, inputs })));
const fonts = { css: '', covers: (codePoint: number) => codePoint < 0x2700 };

const made = new Map<number, Plan>();

/** The plan of a job, and its documents beside those of the job before it as its last pack. */
function pack(index: number): { plan: Plan; documents: () => Promise<string[]> } {
  const one = jobs[index];
  if (one === undefined) throw new Error(`no job ${index}`);
  const plan = planJob(one.job, one.inputs);
  const previous = made.get(index - 1) ?? plan;
  made.set(index, plan);
  const context = { settings: one.inputs.settings, date: '2026-01-01', fonts, previous };
  const documents = async (): Promise<string[]> =>
    (await renderDocuments(plan, context)).map(({ fileName, html }) => `${fileName}\n${html}`);
  return { plan, documents };
}

/** What the report of a batch is made of. */
const itemsOf = (plans: readonly Plan[]): JobItem[] =>
  plans.flatMap((plan) => plan.openItems.map((item) => ({ job: plan.job, item })));

describe('documents and plans, with every sentence replaced by its code', () => {
  it('has the demo and 200 generated jobs', () => {
    expect(jobs.length).toBeGreaterThanOrEqual(214);
  });

  it.each(jobs.map(({ job }, index) => [job.job, index] as const))('%s is the same', async (_, index) => {
    const { english, ofCodes, replaced } = await bothWays(async () => {
      const { plan, documents } = pack(index);
      return [JSON.stringify(plan), ...(await documents())];
    });
    expect(english).toHaveLength(5);
    expect(ofCodes).toEqual(english);
    expect(replaced).toBeGreaterThan(0);
  });

  it('the report of the batch is the same', async () => {
    const { english, ofCodes, replaced } = await bothWays(async () => {
      const plans = jobs.map(({ job, inputs }) => planJob(job, inputs));
      const [before, now] = [plans.slice(0, 100), plans.slice(50)].map((some) => {
        const items = itemsOf(some).map(({ item }, n) => ({ job: `J-${n % 9}`, item }));
        const lines = some.map((_, n) => ({ job: `J-${n % 9}`, status: 'draft' }));
        return runToKeep('2026-01-01', lines as never, items);
      });
      if (before === undefined || now === undefined) throw new Error('two runs');
      const changes = changesSince(before, now);
      expect(changes.length).toBeGreaterThan(0);
      return [
        await reportPage({ date: '2026-01-01', jobs: [], items: itemsOf(plans), changes, all: 0 }, undefined),
      ];
    });
    expect(ofCodes).toEqual(english);
    expect(replaced).toBeGreaterThan(100);
  });
});

describe('a document that looks into a sentence', () => {
  const lookers: Readonly<Record<string, (plan: Plan) => string>> = {
    'for its first words': (plan) =>
      plan.notPlaced.map((n) => (say(n.because).startsWith('it') ? 'open' : 'closed')).join(),
    'for its length': (plan) => plan.notPlaced.map((n) => say(n.because).length > 40).join(),
    'to put rows in order': (plan) =>
      plan.notPlaced
        .map((n) => `${say(n.because)} ${n.port}`)
        .sort()
        .join(),
    'to bring like ones together': (plan) => String(new Set(plan.notPlaced.map((n) => say(n.because))).size),
  };

  it.each(Object.entries(lookers))('%s is caught', async (_, look) => {
    const found = [];
    for (const { job, inputs } of jobs.slice(0, 14)) {
      const { english, ofCodes } = await bothWays(() => Promise.resolve([look(planJob(job, inputs))]));
      found.push(english.join() !== ofCodes.join());
    }
    expect(found).toContain(true);
  });
});
