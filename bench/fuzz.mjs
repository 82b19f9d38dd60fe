// npm run fuzz [-- --seed N --lists N --workbooks N --commands N --case N]: mutated lists and workbooks, read and planned in a worker under a watchdog,
// then some of them through the program as a process. Ends with 1 where one of them crashed, hung, wrote elsewhere or
// failed without a code and a line. The same seed gives the same lists.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Worker } from 'node:worker_threads';
import { fuzzCase } from './fuzz-mutations.mjs';
import { workbookCase } from './fuzz-workbooks.mjs';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '20261125' },
    lists: { type: 'string', default: '20000' },
    workbooks: { type: 'string', default: '2000' },
    commands: { type: 'string', default: '200' },
    case: { type: 'string' },
  },
});
const seed = Number(values.seed);
// From this number on a case is a workbook.
const FIRST_WORKBOOK = 10_000_000;
// A list may compute this long; a process starts, and a pack is printed, besides.
const WATCHDOG_MS = 2_000;
const STANDSTILL_MS = 60_000;
const PROCESS_WATCHDOG_MS = { read: 30_000, plan: 30_000, pack: 180_000 };
const PACK_EVERY = 20;
const cli = fileURLToPath(new URL('../dist/cli.js', import.meta.url));

const faults = [];
const fault = (number, what) => {
  faults.push({ number, what });
  console.error(`case ${number}: ${what}`);
};

/** A worker that is up: its modules are loaded before the first watch begins. */
async function startWorker() {
  const worker = new Worker(new URL('./fuzz-worker.mjs', import.meta.url), {
    workerData: { seed, firstWorkbook: FIRST_WORKBOOK },
  });
  await once(worker, 'message');
  return worker;
}

/**
 * Ends when a case has computed too long, or has done nothing for long. The main thread only waits, so that what the process
 * computes is the worker's; on a machine that others use, time on the wall says little.
 */
async function hung(signal) {
  const begun = performance.now();
  const before = process.cpuUsage();
  for (;;) {
    await setTimeout(200, undefined, { signal });
    const { user, system } = process.cpuUsage(before);
    if ((user + system) / 1_000 > WATCHDOG_MS || performance.now() - begun > STANDSTILL_MS)
      return { hang: true };
  }
}

/** What became of one case: the worker's answer, a hang, or a death. */
async function watch(worker, number) {
  const over = new AbortController();
  const { signal } = over;
  const answer = once(worker, 'message', { signal }).then(
    ([got]) => got,
    (error) =>
      error.name === 'AbortError' ? undefined : { crash: error.stack ?? String(error), dead: true },
  );
  const death = once(worker, 'exit', { signal }).then(
    ([code]) => ({ crash: `the worker ended with ${code}`, dead: true }),
    () => undefined,
  );
  const hang = hung(signal).catch(() => undefined);
  worker.postMessage(number);
  const got = await Promise.race([answer, death.then((d) => d ?? answer), hang]);
  over.abort();
  return got;
}

async function inProcess(from, count) {
  const sum = { lists: 0, jobs: 0, unreadable: 0, items: 0, crashes: 0, hangs: 0, deaths: 0 };
  let worker = await startWorker();
  for (let number = from; number < from + count; number += 1) {
    const got = await watch(worker, number);
    sum.lists += 1;
    if (got.hang) {
      sum.hangs += 1;
      fault(number, `no answer within ${WATCHDOG_MS} ms of computing`);
    } else if (got.crash) {
      sum.crashes += 1;
      fault(number, got.crash);
    } else {
      sum.jobs += got.jobs;
      sum.items += got.items;
      sum.unreadable += got.unreadable ? 1 : 0;
    }
    if (got.dead) sum.deaths += 1;
    if (got.hang || got.dead) {
      await worker.terminate();
      worker = await startWorker();
    }
    if (sum.lists % 2_000 === 0) console.error(`${sum.lists} of ${count} lists`);
  }
  await worker.terminate();
  return sum;
}

/** Runs the program; `status` null: it hung and was killed. */
function run(command, args, cwd, input) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [cli, command, ...args], { cwd });
    const told = { out: '', err: '' };
    child.stdout.on('data', (data) => (told.out += data));
    child.stderr.on('data', (data) => (told.err += data));
    child.stdin.on('error', () => undefined);
    child.stdin.end(input);
    const over = new AbortController();
    void setTimeout(PROCESS_WATCHDOG_MS[command], '', { signal: over.signal }).then(
      () => child.kill('SIGKILL'),
      () => undefined,
    );
    child.on('close', (status) => {
      over.abort();
      resolve({ status, ...told });
    });
  });
}

const filesBelow = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)));

/** Whether a run that couldn't read all says what: a file, or at each failed job a conflict. */
function saysWhy({ unreadable, jobs, openItems }) {
  const failed = (jobs ?? []).filter((job) => job.status === 'failed');
  const isTold = ({ job }) => openItems.some((item) => item.job === job && item.severity === 'conflict');
  return unreadable.length + failed.length > 0 && failed.every(isTold);
}

/** What is wrong with how the program ended; `` where nothing. */
function wrongEnd(command, { status, out, err }) {
  if (status === null) return 'it hung, or was killed by a signal';
  if (![0, 1, 2].includes(status)) return `it ended with ${status}: ${err.slice(0, 600)}`;
  if (/^\s+at .*:\d+:\d+\)?$|Unhandled|Warning:/m.test(err))
    return `it told a stack trace: ${err.slice(0, 600)}`;
  try {
    const told = JSON.parse(out);
    const bad = [...told.openItems, ...told.unreadable].find((i) => i.code === '' || !(i.line >= 0));
    if (told.exitStatus !== status || told.command !== command) return 'its JSON tells another end';
    if (bad !== undefined) return `an item lacks a code or a line: ${JSON.stringify(bad)}`;
    if (status === 2 && !saysWhy(told)) return 'it failed without saying why';
  } catch {
    return `its standard output is no JSON: ${out.slice(0, 200)}`;
  }
  return '';
}

async function throughTheCommand(from, count) {
  const sum = { runs: 0, read: 0, plan: 0, pack: 0, byStatus: {}, faults: 0 };
  const top = mkdtempSync(join(tmpdir(), 'shuntbook-fuzz-'));
  try {
    for (let i = 0; i < count; i += 1) {
      const number = from + i;
      // Every tenth is a workbook, whatever its name says.
      const caseOf = i % 10 === 9 || number >= FIRST_WORKBOOK ? workbookCase : fuzzCase;
      const { list, library, catalogue } = caseOf(seed, number);
      // Deep down, so that a file that climbs out of --out lands where it is seen.
      const root = join(top, String(number));
      const cwd = join(root, 'a', 'b', 'c');
      mkdirSync(cwd, { recursive: true });
      writeFileSync(join(cwd, 'list.csv'), list);
      writeFileSync(join(cwd, 'library.csv'), library);
      writeFileSync(join(cwd, 'catalogue.csv'), catalogue);
      const given = new Set(filesBelow(root));
      const command = i % PACK_EVERY === 0 ? 'pack' : i % 4 === 1 ? 'read' : 'plan';
      const fromInput = i % 7 === 3;
      const beside = ['--library', 'library.csv', '--catalogue', 'catalogue.csv', '--json'];
      const into = command === 'read' ? [] : ['--out', 'out'];
      const ended = await run(
        command,
        [fromInput ? '-' : 'list.csv', ...beside, ...into],
        cwd,
        fromInput ? list : '',
      );
      sum.runs += 1;
      sum[command] += 1;
      sum.byStatus[ended.status] = (sum.byStatus[ended.status] ?? 0) + 1;
      const elsewhere = filesBelow(root).filter(
        (f) => !given.has(f) && !f.startsWith(join('a', 'b', 'c', 'out/')),
      );
      const what =
        wrongEnd(command, ended) || (elsewhere.length > 0 ? `it wrote ${elsewhere.join(', ')}` : '');
      if (what !== '') {
        sum.faults += 1;
        fault(number, `${command}: ${what}`);
      }
      rmSync(root, { recursive: true, force: true });
    }
    const left = readdirSync(top);
    if (left.length > 0) fault(-1, `files beside the cases: ${left.join(', ')}`);
  } finally {
    rmSync(top, { recursive: true, force: true });
  }
  return sum;
}

console.log(`seed ${seed}`);
const only = values.case === undefined ? undefined : Number(values.case);
const told = ({ lists, jobs, items, unreadable, crashes, hangs, deaths }, what) =>
  `in-process: ${lists} ${what}, ${jobs} jobs planned, ${items} items, ${unreadable} unreadable; ` +
  `${crashes} crashes, ${hangs} hangs, ${deaths} workers lost`;
if (only === undefined || only < FIRST_WORKBOOK)
  console.log(told(await inProcess(only ?? 0, only === undefined ? Number(values.lists) : 1), 'lists'));
if (only === undefined || only >= FIRST_WORKBOOK)
  console.log(
    told(
      await inProcess(only ?? FIRST_WORKBOOK, only === undefined ? Number(values.workbooks) : 1),
      'workbooks',
    ),
  );
const runs = await throughTheCommand(only ?? 1_000_000, only === undefined ? Number(values.commands) : 1);
const byStatus = Object.entries(runs.byStatus).map(([status, n]) => `${n} ended with ${status}`);
console.log(
  `through the command: ${runs.runs} runs (${runs.read} read, ${runs.plan} plan, ${runs.pack} pack); ${byStatus.join(', ')}; ${runs.faults} faults`,
);
process.exitCode = faults.length > 0 ? 1 : 0;
