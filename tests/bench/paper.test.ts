import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { comparePaper, differingLines } from '../../bench/paper.mjs';

const folder = mkdtempSync(join(tmpdir(), 'shuntbook-paper-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** A PDF with these lines on its pages, each line where the one before it ends. */
function pdf(pages: readonly (readonly string[])[], created = 'D:20260101000000Z'): string {
  const kids = pages.map((_, at) => `${10 + 2 * at} 0 R`).join(' ');
  const objects = [
    '1 0 obj <</Type /Catalog /Pages 2 0 R>> endobj',
    `2 0 obj <</Type /Pages /Count ${pages.length} /Kids [${kids}]>> endobj`,
    '3 0 obj <</Type /Font /Subtype /Type1 /BaseFont /Helvetica>> endobj',
    `4 0 obj <</CreationDate (${created})>> endobj`,
    ...pages.flatMap((lines, at) => {
      const text = `BT /F 12 Tf 20 TL 40 800 Td ${lines.map((line) => `(${line}) Tj T*`).join(' ')} ET`;
      const own = 10 + 2 * at;
      return [
        `${own} 0 obj <</Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents ${own + 1} 0 R /Resources <</Font <</F 3 0 R>>>>>> endobj`,
        `${own + 1} 0 obj <</Length ${text.length}>> stream\n${text}\nendstream endobj`,
      ];
    }),
  ];
  let body = '%PDF-1.7\n';
  const entries = objects.map((object) => {
    const entry = `${object.split(' ')[0] ?? ''} 1\n${String(body.length).padStart(10, '0')} 00000 n \n`;
    body += `${object}\n`;
    return entry;
  });
  return `${body}xref\n${entries.join('')}trailer <</Size ${10 + 2 * pages.length} /Root 1 0 R /Info 4 0 R>>\nstartxref\n${body.length}\n%%EOF\n`;
}

let runs = 0;
/** Two folders of these files, held against each other. */
async function compared(
  before: Readonly<Record<string, string>>,
  after: Readonly<Record<string, string>>,
): ReturnType<typeof comparePaper> {
  const own = join(folder, String((runs += 1)));
  const sides = { before, after };
  for (const [side, files] of Object.entries(sides)) {
    mkdirSync(join(own, side), { recursive: true });
    for (const [name, content] of Object.entries(files)) {
      mkdirSync(dirname(join(own, side, name)), { recursive: true });
      writeFileSync(join(own, side, name), content);
    }
  }
  return comparePaper(join(own, 'before'), join(own, 'after'));
}

describe('two folders of packs held against each other', () => {
  const pack = pdf([['Schedule of J-1', 'SPD-1 at the hall'], ['Notes']]);

  it('finds nothing where both say the same, whatever the dates of the files', async () => {
    const later = pdf([['Schedule of J-1', 'SPD-1 at the hall'], ['Notes']], 'D:20270203040506Z');
    const { differing, documents, pages } = await compared(
      { 'J-1/pack.pdf': pack },
      { 'J-1/pack.pdf': later },
    );
    expect({ differing, documents, pages }).toEqual({ differing: [], documents: 1, pages: 2 });
  });

  it('minds neither blanks nor where a line breaks', async () => {
    const wrapped = pdf([['Schedule   of', 'J-1', 'SPD-1 at the hall'], ['Notes']]);
    expect((await compared({ 'a.pdf': pack }, { 'a.pdf': wrapped })).differing).toEqual([]);
  });

  it('names the lines that differ, and no other', async () => {
    const other = pdf([['Schedule of J-1', 'SPD-1 at the garage'], ['Notes']]);
    const { differing } = await compared({ 'a.pdf': pack, 'b.pdf': pack }, { 'a.pdf': other, 'b.pdf': pack });
    expect(differing).toEqual([
      { name: 'a.pdf', differences: ['- SPD-1 at the hall', '+ SPD-1 at the garage'] },
    ]);
  });

  it('names another number of pages, also where the words are the same', async () => {
    const shorter = pdf([['Schedule of J-1', 'SPD-1 at the hall', 'Notes']]);
    const { differing } = await compared({ 'a.pdf': pack }, { 'a.pdf': shorter });
    expect(differing).toEqual([
      {
        name: 'a.pdf',
        differences: ['2 pages before, 1 after', 'the same text stands on other pages: 1, 2'],
      },
    ]);
  });

  it('names text that went to another page', async () => {
    const moved = pdf([['Schedule of J-1'], ['SPD-1 at the hall', 'Notes']]);
    const { differing } = await compared({ 'a.pdf': pack }, { 'a.pdf': moved });
    expect(differing).toEqual([
      { name: 'a.pdf', differences: ['the same text stands on other pages: 1, 2'] },
    ]);
  });

  it('names documents that only one folder has, and those that nobody can read', async () => {
    const { differing } = await compared(
      { 'J-1/a.pdf': pack, 'J-1/c.pdf': pack },
      { 'J-2/a.pdf': pack, 'J-1/c.pdf': 'no PDF' },
    );
    expect(differing.map((d) => d.name)).toEqual(['J-1/a.pdf', 'J-1/c.pdf', 'J-2/a.pdf']);
    expect(differing[0]?.differences).toEqual(['is only in the first folder']);
    expect(differing[1]?.differences[0]).toMatch(/^can't be read: /);
    expect(differing[2]?.differences).toEqual(['is only in the second folder']);
  });
});

describe('the lines that differ', () => {
  it.each([
    [['a', 'b', 'c'], ['a', 'b', 'c'], []],
    [['a', 'b', 'c'], ['a', 'c'], ['- b']],
    [['a', 'c'], ['a', 'b', 'c'], ['+ b']],
    [
      ['a', 'b', 'c', 'd'],
      ['a', 'x', 'c', 'y', 'd'],
      ['- b', '+ x', '+ y'],
    ],
    [[], ['a'], ['+ a']],
    [['a', 'a'], ['a'], ['- a']],
  ])('of %j and %j are %j', (before, after, lines) => {
    expect(differingLines(before, after)).toEqual(lines);
  });
});
