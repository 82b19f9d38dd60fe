// npm run sbom [-- cyclonedx|spdx]: the bill of materials of an installed shuntbook, made by npm, in out/.
// npm is asked about a folder that holds the run-time packages alone: asked to leave development out of this one, it leaves
// out most of the rest as well. What it says is held against the lock file before anything is written.
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runTimeLock, runTimeManifest } from './run-time-lock.mjs';

const format = process.argv[2] ?? 'cyclonedx';
const lock = runTimeLock();
const manifest = runTimeManifest();
const holder = mkdtempSync(join(tmpdir(), 'shuntbook-sbom-'));
// npm takes the name of the thing from its folder.
const folder = join(holder, manifest.name);
let text;
try {
  mkdirSync(folder);
  writeFileSync(join(folder, 'package.json'), JSON.stringify(manifest));
  writeFileSync(join(folder, 'package-lock.json'), JSON.stringify(lock));
  text = execFileSync('npm', ['sbom', '--package-lock-only', `--sbom-format=${format}`], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    shell: process.platform === 'win32',
  });
} finally {
  rmSync(holder, { recursive: true, force: true });
}

const bill = JSON.parse(text);
const listed = new Set(
  (bill.components ?? bill.packages).map((one) => `${one.name}@${one.version ?? one.versionInfo}`),
);
const missing = Object.entries(lock.packages)
  .filter(([path]) => path !== '')
  .map(([path, { version }]) => `${path.slice(path.lastIndexOf('node_modules/') + 13)}@${version}`)
  .filter((name) => !listed.has(name));
if (missing.length > 0) {
  console.error(`The bill lacks ${missing.length} packages of the lock file: ${missing.join(', ')}`);
  process.exit(1);
}
const name = format === 'cyclonedx' ? 'sbom.cdx.json' : `sbom.${format}.json`;
const path = fileURLToPath(new URL(`../out/${name}`, import.meta.url));
mkdirSync(new URL('../out', import.meta.url), { recursive: true });
writeFileSync(path, text);
console.log(`${listed.size} packages in out/${name}`);
