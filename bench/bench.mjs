// npm run bench [-- SIZE...]: speed and memory as ratios within one run, medians of three interleaved rounds, written to
// docs/performance.md. Sizes: 50, 200 and 1000 jobs; the last takes an hour on two cores.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { changeOneJob, writeBatch } from './generate.mjs';
import { writePerformancePage } from './page.mjs';
import { median, runNode } from './processes.mjs';

const ROUNDS = 3;
const WEASYPRINT_DOCUMENTS = 20;
const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const cli = here('../dist/cli.js');
const sizes = process.argv.slice(2).map(Number);
if (sizes.length === 0) sizes.push(50, 200, 1000);
const workers = availableParallelism();
const folder = mkdtempSync(join(tmpdir(), 'shuntbook-bench-'));
const say = (text) => console.log(text);

/** Full run, bare engine, rerun unchanged, rerun with one job changed: one after another, so that all see the same machine. */
async function measure(jobs) {
  const lists = join(folder, `lists-${jobs}`);
  const files = writeBatch(lists, jobs);
  const html = join(folder, `html-${jobs}`);
  await runNode([here('render.mjs'), lists, html]);
  const documents = readdirSync(html).length;
  const rounds = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const out = join(folder, `out-${jobs}`);
    const pack = () =>
      runNode([cli, 'pack', lists, '--out', out, '--quiet', '--workers', String(workers)], [0, 1]);
    const full = await pack();
    const bare = await runNode([here('bare.mjs'), html, String(workers)]);
    const unchanged = await pack();
    changeOneJob(files[0], round + 1);
    const changed = await pack();
    rounds.push({ full, bare, unchanged, changed });
    rmSync(out, { recursive: true });
    const seconds = Object.entries(rounds[round]).map(([name, run]) => `${name} ${run.seconds.toFixed(2)} s`);
    say(
      `${jobs} jobs, round ${round + 1}: ${seconds.join(', ')}; peak ${(full.peak / 2 ** 20).toFixed(0)} MiB`,
    );
  }
  const weasyprint = weasyPrintRatio(html, rounds, documents);
  rmSync(html, { recursive: true });
  const ratio = (name) => median(rounds.map((r) => r[name].seconds / r.full.seconds));
  return {
    jobs,
    documents,
    packsASecond: median(rounds.map((r) => jobs / r.full.seconds)),
    secondsAPack: median(rounds.map((r) => r.full.seconds / jobs)),
    peak: median(rounds.map((r) => r.full.peak)),
    overBare: median(rounds.map((r) => r.full.seconds / r.bare.seconds)),
    unchanged: ratio('unchanged'),
    changed: ratio('changed'),
    weasyprint,
  };
}

/** Time of WeasyPrint a document / ours a document, on one core each; undefined where it isn't installed. */
function weasyPrintRatio(html, rounds, documents) {
  // Evenly through a job's documents, which differ in length.
  const some = readdirSync(html)
    .slice(0, WEASYPRINT_DOCUMENTS)
    .map((name) => join(html, name));
  // Debian's package belongs to Debian's Python, whichever one comes first on the path.
  const run = spawnSync('/usr/bin/python3', [here('by_weasyprint.py'), ...some], {
    encoding: 'utf8',
    timeout: 1_800_000,
  });
  if (run.status !== 0) return undefined;
  const ours = median(rounds.map((r) => (r.full.seconds * workers) / documents));
  return Number(run.stdout) / some.length / ours;
}

const results = [];
for (const jobs of sizes) results.push(await measure(jobs));
const parts = JSON.parse((await runNode([here('parts.mjs'), join(folder, `lists-${sizes[0]}`)])).out);
const planning = JSON.parse((await runNode(['--expose-gc', here('planning.mjs')])).out);
rmSync(folder, { recursive: true });
const page = writePerformancePage({ results, parts, planning, workers, rounds: ROUNDS });
say(page);
