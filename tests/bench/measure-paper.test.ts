import { describe, expect, it } from 'vitest';
import { brokenWords, vocabularyOf } from '../../bench/measure-paper/broken-words.mjs';
import { budgetOf, paperOf } from '../../bench/measure-paper/budgets.mjs';
import { documentOf } from '../../bench/measure-paper/documents.mjs';
import { beyondSheet, nearestToLeft, shrunkTo } from '../../bench/measure-paper/edges.mjs';
import { blankBelow, greymaps, type Picture } from '../../bench/measure-paper/ink.mjs';
import { otherFonts } from '../../bench/measure-paper/fonts.mjs';
import { leastType, tooSmall } from '../../bench/measure-paper/least-type.mjs';
import { linesOf } from '../../bench/measure-paper/lines.mjs';
import type { MeasuredDocument } from '../../bench/measure-paper/measure-job.mjs';
import { measurePage } from '../../bench/measure-paper/measure-page.mjs';
import { overlapsOf } from '../../bench/measure-paper/overlaps.mjs';
import { ownWords } from '../../bench/measure-paper/own-words.mjs';
import type { Page, Text } from '../../bench/measure-paper/page.mjs';
import { failuresOf, heldOf, tableOf } from '../../bench/measure-paper/table.mjs';
import { titleStrip } from '../../bench/measure-paper/title-strip.mjs';
import { documentFindings } from '../../bench/measure-paper/whole-document.mjs';

const MM = 72 / 25.4;

/** A level text of 10 points at a place of a page, 100 points long. */
function text(said: string, x: number, y: number, own: Partial<Text> = {}): Text {
  const size = own.size ?? 10;
  const along = own.along ?? 100;
  return {
    text: said,
    size,
    angle: 0,
    along,
    origin: { x, y },
    left: x,
    right: x + along,
    top: y - 0.72 * size,
    bottom: y + 0.2 * size,
    font: 'AAAAAA+IBMPlexSansCond-Regular',
    group: 1,
    roles: ['Document', 'P'],
    path: [0, 0],
    ...own,
  };
}

/** A letter page, upright. */
const page = (texts: readonly Text[], own: Partial<Page> = {}): Page => ({
  width: 612,
  height: 792,
  scale: 0.75,
  texts,
  ...own,
});

describe('the lines of a piece of text', () => {
  it('are put together of what stands behind each other, with a blank where there is a gap', () => {
    const texts = [
      text('at most', 60, 100, { along: 40 }),
      text('10', 103, 100, { along: 12 }),
      text('kA', 115.2, 100, { along: 12 }),
      text('there', 60, 113),
    ];
    expect(linesOf(texts)).toEqual([['at most 10kA', 'there']]);
  });

  it('hold subscripts', () => {
    const texts = [text('U', 60, 100, { along: 7 }), text('AC', 67, 103, { along: 8, size: 7 })];
    expect(linesOf(texts)).toEqual([['UAC']]);
  });

  it('of two pieces of the source aren’t mixed, nor are running heads', () => {
    const texts = [text('one', 60, 100), text('two', 60, 113, { group: 2 }), text('a', 60, 20, { group: 0 })];
    expect(linesOf([...texts, text('b', 60, 33, { group: 0 })])).toEqual([['one'], ['two'], ['a'], ['b']]);
  });

  it('go upwards where the text does', () => {
    const up = { angle: 90, along: 30 };
    expect(linesOf([text('drawn', 40, 300, up), text('by', 40, 267, up)])).toEqual([['drawn by']]);
  });
});

describe('a broken word', () => {
  const known = [
    vocabularyOf([
      'to confirm the input',
      'what is put in place',
      'ahead_of_disconnect is stated',
      'P-1',
      'P-12',
      '2 of 1200 V',
    ]),
  ];

  it.each([
    [['to confir', 'm'], ['confir/m']],
    [['to con', 'fi', 'rm the rest'], ['con/fi/rm']],
    [['ahead_of_disconn', 'ect'], ['ahead_of_disconn/ect']],
    [['(to confir', 'm), then'], ['confir/m),']],
    [['at 12', '00 V'], ['12/00']],
    [['IN', 'PUT'], ['IN/PUT']],
  ])('is found in %j', (lines, cut) => {
    expect(brokenWords(lines, known)).toEqual(cut);
  });

  it.each([
    [['what is to', 'confirm']],
    [['what is put', 'in place']],
    [['at P-', '1']],
    [['at P-1', '2 more']],
    [['to confirm.', 'The input']],
    [['nobody', 'knowsit']],
  ])('isn’t in %j', (lines) => {
    expect(brokenWords(lines, known)).toEqual([]);
  });

  it('isn’t where the text itself has two words', () => {
    expect(brokenWords(['in', 'put'], [...known, vocabularyOf(['in put'])])).toEqual([]);
  });
});

describe('texts over each other', () => {
  const found = (...texts: Text[]) => overlapsOf(texts);

  it('are found, also upright ones', () => {
    expect(found(text('one', 60, 100), text('two', 150, 102))).toEqual([['one', 'two']]);
    const upright = { angle: 90, left: 100, right: 109, top: 60, bottom: 140 };
    expect(found(text('one', 60, 100), text('two', 105, 140, upright))).toEqual([['two', 'one']]);
  });

  it('aren’t where lines or words only touch', () => {
    expect(found(text('one', 60, 100), text('two', 60, 109.5))).toEqual([]);
    expect(found(text('one', 60, 100), text('two', 159, 100))).toEqual([]);
  });

  it('aren’t where a text is painted twice, or a mark lies over the sheet', () => {
    expect(found(text('one', 60, 100), text('one', 60, 100))).toEqual([]);
    expect(found(text('one', 60, 100), text('DRAFT', 60, 100, { size: 40 }))).toEqual([]);
    expect(found(text('one', 60, 100), text('DRAFT', 60, 100, { angle: 30 }))).toEqual([]);
  });
});

describe('the edges of a sheet', () => {
  it('have their nearest text by mm', () => {
    expect(nearestToLeft(page([text('far', 100, 50), text('near', 18 * MM, 80)]))).toEqual({
      millimetres: 18,
      text: 'near',
    });
    expect(nearestToLeft(page([]))).toBeNull();
  });

  it('are passed by a text beyond them', () => {
    const sheet = page([
      text('in', 60, 50),
      text('right', 520, 50),
      text('foot', 60, 795),
      text('head', 60, 4),
    ]);
    expect(beyondSheet(sheet)).toEqual(['right', 'foot', 'head']);
  });

  it('are kept by a page of its own size, not by one that was shrunk', () => {
    expect(shrunkTo(page([]))).toBeNull();
    expect(shrunkTo(page([], { scale: null }))).toBeNull();
    expect(shrunkTo(page([], { scale: 0.5 }))).toBeCloseTo(2 / 3);
  });
});

describe('the least type', () => {
  const table = { roles: ['Document', 'Table', 'TR', 'TD'] };
  const sheet = page([
    text('body', 60, 50),
    text('small', 60, 70, { ...table, size: 8 }),
    text('larger', 60, 90, { ...table, size: 9 }),
    text('head', 60, 110, { roles: ['Document', 'H2'], size: 14 }),
    text('foot', 60, 780, { group: 0, roles: [], size: 7 }),
  ]);

  it('is told by role, with the text that has it', () => {
    expect(leastType('permit-sheet', sheet)).toEqual({
      body: { points: 10, text: 'body' },
      table: { points: 8, text: 'small' },
      heading: { points: 14, text: 'head' },
      margin: { points: 7, text: 'foot' },
    });
  });

  it('of a picture is a drawing’s, and at the box in the crew’s pack', () => {
    const drawn = page([text('P-1', 60, 50, { roles: ['Document', 'Figure'] }), text('body', 60, 80)]);
    expect(Object.keys(leastType('permit-sheet', drawn))).toEqual(['drawing', 'body']);
    expect(Object.keys(leastType('closeout-pack', drawn))).toEqual(['box figure', 'box text']);
    expect(Object.keys(leastType('closeout-pack', { ...drawn, width: 792, height: 612 }))).toEqual([
      'drawing',
      'body',
    ]);
  });

  it.each([
    ['permit-sheet', ['table of 8.00 pt: “small”', 'margin of 7.00 pt: “foot”']],
    ['closeout-pack', ['table of 8.00 pt: “small”']],
    ['owner-sheet', ['body', 'table', 'margin']],
    ['labels', []],
  ])('is held against what is asked of %s', (document, found) => {
    const told = tooSmall(document, leastType(document, sheet)).map((finding) => finding.found);
    expect(told).toHaveLength(found.length);
    for (const [at, line] of found.entries()) expect(told[at]).toContain(line);
  });

  it('passes where the printer rounds 10 pt', () => {
    expect(tooSmall('permit-sheet', { body: { points: 9.9975, text: '' } })).toEqual([]);
    expect(tooSmall('permit-sheet', { body: { points: 9.9, text: '' } })).toHaveLength(1);
  });
});

describe('letters in another font than the house’s', () => {
  const dejavu = { font: 'BAAAAA+DejaVuSansCondensed-Bold' };

  it('are found once a font', () => {
    const texts = [text('Plex', 60, 50), text('Other', 60, 70, dejavu), text('again', 60, 90, dejavu)];
    expect(otherFonts('permit-sheet', texts).map(({ found }) => found)).toEqual([
      'letters in DejaVuSansCondensed-Bold: “Other”',
    ]);
    expect(otherFonts('labels', texts)).toHaveLength(2);
  });

  it('aren’t signs, nor what the house sets in them', () => {
    expect(otherFonts('permit-sheet', [text('≥ Ω', 60, 50, dejavu), text('Plex', 60, 70)])).toEqual([]);
    const owners = text('Lights', 60, 50, { font: 'AAAAAA+AtkinsonHyperlegibleNext-Bold' });
    expect(otherFonts('owner-sheet', [owners])).toEqual([]);
  });
});

describe('words of the program’s own', () => {
  it.each([
    ['by place/long-run, nec', 'a rule id: place/long-run'],
    ['fill in max_dc_voltage', 'a name with an underscore: max_dc_voltage'],
    ['INV dc-in-1', 'a port name: dc-in-1'],
    ['ac-out L1', 'a port name: ac-out'],
    ['by choose/level', 'a rule id: choose/level'],
    ['at MP:feeder', 'a port name: feeder'],
    ['see fixtures/demo/grid.csv, line 3', 'a file’s name: fixtures/demo/grid.csv'],
    ['in /srv/lists/today', 'a path: /srv/lists/today'],
    ['in C:\\lists', 'a path: C:\\lists'],
    ['2.5 kA, as stated', '“as stated”: as stated'],
    ['the default of 0.5 m', '“default”: default'],
  ])('are found in “%s”', (said, found) => {
    expect(ownWords([said])).toContain(found);
  });

  it.each([
    'House / east wall, 120/240 V, 480Y/277 V, 8/20 µs and/or P-1/P-2',
    'Fault current: ____ A, by ________',
    'The service feeder: 10 kA at 3/4 in, replaced/repaired on 14/03/2025',
    'A place / rate of the trade, U_',
    'NEC 2023, 230.67; UL 1449',
  ])('aren’t in “%s”', (said) => {
    expect(ownWords([said])).toEqual([]);
  });
});

describe('the budget of pages', () => {
  it.each([
    ['permit-sheet', 4, 'tabloid', 2],
    ['permit-sheet', 6, 'a4', 4],
    ['permit-sheet', 7, 'arch-d', 3],
    ['permit-sheet', 14, 'letter', 6],
    ['permit-sheet', 32, 'a3', 4],
    ['permit-sheet', 32, 'letter', 9],
    ['closeout-pack', 6, 'letter', 10],
    ['closeout-pack', 8, 'letter', 14],
    ['closeout-pack', 32, 'letter', 30],
    ['owner-sheet', 8, 'a4', 2],
  ])('of a %s for %i protectors on %s is %i', (document, protectors, paper, most) => {
    expect(budgetOf(document, protectors, paper)?.most).toBe(most);
  });

  it.each([
    [6, 5, 12],
    [6, 2, 10],
    [14, 5, 14],
    [32, 8, 30],
    [60, 40, 47],
  ])('of a pack of %i protectors with %i pages of notes is %i', (protectors, notes, most) => {
    expect(budgetOf('closeout-pack', protectors, 'letter', notes)?.most).toBe(most);
  });

  it('has room for a record and its photos in a pack, and for one sheet of an addendum', () => {
    expect(budgetOf('closeout-pack', 6, 'letter', null, 5)?.most).toBe(15);
    expect(budgetOf('owner-sheet', 6, 'letter', null, 5)?.most).toBe(2);
    expect(budgetOf('permit-addendum', 32, 'letter')?.most).toBe(1);
  });

  it('isn’t there where the design names none', () => {
    expect(budgetOf('labels', 4, 'letter')).toBeNull();
    expect(budgetOf('owner-sheet', 9, 'letter')).toBeNull();
    expect(budgetOf('permit-sheet', 33, 'letter')).toBeNull();
  });

  it('asks for the paper, whichever way it lies', () => {
    const sizes = [
      [612, 792],
      [842, 595],
      [1224, 792],
      [1190.5, 841.9],
      [2592, 1728],
      [200, 300],
    ] as const;
    expect(sizes.map(([width, height]) => paperOf({ width, height }))).toEqual([
      'letter',
      'a4',
      'tabloid',
      'a3',
      'arch-d',
      '71 x 106 mm',
    ]);
  });
});

describe('a whole document', () => {
  const sheet = (paper: string) => ({ paper, least: { 'title strip': { points: 10, text: 'NTS' } } });

  it('breaks nothing within its budget, on one size, with a strip on each sheet', () => {
    expect(documentFindings('permit-sheet', 6, [sheet('tabloid'), sheet('tabloid')])).toEqual([]);
    expect(documentFindings('closeout-pack', 6, [{ paper: 'letter', least: {} }])).toEqual([]);
  });

  it('is told to have too many pages, several sizes, a page without a strip', () => {
    const pages = [sheet('tabloid'), sheet('letter'), { paper: 'tabloid', least: {} }];
    expect(documentFindings('permit-sheet', 6, pages).map(({ page: at, found }) => [at, found])).toEqual([
      [null, '3 pages for 6 protectors on tabloid, at most 2'],
      [null, 'sheets of several sizes: tabloid, letter'],
      [3, 'no title strip'],
    ]);
  });
});

describe('blank paper', () => {
  /** White, 100 by 100 dots, with ink where the function says. */
  const picture = (isInk: (x: number, y: number) => boolean): Picture => ({
    width: 100,
    height: 100,
    grey: Uint8Array.from({ length: 10_000 }, (_, at) => (isInk(at % 100, Math.floor(at / 100)) ? 0 : 255)),
  });
  const line = (y: number) => (x: number, at: number) => at === y && x > 20 && x < 60;

  it('is what lies below the last line', () => {
    expect(blankBelow(picture(line(59)), [])).toBeCloseTo(0.4);
    expect(
      blankBelow(
        picture(() => false),
        [],
      ),
    ).toBe(1);
  });

  it('doesn’t count a frame, nor what isn’t looked at', () => {
    const framed = picture((x, y) => line(39)(x, y) || line(95)(x, y) || x === 5 || y === 98);
    expect(blankBelow(framed, [{ left: 0, right: 100, top: 94, bottom: 97 }])).toBeCloseTo(0.6);
  });

  it('ends at a strip along the foot', () => {
    const sheet = picture((x, y) => line(59)(x, y) || line(90)(x, y));
    expect(blankBelow(sheet, [], 80)).toBeCloseTo(0.2);
  });

  it('is read from greymaps, one behind the other', () => {
    const map = [...Buffer.from('P5\n2 1\n255\n'), 0, 255];
    expect(greymaps(Uint8Array.from([...map, ...map])).map(({ grey }) => [...grey])).toEqual([
      [0, 255],
      [0, 255],
    ]);
    expect(() => greymaps(Uint8Array.from(Buffer.from('P6\n2 1\n255\n')))).toThrow('greymap');
  });
});

describe('the title strip', () => {
  const strip = [
    text('Seal and signature', 500, 600, { path: [0, 1, 3, 0], along: 80 }),
    text('NTS', 500, 760, { path: [0, 1, 5, 0], along: 20 }),
    text('Owner', 500, 100, { path: [0, 1, 2, 0], along: 40 }),
  ];
  const body = text('body', 60, 50, { path: [0, 0, 0] });

  it('is what holds both of its marks, and nothing else', () => {
    const found = titleStrip(page([body, ...strip]));
    expect([...(found?.texts ?? [])].map((t) => t.text)).toEqual(['Seal and signature', 'NTS', 'Owner']);
    expect(found?.isAlongFoot).toBe(false);
    expect(found?.box.left).toBeCloseTo(500 - 4 * MM);
    expect(found?.box.top).toBe(0);
  });

  it('has a role of its own', () => {
    const least = measurePage(
      'permit-sheet',
      page([body, ...strip.map((t) => ({ ...t, size: 8 }))]),
      null,
      [],
    );
    expect(least.least['title strip']?.points).toBe(8);
    expect(least.least.body?.points).toBe(10);
  });

  it('isn’t there where only the whole sheet holds its marks', () => {
    const [seal, nts] = strip;
    if (!seal || !nts) throw new Error('the strip has its marks');
    const apart = { ...seal, path: [0, 2, 0], left: 60, origin: { x: 60, y: 100 }, top: 60 };
    expect(titleStrip(page([body, apart, nts]))).toBeNull();
  });

  it('isn’t there without its marks', () => {
    expect(titleStrip(page([body, ...strip.slice(1)]))).toBeNull();
  });
});

describe('a measured page', () => {
  const white: Picture = { width: 306, height: 396, grey: new Uint8Array(306 * 396).fill(255) };
  const good = text('To confirm', 60, 50);

  it('breaks nothing where it is as it should be', () => {
    const inked = { ...white, grey: Uint8Array.from(white.grey) };
    inked.grey.fill(0, 306 * 300 + 30, 306 * 300 + 60);
    const measured = measurePage('permit-sheet', page([good]), inked, []);
    expect(measured.findings).toEqual([]);
    expect(measured.blank).toBeCloseTo(95 / 396);
  });

  it('names each line of the design that it breaks', () => {
    const bad = page(
      [
        text('place/', 50, 50, { size: 8 }),
        text('long-run', 50, 60, { size: 8 }),
        text('to confir', 50, 90, { group: 2 }),
        text('m', 50, 103, { group: 2 }),
        text('over', 60, 92, { group: 3 }),
        text('out', 600, 300, { group: 4 }),
      ],
      { scale: 0.6 },
    );
    const { findings } = measurePage('permit-sheet', bad, white, [vocabularyOf(['to confirm'])]);
    const asks = findings.map((finding) => finding.asks.replace('paper.md ', ''));
    expect(asks).toEqual([
      '1, Type: 10 pt on permit sheets',
      '1, Type: 20 mm at the left edge',
      '1, Measured: what must fit a page',
      '1, Type: no page wider than its sheet',
      '1, Tables: a word breaks nowhere',
      '1, Measured: no text over text',
      '2, One-line drawing: no half-empty sheet',
    ]);
  });

  it('may hold words of the program’s own where it is asked for', () => {
    const own = page([text('by place/long-run', 60, 50)]);
    expect(measurePage('permit-sheet', own, null, []).findings).toHaveLength(1);
    expect(measurePage('permit-appendix', own, null, []).findings).toEqual([]);
  });
});

describe('what is told', () => {
  const measured = (document: string): MeasuredDocument => {
    const sheet = measurePage(document, page([text('by dc-in-1', 60, 50, { size: 9 })]), null, []);
    return {
      document,
      job: 'J-1',
      pages: [{ ...sheet, page: 1, paper: 'letter' }],
      findings: sheet.findings.map((finding) => ({ ...finding, page: 1 })),
    };
  };

  it('is a line a page', () => {
    const [, , row] = tableOf([measured('permit-sheet')]);
    expect(row?.split(/ {2,}/)).toEqual([
      'permit-sheet',
      'J-1',
      'letter',
      '1',
      '9.0',
      '-',
      '-',
      '-',
      '-',
      '-',
      '21',
      '-',
      '2',
    ]);
  });

  it('is a failure for each line of the design, but of what is held', () => {
    const documents = [measured('permit-sheet'), measured('permit-appendix')];
    expect(failuresOf(documents)).toEqual([
      'permit-sheet, J-1, letter, page 1: body of 9.00 pt: “by dc-in-1” (paper.md 1, Type: 10 pt on permit sheets)',
      'permit-sheet, J-1, letter, page 1: words of the program’s own: a port name: dc-in-1 (paper.md 1, No word of the program’s own)',
    ]);
    expect(heldOf(documents)).toHaveLength(1);
    expect(heldOf(documents)[0]).toMatch(/^permit-appendix: .*: 1 times, such as J-1, page 1: /);
  });
});

it.each([
  ['permit-sheet.pdf', 'permit-sheet'],
  ['permit-sheet-2-one-line.pdf', 'permit-sheet'],
  ['permit-appendix.pdf', 'permit-appendix'],
  ['permit-addendum.pdf', 'permit-addendum'],
  ['labels.pdf', 'labels'],
  ['labels.txt', null],
  ['labelsheet.pdf', null],
  ['site-record.pdf', 'site-record'],
])('the file %s is of the document %s', (name, document) => {
  expect(documentOf(name)).toBe(document);
});
