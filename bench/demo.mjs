// npm run demo: makes the packs of the demo in out/demo/. One job lacks facts on purpose, so that `pack` ends with 1
// there; the demo has succeeded when that job, and no other, is a draft.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';

const ON_PURPOSE = 'UF-110';
const root = fileURLToPath(new URL('..', import.meta.url));
const out = 'out/demo';

const run = spawnSync(
  process.execPath,
  ['dist/cli.js', 'pack', 'fixtures/demo', '--out', out, ...process.argv.slice(2)],
  {
    cwd: root,
    stdio: 'inherit',
  },
);
if (run.error) throw run.error;
if (run.status !== 0 && run.status !== 1) process.exit(run.status ?? 70);

const report = parse(readFileSync(new URL(`../${out}/report.csv`, import.meta.url), 'utf8'), {
  columns: true,
  bom: true,
});
const unexpected = report.filter((job) => (job.status === 'complete') === (job.job === ON_PURPOSE));
if (unexpected.length > 0 || !report.some((job) => job.job === ON_PURPOSE)) {
  console.error(
    `The demo isn't as it should be: only ${ON_PURPOSE} is to be a draft. See ${out}/report.csv.`,
  );
  process.exit(1);
}
