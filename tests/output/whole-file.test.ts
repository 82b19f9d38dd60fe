import { mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Failure } from '../../src/model/failure.js';
import { sweepTemporaryFiles, writeWhole, writeWholeFile } from '../../src/output/whole-file.js';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-whole-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

describe('whole files', () => {
  it('writes bytes and text, replaces what was there, and leaves nothing else', async () => {
    await writeWhole(join(folder, 'a', 'b'), [
      { name: 'one.txt', content: 'µ' },
      { name: 'two.pdf', content: Uint8Array.of(1, 2, 3) },
    ]);
    await writeWholeFile(join(folder, 'a', 'b', 'one.txt'), 'again');
    expect((await readdir(join(folder, 'a', 'b'))).sort()).toEqual(['one.txt', 'two.pdf']);
    expect(await readFile(join(folder, 'a', 'b', 'one.txt'), 'utf8')).toBe('again');
    expect([...(await readFile(join(folder, 'a', 'b', 'two.pdf')))]).toEqual([1, 2, 3]);
  });

  it('writes a file piece by piece, or not at all', async () => {
    await writeWhole(folder, [{ name: 'one.txt', pieces: ['a', '', '\u00b5', 'b'.repeat(100_000)] }]);
    expect(await readFile(join(folder, 'one.txt'), 'utf8')).toBe(`a\u00b5${'b'.repeat(100_000)}`);
    function* failing(): Generator<string> {
      yield 'new';
      throw new Error('the fourth piece is missing');
    }
    await expect(writeWhole(folder, [{ name: 'one.txt', pieces: failing() }])).rejects.toThrow(Failure);
    expect(await readdir(folder)).toEqual(['one.txt']);
    expect(await readFile(join(folder, 'one.txt'), 'utf8')).toMatch(/^a\u00b5b+$/);
  });

  it('leaves the old file as it was where the new one fails', async () => {
    await writeFile(join(folder, 'one.txt'), 'old');
    await mkdir(join(folder, 'two.txt'));
    await writeFile(join(folder, 'two.txt', 'x'), '');
    const failing = writeWhole(folder, [{ name: 'two.txt', content: 'new' }]);
    await expect(failing).rejects.toThrow(Failure);
    await expect(failing).rejects.toMatchObject({ exitStatus: 70, note: { code: 'output/not-written' } });
    expect((await readdir(folder)).sort()).toEqual(['one.txt', 'two.txt']);
    expect(await readFile(join(folder, 'one.txt'), 'utf8')).toBe('old');
  });

  it('never follows a link that stands under the temporary name', async () => {
    await writeFile(join(folder, 'victim'), 'untouched');
    await symlink(join(folder, 'victim'), join(folder, '.shuntbook-one.txt.tmp'));
    await writeWholeFile(join(folder, 'one.txt'), 'new');
    expect(await readFile(join(folder, 'victim'), 'utf8')).toBe('untouched');
    expect(await readFile(join(folder, 'one.txt'), 'utf8')).toBe('new');
  });

  it('says in words why a place is no place to write', async () => {
    await writeFile(join(folder, 'file'), '');
    await expect(writeWholeFile(join(folder, 'file', 'x.csv'), '')).rejects.toThrow(
      /a file, not a folder|stands where a folder/,
    );
  });

  it('sweeps what a killed run left, and nothing else', async () => {
    await mkdir(join(folder, 'job'));
    for (const name of ['.shuntbook-a.pdf.tmp', 'job/.shuntbook-b.pdf.tmp', 'job/b.tmp', 'mine.tmp']) {
      await writeFile(join(folder, name), '');
    }
    await sweepTemporaryFiles(folder);
    expect((await readdir(folder, { recursive: true })).sort()).toEqual(['job', 'job/b.tmp', 'mine.tmp']);
  });
});
