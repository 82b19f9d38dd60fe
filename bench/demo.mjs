// npm run demo: makes the packs of the demo in out/demo/, and in out/done/ the same once three of the jobs came back from the
// work. One job lacks facts on purpose, so that `pack` ends with 1 there; the demo has succeeded when that job, and no other, is a
// draft, and each job that came back is as far as it should be.
import { spawnSync } from 'node:child_process';
import { cpSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';

const ON_PURPOSE = 'UF-110';
const CAME_BACK = new Map([
  ['UF-102', 'as built with deviations'],
  ['UF-108', 'as built'],
  ['UF-109', 'record open'],
]);
const root = fileURLToPath(new URL('..', import.meta.url));
const planned = 'out/demo';
const built = 'out/done';
const given = process.argv.slice(2);
const dateAt = given.indexOf('--date');
const date = dateAt < 0 ? [] : given.slice(dateAt, dateAt + 2);

function shuntbook(args) {
  const run = spawnSync(process.execPath, ['dist/cli.js', ...args], { cwd: root, stdio: 'inherit' });
  if (run.error) throw run.error;
  if (run.status !== 0 && run.status !== 1) process.exit(run.status ?? 70);
}

function fail(because) {
  console.error(`The demo isn't as it should be: ${because}`);
  process.exit(1);
}

const reportOf = (out) =>
  parse(readFileSync(new URL(`../${out}/report.csv`, import.meta.url), 'utf8'), { columns: true, bom: true });

shuntbook(['pack', 'fixtures/demo', '--out', planned, ...given]);
const report = reportOf(planned);
const unexpected = report.filter((job) => (job.status === 'complete') === (job.job === ON_PURPOSE));
if (unexpected.length > 0 || !report.some((job) => job.job === ON_PURPOSE))
  fail(`only ${ON_PURPOSE} is to be a draft. See ${planned}/report.csv.`);

rmSync(new URL(`../${built}`, import.meta.url), { recursive: true, force: true });
cpSync(new URL(`../${planned}`, import.meta.url), new URL(`../${built}`, import.meta.url), {
  recursive: true,
  preserveTimestamps: true,
});
console.log(`\nThree jobs come back from the work: ${built}`);
shuntbook(['record', 'fixtures/demo/returns', '--out', built, ...date]);
// The report and the states of all jobs.
shuntbook(['pack', 'fixtures/demo', '--out', built, '--quiet', ...given]);
const wrong = reportOf(built).filter(({ job, record }) => record !== (CAME_BACK.get(job) ?? 'planned'));
if (wrong.length > 0)
  fail(`${wrong.map(({ job, record }) => `${job} is ${record}`).join(', ')}. See ${built}/record-items.csv.`);
