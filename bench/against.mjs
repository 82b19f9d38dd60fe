// This build against that of another commit, on the same lists, one run after another.
import { existsSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { changeOneJob, writeBatch } from './generate.mjs';
import { pdfsBelow } from './paper.mjs';
import { median, runNode } from './processes.mjs';

const OURS = fileURLToPath(new URL('..', import.meta.url));
const STEPS = { full: 'full run', unchanged: 'rerun unchanged', changed: 'rerun with one job changed' };
const PARTS = ['dist/cli.js', 'fixtures/demo/catalogue.csv', 'fixtures/demo/settings.json'];

/** How many documents a run left, and their bytes together. */
function paperOf(out) {
  const files = pdfsBelow(out);
  return { documents: files.length, bytes: files.reduce((sum, f) => sum + statSync(join(out, f)).size, 0) };
}

/**
 * Runs both builds on jobs of the other's demo, step by step in turn, and says the medians of ours / theirs.
 * @param {object} run
 * @param {string} run.theirs a built checkout of another commit
 * @param {number} run.jobs how many
 * @param {number} run.rounds who begins changes from round to round
 * @param {number} run.workers of each run
 * @param {string} run.folder scratch, for lists and packs
 * @param {(text: string) => void} run.say
 */
export async function measureAgainst({ theirs, jobs, rounds, workers, folder, say }) {
  for (const part of PARTS)
    if (!existsSync(join(theirs, part)))
      throw new Error(`${theirs} is no built checkout: ${part} isn't there`);
  const lists = join(folder, `lists-${jobs}`);
  const sides = { ours: OURS, theirs };
  const outOf = (side) => join(folder, `${side}-${jobs}`);
  const pack = (side) => {
    const args = ['pack', lists, '--out', outOf(side), '--quiet', '--workers', String(workers)];
    // 1: a draft is among the jobs, as the demo has it on purpose.
    return runNode([join(sides[side], 'dist/cli.js'), ...args], [0, 1]);
  };
  const ratios = { full: [], unchanged: [], changed: [] };
  let paper;
  for (let round = 0; round < rounds; round += 1) {
    const [first] = writeBatch(lists, jobs, join(theirs, 'fixtures/demo'));
    const order = round % 2 === 0 ? ['ours', 'theirs'] : ['theirs', 'ours'];
    const told = [];
    for (const step of Object.keys(STEPS)) {
      if (step === 'changed') changeOneJob(first, round + 1);
      const seconds = {};
      for (const side of order) seconds[side] = (await pack(side)).seconds;
      if (step === 'full') paper = { ours: paperOf(outOf('ours')), theirs: paperOf(outOf('theirs')) };
      ratios[step].push(seconds.ours / seconds.theirs);
      told.push(`${STEPS[step]} ${seconds.ours.toFixed(2)} / ${seconds.theirs.toFixed(2)} s`);
    }
    for (const side of order) rmSync(outOf(side), { recursive: true });
    say(`${jobs} jobs, round ${round + 1}, ours / theirs: ${told.join(', ')}`);
  }
  const { ours, theirs: other } = paper;
  say(`${jobs} jobs, ours / theirs, medians of ${rounds} rounds:`);
  for (const [step, name] of Object.entries(STEPS)) say(`  ${name}: ${median(ratios[step]).toFixed(3)}`);
  say(
    `  bytes of the documents: ${ours.bytes} in ${ours.documents} / ${other.bytes} in ${other.documents}: ${(ours.bytes / other.bytes).toFixed(3)}`,
  );
}
