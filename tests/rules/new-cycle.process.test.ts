import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type * as Shuntbook from '../../src/index.js';
import { DEFAULT_CYCLE, editionOf, NEC_CYCLES } from '../../src/model/editions.js';

const ROOT = resolve('.');
/** A made-up cycle, decided as the newest one is. */
const NEW = 'nec-2099';
const NEWEST = NEC_CYCLES[NEC_CYCLES.length - 1] ?? DEFAULT_CYCLE;

let folder = '';
/** What the compiler said before anything but the order of the cycles was touched. */
let named: readonly string[] = [];
let unfinished: readonly Shuntbook.Plan[] = [];
let finished: readonly Shuntbook.Plan[] = [];
let newest: readonly Shuntbook.Plan[] = [];
let left: readonly string[] = [];

/**
 * Compiles the copy; emits whatever the faults. The second run checks what the first one didn't find as it is now: files that were
 * changed, and those that see another type in one of them.
 * @param out what the folder of the JavaScript is called then: Node loads a module once
 */
function compile(out: string): readonly string[] {
  const tsc = join(ROOT, 'node_modules/typescript/bin/tsc');
  const run = spawnSync(process.execPath, [tsc, '-p', folder, '--pretty', 'false'], {
    cwd: folder,
    encoding: 'utf8',
  });
  cpSync(join(folder, 'dist'), join(folder, out), { recursive: true });
  return run.stdout.split('\n').filter((line) => line.includes('error TS'));
}

const filesOf = (faults: readonly string[]): readonly string[] => [
  ...new Set(faults.map((line) => line.slice(0, line.indexOf('(')))),
];

/** Where an entry of an object ends that begins at `from`: at its comma, or where the object closes. */
function endOfEntry(text: string, from: number): number {
  let depth = 0;
  let quote = '';
  for (let i = from; i < text.length; i += 1) {
    const sign = text[i] ?? '';
    if (quote !== '') {
      if (sign === '\\') i += 1;
      else if (sign === quote) quote = '';
    } else if (`'"\``.includes(sign)) quote = sign;
    else if ('([{'.includes(sign)) depth += 1;
    else if (')]}'.includes(sign)) depth -= 1;
    if (depth < 0 || (depth === 0 && quote === '' && sign === ',')) return i;
  }
  throw new Error('an entry without an end');
}

/** Writes the new cycle beside the newest wherever a file says something cycle by cycle: the decision is copied. */
function decideAsNewest(file: string): void {
  const path = join(folder, file);
  const text = readFileSync(path, 'utf8');
  const key = `'${NEWEST}': `;
  let written = '';
  let done = 0;
  for (let at = text.indexOf(key); at >= 0; at = text.indexOf(key, done)) {
    const end = endOfEntry(text, at + key.length);
    written += `${text.slice(done, end)}, '${NEW}': ${text.slice(at + key.length, end)}`;
    done = end;
  }
  writeFileSync(path, written + text.slice(done));
}

/** The demo's jobs of the NEC, planned under a cycle by what was compiled. */
async function planned(out: string, basis: string): Promise<Shuntbook.Plan[]> {
  const { planJob, readInputs } = (await import(
    pathToFileURL(join(folder, out, 'index.js')).href
  )) as typeof Shuntbook;
  const inputs = await readInputs({
    make: 'plan',
    lists: ['fixtures/demo'],
    date: '2026-01-01',
    dateGiven: true,
  });
  return inputs.jobs
    .filter((job) => job.facts.basis?.value !== 'iec')
    .map((job) => {
      const origin = { from: 'default', field: 'basis' } as const;
      const facts = { ...job.facts, basis: { value: basis as Shuntbook.Basis, text: basis, origin } };
      return planJob({ ...job, facts }, { catalogue: inputs.catalogue, settings: inputs.settings });
    });
}

/** Files that the recipe of DEVELOPERS.md names, beside the rules themselves. */
function namedByRecipe(): readonly string[] {
  const page = readFileSync('DEVELOPERS.md', 'utf8');
  const recipe = /\*\*Add a code cycle\.\*\*(.*?)(?=\n\n\*\*|\n## )/s.exec(page)?.[1] ?? '';
  return [...recipe.matchAll(/`(src\/[\w./-]+\.ts)`/g)].map(([, file = '']) => file);
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'shuntbook-cycle-'));
  cpSync('src', join(folder, 'src'), { recursive: true });
  cpSync('templates', join(folder, 'templates'), { recursive: true });
  cpSync('package.json', join(folder, 'package.json'));
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
  const config = { extends: join(ROOT, 'tsconfig.json'), include: ['src'] };
  const emitted = { noEmit: false, rootDir: 'src', outDir: 'dist', declaration: true, noEmitOnError: false };
  const compilerOptions = { ...emitted, incremental: true, tsBuildInfoFile: 'known.tsbuildinfo' };
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({ ...config, compilerOptions }));
  const editions = join(folder, 'src/model/editions.ts');
  writeFileSync(
    editions,
    readFileSync(editions, 'utf8').replace(`'${NEWEST}'] as const`, `'${NEWEST}', '${NEW}'] as const`),
  );

  const faults = compile('unfinished');
  named = filesOf(faults);
  unfinished = await planned('unfinished', NEW);
  for (const file of named) decideAsNewest(file);
  left = compile('finished');
  finished = await planned('finished', NEW);
  newest = await planned('finished', NEWEST);
  // Two runs of the compiler, the first one of all sources: minutes where a machine has much else to do.
}, 900_000);

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe('a made-up code cycle, added by the recipe of DEVELOPERS.md', () => {
  it('is asked for by the compiler: every rule and every table of clauses, and at most four files beside them', () => {
    const rules = ['place', 'rate', 'wire', 'indicate'].flatMap((room) =>
      readdirSync(`src/rules/${room}`).map((file) => `src/rules/${room}/${file}`),
    );
    expect(rules.filter((file) => !named.includes(file))).toEqual([]);
    expect(named).toContain('src/rules/clauses-nec.ts');
    const others = named.filter((file) => !file.startsWith('src/rules/'));
    const recipe = namedByRecipe();
    expect(recipe).toContain('src/model/editions.ts');
    expect(recipe.filter((file) => !file.startsWith('src/rules/')).length).toBeLessThanOrEqual(4);
    for (const file of others) expect(recipe).toContain(file);
  });

  it('makes each job a conflict before it is finished, never complete and bare', () => {
    expect(unfinished.length).toBeGreaterThan(5);
    for (const plan of unfinished) {
      expect(plan.submittable, plan.job).toBe(false);
      expect(
        plan.openItems.map((item) => item.code),
        plan.job,
      ).toContain('place/cycle-undecided');
    }
  });

  it('compiles once it is finished', () => {
    expect(left).toEqual([]);
  });

  it('then plans each job as the cycle that it was copied from', () => {
    const alike = (plans: readonly Shuntbook.Plan[]): string =>
      JSON.stringify(plans)
        .replaceAll(NEW, NEWEST)
        .replaceAll('"2099"', `"${editionOf(NEWEST)}"`);
    expect(JSON.parse(alike(finished))).toEqual(JSON.parse(alike(newest)));
    expect(finished.flatMap((plan) => plan.protectors).length).toBeGreaterThan(20);
  });
});
