// Texts that hold the words of a job whole: what the program and its templates say, and the job's own plan.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { vocabularyOf } from './broken-words.mjs';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const SAID_IN = [
  ['dist/words', /\.js$/],
  ['dist/documents', /\.js$/],
  ['templates', /\.hbs$/],
];
/** What stands between quotes of JavaScript, without what is filled in. */
const QUOTED = /'((?:[^'\\\n]|\\.)*)'|"((?:[^"\\\n]|\\.)*)"|`((?:[^`\\]|\\.)*)`/gu;

const filesBelow = (folder, pattern) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => pattern.test(name))
    .map((name) => readFileSync(join(ROOT, folder, name), 'utf8'));

/**
 * The words of the program's sentences and templates.
 * @returns {import('./broken-words.d.mts').Vocabulary}
 */
export function programsWords() {
  return vocabularyOf(
    SAID_IN.flatMap(([folder, pattern]) =>
      filesBelow(folder, pattern).flatMap((text) =>
        folder === 'templates'
          ? text.split(/<[^>]*>|\{\{[^}]*\}\}/u)
          : [...text.matchAll(QUOTED)].flatMap((found) =>
              (found[1] ?? found[2] ?? found[3] ?? '').split(/\$\{[^}]*\}/u),
            ),
      ),
    ),
  );
}

/** Every text within a value of JSON. */
function textsIn(value) {
  if (typeof value === 'string') return [value];
  return value && typeof value === 'object' ? Object.values(value).flatMap(textsIn) : [];
}

/**
 * The words of a job: of its plan, and of the lines that its documents print.
 * @param {unknown} plan
 * @param {readonly string[]} lines
 * @returns {import('./broken-words.d.mts').Vocabulary}
 */
export function jobsWords(plan, lines) {
  return vocabularyOf([...textsIn(plan), ...lines]);
}
