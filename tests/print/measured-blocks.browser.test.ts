import { beforeAll, describe, expect, it } from 'vitest';
import type { MeasuredBlock } from '../../src/model/print.js';
import { withPrinter } from '../../src/print/printer.js';

const STYLE = `* { margin: 0; padding: 0; box-sizing: border-box; border: 0; }
  body { font: 10px/10px "DejaVu Sans"; } table { border-collapse: collapse; width: 100%; } h2 { font-size: 10px; height: 40px; }
  p { height: 20px; } td, th { height: 20px; } li { height: 30px; list-style: none; }`;
const mm = (pixels: number): number => (pixels * 25.4) / 96;

const page = (blocks: string): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>x</title><style>${STYLE}</style></head><body>${blocks}</body></html>`;
const block = (name: string, width: string, inside: string): string =>
  `<div class="block" data-block="${name}" style="width: ${width}">${inside}</div>`;
const rows = (count: number): string =>
  Array.from({ length: count }, (_, i) => `<tr><td>${String(i + 1)}</td><td>x</td></tr>`).join('');

describe('blocks that the browser measures', () => {
  let found: readonly MeasuredBlock[] = [];
  const of = (name: string): MeasuredBlock => {
    const one = found.find((b) => b.name === name);
    if (!one) throw new Error(`no block ${name} was measured`);
    return one;
  };
  beforeAll(async () => {
    await withPrinter({ pages: 1, onNotice: () => undefined }, async (printer) => {
      found = await printer.measure(
        page(
          [
            block('text', '100mm', '<h2>Notes &amp; more</h2><p>one</p><p>two</p>'),
            block(
              'table',
              '100mm',
              `<h2>Table</h2><table><thead><tr><th>a</th><th>b</th></tr></thead><tbody>${rows(3)}</tbody></table>`,
            ),
            block(
              'bodies',
              '100mm',
              `<table><thead><tr><th>a</th></tr></thead><tbody><tr><td>1</td></tr><tr><td>2</td></tr></tbody><tbody><tr><td>3</td></tr></tbody></table>`,
            ),
            block(
              'spanned',
              '100mm',
              '<table><tbody><tr><th rowspan="2">a</th><td>1</td></tr><tr><td>2</td></tr><tr><th>b</th><td>3</td></tr></tbody></table>',
            ),
            block('list', '100mm', '<ol><li>one</li><li>two</li></ol>'),
            block(
              'wide',
              '20mm',
              '<table><tbody><tr><td style="min-width: 60mm">x</td></tr></tbody></table>',
            ),
          ].join(''),
        ),
      );
    });
  }, 120_000);

  it('come in their order, each with what is in it', () => {
    expect(found.map(({ name }) => name)).toEqual(['text', 'table', 'bodies', 'spanned', 'list', 'wide']);
    expect(of('text').groups.map(({ kind }) => kind)).toEqual(['heading', 'text', 'text']);
    expect(of('table').groups.map(({ kind }) => kind)).toEqual(['heading', 'table']);
    expect(of('list').groups.map(({ kind }) => kind)).toEqual(['list']);
    expect(of('text').groups[0]?.words).toBe('Notes & more');
  });

  it('are as high as the browser sets them, in millimetres', () => {
    const [heading, first] = of('text').groups;
    expect(heading?.rows[0]?.height).toBeCloseTo(mm(40), 1);
    expect(first?.rows[0]?.height).toBeCloseTo(mm(20), 1);
    const table = of('table').groups[1];
    expect(table?.head).toBeCloseTo(mm(20), 1);
    expect(table?.rows.map(({ height }) => Math.round(height))).toEqual(Array(3).fill(Math.round(mm(20))));
    expect(of('list').groups[0]?.rows.map(({ height }) => Math.round(height))).toEqual(
      Array(2).fill(Math.round(mm(30))),
    );
  });

  it('hold together what may not be parted: a body of several, rows that share a cell', () => {
    const counts = (name: string): number[] =>
      (of(name).groups[0]?.rows ?? []).map(({ html }) => html.split('<tr').length - 1);
    expect(counts('bodies')).toEqual([2, 1]);
    expect(counts('spanned')).toEqual([2, 1]);
  });

  it('can be put together again: what opens, the rows, what closes', () => {
    const table = of('table').groups[1];
    const again = `${table?.open ?? ''}${table?.rows.map(({ html }) => html).join('') ?? ''}${table?.close ?? ''}`;
    expect(again).toMatch(/^<table[^>]*>/);
    expect(again).toMatch(/<\/table>$/);
    expect(again.split('<tr').length - 1).toBe(4);
    // Its columns are as wide wherever its rows stand.
    expect(table?.open).toContain('<col');
  });

  it('say where something is wider than its block', () => {
    expect(of('wide').fits).toBe(false);
    expect(of('table').fits).toBe(true);
  });
});
