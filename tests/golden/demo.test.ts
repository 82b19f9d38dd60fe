import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { planJob, planJson, readInputs, type Plan } from '../../src/index.js';
import { digest, type Digest } from './digest.js';

// Every job of the demo, from its list to its plan. `npm run golden:update` writes what comes out now: read the diff.
const FOLDER = fileURLToPath(new URL('.', import.meta.url));
const UPDATE = process.env['UPDATE_GOLDEN'] === '1';
const LISTS = 'fixtures/demo';
// Kept whole, since they differ in kind: batteries beside the utility, a turbine on a battery, control circuits, a draft,
// IEC on TT earthing. Of the others a digest.
const WHOLE = ['UF-103', 'UF-105', 'UF-106', 'UF-110', 'UF-114'];
const DIGESTS = `${FOLDER}digests.json`;

const inputs = await readInputs({ make: 'plan', lists: [LISTS], date: '2026-01-01', dateGiven: true });
const plans = new Map<string, Plan>(
  inputs.jobs.map((job) => [
    job.job,
    planJob(job, { catalogue: inputs.catalogue, settings: inputs.settings }),
  ]),
);

if (UPDATE) {
  for (const name of readdirSync(FOLDER).filter((n) => n.endsWith('.json'))) rmSync(`${FOLDER}${name}`);
  for (const job of WHOLE) writeFileSync(`${FOLDER}${job}.json`, planJson(planOf(job)));
  const others = [...plans].filter(([job]) => !WHOLE.includes(job));
  const digests = Object.fromEntries(others.map(([job, plan]) => [job, digest(plan)]));
  writeFileSync(DIGESTS, `${JSON.stringify(digests, null, 2)}\n`);
}

const digests = JSON.parse(readFileSync(DIGESTS, 'utf8')) as Readonly<Record<string, Digest>>;

function planOf(job: string): Plan {
  const plan = plans.get(job);
  if (!plan) throw new Error(`the demo has no job ${job}`);
  return plan;
}

describe('the golden run', () => {
  it('reads every list of the demo without an item of its own', () => {
    expect(inputs.unreadable).toEqual([]);
    expect(inputs.items).toEqual([]);
  });

  it('has a plan or a digest for every job, and a job for each of them', () => {
    const saved = readdirSync(FOLDER).filter((n) => n.endsWith('.json'));
    expect(saved.toSorted()).toEqual([...WHOLE.map((job) => `${job}.json`), 'digests.json'].toSorted());
    expect([...WHOLE, ...Object.keys(digests)].toSorted()).toEqual([...plans.keys()].toSorted());
  });

  it.each([...plans].filter(([job]) => !WHOLE.includes(job)))(
    'plans %s with the digest of before',
    (job, plan) => {
      const why = `another hash is another text or figure in that part: plan fixtures/demo with this commit and the one before, and compare ${job}/plan.json`;
      expect(digest(plan), why).toEqual(digests[job]);
    },
  );

  it.each(WHOLE)('plans %s as before', (job) => {
    const path = `${FOLDER}${job}.json`;
    expect(existsSync(path), `no ${path}: run npm run golden:update, and read it`).toBe(true);
    expect(JSON.parse(planJson(planOf(job)))).toEqual(JSON.parse(readFileSync(path, 'utf8')));
  });

  it.each([...plans])('plans %s the same twice, byte for byte', (job, plan) => {
    const list = inputs.jobs.find((one) => one.job === job);
    if (!list) throw new Error(job);
    expect(planJson(planJob(list, { catalogue: inputs.catalogue, settings: inputs.settings }))).toBe(
      planJson(plan),
    );
  });

  it('makes drafts only of the job that lacks facts', () => {
    expect([...plans].filter(([, plan]) => !plan.submittable).map(([job]) => job)).toEqual(['UF-110']);
  });

  it.each([...plans])('leaves no port of %s without a protector or a reason', (_, plan) => {
    for (const equipment of plan.site.equipments) {
      for (const port of equipment.ports) {
        const here = (p: { equipment: string; port: string }): boolean =>
          p.equipment === equipment.tag && p.port === port;
        const placed = plan.protectors.some((p) => p.ports.some(here));
        expect(placed || plan.notPlaced.some(here), `${equipment.tag}:${port}`).toBe(true);
      }
    }
  });
});
