import type { ElkNode } from 'elkjs/lib/elk-api.js';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type * as LayoutEngine from '../../src/documents/drawing/layout-engine.js';
import type * as Sheets from '../../src/documents/drawing/sheets.js';
import type * as SiteGraph from '../../src/documents/drawing/site-graph.js';
import { defaultSettings } from '../../src/model/settings.js';
import { planJob } from '../../src/plan/plan-job.js';
import { readListText } from '../../src/read/list/lists.js';

// A layout that was made is kept: counted is what reaches the engine, which is sources of its own in each test.

const { default: Elk } = await import('elkjs/lib/elk.bundled.js');
const engine = Elk.default.prototype as { layout: (graph: ElkNode) => Promise<ElkNode> };
let laidOut: typeof LayoutEngine.laidOut;
let layoutSheets: typeof Sheets.layoutSheets;
let siteGraph: typeof SiteGraph.siteGraph;

beforeEach(async () => {
  vi.resetModules();
  ({ laidOut } = await import('../../src/documents/drawing/layout-engine.js'));
  ({ layoutSheets } = await import('../../src/documents/drawing/sheets.js'));
  ({ siteGraph } = await import('../../src/documents/drawing/site-graph.js'));
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.resetModules();
});

const box = (width: number): ElkNode => ({ id: 'sheet', children: [{ id: 'cell', width, height: 20 }] });

it('lays the same graph out once, and another one anew', async () => {
  const layout = vi.spyOn(engine, 'layout');
  const [first, second, other] = [await laidOut(box(30)), await laidOut(box(30)), await laidOut(box(31))];
  expect(layout).toHaveBeenCalledTimes(2);
  expect(second).toBe(first);
  expect(first.children?.[0]?.width).toBe(30);
  expect((other.width ?? 0) - (first.width ?? 0)).toBe(1);
});

it('keeps so many layouts, and forgets the oldest', async () => {
  const layout = vi.spyOn(engine, 'layout').mockImplementation((graph) => Promise.resolve(graph));
  for (let width = 1; width <= 200; width += 1) await laidOut(box(width));
  await laidOut(box(1));
  expect(layout).toHaveBeenCalledTimes(200);
  await laidOut(box(201));
  await laidOut(box(2));
  expect(layout).toHaveBeenCalledTimes(201);
  await laidOut(box(1));
  expect(layout).toHaveBeenCalledTimes(202);
});

it('keeps none that failed', async () => {
  vi.spyOn(engine, 'layout').mockRejectedValueOnce(new Error('no layout'));
  await expect(laidOut(box(30))).rejects.toThrow('no layout');
  expect((await laidOut(box(30))).children).toHaveLength(1);
});

it('lays sites out once that differ in names alone, each with its own names', async () => {
  const layout = vi.spyOn(engine, 'layout');
  const drawn = async (job: string, panel: string, load: string): Promise<[string, number, number][]> => {
    const rows = `${job},S,service,,House\n${job},${panel},panel,S,House\n${job},${load},load,${panel},House\n`;
    const list = readListText('list.csv', `job,tag,kind,connects_to,place\n${rows}`, {
      settings: defaultSettings(),
    });
    const plans = list.jobs.map((made) =>
      planJob(made, { catalogue: undefined, settings: defaultSettings() }),
    );
    const sheets = await Promise.all(
      plans.map((plan) => layoutSheets(siteGraph(plan), () => 'no reach', { width: 900, height: 600 })),
    );
    const cells = sheets.flat().flatMap((sheet) => sheet.strips.flatMap((strip) => strip.cells));
    const found = cells.map(({ cell, x, y }) => [cell.unit.equipment.tag, x, y] as [string, number, number]);
    return found.sort(([, a], [, b]) => a - b);
  };
  const first = await drawn('J', 'P1', 'L2');
  const second = await drawn('K', 'P3', 'L4');
  expect(layout).toHaveBeenCalledTimes(1);
  expect(first.map(([tag]) => tag)).toEqual(['S', 'P1', 'L2']);
  expect(second.map(([tag]) => tag)).toEqual(['S', 'P3', 'L4']);
  expect(second.map(([, x, y]) => [x, y])).toEqual(first.map(([, x, y]) => [x, y]));
});
