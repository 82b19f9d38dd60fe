// npm run bench [-- SIZE... --rounds N]: speed and memory as ratios within one run, medians of three interleaved rounds,
// written to docs/performance.md. Sizes: 50, 200 and 1000 jobs; the last takes an hour on two cores.
// npm run bench -- --against FOLDER [SIZE... --rounds N]: this build against that of another commit, a built checkout of
// which FOLDER is, on that checkout's fixtures; 50 jobs and five rounds. Told on the screen only.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { measureAgainst } from './against.mjs';
import { changeOneJob, writeBatch } from './generate.mjs';
import { writePerformancePage } from './page.mjs';
import { median, runNode } from './processes.mjs';

const WEASYPRINT_DOCUMENTS = 20;
const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const cli = here('../dist/cli.js');
const { values: given, positionals } = parseArgs({
  allowPositionals: true,
  options: { against: { type: 'string' }, rounds: { type: 'string' } },
});
const sizes = positionals.map(Number);
const ROUNDS = Number(given.rounds ?? (given.against === undefined ? 3 : 5));
if (![...sizes, ROUNDS].every((n) => Number.isInteger(n) && n > 0))
  throw new Error('Sizes and rounds are whole numbers above 0: npm run bench -- 50 --rounds 5');
const workers = availableParallelism();
const folder = mkdtempSync(join(tmpdir(), 'shuntbook-bench-'));
const say = (text) => console.log(text);
if (given.against !== undefined) {
  // npm runs this in the folder of the package, wherever it was called.
  const theirs = resolve(process.env.INIT_CWD ?? '.', given.against);
  try {
    for (const jobs of sizes.length === 0 ? [50] : sizes)
      await measureAgainst({ theirs, jobs, rounds: ROUNDS, workers, folder, say });
  } finally {
    rmSync(folder, { recursive: true });
  }
  process.exit();
}
if (sizes.length === 0) sizes.push(50, 200, 1000);

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
const register = JSON.parse((await runNode([here('register.mjs')])).out);
rmSync(folder, { recursive: true });
const page = writePerformancePage({ results, parts, planning, register, workers, rounds: ROUNDS });
say(page);
