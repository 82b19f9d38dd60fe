import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { planJob, planJson, readInputs, type Plan } from '../../src/index.js';

// Every job of the demo, from its list to its plan. `npm run golden:update` writes what comes out now: read the diff.
const FOLDER = fileURLToPath(new URL('.', import.meta.url));
const UPDATE = process.env['UPDATE_GOLDEN'] === '1';
const LISTS = 'fixtures/demo';

const inputs = await readInputs({ make: 'plan', lists: [LISTS], date: '2026-01-01', dateGiven: true });
const plans = new Map<string, Plan>(
  inputs.jobs.map((job) => [
    job.job,
    planJob(job, { catalogue: inputs.catalogue, settings: inputs.settings }),
  ]),
);

if (UPDATE) {
  for (const name of readdirSync(FOLDER).filter((n) => n.endsWith('.json'))) rmSync(`${FOLDER}${name}`);
  for (const [job, plan] of plans) writeFileSync(`${FOLDER}${job}.json`, planJson(plan));
}

describe('the golden run', () => {
  it('reads every list of the demo without an item of its own', () => {
    expect(inputs.unreadable).toEqual([]);
    expect(inputs.items).toEqual([]);
  });

  it('has a plan for every job, and a job for every plan', () => {
    const saved = readdirSync(FOLDER).filter((n) => n.endsWith('.json'));
    expect(saved.toSorted()).toEqual([...plans.keys()].map((job) => `${job}.json`).toSorted());
  });

  it.each([...plans])('plans %s as before', (job, plan) => {
    const path = `${FOLDER}${job}.json`;
    expect(existsSync(path), `no ${path}: run npm run golden:update, and read it`).toBe(true);
    expect(JSON.parse(planJson(plan))).toEqual(JSON.parse(readFileSync(path, 'utf8')));
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
