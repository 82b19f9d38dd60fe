// Pages as pictures, made by poppler.
import { spawnSync } from 'node:child_process';
import { greymaps } from './ink.mjs';

/** Dots an inch: a line of 0.25 mm still shows. */
export const DOTS_AN_INCH = 36;

/**
 * The pages of a PDF as pictures.
 * @param {string} file
 * @returns {import('./ink.d.mts').Picture[]}
 * @throws Error where poppler isn't there or can't read the file
 */
export function picturesOf(file) {
  const run = spawnSync('pdftoppm', ['-r', String(DOTS_AN_INCH), '-gray', file], { maxBuffer: 2 ** 30 });
  if (run.error) throw new Error(`pdftoppm can't be run (Debian: poppler-utils): ${run.error.message}`);
  if (run.status !== 0) throw new Error(`pdftoppm can't read ${file}: ${run.stderr}`);
  return greymaps(run.stdout);
}
