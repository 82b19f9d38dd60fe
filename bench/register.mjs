// The register of many jobs against reading the same records alone, in one round: prints JSON. node bench/register.mjs JOBS
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runNode } from './processes.mjs';
import { writeRecords } from './records.mjs';

const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const jobs = Number(process.argv[2] ?? 10_000);
const out = mkdtempSync(join(tmpdir(), 'shuntbook-register-'));
try {
  const bytes = await writeRecords(here('../fixtures/demo'), out, jobs);
  const read = () => runNode([here('read-records.mjs'), out]);
  // Once unmeasured, so that both find the records where the system keeps what was read last.
  await read();
  const reading = await read();
  const register = await runNode([here('../dist/cli.js'), 'register', '--out', out, '--date', '2026-05-06']);
  const { seconds, peak } = register;
  console.log(
    JSON.stringify({
      jobs,
      bytes,
      reading: reading.seconds,
      seconds,
      peak,
      ratio: seconds / reading.seconds,
    }),
  );
} finally {
  rmSync(out, { recursive: true });
}
