import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ALL_RULES } from '../../src/index.js';
import { PART_FIELDS } from '../../src/read/company/catalogue-fields.js';
import { freshFolder, projectPath, shuntbook } from './command.js';

const LIST = 'fixtures/demo/grid.csv';

describe('rules', () => {
  it('lists every rule', async () => {
    const told = await shuntbook(['rules']);
    expect(told.status).toBe(0);
    for (const { id } of ALL_RULES) expect(told.out).toMatch(new RegExp(`^${id} `, 'm'));
  });

  it('prints one rule with its clause under each basis', async () => {
    const told = await shuntbook(['rules', 'place/service']);
    expect(told.out).toMatch(/nec-2020[^\n]*\n[^]*230\.67/);
    expect(told.out).toMatch(/iec[^\n]*\n[^]*443/);
  });

  it('names the nearest of a rule that is not there', async () => {
    const told = await shuntbook(['rules', 'place/long-rum']);
    expect(told.status).toBe(64);
    expect(told.err).toContain('place/long-run');
  });

  it('is one JSON object with --json', async () => {
    const told = await shuntbook(['rules', '--json']);
    expect((JSON.parse(told.out) as { rules: unknown[] }).rules).toHaveLength(ALL_RULES.length);
  });
});

describe('why', () => {
  it('tells the chain behind a protector: rule, source, numbers with their origin, rejected parts', async () => {
    const told = await shuntbook(['why', LIST, 'INV:dc-in-1', '--job', 'UF-102']);
    expect(told.status).toBe(0);
    expect(told.err).toBe('');
    expect(told.out).toContain('place/dc-input (recommended)');
    expect(told.out).toContain('461.45 V');
    expect(told.out).toMatch(/library\.csv, line 3, voc_stc/);
    expect(told.out).toMatch(/grid\.csv, line 5, modules_in_series/);
    expect(told.out).toContain('not WK-BURDOCK: MCOV 350 V < 461.45 V');
  });

  it('tells why a port has none', async () => {
    const told = await shuntbook(['why', LIST, 'ARR-E', '--job', 'UF-102']);
    expect(told.out).toMatch(/Without a protector\n +ARR-E:output: .*100 ft/);
  });

  it('tells the same from the folder of a pack as from its list', async () => {
    const out = freshFolder();
    await shuntbook(['plan', LIST, '--job', 'UF-102', '--out', out]);
    const [folder, file, list] = await Promise.all([
      shuntbook(['why', join(out, 'UF-102'), 'P-1', '--json']),
      shuntbook(['why', join(out, 'UF-102', 'plan.json'), 'P-1', '--json']),
      shuntbook(['why', LIST, 'P-1', '--job', 'UF-102', '--json']),
    ]);
    const tags = (text: string): unknown =>
      (JSON.parse(text) as { protectors: { tag: string; part: string }[] }).protectors.map((p) => [
        p.tag,
        p.part,
      ]);
    expect(tags(folder.out)).toEqual([['P-1', 'WK-MALLOW']]);
    expect(file.out).toBe(folder.out);
    expect(tags(list.out)).toEqual(tags(folder.out));
  });

  it.each([
    ['a list of several jobs', [LIST], 64, /--job UF-102/],
    ['a job that the list lacks', [LIST, '--job', 'UF-999'], 64, /UF-102/],
    ['a port that is not there', [LIST, 'INV:dc-in-9', '--job', 'UF-102'], 64, /INV:dc-in-1/],
    ['a file that is not there', ['nowhere.json'], 2, /nowhere\.json/],
    ['a list that is not there', ['nowhere.csv'], 2, /nowhere\.csv/],
    ['JSON that is no plan', [projectPath('fixtures/demo/settings.json')], 2, /no plan/],
  ])('%s is one message', async (_, args, status, says) => {
    const told = await shuntbook(['why', ...args]);
    expect(told.status).toBe(status);
    expect(told.out).toBe('');
    expect(told.err).toMatch(says);
  });
});

describe('read', () => {
  it('shows equipment, ports and runs as they were understood', async () => {
    const told = await shuntbook(['read', LIST, '--job', 'UF-102']);
    expect(told.status).toBe(0);
    expect(told.out).toMatch(/ 4 +INV +grid-tie-inverter +House \/ garage +dc-in-1 dc-in-2 ac-out/);
    expect(told.out).toMatch(/ARR-E:output +INV:dc-in-1 +45 ft \(13\.72 m\) +dc +outdoors/);
  });

  it('ends with 1 where something is missing or contradicts itself', async () => {
    const told = await shuntbook(['read', 'fixtures/bad/circle.csv']);
    expect(told.status).toBe(1);
    expect(told.err).toContain('site/circle');
  });

  it('is one JSON object with --json', async () => {
    const told = await shuntbook(['read', LIST, '--json']);
    expect((JSON.parse(told.out) as { jobs: unknown[] }).jobs).toHaveLength(4);
  });
});

describe('start', () => {
  it('writes files that can be planned as they are', async () => {
    const folder = join(freshFolder(), 'new');
    const told = await shuntbook(['start', folder]);
    expect(told.status).toBe(0);
    expect(told.err).toContain(`shuntbook pack ${join(folder, 'list.csv')}`);
    // The template of what customers read is there to be put into the company's own words, and is the program's own until then.
    for (const name of ['owner-sheet/document.hbs', 'styles/owner-sheet.css']) {
      const text = readFileSync(join(folder, 'templates', name), 'utf8');
      expect(text).toBe(readFileSync(projectPath(`templates/${name}`), 'utf8'));
      expect(text).toMatch(/\{\{!--|\/\*/);
    }
    const planned = await shuntbook([
      'plan',
      join(folder, 'list.csv'),
      '--out',
      join(folder, 'out'),
      '--json',
    ]);
    expect(JSON.parse(planned.out)).toMatchObject({
      exitStatus: 0,
      jobs: [{ job: 'EXAMPLE-1', status: 'complete', protectors: 1 }],
    });
  });

  it('has every heading of the catalogue, in the order of the contract', async () => {
    const folder = freshFolder();
    await shuntbook(['start', folder]);
    const [heading] = readFileSync(join(folder, 'catalogue.csv'), 'utf8').split('\n');
    const [demo] = readFileSync(projectPath('fixtures/demo/catalogue.csv'), 'utf8').split('\n');
    expect(heading).toBe(demo);
    expect(heading?.split(',')).toEqual(Object.keys(PART_FIELDS));
  });

  it('never overwrites', async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, 'library.csv'), 'mine');
    const told = await shuntbook(['start', folder]);
    expect(told.status).toBe(64);
    expect(told.err).toContain('library.csv');
    expect(readdirSync(folder)).toEqual(['library.csv']);
    expect(readFileSync(join(folder, 'library.csv'), 'utf8')).toBe('mine');
  });
});
