import { copyFileSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/model/plan.js';
import { readPlan } from '../../src/output/plan-file.js';
import { QUESTION_COLUMNS } from '../../src/model/questions.js';
import { WHOS } from '../../src/model/words.js';
import { freshFolder, projectPath, shuntbook, type Told } from '../commands/command.js';
import { COMPANY, linesOf, writeBatch, writeLines, type Broken, type Line } from './question-batches.js';

const DATE = ['--date', '2026-03-02'];

function planOf(out: string, job: string): Plan {
  const read = readPlan(JSON.parse(readFileSync(join(out, job, 'plan.json'), 'utf8')));
  if (!read) throw new Error(`no plan of ${job}`);
  return read.plan;
}

interface Desk {
  readonly folder: string;
  readonly out: string;
  readonly plan: (...more: readonly string[]) => Promise<Told>;
  readonly questions: (name?: string) => readonly Line[];
  readonly open: () => readonly Line[];
}

/** One job of the demo in a folder of its own, broken or whole. */
function desk(breaks?: Broken): Desk {
  const folder = freshFolder();
  const out = join(folder, 'out');
  writeBatch(folder, 1, new Map(breaks ? [[0, breaks]] : []));
  return {
    folder,
    out,
    plan: (...more) =>
      shuntbook(['plan', join(folder, 'list.csv'), ...COMPANY, '--out', out, ...DATE, ...more]),
    questions: (name = 'questions.csv') => linesOf(join(out, name)),
    open: () => linesOf(join(out, 'open-items.csv')),
  };
}

const accepting = (lines: readonly Line[]): readonly Line[] =>
  lines.map((line) =>
    line['example'] === 'accept' ? { ...line, answer: 'accept', by: 'R. Example', date: '2026-03-01' } : line,
  );

describe('questions.csv', () => {
  it('has the columns of the contract, and a file for each who has its lines', async () => {
    const { out, plan, questions } = desk((row) => ({ ...row, run_length: '' }));
    await plan();
    const heading = readFileSync(join(out, 'questions.csv'), 'utf8').split('\r\n')[0];
    expect(heading).toBe(QUESTION_COLUMNS.join(','));
    expect(heading).toBe('job,tag,field,code,question,found,expected,example,file,line,answer,by,date');
    const parts = WHOS.flatMap((who) => questions(`questions-${who}.csv`));
    expect(parts.map((line) => JSON.stringify(line)).toSorted()).toEqual(
      questions()
        .map((line) => JSON.stringify(line))
        .toSorted(),
    );
  });

  it('asks what holds a job back first, and says what the cell is now', async () => {
    const { plan, questions } = desk((row) => (row['tag'] === 'ARR-W' ? { ...row, run_length: 'far' } : row));
    await plan();
    expect(questions()[0]).toMatchObject({
      tag: 'ARR-W',
      field: 'run_length',
      code: 'cell/wrong',
      found: 'far',
      example: '45 ft',
    });
  });

  it('says of a row once what holds of each equipment of its quantity', async () => {
    const { plan, questions } = desk((row) =>
      row['tag'] === 'ARR-W' ? { ...row, kind: 'other', quantity: '12', model: '', connects_to: '' } : row,
    );
    await plan();
    const asked = questions().filter((line) => line['code'] === 'place/other-kind');
    expect(asked.map(({ tag, question }) => [tag, question])).toEqual([
      ['ARR-W', 'ARR-W is of kind other: no rule of shuntbook looks at it.'],
    ]);
  });

  it('puts questions alike together, and asks each once', async () => {
    const folder = freshFolder();
    await shuntbook(['plan', projectPath('fixtures/demo'), '--out', folder, ...DATE]);
    const lines = linesOf(join(folder, 'questions.csv'));
    const keys = lines.map((line) => ['job', 'tag', 'field', 'code'].map((c) => line[c]).join('|'));
    expect(new Set(keys).size).toBe(keys.length);
    const kinds = lines.map((line) => `${line['code'] ?? ''} ${line['field'] ?? ''}`);
    const runs = kinds.filter((kind, i) => kind !== kinds[i - 1]);
    expect(new Set(runs).size).toBe(runs.length);
  });
});

/** Folders of lists, each with what is read beside it. */
const SOURCES = [
  ['the demo', projectPath('fixtures/demo'), []],
  ['awkward lists', projectPath('fixtures/lists'), COMPANY],
  ['bad lists', projectPath('fixtures/bad'), COMPANY],
] as const;

describe.each(SOURCES)('of %s', (_, lists, company) => {
  it('every example is an answer that is taken, and what is accepted isn’t asked again', async () => {
    const folder = freshFolder();
    const first = ['plan', lists, ...company, '--out', join(folder, 'out'), ...DATE];
    await shuntbook(first);
    const asked = linesOf(join(folder, 'out', 'questions.csv'));
    const given = asked.map((line): Line => ({
      ...line,
      answer: line['example'] ?? '',
      by: 'R. Example',
      date: '2026-03-01',
    }));
    expect(given.filter((line) => line['answer'] !== '').length).toBeGreaterThan(10);
    writeLines(join(folder, 'answers.csv'), given);
    await shuntbook([...first, '--answers', join(folder, 'answers.csv')]);
    const refused = linesOf(join(folder, 'out', 'open-items.csv')).filter(
      (item) => item['file'] === 'answers.csv' && item['column'] === 'answer',
    );
    const isRefusal = (item: Line): boolean => /^(?:cell|answers)\//.test(item['code'] ?? '');
    expect(refused.filter(isRefusal).map((item) => [item['job'], item['code'], item['message']])).toEqual([]);
    const again = new Set(
      linesOf(join(folder, 'out', 'questions.csv')).map(
        (line) => `${line['job'] ?? ''} ${line['question'] ?? ''}`,
      ),
    );
    const accepted = given.filter((line) => line['answer'] === 'accept');
    expect(accepted.filter((line) => again.has(`${line['job'] ?? ''} ${line['question'] ?? ''}`))).toEqual(
      [],
    );
  });
});

describe('what someone filled in', () => {
  it('is never overwritten: the new questions stand beside it, and an item says so', async () => {
    const { out, plan, questions, open } = desk();
    await plan();
    const path = join(out, 'questions.csv');
    writeLines(path, accepting(questions()).slice(0, 3));
    const filled = readFileSync(path, 'utf8');
    await plan('--answers', path);
    expect(readFileSync(path, 'utf8')).toBe(filled);
    expect(open().filter((item) => item['code'] === 'batch/questions-kept')).toMatchObject([
      { job: '', severity: 'confirm', file: 'questions.csv' },
    ]);
    const left = questions('questions.new.csv');
    expect(left.length).toBeGreaterThan(0);
    writeLines(join(out, 'questions.new.csv'), accepting(left));
    const both = readFileSync(join(out, 'questions.new.csv'), 'utf8');
    await plan('--answers', path, '--answers', join(out, 'questions.new.csv'));
    expect(readFileSync(path, 'utf8')).toBe(filled);
    expect(readFileSync(join(out, 'questions.new.csv'), 'utf8')).toBe(both);
    expect(questions('questions.new-2.csv')).toEqual([]);
  });

  it('once it is put away, leaves no questions of before beside the new ones', async () => {
    const { out, plan, questions } = desk();
    await plan();
    writeLines(join(out, 'questions.csv'), accepting(questions()).slice(0, 3));
    await plan();
    expect(readdirSync(out)).toContain('questions.new.csv');
    renameSync(join(out, 'questions.csv'), join(out, '..', 'answers.csv'));
    await plan('--answers', join(out, '..', 'answers.csv'));
    expect(readdirSync(out).filter((name) => name.includes('.new'))).toEqual([]);
    expect(questions().length).toBeGreaterThan(0);
  });

  it('is told from what nobody touched, which is written anew', async () => {
    const { out, plan, questions } = desk();
    await plan();
    const answers = join(out, '..', 'answers.csv');
    copyFileSync(join(out, 'questions.csv'), answers);
    writeLines(answers, accepting(linesOf(answers)));
    await plan('--answers', answers);
    expect(questions()).toEqual([]);
    expect(readdirSync(out).filter((name) => name.includes('.new'))).toEqual([]);
  });

  it('is kept where nothing is known of what we wrote', async () => {
    const { out, plan } = desk();
    await plan();
    writeFileSync(join(out, '.shuntbook', 'questions.json'), 'no record');
    const before = readFileSync(join(out, 'questions.csv'), 'utf8');
    await plan('--force');
    expect(readFileSync(join(out, 'questions.csv'), 'utf8')).toBe(before);
    expect(readdirSync(out)).toContain('questions.new.csv');
  });
});

describe('accept', () => {
  it('settles what is to be confirmed, and the plan says who accepted it, and when', async () => {
    const { folder, out, plan, questions, open } = desk();
    await plan();
    const before = open().filter((item) => item['job'] !== '').length;
    writeLines(join(folder, 'answers.csv'), accepting(questions()));
    await plan('--answers', join(folder, 'answers.csv'));
    expect(open().filter((item) => item['job'] !== '')).toEqual([]);
    const { accepted, openItems, submittable } = planOf(out, 'J-01');
    expect([accepted?.length, openItems, submittable]).toEqual([before, [], true]);
    expect(new Set(accepted?.map(({ by, date }) => `${by} ${date}`))).toEqual(
      new Set(['R. Example 2026-03-01']),
    );
  });

  it('of some rows leaves the default open for the others', async () => {
    const { folder, plan, questions, out } = desk();
    await plan();
    const line = questions().find((q) => q['field'] === 'impulse_withstand');
    expect(line?.['tag']).toBe('INV; MP; SVC');
    const some = {
      ...line,
      tag: 'MP; SVC',
      question: line?.['question']?.replace('INV, MP, SVC', 'MP, SVC') ?? '',
    };
    writeLines(join(folder, 'answers.csv'), accepting([{ ...some, example: 'accept' }]));
    await plan('--answers', join(folder, 'answers.csv'));
    expect(questions().find((q) => q['field'] === 'impulse_withstand')?.['tag']).toBe('INV');
    expect(planOf(out, 'J-01').accepted?.map(({ values }) => values)).toMatchObject([
      { rows: ['MP', 'SVC'] },
    ]);
  });

  it('outlives a list that is exported again in another order', async () => {
    const { folder, plan, questions, open } = desk();
    await plan();
    writeLines(join(folder, 'answers.csv'), accepting(questions()));
    const [first, ...others] = linesOf(join(folder, 'list.csv'));
    // The facts of the job stand on its first row.
    writeLines(join(folder, 'list.csv'), [...(first ? [first] : []), ...others.toReversed()]);
    await plan('--answers', join(folder, 'answers.csv'));
    expect(open().filter((item) => item['job'] !== '')).toEqual([]);
  });

  it('of what reads otherwise by now is a conflict that names the answer, and the question stays', async () => {
    const { folder, plan, questions, open } = desk();
    await plan();
    const lines = accepting(questions());
    writeLines(
      join(folder, 'answers.csv'),
      lines.map((line) => ({
        ...line,
        question: line['question']?.replace('taken as floating', 'taken as negative') ?? '',
      })),
    );
    const told = await plan('--answers', join(folder, 'answers.csv'));
    expect(told.status).toBe(1);
    expect(open().filter((item) => item['job'] !== '')).toMatchObject([
      { code: 'answers/accepted-otherwise', severity: 'conflict', file: 'answers.csv' },
      { code: 'default/used', severity: 'confirm' },
    ]);
    const line = lines.findIndex((q) => q['field'] === 'dc_grounding') + 2;
    expect(open().find((item) => item['severity'] === 'conflict')?.['line']).toBe(String(line));
  });
});

describe('an answer', () => {
  it('is told by `why` with who gave it, and when', async () => {
    const { folder, plan } = desk((row) => (row['tag'] === 'ARR-W' ? { ...row, run_length: '' } : row));
    await plan();
    writeLines(join(folder, 'answers.csv'), [
      {
        job: 'J-01',
        tag: 'ARR-W',
        field: 'run_length',
        code: 'fact/run-length',
        found: '',
        answer: '62 ft',
        by: 'R. Example',
        date: '2026-03-01',
      },
    ]);
    const args = [join(folder, 'list.csv'), 'ARR-W', ...COMPANY, '--answers', join(folder, 'answers.csv')];
    const { out } = await shuntbook(['why', ...args]);
    expect(out).toContain('answered by R. Example on 2026-03-01 (answers.csv, line 2');
  });

  it('that accepts is told by `why` too, with its equipment, and by `why --json` as data', async () => {
    const { folder, plan, questions } = desk();
    await plan();
    writeLines(join(folder, 'answers.csv'), accepting(questions()));
    const of = (tag: string, ...more: readonly string[]): Promise<Told> =>
      shuntbook([
        'why',
        join(folder, 'list.csv'),
        tag,
        ...COMPANY,
        '--answers',
        join(folder, 'answers.csv'),
        ...more,
      ]);
    const { out } = await of('ARR-W');
    expect(out).toContain('dc_grounding isn’t stated for ARR-E, ARR-W: taken as floating');
    expect(out).toContain('[accepted by R. Example on 2026-03-01]');
    expect(out).not.toContain('impulse_withstand isn’t stated');
    const { accepted } = JSON.parse((await of('INV', '--json')).out) as {
      accepted: Record<string, unknown>[];
    };
    expect(accepted.map((item) => item['by'])).toContain('R. Example');
  });

  it('that was given wrongly is asked about where it stands', async () => {
    const { folder, plan, questions } = desk();
    writeLines(join(folder, 'answers.csv'), [
      {
        job: 'J-01',
        tag: 'MP',
        field: 'ac_in',
        code: '',
        found: '120/240',
        answer: '480Y/277',
        by: 'R. Example',
        date: '2026-03-01',
      },
    ]);
    await plan('--answers', join(folder, 'answers.csv'));
    const line = questions().find((q) => q['code'] === 'site/systems-disagree');
    expect([line?.['example'], line?.['expected']?.startsWith('no answer here')]).toEqual(['', true]);
  });
});
