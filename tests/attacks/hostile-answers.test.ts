import { readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { expect, it } from 'vitest';
import { withAccepted } from '../../src/batch/accepted.js';
import { questionFiles, questionsOfBatch } from '../../src/batch/questions-files.js';
import { renderDocuments } from '../../src/documents/render.js';
import { defaultSettings } from '../../src/model/settings.js';
import { QUESTION_COLUMNS, type QuestionColumn } from '../../src/model/questions.js';
import { planJob } from '../../src/plan/plan-job.js';
import { readListContents } from '../../src/read/list/lists.js';
import { freshFolder, shuntbook } from '../commands/command.js';
import { setByHand } from '../documents/fixtures/set-by-hand.js';

const settings = defaultSettings();
const LIST =
  'job,basis,lowest_temp,tag,kind,connects_to,run_length,place,ac_in\n' +
  'J,nec-2023,-5,S,service,,,House / wall,120/240\n' +
  'J,,,P,panel,S,,Barn / wall,\n';

const PAYLOADS = [
  '"><img src=x onerror=alert(1)><iframe src=http://host.invalid/>',
  '{{{constructor}}}{{> head}}{{#each this}}x',
  '=HYPERLINK("http://host.invalid","x")',
  '+1;=1+1',
  '../../../../x',
  '__proto__',
  'constructor',
  '\u001b]0;x\u0007\u001b[2J\u202ex',
  'x'.repeat(300_000),
  'a\nb\r\nc',
];

/** Lines of answers that are sound, each column of them in turn made hostile. */
function hostile(sound: Readonly<Partial<Record<QuestionColumn, string>>>): string {
  const lines = PAYLOADS.flatMap((payload) =>
    QUESTION_COLUMNS.map((column) =>
      QUESTION_COLUMNS.map((c) => (c === column ? payload : (sound[c] ?? ''))),
    ),
  );
  return stringify([[...QUESTION_COLUMNS], ...lines]);
}

/** A cell that a spreadsheet would run. */
const runs = (cell: string): boolean => /^[\s\p{Cf}"]*[=+@|%]/u.test(cell) || /^[\s"]*-[^\d]/.test(cell);
const CONTROL = /[\p{Cc}\u202a-\u202e]/u;

const SOUND = [
  {
    job: 'J',
    tag: 'P',
    field: 'run_length',
    code: 'fact/run-length',
    answer: '100 ft',
    by: 'R',
    date: '2026-03-01',
  },
  { job: 'J', tag: 'P', field: 'description', code: '', answer: 'text', by: 'R', date: '2026-03-01' },
  {
    job: 'J',
    tag: 'P',
    field: 'outdoors',
    code: 'default/used',
    question: 'q',
    answer: 'accept',
    by: 'R',
    date: '2026-03-01',
  },
];

it.each(SOUND)('hostile cells around an answer of $field break nothing, and run nowhere', async (sound) => {
  const { jobs, items } = readListContents([{ name: 'list.csv', content: LIST }], { settings }, undefined, {
    answers: [{ name: 'answers.csv', content: hostile(sound) }],
  });
  const [list] = jobs;
  if (!list) throw new Error('no job');
  const plan = withAccepted(planJob(list, { catalogue: undefined, settings }), list);
  const all = [
    ...items.map((item) => ({ job: '', item })),
    ...plan.openItems.map((item) => ({ job: 'J', item })),
  ];
  for (const { content } of questionFiles(questionsOfBatch(all, jobs))) {
    const text = String(content);
    expect(CONTROL.test(text.replaceAll('\r\n', ''))).toBe(false);
    for (const cell of parse(text).flat()) expect(runs(cell), cell).toBe(false);
  }
  const fonts = { css: () => '', covers: (): boolean => true };
  const context = { settings, date: '2026-03-31', fonts, measure: setByHand };
  for (const { html } of await renderDocuments(plan, context)) {
    expect(html).not.toMatch(/<(?:img|iframe)[^>]*(?:onerror|host\.invalid)/);
    expect(CONTROL.test(html.replace(/\s/g, ' '))).toBe(false);
  }
});

it('a name of a file of questions that is a link is never followed, nor is what it leads to written', async () => {
  const folder = freshFolder();
  const [list, out, aim] = ['list.csv', 'out', 'aim.csv'].map((name) => join(folder, name)) as [
    string,
    string,
    string,
  ];
  writeFileSync(list, LIST);
  await shuntbook(['plan', list, '--out', out]);
  writeFileSync(aim, 'someone’s');
  rmSync(join(out, 'questions.csv'));
  symlinkSync(aim, join(out, 'questions.csv'));
  await shuntbook(['plan', list, '--out', out]);
  expect(readFileSync(aim, 'utf8')).toBe('someone’s');
  expect(readdirSync(out)).toContain('questions.new.csv');
});
