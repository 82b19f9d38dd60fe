import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { installedProgram, start, writeLists, type Ended } from '../faults/program.js';

const program = installedProgram();
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-machine-'));
  await writeLists(join(folder, 'lists'), 2);
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

/** Runs a line of the shell, in which `$run` is the program. */
const shell = (line: string): Promise<Ended> =>
  start(['bash', '-c', line.replaceAll('$run', `'${process.execPath}' '${program.cli}'`)], folder).ended;
const STACK = /^\s+at /m;

describe('a machine that lets a program open few files', () => {
  const planned = (most: number, out: string): Promise<Ended> =>
    shell(`ulimit -n ${most}; exec $run plan lists --out ${out}`);
  const expectSentence = (ended: Ended): void => {
    expect(ended.status).toBe(70);
    expect(ended.err).toContain('machine/ran-out');
    expect(ended.err).not.toMatch(STACK);
  };

  it('24 of them: a sentence and 70', async () => {
    expectSentence(await planned(24, 'few'));
  });

  // What Node 20's loader says where it can't open a package.json names no refusal; how many may be open then tells.
  it.each([
    [255, true],
    [256, false],
  ])('%d of them: known as too few, or not', async (most, isFew) => {
    const url = new URL('commands/open-files.js', pathToFileURL(program.cli)).href;
    const script = `import(${JSON.stringify(url)}).then((files) => console.log(files.areFilesFew()))`;
    const ended = await shell(`ulimit -n ${most}; exec '${process.execPath}' -e '${script}'`);
    expect(ended.out.trim()).toBe(String(isFew));
  });

  // How many are open at once while a program is loaded is the engine's affair: Node 22 and 24 get by with 40, Node 20 doesn't with 64.
  it.each([64, 40])('%d of them: a whole plan, or a sentence and 70', async (most) => {
    const out = `few-${most}`;
    const ended = await planned(most, out);
    if (ended.status !== 0) {
      expectSentence(ended);
      return;
    }
    // Both jobs; the records lie beside them.
    const jobs = (await readdir(join(folder, out), { withFileTypes: true })).filter(
      (entry) => entry.isDirectory() && !entry.name.startsWith('.'),
    );
    expect(jobs).toHaveLength(2);
    for (const { name } of jobs) expect(await readdir(join(folder, out, name))).toContain('plan.json');
  });

  it('256 of them are enough', { timeout: 300_000 }, async () => {
    expect(await shell('ulimit -n 256; exec $run pack lists --out enough')).toMatchObject({ status: 0 });
  });
});

describe('a disk that is full under what a command tells', () => {
  it.each(['rules', 'rules --json', 'plan lists --out told', 'plan lists --json --out told', '--help'])(
    'standard output of %s: a sentence and 70',
    async (args) => {
      const ended = await shell(`exec $run ${args} > /dev/full`);
      expect(ended.status).toBe(70);
      expect(ended.err).toContain('machine/not-told');
      expect(ended.err).not.toMatch(STACK);
    },
  );

  it.each(['plan lists --out quiet', 'plan nowhere.csv --out quiet', 'pack'])(
    'standard error of %s: 70',
    async (args) => {
      const ended = await shell(`exec $run ${args} 2> /dev/full`);
      expect(ended.status).toBe(70);
    },
  );

  it('loses no pack', async () => {
    await shell('exec $run plan lists --out kept > /dev/full 2>&1');
    expect(await readdir(join(folder, 'kept'))).toEqual(
      expect.arrayContaining(['T-01', 'T-02', 'report.csv', 'order-list.csv']),
    );
  });
});
