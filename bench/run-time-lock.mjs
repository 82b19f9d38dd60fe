// The lock file without what only development needs: what an installed shuntbook is made of.
import { readFileSync } from 'node:fs';

const read = (name) => JSON.parse(readFileSync(new URL(`../${name}`, import.meta.url), 'utf8'));

/** The lock file as npm has it, its packages and its root cut down to run time. */
export function runTimeLock() {
  const { packages, ...lock } = read('package-lock.json');
  const kept = Object.entries(packages).filter(([, entry]) => entry.dev !== true);
  return { ...lock, packages: Object.fromEntries(kept.map(([path, entry]) => [path, withoutDev(entry)])) };
}

/** package.json, cut down in the same way. */
export function runTimeManifest() {
  const { name, version, license, dependencies } = read('package.json');
  return { name, version, license, dependencies };
}

function withoutDev(entry) {
  const kept = { ...entry };
  delete kept.devDependencies;
  return kept;
}
