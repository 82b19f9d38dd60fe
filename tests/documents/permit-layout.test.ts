import { describe, expect, it } from 'vitest';
import { START, take, type Part } from '../../src/documents/permit-sheet/flow.js';
import { layOut, type Contents } from '../../src/documents/permit-sheet/lay-out.js';
import { columnWidth } from '../../src/documents/permit-sheet/panels.js';
import { permitPage, roomOf } from '../../src/documents/permit-sheet/paper.js';
import { SettingsSchema } from '../../src/model/settings.js';
import type { MeasuredBlock, MeasuredGroup } from '../../src/model/print.js';

const bare = { words: '', open: '', close: '', head: 0, tail: 0 };
const heading = (words: string): MeasuredGroup => ({
  ...bare,
  kind: 'heading',
  words,
  rows: [{ html: `<h2>${words}</h2>`, height: 6 }],
});
const text = (height: number): MeasuredGroup => ({
  ...bare,
  kind: 'text',
  rows: [{ html: '<p></p>', height }],
});
const rows = (kind: 'table' | 'list', count: number, height = 5): MeasuredGroup => ({
  ...bare,
  kind,
  open: '[',
  close: ']',
  head: kind === 'table' ? 5 : 0,
  tail: 1,
  rows: Array.from({ length: count }, (_, i) => ({ html: `${i + 1} `, height })),
});
const block = (name: string, ...groups: MeasuredGroup[]): MeasuredBlock => ({ name, fits: true, groups });
const table = (name: string, count: number, height?: number): MeasuredBlock =>
  block(name, heading(name), rows('table', count, height));

const whole = (parts: readonly Part[]): readonly { name: string; html: string }[] =>
  parts.map(({ name, html }) => ({ name, html: html() }));

describe('a column', () => {
  it('takes what fits, and says where it goes on', () => {
    const taken = take([table('T', 10)], START, 40);
    expect(whole(taken.parts)).toEqual([{ name: 'T', html: '<h2>T</h2>[1 2 3 4 5 ]' }]);
    expect(taken.height).toBe(6 + 5 + 5 * 5 + 1);
    expect([taken.splits, taken.next]).toEqual([true, { block: 0, group: 1, row: 5 }]);
  });

  it('has heading and head again where a table goes on', () => {
    const flow = [table('T', 10)];
    const { parts, height, splits } = take(flow, take(flow, START, 40).next, 100);
    expect(whole(parts)).toEqual([
      { name: 'T', html: '<p class="continued">T (continued)</p>[6 7 8 9 10 ]' },
    ]);
    expect([height, splits]).toEqual([6 + 5 + 5 * 5 + 1, false]);
  });

  it('says in the column beside what goes on there, so that none begins above its heading', () => {
    const flow = [block('N', heading('N'), rows('list', 6))];
    const { next } = take(flow, START, 22);
    expect(take(flow, next, 100).parts[0]?.html()).toBe('<p class="continued">N (continued)</p>[4 5 6 ]');
  });

  it.each([
    ['a heading alone', [table('T', 3)], 12],
    ['one row under a heading', [table('T', 3)], 20],
    ['a heading whose table would leave too few rows', [table('T', 3)], 6 + 5 + 10 + 1],
    ['a sentence without the table that it leads to', [block('T', text(5), rows('table', 3))], 14],
  ])('never holds %s', (_, flow, room) => {
    expect(take(flow, START, room)).toMatchObject({ parts: [], height: 0, next: START });
  });

  it('leaves three rows at least, or two high ones', () => {
    expect(take([table('T', 6)], START, 6 + 5 + 25 + 1).next.row).toBe(3);
    expect(take([table('T', 5)], START, 6 + 5 + 20 + 1).next.row).toBe(2);
    expect(take([table('T', 4)], START, 6 + 5 + 15 + 1)).toMatchObject({ parts: [], next: START });
    expect(take([table('T', 4, 10)], START, 6 + 5 + 30 + 1).next.row).toBe(2);
  });

  it('keeps the sentences that close a table below its last rows', () => {
    const flow = [block('T', heading('T'), rows('table', 6), text(4), text(4))];
    const whole = 6 + 5 + 30 + 1 + 8;
    expect(take(flow, START, whole).next.block).toBe(1);
    const { next } = take(flow, START, whole - 1);
    expect(next).toEqual({ block: 0, group: 1, row: 3 });
    expect(take(flow, next, 100).parts[0]?.html()).toContain('[4 5 6 ]<p></p><p></p>');
  });

  it('holds a row that is higher than any sheet, where it must', () => {
    const flow = [block('T', rows('table', 2, 500))];
    expect(take(flow, START, 100).parts).toEqual([]);
    expect(take(flow, START, 100, { forced: true }).next.row).toBe(1);
  });

  it('escapes the words of a heading', () => {
    const flow = [block('T', heading('<b>'), rows('table', 10))];
    const again = take(flow, take(flow, START, 40).next, 100);
    expect(again.parts[0]?.html()).toContain('&lt;b&gt; (continued)');
  });
});

const ROOM = { width: 300, height: 200 };
function contents(schedule: number, codes: number, drawing = { width: 290, height: 80 }): Contents {
  const wide = [table('schedule', schedule), table('calculations', 8)];
  const narrow = [
    table('notes', 6),
    table('codes', codes),
    table('assumptions', 6),
    table('calculations', 12),
  ];
  const legend = [block('legend', text(8))];
  return { room: ROOM, drawings: [drawing], wide, narrow: new Map([[2, narrow]]), beside: undefined, legend };
}
const namesOn = (of: Contents): string[][] =>
  layOut(of, [2], 1).panels.map(({ bands }) => [
    ...new Set(
      bands.flatMap((band) =>
        band.columns.flatMap((c) => [
          ...(c.drawing === undefined ? [] : ['drawing']),
          ...c.parts.map((p) => p.name),
        ]),
      ),
    ),
  ]);

describe('sheets', () => {
  it.each([
    ['a small job', contents(3, 6), 2],
    ['a job of a long schedule', contents(30, 10), 3],
    ['a drawing of a whole sheet', contents(4, 10, { width: 290, height: 195 }), 3],
  ])('of %s are few, and hold every block once', (_, of, most) => {
    const sheets = namesOn(of);
    expect(sheets.length).toBeLessThanOrEqual(most);
    expect(sheets[0]?.[0]).toBe('drawing');
    for (const name of ['legend', 'schedule', 'calculations', 'notes', 'codes', 'assumptions'])
      expect(sheets.flat(), name).toContain(name);
  });

  it('hold each row once, and no panel more than it has room for', () => {
    for (let count = 1; count < 40; count += 3) {
      const of = contents(count, 2 + (count % 13));
      const { panels } = layOut(of, [2], 1);
      for (const { used } of panels) expect(used).toBeLessThanOrEqual(ROOM.height + 0.001);
      const html = panels
        .flatMap((p) => p.bands.flatMap((b) => b.columns.flatMap((c) => c.parts)))
        .filter((p) => p.name === 'schedule')
        .map((p) => p.html().replace(/<[^>]*>[^<]*<\/[^>]*>/g, ''))
        .join('');
      expect(html.match(/\d+/g)).toEqual(Array.from({ length: count }, (_, i) => String(i + 1)));
    }
  });

  it('have the legend whole where there is room for it, never beyond the foot of a sheet', () => {
    for (const height of [150, 170, 187, 190, 193, 200]) {
      const { panels } = layOut(contents(4, 10, { width: 290, height }), [2], 1);
      for (const { used } of panels) expect(used).toBeLessThanOrEqual(ROOM.height);
      const at = panels.findIndex(({ bands }) =>
        bands.some(({ columns }) => columns.some((c) => c.parts.some((p) => p.name === 'legend'))),
      );
      expect(at, String(height)).toBe(height + 3 + 8 <= ROOM.height ? 0 : 1);
    }
  });

  it.each([
    [5, 12],
    [20, 9],
    [24, 16],
    [33, 4],
  ])('are none of them half-empty: %s rows of schedule, %s of codes', (schedule, codes) => {
    const { panels } = layOut(contents(schedule, codes), [2], 1);
    const all = panels.reduce((sum, { used }) => sum + used, 0) / panels.length;
    // Where what there is fills more than half of each.
    expect(all).toBeGreaterThan(0.55 * ROOM.height);
    for (const { used } of panels) expect(used).toBeGreaterThan(0.5 * ROOM.height);
  });

  it('put notes beside a drawing that leaves room there', () => {
    const of = contents(3, 6, { width: 190, height: 100 });
    const narrow = of.narrow.get(2) ?? [];
    const beside = { width: 104, blocks: [...of.legend, ...narrow] };
    const [first] = layOut({ ...of, beside }, [2], 1).panels;
    expect(first?.bands[0]?.columns[1]?.parts.map((p) => p.name)).toContain('legend');
  });
});

describe('paper', () => {
  // ANSI/ASME Y14.1 and ISO 216; ARCH D is 36 x 24 in.
  it.each([
    ['tabloid', 17, 11],
    ['letter', 11, 8.5],
    ['arch-d', 36, 24],
  ])('%s is %s x %s in', (permitPaper, width, height) => {
    const page = permitPage({ basis: 'iec' }, SettingsSchema.parse({ permitPaper }));
    expect([page.width / 25.4, page.height / 25.4]).toEqual([
      expect.closeTo(width, 6) as number,
      expect.closeTo(height, 6) as number,
    ]);
  });

  it('is tabloid with nec and A3 with iec, with 20 mm at the left edge', () => {
    const settings = SettingsSchema.parse({});
    const nec = permitPage({ basis: 'nec-2020' }, settings);
    expect([nec.name, permitPage({ basis: 'iec' }, settings).name, nec.left]).toEqual(['tabloid', 'a3', 20]);
    expect(roomOf(nec).width).toBeLessThan(nec.width - nec.left - nec.edge - nec.stripSize);
    expect(columnWidth(300, 2)).toBe(147);
  });
});
