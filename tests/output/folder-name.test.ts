import { createHash } from 'node:crypto';
import { join, resolve, sep } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { folderNames } from '../../src/output/folder-name.js';

const sha = (id: string): string => createHash('sha256').update(id).digest('hex').slice(0, 8);
const nameOf = (id: string): string | undefined => folderNames([id]).get(id);

describe('folder names', () => {
  it.each([
    ['2026-014', '2026-014'],
    ['Hill_farm.2', 'Hill_farm.2'],
    ['../../x', `x-${sha('../../x')}`],
    ['.hidden', `hidden-${sha('.hidden')}`],
    ['..', `job-${sha('..')}`],
    ['', `job-${sha('')}`],
    ['a b/c', `a-b-c-${sha('a b/c')}`],
    ['Hütte', `H-tte-${sha('Hütte')}`],
    ['😀', `job-${sha('😀')}`],
    ['-rf', `rf-${sha('-rf')}`],
    ['--out', `out-${sha('--out')}`],
    ['.-.x', `x-${sha('.-.x')}`],
    ['CON', `CON-${sha('CON')}`],
    ['nul.txt', `nul.txt-${sha('nul.txt')}`],
    ['com1', `com1-${sha('com1')}`],
    ['console', 'console'],
    ['report.csv', `report.csv-${sha('report.csv')}`],
    ['Report.HTML', `Report.HTML-${sha('Report.HTML')}`],
    ['x.', `x.-${sha('x.')}`],
    ['a'.repeat(60), 'a'.repeat(60)],
    ['a'.repeat(300), `${'a'.repeat(60)}-${sha('a'.repeat(300))}`],
    ['a\0b', `a-b-${sha('a\0b')}`],
  ])('%j is %j', (id, name) => {
    expect(nameOf(id)).toBe(name);
  });

  it('lengthens both of two ids that differ in case only', () => {
    const names = folderNames(['Alpha', 'alpha', 'beta']);
    expect([...names.values()]).toEqual([`Alpha-${sha('Alpha')}`, `alpha-${sha('alpha')}`, 'beta']);
  });

  it('lengthens an id that is typed like the lengthened name of another', () => {
    const typed = `a-b-${sha('a/b')}`;
    const names = folderNames(['a/b', typed, typed.toUpperCase()]);
    expect(names.get('a/b')).toBe(typed);
    expect(names.get(typed)).toBe(`${typed}-${sha(typed)}`);
    expect(new Set([...names.values()].map((n) => n.toLowerCase())).size).toBe(3);
  });

  it('never leads out of the folder, whatever the ids', () => {
    const hostile = fc.array(
      fc.oneof(
        fc.string({ unit: 'binary' }),
        fc.constantFrom('..', '.', '/', '\\', '../..', 'con', 'CON', 'a', 'A', 'a-', 'a/', '-', '-rf', 'job'),
      ),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(hostile, (ids) => {
        const names = folderNames(ids);
        const out = resolve('out');
        for (const name of names.values()) {
          expect(name).toMatch(/^[A-Za-z0-9_][A-Za-z0-9._-]*$/);
          expect(name.length).toBeLessThanOrEqual(69 + 9);
          expect(resolve(join(out, name))).toBe(out + sep + name);
        }
        expect(new Set([...names.values()].map((n) => n.toLowerCase())).size).toBe(new Set(ids).size);
      }),
    );
  });
});
