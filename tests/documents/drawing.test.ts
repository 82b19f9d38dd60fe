import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FONT, LINE } from '../../src/documents/drawing/cell.js';
import type { Layout, PlacedCell } from '../../src/documents/drawing/layout.js';
import { drawPlacement, layoutPlacement } from '../../src/documents/drawing/placement.js';
import { largeRoom } from '../../src/documents/drawing/rooms.js';
import { scaleFor } from '../../src/documents/drawing/sheets.js';
import { lineWidth } from '../../src/documents/parts/text-width.js';
import type { Plan } from '../../src/model/plan.js';
import { equipment, manyInputs, plan, run } from './fixtures/builder.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { anySite } from './fixtures/generated.js';
import { draftPlan, housePlan, hutPlan } from './fixtures/plans.js';

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly what: string;
}

const ROOM = largeRoom('letter');
// Touching isn't overlapping; half a point is less than a line's width.
const SLACK = 0.5;

function overlap(a: Box, b: Box): boolean {
  return (
    a.left < b.right - SLACK &&
    b.left < a.right - SLACK &&
    a.top < b.bottom - SLACK &&
    b.top < a.bottom - SLACK
  );
}

function unescaped(text: string): string {
  return text.replace(
    /&(lt|gt|quot|amp|#39);/g,
    (_, name: string) => ({ lt: '<', gt: '>', quot: '"', amp: '&' })[name] ?? "'",
  );
}

/** The boxes of all texts of a drawing, read back from its SVG with the transforms of the groups around them. */
function textBoxes(svg: string): Box[] {
  const boxes: Box[] = [];
  const stack: { x: number; y: number; scale: number; drawn: boolean }[] = [
    { x: 0, y: 0, scale: 1, drawn: true },
  ];
  for (const [whole, close, tag = '', attributes = '', content] of svg.matchAll(
    /<(\/?)(\w+)((?:\s[\w-]+="[^"]*")*)\/?>([^<]*)/g,
  )) {
    const top = stack.at(-1);
    if (top === undefined) throw new Error('groups close more often than they open');
    const value = (name: string): string | undefined =>
      new RegExp(`\\s${name}="([^"]*)"`).exec(attributes)?.[1];
    if (tag === 'g' && close === '/') stack.pop();
    if (tag === 'g' && close === '') {
      const transform = value('transform') ?? '';
      const move = /translate\(([-\d.]+) ([-\d.]+)\)/.exec(transform);
      const scale = Number(/scale\(([\d.]+)\)/.exec(transform)?.[1] ?? 1);
      stack.push({
        x: top.x + Number(move?.[1] ?? 0) * top.scale,
        y: top.y + Number(move?.[2] ?? 0) * top.scale,
        scale: top.scale * scale,
        drawn: true,
      });
    }
    if (tag === 'text' && close === '') {
      const text = unescaped(content ?? '');
      const width = lineWidth(text, FONT, value('font-weight') === '700' ? 700 : 400);
      const x = Number(value('x'));
      const y = Number(value('y'));
      const anchor = value('text-anchor') ?? 'start';
      const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x;
      boxes.push({
        left: top.x + left * top.scale,
        right: top.x + (left + width) * top.scale,
        top: top.y + (y - FONT * 0.8) * top.scale,
        bottom: top.y + (y + FONT * 0.2) * top.scale,
        what: `${text} (${whole.slice(0, 60)})`,
      });
    }
  }
  return boxes;
}

function boxOf({ x, y, cell }: PlacedCell): Box {
  return { left: x, top: y, right: x + cell.width, bottom: y + cell.height, what: cell.unit.equipment.tag };
}

/** Whether an axis-parallel segment runs through the inside of a box. */
function crosses(a: { x: number; y: number }, b: { x: number; y: number }, box: Box): boolean {
  const line = {
    left: Math.min(a.x, b.x),
    right: Math.max(a.x, b.x),
    top: Math.min(a.y, b.y),
    bottom: Math.max(a.y, b.y),
  };
  return (
    line.left < box.right - SLACK &&
    line.right > box.left + SLACK &&
    line.top < box.bottom - SLACK &&
    line.bottom > box.top + SLACK
  );
}

function expectClean(layout: Layout): void {
  const cells = layout.cells.map(boxOf);
  cells.forEach((cell, index) => {
    for (const other of cells.slice(index + 1)) {
      if (overlap(cell, other)) throw new Error(`${cell.what} lies on ${other.what}`);
    }
    expect(cell.right).toBeLessThanOrEqual(layout.width + SLACK);
    expect(cell.bottom).toBeLessThanOrEqual(layout.height + SLACK);
  });
  const titles = layout.frames.map((f) => ({
    left: f.x,
    right: f.x + 9 + Math.max(0, ...f.title.map((t) => lineWidth(t, FONT))),
    top: f.y,
    bottom: f.y + f.title.length * LINE + 3,
    what: `title ${f.title.join(' ')}`,
  }));
  const stubs = layout.cells.flatMap(({ x, y, cell }) =>
    cell.rows
      .filter((r) => r.toEdge)
      .map((r) => ({ x: r.row.side === 'west' ? x : x + cell.width, y: y + r.y })),
  );
  for (const route of layout.routes) {
    for (const end of [route[0], route.at(-1)]) {
      expect(stubs.some((s) => Math.hypot(s.x - (end?.x ?? NaN), s.y - (end?.y ?? NaN)) < 0.01)).toBe(true);
    }
    route.slice(1).forEach((point, index) => {
      const from = route[index];
      if (from === undefined) return;
      if (Math.abs(from.x - point.x) >= 0.01 && Math.abs(from.y - point.y) >= 0.01)
        throw new Error('a line is neither level nor upright');
      for (const box of [...cells, ...titles]) {
        if (crosses(from, point, box)) throw new Error(`a line crosses ${box.what}`);
      }
    });
  }
}

function expectNoTextOnAnother(svg: string): void {
  const boxes = textBoxes(svg);
  boxes.forEach((box, index) => {
    for (const other of boxes.slice(index + 1)) {
      if (overlap(box, other)) throw new Error(`"${box.what}" lies on "${other.what}"`);
    }
  });
}

function expectEachProtectorOnce(svg: string, of: Plan): void {
  const tags = [...svg.matchAll(/data-protector="([^"]*)"/g)].map((m) => unescaped(m[1] ?? ''));
  expect(tags.sort()).toEqual(of.protectors.map((p) => p.tag).sort());
}

/** Draws a plan and checks all that a drawing promises. */
async function expectDrawn(of: Plan): Promise<number> {
  const placement = await layoutPlacement(of, ROOM);
  const drawn = drawPlacement(of, placement, ROOM);
  for (const sheet of placement.sheets) {
    for (const strip of sheet.strips) expectClean(strip);
    expect(FONT * scaleFor(sheet, ROOM)).toBeGreaterThanOrEqual(9.999);
  }
  for (const sheet of drawn) {
    expect(sheet.width).toBeLessThanOrEqual(ROOM.width + SLACK);
    expect(sheet.height).toBeLessThanOrEqual(ROOM.height + SLACK);
    expectNoTextOnAnother(sheet.svg);
  }
  const all = drawn.map((s) => s.svg).join('');
  expectEachProtectorOnce(all, of);
  const equipments = new Set(
    [...all.matchAll(/data-equipment="([^"]*)"/g)].map((m) => unescaped(m[1] ?? '')),
  );
  expect(equipments).toEqual(new Set(of.site.equipments.map((e) => e.tag)));
  return drawn.length;
}

describe('the placement drawing', () => {
  it.each([hutPlan, housePlan, draftPlan].map((make) => [make.name, make()] as const))(
    'of %s is clean',
    async (_name, of) => {
      expect(await expectDrawn(of)).toBe(1);
    },
  );

  it.each(demoPlans().map((p) => [p.job, p] as const))('of the demo job %s is clean', async (_job, of) => {
    expect(await expectDrawn(of)).toBeGreaterThan(0);
  });

  it(
    'of any site has no label on another, no line across a box, and each protector once',
    { timeout: 600_000 },
    async () => {
      const seen = { sites: 0, equipments: 0, protectors: 0 };
      await fc.assert(
        fc.asyncProperty(anySite(14), async (of) => {
          await expectDrawn(of);
          seen.sites += 1;
          seen.equipments += of.site.equipments.length;
          seen.protectors += of.protectors.length;
        }),
        { numRuns: 200, seed: 20250314 },
      );
      expect(seen.sites).toBe(200);
      expect(seen.equipments).toBeGreaterThan(5 * 200);
      expect(seen.protectors).toBeGreaterThan(3 * 200);
    },
  );

  it('of 60 equipments takes several sheets, with text no smaller than 10 pt', async () => {
    const strings = Array.from({ length: 20 }, (_, i) => i + 1);
    const of = plan({
      site: {
        equipments: strings.flatMap((n) => [
          equipment(`PV-${n}`, 'array', 'Field', ['output']),
          equipment(`CC-${n}`, 'charge-controller', 'Plant room', ['dc-in-1', 'battery']),
          equipment(`LD-${n}`, 'load', 'Plant room', ['feeder']),
        ]),
        runs: strings.flatMap((n) => [
          run(`PV-${n}:output`, `CC-${n}:dc-in-1`, 30),
          run(`CC-${n}:battery`, `LD-${n}:feeder`, 4),
        ]),
      },
    });
    expect(await expectDrawn(of)).toBeGreaterThan(1);
  });

  it('splits an equipment with more inputs than a sheet can hold', async () => {
    const of = manyInputs(40, () => '');
    expect(await expectDrawn(of)).toBeGreaterThan(1);
  });

  it('is no sheet for a plan without equipment', async () => {
    expect((await layoutPlacement(plan({}), ROOM)).sheets).toEqual([]);
  });
});

describe('the check of a drawing', () => {
  async function house(): Promise<{ of: Plan; layout: Layout; svg: string }> {
    const of = housePlan();
    const placement = await layoutPlacement(of, ROOM);
    const layout = placement.sheets[0]?.strips[0];
    const svg = drawPlacement(of, placement, ROOM)[0]?.svg;
    if (layout === undefined || svg === undefined) throw new Error('nothing is drawn');
    expectClean(layout);
    expectNoTextOnAnother(svg);
    expectEachProtectorOnce(svg, of);
    return { of, layout, svg };
  }

  it('finds a label that lies on another', async () => {
    const { svg } = await house();
    const [label = ''] = /<text[^>]*>[^<]{3,}<\/text>/.exec(svg) ?? [];
    const beside = label.replace(/ x="([\d.]+)"/, (_, x: string) => ` x="${Number(x) + 4}"`);
    expect(beside).not.toBe(label);
    expect(() => {
      expectNoTextOnAnother(svg.replace(label, label + beside));
    }).toThrow(/lies on/);
  });

  it('finds a line that crosses a box', async () => {
    const { layout } = await house();
    const [route] = layout.routes;
    const [start, end] = [route?.[0], route?.at(-1)];
    const box = layout.cells.find(({ x, cell }) => x > (start?.x ?? 0) && cell.width > 0);
    if (start === undefined || end === undefined || box === undefined) throw new Error('nothing is drawn');
    const y = box.y + box.cell.height / 2;
    const far = box.x + box.cell.width + 5;
    const detour = [start, { x: start.x, y }, { x: far, y }, { x: far, y: end.y }, end];
    expect(() => {
      expectClean({ ...layout, routes: [detour] });
    }).toThrow(/a line crosses/);
  });

  it('finds a box that lies on another', async () => {
    const { layout } = await house();
    const [first, second, ...rest] = layout.cells;
    if (first === undefined || second === undefined) throw new Error('nothing is drawn');
    const moved = { ...second, x: first.x + 2, y: first.y + 2 };
    expect(() => {
      expectClean({ ...layout, cells: [first, moved, ...rest] });
    }).toThrow(/lies on/);
  });

  it('finds a protector that is drawn twice, or not at all', async () => {
    const { of, svg } = await house();
    expect(() => {
      expectEachProtectorOnce(svg + svg, of);
    }).toThrow();
    expect(() => {
      expectEachProtectorOnce(svg.replace('data-protector', 'data-other'), of);
    }).toThrow();
  });
});
