// Run by npm around `npm pack`: writes npm-shrinkwrap.json, so that an install of the tarball doesn't float, and takes it
// away again. It never stands in a working folder: there, package-lock.json decides.
import { rmSync, writeFileSync } from 'node:fs';
import { runTimeLock } from './run-time-lock.mjs';

const path = new URL('../npm-shrinkwrap.json', import.meta.url);
const order = process.argv[2];
if (order === 'write') writeFileSync(path, `${JSON.stringify(runTimeLock(), null, 2)}\n`);
else if (order === 'remove') rmSync(path, { force: true });
else {
  console.error('node bench/shrinkwrap.mjs write|remove');
  process.exit(64);
}
