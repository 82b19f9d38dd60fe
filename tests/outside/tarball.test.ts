import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DOCUMENT_KINDS } from '../../src/documents/parts/context.js';
import { runTimePackages } from '../supply/run-time-packages.js';

// What `npm pack` makes, installed where nothing else is. npm 10 is what Node 20 and 22 bring, and it runs the scripts of the
// packages that it installs; later ones ask first, and so hide a download.
const work = mkdtempSync(join(tmpdir(), 'shuntbook-tarball-'));
const packed = join(work, 'packed');
const empty = join(work, 'empty');
const downloads = join(work, 'downloads');
const npm10 = join(work, 'npm10', 'node_modules', 'npm', 'bin', 'npm-cli.js');
const expected = runTimePackages();

/** The environment of a person's own shell: nothing of the npm that runs this test, and downloads allowed. */
function ownEnvironment(): NodeJS.ProcessEnv {
  const inherited = /^(npm_(package|lifecycle|config_local_prefix)|PUPPETEER_|SHUNTBOOK_|INIT_CWD)/;
  const kept = Object.entries(process.env).filter(([name]) => !inherited.test(name));
  return {
    ...Object.fromEntries(kept),
    npm_config_ignore_scripts: 'false',
    PUPPETEER_CACHE_DIR: downloads,
  };
}

function run(program: string, args: readonly string[], cwd = '.'): string {
  return execFileSync(program, args, { cwd, env: ownEnvironment(), encoding: 'utf8', stdio: 'pipe' });
}

const tarball = (): string => join(packed, readdirSync(packed).find((name) => name.endsWith('.tgz')) ?? '');

/** Versions of the packages of a lock by path, the project itself left out. */
function versionsOf(file: string): Record<string, string> {
  const { packages } = JSON.parse(readFileSync(file, 'utf8')) as {
    packages: Record<string, { version: string }>;
  };
  return Object.fromEntries(
    Object.entries(packages).flatMap(([path, { version }]) => (path === '' ? [] : [[path, version]])),
  );
}
const lockedVersions = Object.fromEntries(expected.map((p) => [p.path, p.version]));

beforeAll(() => {
  mkdirSync(packed);
  mkdirSync(empty);
  run('npm', ['pack', '--pack-destination', packed]);
  run('npm', ['install', '--no-save', '--prefix', join(work, 'npm10'), 'npm@10']);
});

afterAll(() => {
  rmSync(work, { recursive: true, force: true });
});

/** The jobs of the lists of the demo. */
function demoJobs(): ReadonlySet<string> {
  const lists = readdirSync('fixtures/demo').filter((name) => name.endsWith('.csv'));
  const rows = lists.flatMap(
    (name) =>
      parse(readFileSync(join('fixtures/demo', name)), { columns: true }) as unknown as { job?: string }[],
  );
  return new Set(rows.flatMap(({ job }) => job ?? []));
}

describe('the tarball', () => {
  it('holds what an install needs, and nothing of development', () => {
    const files = run('tar', ['tzf', tarball()]).split('\n');
    const needed = [
      'dist/cli.js',
      'npm-shrinkwrap.json',
      'docs/third-party-notices.md',
      'SECURITY.md',
      'LICENSE',
    ];
    expect(needed.filter((name) => !files.includes(`package/${name}`))).toEqual([]);
    expect(files.filter((name) => /^package\/(src|tests|bench|out|\.)/.test(name))).toEqual([]);
  });

  it('brings the lock of its run-time packages, and leaves none in the working folder', () => {
    run('tar', ['xzf', tarball(), '-C', packed]);
    const file = join(packed, 'package', 'npm-shrinkwrap.json');
    expect(versionsOf(file)).toEqual(lockedVersions);
    expect(readFileSync(file, 'utf8')).not.toMatch(/"(dev|resolved|devDependencies)":/);
    expect(existsSync('npm-shrinkwrap.json')).toBe(false);
  });

  it('gives exactly those packages to whoever unpacks it and runs npm ci', () => {
    const folder = join(packed, 'package');
    run(process.execPath, [npm10, 'pkg', 'delete', 'scripts', 'devDependencies'], folder);
    run(process.execPath, [npm10, 'ci'], folder);
    expect(versionsOf(join(folder, 'node_modules', '.package-lock.json'))).toEqual(lockedVersions);
  });
});

describe('the tarball, installed in an empty folder', () => {
  beforeAll(() => {
    run(process.execPath, [npm10, 'install', '--engine-strict', tarball()], empty);
  });

  it('downloads no browser, and brings what package.json names as it was tested', () => {
    expect(existsSync(downloads)).toBe(false);
    const installed = versionsOf(join(empty, 'node_modules', '.package-lock.json'));
    expect(installed['node_modules/puppeteer']).toBeUndefined();
    for (const { path, version } of expected.filter((p) => p.direct)) expect(installed[path]).toBe(version);
  });

  it("packs the demo's lists", () => {
    const program = join(empty, 'node_modules', '.bin', 'shuntbook');
    const lists = join('node_modules', 'shuntbook', 'fixtures', 'demo');
    const ended = spawnSync(program, ['pack', lists, '--out', 'out'], {
      cwd: empty,
      env: ownEnvironment(),
      encoding: 'utf8',
    });
    // One job of the demo is a draft on purpose.
    expect(ended.status, ended.stderr).toBe(1);
    const report = parse(readFileSync(join(empty, 'out', 'report.csv'), 'utf8'), {
      columns: true,
      bom: true,
    }) as unknown as { job: string; status: string; folder: string }[];
    expect(report.map(({ job }) => job).toSorted()).toEqual([...demoJobs()].toSorted());
    expect(report.filter((job) => job.status !== 'complete').map((job) => job.job)).toEqual(['UF-110']);
    for (const { folder, status } of report) {
      const pdfs = readdirSync(join(empty, 'out', folder)).filter((name) => name.endsWith('.pdf'));
      // A draft has no labels.
      expect(pdfs, folder).toHaveLength(DOCUMENT_KINDS.length - (status === 'draft' ? 1 : 0));
      for (const name of pdfs)
        expect(
          readFileSync(join(empty, 'out', folder, name))
            .subarray(0, 5)
            .toString(),
        ).toBe('%PDF-');
    }
  });
});

describe('npm run sbom', () => {
  it.each([
    ['cyclonedx', 'out/sbom.cdx.json', 'components'],
    ['spdx', 'out/sbom.spdx.json', 'packages'],
  ])('names every run-time package as %s', (format, file, list) => {
    run('npm', ['run', 'sbom', '--', format]);
    const bill = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
    const listed = (bill[list] as { name: string; version?: string; versionInfo?: string }[]).map(
      (one) => `${one.name}@${one.version ?? one.versionInfo ?? ''}`,
    );
    expect(listed).toEqual(expect.arrayContaining(expected.map((p) => `${p.name}@${p.version}`)));
  });
});
