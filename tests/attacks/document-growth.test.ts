import type { ElkNode } from 'elkjs/lib/elk-api.js';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { records } from '../../src/documents/closeout-pack/checks.js';
import { photoViews } from '../../src/documents/closeout-pack/photos.js';
import { largeRoom } from '../../src/documents/drawing/rooms.js';
import { fits, layoutSheets } from '../../src/documents/drawing/sheets.js';
import { siteGraph } from '../../src/documents/drawing/site-graph.js';
import { lightGroups } from '../../src/documents/parts/owner-lights.js';
import { ownerBoxes } from '../../src/documents/owner-sheet/boxes.js';
import { groundingHow } from '../../src/documents/parts/grounding-how.js';
import type { Plan } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import { planJob } from '../../src/plan/plan-job.js';
import { readListText } from '../../src/read/list/lists.js';
import { ownerStrings } from '../../src/words/languages.js';

// Documents of a job twice as large cost twice as much: counted are looks at the site and cells that are laid out, never seconds.

const settings = defaultSettings();
const HEADING = 'job,tag,kind,connects_to,ac_in,place,run_length,system_grounding\n';

function planOf(rows: readonly string[]): Plan {
  const list = `${HEADING}J,S,service,,120/240,House / hall,,solid\n${rows.map((row) => `J,${row}\n`).join('')}`;
  const [job] = readListText('list.csv', list, { settings }).jobs;
  if (!job) throw new Error('no job');
  return planJob(job, { catalogue: undefined, settings });
}

/** Panels behind each other, each with a protector. */
const chain = (count: number): Plan =>
  planOf(
    Array.from(
      { length: count },
      (_, i) => `P${i + 1},panel,${i === 0 ? 'S' : `P${i}`},120/240,House / hall,20 ft`,
    ),
  );

/** Loads on one panel. */
const loads = (count: number): Plan =>
  planOf([
    'P,panel,S,120/240,House / hall,20 ft',
    ...Array.from({ length: count }, (_, i) => `L${i + 1},load,P,120/240,House / hall,30 ft`),
  ]);

/** Counts how often something looks at these of an equipment, or at the ends of a run. */
function counted(plan: Plan, ...keys: readonly string[]): () => number {
  let looks = 0;
  const watch = (target: object, key: string): void => {
    const value: unknown = Reflect.get(target, key);
    Object.defineProperty(target, key, {
      enumerable: true,
      get: () => {
        looks += 1;
        return value;
      },
    });
  };
  for (const equipment of plan.site.equipments) for (const key of keys) watch(equipment, key);
  for (const run of plan.site.runs) for (const end of ['from', 'to']) watch(run, end);
  return () => looks;
}

const strings = ownerStrings('en');
const questions: readonly (readonly [string, (plan: Plan) => void])[] = [
  ['whether a grounding is stated', (plan) => plan.protectors.map(groundingHow(plan))],
  ['what is written into the records', records],
  ['what the drawing shows', siteGraph],
  [
    'whom a photo shows',
    (plan) =>
      photoViews(
        plan,
        plan.site.equipments.map(({ tag }) => ({ tag, caption: '', dataUrl: '' })),
      ),
  ],
  ['what feeds a light', (plan) => plan.protectors.map((p) => lightGroups(plan, p, strings.states))],
  ['where the owner’s protectors are', (plan) => ownerBoxes(plan, strings)],
];

describe('looks at the site grow with the job', () => {
  it.each(questions)('%s', (_, ask) => {
    const looks = (count: number): number => {
      const plan = chain(count);
      const sofar = counted(plan, 'tag', 'facts');
      ask(plan);
      return sofar();
    };
    expect(looks(160) / looks(80)).toBeLessThan(2.2);
  });
});

describe('the drawing', () => {
  const room = largeRoom('letter');

  afterEach(() => {
    vi.restoreAllMocks();
  });

  it.each([
    ['loads on one panel', loads],
    ['panels behind each other', chain],
  ])('lays out as many cells for each equipment of a large site as of a small one: %s', async (_, planOf) => {
    const { default: Elk } = await import('elkjs/lib/elk.bundled.js');
    let cells = 0;
    // All cells below each other: what is handed over is counted, which to lay out would take minutes.
    const engine = Elk.default.prototype as { layout: (sheet: ElkNode) => Promise<ElkNode> };
    vi.spyOn(engine, 'layout').mockImplementation((sheet) => {
      let height = 0;
      let width = 0;
      for (const place of sheet.children ?? []) {
        place.y = height;
        for (const cell of place.children ?? []) {
          cells += 1;
          cell.y = height;
          height += cell.height ?? 0;
          width = Math.max(width, cell.width ?? 0);
        }
      }
      return Promise.resolve(Object.assign(sheet, { width, height }));
    });
    const laidOut = async (count: number): Promise<number> => {
      cells = 0;
      // Layouts are kept: sources of its own, so that none is kept from before, and what stands in for one isn't kept for others.
      vi.resetModules();
      const own = await import('../../src/documents/drawing/sheets.js');
      vi.resetModules();
      const sheets = await own.layoutSheets(siteGraph(planOf(count)), () => 'no reach', room);
      expect(sheets.length).toBeGreaterThan(count / 40);
      return cells;
    };
    expect((await laidOut(320)) / (await laidOut(160))).toBeLessThan(2.2);
  });

  it('keeps to its sheets what has very many runs', async () => {
    const graph = siteGraph(loads(90));
    const sheets = await layoutSheets(graph, () => 'no reach', room);
    expect(sheets.filter((sheet) => !fits(sheet, room))).toEqual([]);
    const cells = sheets.flatMap((sheet) => sheet.strips.flatMap((strip) => strip.cells));
    expect(cells.map((c) => c.cell.unit.equipment.tag).sort()).toEqual(
      [...graph.units.map((u) => u.equipment.tag)].sort(),
    );
    const panel = cells.find((c) => c.cell.unit.equipment.tag === 'P')?.cell;
    const labels = panel?.rows.flatMap((row) => row.labels) ?? [];
    expect(labels.map((label) => label.text)).toContainEqual(expect.stringMatching(/^and [1-9]\d* more$/));
    // Each of the others names the panel where its line arrives.
    const beside = sheets
      .flatMap((sheet) => sheet.strips)
      .find((strip) => strip.cells.some((c) => c.cell === panel));
    const away = cells.filter(
      (c) => c.cell.unit.equipment.kind === 'load' && beside?.cells.includes(c) === false,
    );
    const silent = away.filter(
      (c) => !c.cell.rows.some((row) => row.labels.some((l) => l.target?.includes('P'))),
    );
    expect(silent).toEqual([]);
    expect(labels.filter((label) => label.target !== null).length).toBeLessThan(away.length);
  });
});
