// Packs to measure: the demo, and jobs of the sizes that the budgets speak of, on every size of permit sheets.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { jobOf } from '../jobs-of-size.mjs';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const DEMO = join(ROOT, 'fixtures', 'demo');
const PROTECTORS = [6, 14, 32];

/** Permit sheets of these sizes are measured beside those that the bases bring. */
export const OTHER_PAPERS = ['a3', 'letter', 'a4', 'arch-d'];

/** What owners and crews hold is measured on both papers and in both languages, plates behind the labels. */
export const IN_LANGUAGES = {
  documents: ['closeout-pack', 'owner-sheet', 'labels', 'site-record'],
  variants: [
    { paper: 'letter', language: 'es' },
    { paper: 'A4', language: 'es' },
    { paper: 'A4', language: 'en' },
  ],
};

/**
 * True where the program has a setting for the paper of permit sheets.
 * @returns {Promise<boolean>}
 */
export async function hasPermitPaper() {
  const { SettingsSchema } = await import('../../dist/model/settings.js');
  return OTHER_PAPERS.every((permitPaper) => SettingsSchema.safeParse({ permitPaper }).success);
}

/**
 * Makes the packs.
 * @param {string} work a folder of the measuring's own
 * @param {string} name of the folder of packs in it
 * @param {object} changed settings that differ from those of the demo
 * @param {string | undefined} job only this one
 * @param {readonly string[]} more options of the command
 * @returns {string} where the packs are
 * @throws Error where the program fails at more than a draft
 */
export function makePacks(work, name, changed, job, more = []) {
  mkdirSync(work, { recursive: true });
  const lists = PROTECTORS.map((protectors) => {
    const list = join(work, `size-${protectors}.csv`);
    writeFileSync(list, jobOf(protectors));
    return list;
  });
  const settings = join(work, `settings-${name}.json`);
  const own = JSON.parse(readFileSync(join(DEMO, 'settings.json'), 'utf8'));
  writeFileSync(settings, JSON.stringify({ ...own, ...changed }));
  const out = join(work, name);
  const options = [...more, '--settings', settings, '--out', out, '--date', '2025-03-14', '--quiet'];
  const run = spawnSync(
    process.execPath,
    [
      join(ROOT, 'dist', 'cli.js'),
      'pack',
      DEMO,
      ...lists,
      ...options,
      ...(job === undefined ? [] : ['--job', job]),
    ],
    { encoding: 'utf8' },
  );
  if (run.error) throw run.error;
  // One job of the demo is a draft on purpose.
  if (run.status !== 0 && run.status !== 1) throw new Error(`pack ended with ${run.status}: ${run.stderr}`);
  return out;
}
