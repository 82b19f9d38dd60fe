// docs/performance.md, from what was measured.
import { readFileSync, writeFileSync } from 'node:fs';
import { arch, cpus, platform, totalmem } from 'node:os';

const MIB = 2 ** 20;
const two = (x) => x.toFixed(2);
const three = (x) => x.toFixed(3);
const limit = (limits, jobs) => (limits[jobs] === undefined ? '' : ` (at most ${limits[jobs]})`);

/**
 * Writes the page and gives its text.
 * @param {object} measured results by size, parts of a pack, planning, register, number of workers and rounds
 * @returns {string}
 */
export function writePerformancePage({ results, parts, planning, register, workers, rounds }) {
  const rows = results.map((r) =>
    [
      r.jobs,
      r.documents,
      two(r.packsASecond),
      `${(r.peak / MIB).toFixed(0)} MiB`,
      `${two(r.overBare)}${limit({ 200: 1.3 }, r.jobs)}`,
      `${three(r.unchanged)}${limit({ 200: 0.03, 1000: 0.015 }, r.jobs)}`,
      `${three(r.changed)}${limit({ 200: 0.1, 1000: 0.03 }, r.jobs)}`,
      r.weasyprint === undefined ? 'not installed' : two(r.weasyprint),
    ].join(' | '),
  );
  const all = Object.values(parts.parts).reduce((sum, ms) => sum + ms, 0);
  const shares = Object.entries(parts.parts).map(
    ([name, ms]) => `| ${name} | ${(ms / parts.jobs).toFixed(1)} | ${((100 * ms) / all).toFixed(1)} % |`,
  );
  const of = (jobs) => results.find((r) => r.jobs === jobs);
  const [small, large] = [of(200), of(1000)];
  const growth =
    small && large
      ? `From 200 to 1,000 jobs peak memory grows by a factor of ${two(large.peak / small.peak)} (at most 1.2), and the time a pack by ${two(large.secondsAPack / small.secondsAPack)} (at most 1.15).`
      : 'Growth is measured with 200 and 1,000 jobs.';
  const text = `# Performance

Written by \`npm run bench\`; every ratio is of runs within one round, so that both sides see the same machine. Medians of ${rounds} rounds.

Machine: ${cpus().length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GiB, ${platform()} ${arch()}, Node ${process.version}; ${workers} workers. The jobs are those of the demo, again and again with other lengths.

| jobs | documents | packs a second | peak memory | (a) full run / bare engine | (b) rerun unchanged / full run | (c) rerun with one job changed / full run | (e) WeasyPrint / ours |
| --- | --- | --- | --- | --- | --- | --- | --- |
| ${rows.join(' |\n| ')} |

- **(a)** the bare engine is the same browser printing the same HTML, with the same number of workers and the same reuse of pages, and nothing else: it plans, renders and writes nothing, and finds its fonts on the system. A full run doesn't lay its pages out for a screen that nobody looks at, which the bare engine does: what that spares the browser pays for a part of planning, rendering and writing, which run beside the printing.
- **Peak memory** is that of all processes together, shared pages counted once.
- **(e)** is the time of WeasyPrint a document on one core against that of a full run, its planning included, times the number of workers.
- ${growth}

## (d) Planning

A list of ${planning.rows.toLocaleString('en')} rows and ${planning.jobs.toLocaleString('en')} jobs, in memory: csv-parse alone, with the reader's own options, takes ${two(planning.parsing)} s; reading and planning takes ${two(planning.planning)} s, **${two(planning.ratio)} times** that (at most 6), with a peak of ${(planning.memory / MIB).toFixed(0)} MiB (under 1,024). Writing the plans and schedules, each flushed to the disk, takes another ${two(planning.writing)} s.

## (f) The register

The records of ${register.jobs.toLocaleString('en')} jobs, ${(register.bytes / MIB).toFixed(0)} MiB, in one round: reading and parsing them, one after another, takes ${two(register.reading)} s; \`shuntbook register\` takes ${two(register.seconds)} s, **${two(register.ratio)} times** that (at most 3), with a peak of ${(register.peak / MIB).toFixed(0)} MiB (under 512).

## What a pack costs

One job after another on one page, ${parts.jobs} jobs, ms a pack:

| part | ms | share |
| --- | --- | --- |
${shares.join('\n')}

Of print and finishing, \`site-record.pdf\`, the form that a crew fills in, takes ${(parts.forForms / parts.jobs).toFixed(1)} ms a pack, ${((100 * parts.forForms) / all).toFixed(1)} % of the whole.
`;
  const path = new URL('../docs/performance.md', import.meta.url);
  writeFileSync(path, text);
  return readFileSync(path, 'utf8');
}
