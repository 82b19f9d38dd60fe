import { cp, mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { until } from '../print/browser-processes.js';
import {
  differences,
  halfFiles,
  installedProgram,
  packsBelow,
  start,
  writeLists,
  type Ended,
} from './program.js';

const program = installedProgram();
let folder: string;
let undisturbed: ReadonlyMap<string, Buffer>;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-machine-'));
  await writeLists(join(folder, 'lists'), 8);
  expect(await start(pack('undisturbed'), folder).ended).toMatchObject({ status: 0 });
  undisturbed = await packsBelow(join(folder, 'undisturbed'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

const pack = (out: string): string[] => [
  process.execPath,
  program.cli,
  'pack',
  'lists',
  '--out',
  out,
  '--date',
  '2026-05-06',
];

const asRoot = process.getuid?.() === 0 ? [] : ['--user', '--map-root-user'];

/**
 * Runs a script where mounts and networks are its own: as root, or as a user that the kernel lets have namespaces.
 * @param user who it runs as
 */
async function apart(script: string, kinds: readonly string[], user = asRoot): Promise<Ended> {
  const path = join(folder, 'script.sh');
  await writeFile(path, `set -u\n${script}\n`);
  return start(['unshare', ...user, ...kinds, 'sh', path], folder).ended;
}

const quoted = (words: readonly string[]): string => words.map((word) => `'${word}'`).join(' ');
const size = (files: ReadonlyMap<string, Buffer>): number =>
  [...files.values()].reduce((sum, b) => sum + b.length, 0);

describe('a disk', () => {
  it('that is full fails what no longer fits, leaves nothing half, and the next run completes', async () => {
    const out = join(folder, 'small');
    await mkdir(out);
    const half = Math.round(size(undisturbed) / 2);
    const ended = await apart(
      `mount -t tmpfs -o size=${half} tmpfs '${out}'
       ${quoted(pack('small'))}; echo "first: $?"
       cp -r '${out}' '${folder}/first'
       mount -o remount,size=200m '${out}'
       ${quoted(pack('small'))}; echo "second: $?"
       cp -r '${out}' '${folder}/second'`,
      ['--mount'],
    );
    expect(ended.out).toContain('first: 70');
    expect(ended.err).toContain('the disk is full');
    const first = await packsBelow(join(folder, 'first'));
    expect(halfFiles(first)).toEqual([]);
    expect([...first.keys()].filter((name) => name.endsWith('.tmp'))).toEqual([]);
    expect(first.size).toBeGreaterThan(5);
    expect(first.size).toBeLessThan(undisturbed.size);
    expect(ended.out).toContain('second: 0');
    expect(differences(await packsBelow(join(folder, 'second')), undisturbed)).toEqual([]);
  });

  it('that may only be read is told in one message, and no browser starts', async () => {
    const out = join(folder, 'fixed');
    await mkdir(out);
    const ended = await apart(
      `mount -t tmpfs -o ro,size=1m tmpfs '${out}'
       ${quoted(pack('fixed'))}; echo "status: $?"`,
      ['--mount'],
    );
    expect(ended.out).toContain('status: 70');
    expect(ended.err).toContain('the disk may only be read');
    expect(ended.err).toContain('output/not-written');
    expect(ended.err).not.toContain('print/');
    expect(ended.err).not.toMatch(/^\s+at /m);
  });

  it('that may only be read is told of a place that is not there yet, too', async () => {
    await mkdir(join(folder, 'bare'));
    const ended = await apart(
      `mount -t tmpfs -o ro,size=1m tmpfs '${join(folder, 'bare')}'
       ${quoted(pack('bare/new/below'))}; echo "status: $?"`,
      ['--mount'],
    );
    expect(ended.out).toContain('status: 70');
    expect(ended.err).toContain('the disk may only be read');
    expect(ended.err).not.toContain('ENOENT');
  });
});

describe('a user whom the machine does not know', () => {
  it('and who has no home has the browser among the temporary files', async () => {
    const ended = await apart(
      `unset HOME XDG_CACHE_HOME
       TMPDIR='${folder}' ${quoted(pack('homeless'))}; echo "status: $?"`,
      ['--user', '--map-user=4242'],
      [],
    );
    // Whether a browser stands in such a namespace is the kernel's to say; that it is looked for is ours.
    expect(ended.err).not.toMatch(/program-fault|^\s+at /m);
    expect(await readdir(join(folder, 'shuntbook-4242'))).not.toEqual([]);
  });

  it('and who may write nowhere but to --out is told so in one message', async () => {
    const ended = await apart(
      `unset HOME XDG_CACHE_HOME
       TMPDIR=/proc ${quoted(pack('cacheless'))}; echo "status: $?"`,
      ['--user', '--map-user=4242'],
      [],
    );
    expect(ended.out).toContain('status: 70');
    expect(ended.err).toContain('print/no-browser');
    expect(ended.err).not.toMatch(/^\s+at /m);
  });
});

describe('two runs in two PID namespaces of a machine', () => {
  it('share no output folder at the same time', async () => {
    const kinds = ['--pid', '--fork', '--mount-proc'];
    const first = start(['unshare', ...asRoot, ...kinds, ...pack('shared')], folder);
    const own = join(folder, 'shared', '.shuntbook');
    await until(async () => (await readdir(own).catch(() => [])).some((name) => name.startsWith('lock-')));
    const second = await start(pack('shared'), folder).ended;
    const third = await start(['unshare', ...asRoot, ...kinds, ...pack('shared')], folder).ended;
    expect([second.status, third.status]).toEqual([75, 75]);
    expect(second.err).toContain('output/held');
    expect(await first.ended).toMatchObject({ status: 0 });
    expect(differences(await packsBelow(join(folder, 'shared')), undisturbed)).toEqual([]);
  });
});

describe('a machine without a network', () => {
  it('makes the same bytes: nothing is fetched', async () => {
    const ended = await apart(`${quoted(pack('cut-off'))}; echo "status: $?"`, ['--net']);
    expect(ended.out).toContain('status: 0');
    expect(differences(await packsBelow(join(folder, 'cut-off')), undisturbed)).toEqual([]);
  });
});

describe('lists', () => {
  it('in another folder make the same bytes: no path of the machine is written', async () => {
    await cp(join(folder, 'lists'), join(folder, 'else', 'lists'), { recursive: true });
    expect(await start(pack('out'), join(folder, 'else')).ended).toMatchObject({ status: 0 });
    expect(differences(await packsBelow(join(folder, 'else', 'out')), undisturbed)).toEqual([]);
  });
});
