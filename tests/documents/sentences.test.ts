import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { DOCUMENT_KINDS, documentsLeftOut } from '../../src/documents/parts/context.js';
import type { JobItem, Plan } from '../../src/index.js';
import type * as Conductors from '../../src/words/conductors.js';
import type * as Gap from '../../src/words/gap.js';
import type * as Lengths from '../../src/words/lengths.js';
import type * as Told from '../../src/words/messages/told.js';
import type * as Origin from '../../src/words/origin.js';
import type * as Protectors from '../../src/words/protectors.js';
import type * as Say from '../../src/words/reasons/say.js';
import type * as SharedFact from '../../src/words/shared-fact.js';
import type * as Standard from '../../src/words/standard.js';
import type * as Steps from '../../src/words/steps/told.js';
import { setByHand } from './fixtures/set-by-hand.js';

// Every text that words/ makes of data gives way to a code (`codes.ts`), each time another one. Where its English is put back in the
// finished document, the document must be what it is in English: then nothing in it was decided, grouped or put in order by a sentence.

const codes = await vi.hoisted(() => import('./codes.js'));

vi.mock('../../src/words/reasons/say.js', async (original) => {
  const actual = await original<typeof Say>();
  const say: typeof Say.say = (of, language) =>
    codes.replaced(
      () => actual.say(of, language),
      (text) => codes.standIn(text, `reason:${typeof of === 'string' ? '' : of.code}`) as typeof text,
    );
  return { ...actual, say };
});
vi.mock('../../src/words/messages/told.js', async (original) => {
  const actual = await original<typeof Told>();
  const told: typeof Told.told = (note) =>
    codes.replaced(
      () => actual.told(note),
      (parts) => codes.each(`message:${note.code}`, parts),
    );
  return { ...actual, told };
});
vi.mock('../../src/words/steps/told.js', async (original) => {
  const actual = await original<typeof Steps>();
  const stepTold: typeof Steps.stepTold = (step, language) =>
    codes.replaced(
      () => actual.stepTold(step, language),
      (parts) => codes.each(`step:${step.code}`, parts),
    );
  return { ...actual, stepTold };
});
vi.mock('../../src/words/shared-fact.js', async (original) => {
  const actual = await original<typeof SharedFact>();
  const sharedFact: typeof SharedFact.sharedFact = (item) =>
    codes.replaced(
      () => actual.sharedFact(item),
      (fact) => ({ ...fact, says: codes.standIn(fact.says, `fact:${item.code}`) as typeof fact.says }),
    );
  return { ...actual, sharedFact };
});
vi.mock('../../src/words/gap.js', async (original) => {
  const actual = await original<typeof Gap>();
  const gapOf: typeof Gap.gapOf = (item) =>
    codes.replaced(
      () => actual.gapOf(item),
      (gap) => (gap === null ? null : codes.each('gap:', gap)),
    );
  return { ...actual, gapOf };
});
vi.mock('../../src/words/conductors.js', async (original) => {
  const actual = await original<typeof Conductors>();
  return {
    conductorText: codes.texts('conductor', actual.conductorText),
    channelText: codes.texts('conductor', actual.channelText),
  };
});
vi.mock('../../src/words/origin.js', async (original) => {
  const { placeText, cited } = await original<typeof Origin>();
  return { placeText: codes.texts('place', placeText), cited: codes.texts('origin', cited) };
});
vi.mock('../../src/words/protectors.js', async (original) => {
  const actual = await original<typeof Protectors>();
  const { systemText, groundingName } = actual;
  return {
    ...actual,
    systemText: codes.texts('system', systemText),
    groundingName: codes.texts('grounding', groundingName),
  };
});
vi.mock('../../src/words/standard.js', async (original) => {
  const { standardName } = await original<typeof Standard>();
  return { standardName: codes.texts('standard', standardName) };
});
vi.mock('../../src/words/lengths.js', async (original) => {
  const actual = await original<typeof Lengths>();
  const { runLength, leadLength } = actual;
  return {
    ...actual,
    runLength: codes.texts('length', runLength),
    leadLength: codes.texts('length', leadLength),
  };
});

// Sources that another test file of this worker loaded would say sentences as they are; and none after this one gets these.
vi.resetModules();
const { APPENDICES } = await import('../../src/model/appendices.js');
const { planJob, readInputs, renderDocuments } = await import('../../src/index.js');
const { changesSince, runToKeep } = await import('../../src/batch/last-run.js');
const { reportPage } = await import('../../src/batch/report-page.js');
const { planJson } = await import('../../src/output/plan-file.js');
const { say } = await import('../../src/words/reasons/say.js');
const { conductorText } = await import('../../src/words/conductors.js');
const { stepTold } = await import('../../src/words/steps/told.js');
const { gapOf } = await import('../../src/words/gap.js');
const { sharedFact } = await import('../../src/words/shared-fact.js');
const { placeText } = await import('../../src/words/origin.js');

const folder = mkdtempSync(join(tmpdir(), 'shuntbook-sentences-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
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
const plans = jobs.map(({ job, inputs }) => planJob(job, inputs));
const texts = plans.map((plan) => JSON.stringify(plan));
const fonts = { css: () => '', covers: (codePoint: number) => codePoint < 0x2700 };

/** What tells a plan from others: all of it but the job's id, and the file and line of its rows. */
const kindOf = (plan: Plan, text: string): string =>
  text
    .replaceAll(plan.job, 'JOB')
    .replace(/"(line|file)":(?:\d+|"[^"]*"|\{[^{}]*\})/g, '"$1":null')
    .replace(/(?:fixtures\/demo\/)?(off-grid|grid|country)(?:-\d+)?\.csv(?:, line \d+)?/g, '$1');

/** The first job of each kind of plan. */
const kinds = new Map(
  plans.map((plan, index) => [kindOf(plan, texts[index] ?? ''), index] as const).reverse(),
);

/** The documents of a job beside those of the job before it as its last pack. */
async function documents(index: number): Promise<string[]> {
  const [plan, inputs, previous] = [plans[index], jobs[index]?.inputs, plans[Math.max(index - 1, 0)]];
  if (!plan || !inputs || !previous) throw new Error(`no job ${index}`);
  const context = {
    settings: inputs.settings,
    date: '2026-01-01',
    fonts,
    measure: setByHand,
    previous,
    appendices: APPENDICES,
  };
  return (await renderDocuments(plan, context)).map(({ fileName, html }) => `${fileName}\n${html}`);
}

/** What the report of a batch is made of. */
const itemsOf = (some: readonly Plan[]): JobItem[] =>
  some.flatMap((plan) => plan.openItems.map((item) => ({ job: plan.job, item })));

describe('documents and plans, with every sentence replaced by its code', () => {
  it('has the demo and 200 generated jobs, and the documents of each kind of plan', () => {
    expect(jobs.length).toBeGreaterThanOrEqual(214);
    expect(kinds.size).toBeGreaterThanOrEqual(50);
  });

  it.each(jobs.map(({ job }, index) => [job.job, index] as const))(
    'the plan of %s is the same',
    (_, index) => {
      const { job, inputs } = jobs[index] ?? {};
      if (!job || !inputs) throw new Error(`no job ${index}`);
      const english = texts[index] ?? '';
      const ofCodes = codes.withCodes(() => JSON.stringify(planJob(job, inputs)));
      expect(english.length).toBeGreaterThan(1000);
      expect(codes.inEnglish(ofCodes)).toBe(english);
    },
  );

  it.each([...kinds.values()].sort((a, b) => a - b).map((index) => [plans[index]?.job, index] as const))(
    'plan.json and documents of %s are the same',
    async (_, index) => {
      const { english, ofCodes, replaced } = await codes.bothWays(async () => [
        ...plans.slice(index, index + 1).map(planJson),
        ...(await documents(index)),
      ]);
      const leftOut = plans.slice(index, index + 1).flatMap(documentsLeftOut);
      expect(english).toHaveLength(2 + DOCUMENT_KINDS.length - leftOut.length);
      expect(ofCodes).toEqual(english);
      expect(replaced).toBeGreaterThan(100);
    },
  );

  it('the report of the batch is the same', async () => {
    const { english, ofCodes, replaced } = await codes.bothWays(async () => {
      const [before, now] = [plans.slice(0, 100), plans.slice(50)].map((some) => {
        const items = itemsOf(some).map(({ item }, n) => ({ job: `J-${n % 9}`, item }));
        const lines = some.map((_, n) => ({ job: `J-${n % 9}`, status: 'draft' }));
        return runToKeep('2026-01-01', lines as never, items);
      });
      if (before === undefined || now === undefined) throw new Error('two runs');
      const changes = changesSince(before, now);
      expect(changes.length).toBeGreaterThan(0);
      return [
        await reportPage(
          {
            date: '2026-01-01',
            lists: { all: 1, unreadable: 0 },
            orders: [],
            otherUnreadable: 0,
            jobs: [],
            items: itemsOf(plans),
            models: [],
            changes,
            all: 0,
          },
          undefined,
        ),
      ];
    });
    expect(ofCodes).toEqual(english);
    expect(replaced).toBeGreaterThan(100);
  });

  it('has replaced texts of each kind', () => {
    expect([...codes.made].sort()).toEqual(
      'conductor fact grounding length message origin place reason standard step system'.split(' '),
    );
  });
});

describe('a document that looks into a sentence', () => {
  const conductorsOf = (plan: Plan): string[] =>
    plan.protectors.flatMap((p) => p.channels.map((c) => conductorText(c.wire)));
  const stepsOf = (plan: Plan) =>
    plan.protectors.flatMap((p) => p.calculations.flatMap((c) => c.steps.map((s) => stepTold(s))));
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
    'for the colour of a conductor': (plan) =>
      conductorsOf(plan)
        .map((text) => (text.endsWith('N') ? 'white' : 'black'))
        .join(),
    'to count conductors': (plan) => String(new Set(conductorsOf(plan)).size),
    'for a stated figure': (plan) =>
      String(stepsOf(plan).filter(({ sourced }) => sourced.startsWith('stated')).length),
    'for calculations that print alike': (plan) =>
      String(new Set(stepsOf(plan).map((words) => JSON.stringify(words))).size),
    'for a gap of the catalogue': (plan) =>
      plan.openItems.map((item) => gapOf(item)?.says.endsWith('stated')).join(),
    'for a fact that jobs share': (plan) =>
      plan.openItems.map((item) => sharedFact(item).says.endsWith('there.')).join(),
    'to count facts': (plan) => String(new Set(plan.openItems.map((item) => sharedFact(item).says)).size),
    'for the file of an item': (plan) => plan.openItems.map((item) => placeText(item).split(',')[0]).join(),
  };

  it.each(Object.entries(lookers))('%s is caught', async (_, look) => {
    const found = [];
    for (const plan of plans.slice(0, 14)) {
      const { english, ofCodes } = await codes.bothWays(() => Promise.resolve([look(plan)]));
      found.push(english.join() !== ofCodes.join());
    }
    expect(found).toContain(true);
  });
});
