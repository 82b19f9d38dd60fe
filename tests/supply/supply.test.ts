import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lockEntries, runTimePackages } from './run-time-packages.js';

interface Manifest {
  readonly engines: { readonly node: string };
  readonly files: readonly string[];
  readonly dependencies: Readonly<Record<string, string>>;
}
const manifest = JSON.parse(readFileSync('package.json', 'utf8')) as Manifest;
const packages = runTimePackages();

/** Licences that let a program be used and passed on without more than a notice; one that isn't here wants a look first. */
const LOOKED_AT = [
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  // Asks for its text or a link to it, which the package brings.
  'BlueOak-1.0.0',
  'ISC',
  'MIT',
  // Asks only that changed files of its own stay open: used as it comes, its sources are public.
  'MPL-2.0',
  // The layout of drawings: used as it comes, its sources are public.
  'EPL-2.0 OR GPL-3.0-or-later',
  // The fonts: see docs/third-party-notices.md.
  'OFL-1.1',
  'SEE LICENSE IN README.md AND LICENSE',
];

describe('what an install brings', () => {
  it('runs no script of a package: none downloads a browser', () => {
    expect(packages.length).toBeGreaterThan(Object.keys(manifest.dependencies).length);
    expect(packages.filter((p) => p.hasInstallScript).map((p) => p.name)).toEqual([]);
  });

  it('is under licences that were looked at', () => {
    expect(packages.filter((p) => !LOOKED_AT.includes(p.licence)).map((p) => [p.name, p.licence])).toEqual(
      [],
    );
  });

  it('holds what package.json names, by the exact version of the lock file', () => {
    const direct = packages.filter((p) => p.direct).map((p) => [p.name, p.version]);
    expect(Object.entries(manifest.dependencies)).toEqual(direct);
  });

  it('holds no package that nothing asks for', () => {
    expect(packages.filter((p) => !p.direct && p.neededBy.length === 0).map((p) => p.path)).toEqual([]);
  });

  it('comes from no address that the lock file names', () => {
    expect([...lockEntries()].filter(([, entry]) => entry.resolved !== undefined)).toEqual([]);
  });
});

describe('what is packed', () => {
  it('has the lock of an install, the notices and the page on safety', () => {
    expect(manifest.files).toEqual(expect.arrayContaining(['npm-shrinkwrap.json', 'docs', 'SECURITY.md']));
  });

  it('says which versions of Node it was tested on: those that .ci/run uses', () => {
    const run = readFileSync('.ci/run', 'utf8');
    const others = /^other_nodes=\(([\d ]+)\)$/m.exec(run)?.[1]?.split(' ') ?? [];
    const said = [...manifest.engines.node.matchAll(/\^(\d+)\.\d+\.\d+/g)].map(([, major]) => major);
    expect(said).toEqual(['20', ...others]);
    expect(manifest.engines.node.split(' || ')).toHaveLength(said.length);
  });
});
