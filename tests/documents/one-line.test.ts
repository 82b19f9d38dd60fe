import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oneLine, pennedSheets, type OneLineRooms } from '../../src/documents/drawing/one-line.js';
import { legendOf } from '../../src/documents/drawing/one-line/legend.js';
import { Pen } from '../../src/documents/drawing/one-line/pen.js';
import type { Plan } from '../../src/model/plan.js';
import { equipment, manyInputs, plan, protector, run } from './fixtures/builder.js';
import { demoPlan, demoPlans } from './fixtures/demo-plans.js';
import { anySite } from './fixtures/generated.js';
import { planOfSize } from '../plan-of-size.js';
import { faultsOf } from './one-line-faults.js';
import { misplacedTaps } from './one-line-places.js';
import { tagsOf } from './tags-of.js';

const same = (width: number, height: number): OneLineRooms => ({
  first: { width, height },
  next: { width, height },
});
/** About what a sheet of each size leaves beside its title strip, mm. */
const ROOMS = { tabloid: same(327, 250), a3: same(316, 268), letter: same(246, 150), a4: same(264, 145) };
const MANY = ', same housing';

/** The tags of boxes and of protectors on sheets, with those that are drawn more than once; of an equipment in parts once. */
function drawnTags(sheets: readonly { readonly pen: Pen }[]): { boxes: string[]; protectors: string[] } {
  const boxes: string[] = [];
  const protectors: string[] = [];
  for (const { lines } of sheets.flatMap(({ pen }) => pen.texts)) {
    const bold = lines
      .filter((line) => line.bold)
      .map(({ text }) => text)
      .join(' ');
    if (bold === '' || bold.startsWith('TYP. OF') || bold.includes(MANY)) continue;
    const [, hung] = /^(.*)\u00a0\((?:N|E)\)$/.exec(bold) ?? [];
    if (hung !== undefined) protectors.push(...tagsOf(hung));
    else boxes.push(...tagsOf(bold));
  }
  return { boxes: [...new Set(boxes)], protectors };
}

function expectDrawn(of: Plan, rooms: OneLineRooms): number {
  const { sheets } = pennedSheets(of, rooms, 'ieee-315');
  for (const sheet of sheets) {
    expect(faultsOf(sheet)).toEqual([]);
    expect(misplacedTaps(of, sheet)).toEqual([]);
    expect(sheet.width).toBeLessThanOrEqual(rooms.next.width + 0.01);
    expect(sheet.height).toBeLessThanOrEqual(rooms.next.height + 0.01);
  }
  const { boxes, protectors } = drawnTags(sheets);
  expect(boxes.sort()).toEqual(of.site.equipments.map((e) => e.tag).sort());
  const known = new Set(of.site.equipments.map((e) => e.tag));
  const placed = of.protectors.filter((p) => p.ports.some((port) => known.has(port.equipment)));
  expect(protectors.sort()).toEqual(placed.map((p) => p.tag).sort());
  return sheets.length;
}

describe('the one-line drawing', () => {
  it.each(demoPlans().map((p) => [p.job, p] as const))(
    'of the demo job %s is clean in every room',
    (_job, of) => {
      for (const rooms of Object.values(ROOMS)) expectDrawn(of, rooms);
    },
  );

  it.each([6, 14, 32] as const)('of a job of %i protectors is clean in every room', async (protectors) => {
    const of = await planOfSize(protectors);
    for (const rooms of Object.values(ROOMS)) expectDrawn(of, rooms);
  });

  it('of a cottage takes no more than 260 x 110 mm, and one sheet of any size', () => {
    const of = demoPlan('UF-102');
    const { sheets } = pennedSheets(of, same(262, 110), 'ieee-315');
    expect(sheets).toHaveLength(1);
    for (const rooms of Object.values(ROOMS))
      expect(pennedSheets(of, rooms, 'ieee-315').sheets).toHaveLength(1);
  });

  it(
    'of any site has nothing on anything, and each equipment and protector once',
    { timeout: 600_000 },
    () => {
      const seen = { sites: 0, equipments: 0, protectors: 0, sheets: 0 };
      fc.assert(
        fc.property(anySite(14), (of) => {
          seen.sheets += expectDrawn(of, ROOMS.letter);
          seen.sites += 1;
          seen.equipments += of.site.equipments.length;
          seen.protectors += of.protectors.length;
        }),
        { numRuns: 200, seed: 20250314 },
      );
      expect(seen.sites).toBe(200);
      expect(seen.sheets).toBeGreaterThan(200);
      expect(seen.equipments).toBeGreaterThan(5 * 200);
      expect(seen.protectors).toBeGreaterThan(3 * 200);
    },
  );

  it('splits an equipment with more lines than a sheet can hold, and says where it goes on', () => {
    const of = manyInputs(60, (n) => `M-${n}`);
    expect(expectDrawn(of, ROOMS.tabloid)).toBeGreaterThan(1);
    const texts = pennedSheets(of, ROOMS.tabloid, 'ieee-315').sheets.map(({ pen }) =>
      pen.texts.flatMap(({ lines }) => lines.map(({ text }) => text)),
    );
    expect(texts[0]).toContain('see sheet 2');
  });

  it('fills the sheets of a long chain, whatever its length', () => {
    const chain = (count: number): Plan => {
      const numbers = Array.from({ length: count }, (_, i) => i + 1);
      return plan({
        site: {
          equipments: numbers.map((n) => equipment(`MP-${n}`, 'panel', 'Hall', ['feeder'])),
          runs: numbers.slice(1).map((n) => run(`MP-${n - 1}:feeder`, `MP-${n}:feeder`, n)),
        },
      });
    };
    const short = expectDrawn(chain(100), ROOMS.letter);
    expect(short).toBeLessThanOrEqual(100 / 8);
    // Drawn without its check, which looks at every pair of things on a sheet.
    expect(pennedSheets(chain(1000), ROOMS.letter, 'ieee-315').sheets.length).toBeLessThanOrEqual(1000 / 8);
  });

  it('draws alike branches once, with all their tags', () => {
    const numbers = Array.from({ length: 26 }, (_, i) => i + 1);
    const alike = (length: (n: number) => number): Plan =>
      plan({
        site: {
          equipments: [
            equipment(
              'INV',
              'grid-tie-inverter',
              'Plant room',
              numbers.map((n) => `dc-in-${n}`),
            ),
            ...numbers.map((n) => equipment(`PV-${n}`, 'array', 'Field', ['output'])),
          ],
          runs: numbers.map((n) => run(`PV-${n}:output`, `INV:dc-in-${n}`, length(n))),
        },
        protectors: numbers.map((n) =>
          protector({ tag: `P-${n}`, ports: [{ equipment: 'INV', port: `dc-in-${n}` }] }),
        ),
      });
    const texts = (of: Plan): string =>
      pennedSheets(of, ROOMS.tabloid, 'ieee-315')
        .sheets.flatMap(({ pen }) => pen.texts.map(({ lines }) => lines.map(({ text }) => text).join(' ')))
        .join('\n')
        .replaceAll('\u00a0', ' ');
    const once = texts(alike(() => 30));
    for (const words of ['TYP. OF 26', 'PV-1 to PV-26 PV array', 'P-1 to P-26 (N)', 'DC inputs 1 to 26'])
      expect(once).toContain(words);
    const but = texts(alike((n) => (n === 7 ? 31 : 30)));
    for (const words of ['TYP. OF 25', 'PV-1 to PV-6, PV-8 to PV-26', 'PV-7 PV array', 'P-7 (N)'])
      expect(but).toContain(words);
  });

  it('draws lines of unequal length once where that saves a sheet, and says all their lengths', () => {
    const numbers = Array.from({ length: 60 }, (_, i) => i + 1);
    const of = (count: number): Plan => {
      const whole = manyInputs(60, () => '');
      const runs = numbers.map((n) => run(`PV-${n}:output`, `INV:dc-in-${n}`, 60 + (n % count)));
      return { ...whole, site: { ...whole.site, runs } };
    };
    const texts = (plan: Plan): string =>
      pennedSheets(plan, ROOMS.tabloid, 'ieee-315')
        .sheets.flatMap(({ pen }) => pen.texts.map(({ lines }) => lines.map(({ text }) => text).join(' ')))
        .join('\n')
        .replaceAll('\u00a0', ' ');
    expect(expectDrawn(of(60), ROOMS.tabloid)).toBe(1);
    // 60 m and 119 m, 1 ft = 0.3048 m.
    expect(texts(of(60))).toContain('TYP. OF 60 DC inputs 1 to 60 DC 2W, 196.9 to 390.4 ft');
    // What goes on one sheet as it is stated stays apart.
    expect(texts(of(2))).toContain('TYP. OF 30');
  });

  it('puts a small piece into a gap of the drawing, so that no sheet holds it alone', async () => {
    const of = await planOfSize(6);
    const { sheets } = pennedSheets(of, same(246, 128), 'ieee-315');
    expect(sheets).toHaveLength(1);
    expect(drawnTags(sheets).boxes).toContain('GAT');
  });

  it('is no sheet for a plan without equipment', () => {
    expect(pennedSheets(plan({}), ROOMS.letter, 'ieee-315').sheets).toEqual([]);
  });

  it('names its symbols by the family, and only those that it uses', async () => {
    const words = async (job: string, family: 'ieee-315' | 'iec-60617'): Promise<string> => {
      const { legend } = await oneLine(demoPlan(job), ROOMS.tabloid, family);
      return legend.map((entry) => entry.words).join('\n');
    };
    expect(await words('UF-114', 'iec-60617')).toContain('3+1');
    expect(await words('UF-114', 'iec-60617')).toContain('channels to earth');
    expect(await words('UF-102', 'ieee-315')).not.toContain('3+1');
    expect(await words('UF-102', 'ieee-315')).not.toContain('filled in');
    expect(await words('UF-105', 'ieee-315')).toContain('To be filled in');
  });

  it('is markup that a name of the list can’t break out of', async () => {
    const of = plan({
      site: {
        equipments: [equipment('<script>"&', 'panel', '</text><script>alert(1)</script>', ['feeder'])],
        runs: [],
      },
    });
    const { sheets } = await oneLine(of, ROOMS.letter, 'ieee-315');
    expect(sheets[0]?.svg).not.toContain('<script');
    expect(sheets[0]?.svg).toContain('&lt;script&gt;');
  });
});

describe('the check of a one-line drawing', () => {
  const sheet = (draw: (pen: Pen) => void): string[] => {
    const pen = new Pen();
    draw(pen);
    return faultsOf({ pen, width: 100, height: 100 });
  };
  const words = [{ text: 'ten letters', bold: false }];

  it('finds a text on a text, across a box, under a line and beyond the edge', () => {
    const clean = sheet((pen) => {
      pen.text(words, 10, 10);
      pen.text(words, 10, 20);
      pen.wire(10, 19, 60, 19);
    });
    expect(clean).toEqual([]);
    const lying = [
      sheet((pen) => {
        pen.text(words, 10, 10);
        pen.text(words, 14, 12);
      }),
      sheet((pen) => {
        pen.text(words, 10, 10);
        pen.box({ x: 12, y: 5, width: 40, height: 40 });
      }),
      sheet((pen) => {
        pen.text(words, 10, 10);
        pen.wire(5, 12, 60, 12);
      }),
      sheet((pen) => {
        pen.text(words, 95, 10);
      }),
    ];
    for (const faults of lying) expect(faults).toHaveLength(1);
  });

  it('finds lines that cross each other or a box', () => {
    expect(
      sheet((pen) => {
        pen.wire(0, 10, 20, 10);
        pen.wire(10, 0, 10, 20);
      }),
    ).toEqual(['two lines cross']);
    expect(
      sheet((pen) => {
        pen.box({ x: 5, y: 5, width: 10, height: 10 });
        pen.wire(0, 10, 20, 10);
      }),
    ).toEqual(['a line crosses a box']);
  });
});

describe('the check of where protectors stand', () => {
  const of = plan({
    site: {
      equipments: [
        equipment('SVC', 'service', 'Wall', ['service']),
        equipment('MP', 'panel', 'Hall', ['feeder']),
      ],
      runs: [run('SVC:service', 'MP:feeder', 10)],
    },
    protectors: [
      protector({ tag: 'P-1', ports: [{ equipment: 'SVC', port: 'service' }] }),
      protector({ tag: 'P-2', ports: [{ equipment: 'MP', port: 'feeder' }] }),
    ],
  });
  const standing = (first: number, second: number): string[] => {
    const pen = new Pen();
    for (const [tag, x] of [
      ['SVC', 0],
      ['MP', 100],
    ] as const) {
      pen.box({ x, y: 0, width: 20, height: 20 });
      pen.text([{ text: tag, bold: true }], x + 1, 1);
    }
    pen.taps.push({ x: first, y: 10, protectors: ['P-1'] }, { x: second, y: 10, protectors: ['P-2'] });
    return misplacedTaps(of, { pen });
  };

  it('finds one that stands at the other end, or behind one of the other end', () => {
    expect(standing(25, 95)).toEqual([]);
    expect(standing(25, 30)).toEqual(['P-2 of MP stands nearer to SVC']);
    expect(standing(25, 60)).toEqual(['P-2 of MP stands nearer to SVC']);
    expect(standing(70, 25)).toContain('P-2 of MP stands nearer to SVC than P-1');
  });
});

const AHEAD = {
  field: 'ahead_of_disconnect',
  text: 'yes',
  value: true,
  unit: '',
  origin: { from: 'default', field: 'ahead_of_disconnect' },
} as const;

describe('a service with a protector', () => {
  const drawn = (isAhead: boolean): { taps: number[]; main: number; legend: string } => {
    const service = equipment('SVC', 'service', 'Wall', ['service']);
    const of = plan({
      site: {
        equipments: [
          isAhead ? { ...service, facts: [...service.facts, AHEAD] } : service,
          equipment('MP', 'panel', 'Hall', ['feeder']),
        ],
        runs: [run('SVC:service', 'MP:feeder', 10)],
      },
      protectors: [protector({ tag: 'P-1', ports: [{ equipment: 'SVC', port: 'service' }] })],
    });
    const { sheets, trees } = pennedSheets(of, same(327, 60), 'ieee-315');
    const pens = sheets.map(({ pen }) => pen);
    const main = pens.flatMap(({ texts }) => texts.filter(({ lines }) => lines[0]?.text === 'main'));
    return {
      taps: pens.flatMap(({ taps }) => taps.map(({ x }) => x)),
      main: main[0]?.x ?? NaN,
      legend: legendOf(trees, 'ieee-315', false)
        .map((e) => e.words)
        .join(),
    };
  };

  it('has its main drawn before a protector behind it, and after one ahead of it', () => {
    const behind = drawn(false);
    expect(behind.taps).toHaveLength(1);
    expect(behind.taps[0]).toBeGreaterThan(behind.main);
    expect(behind.legend).toContain('Main disconnect of the service');
    const ahead = drawn(true);
    expect(ahead.taps).toHaveLength(1);
    expect(ahead.taps[0]).toBeLessThan(ahead.main);
  });

  it('has none where no protector stands at it', () => {
    const none = plan({ site: { equipments: [equipment('SVC', 'service', 'Wall', ['service'])], runs: [] } });
    const { trees } = pennedSheets(none, ROOMS.letter, 'ieee-315');
    expect(
      legendOf(trees, 'ieee-315', false)
        .map((e) => e.words)
        .join(),
    ).not.toContain('Main disconnect');
  });
});

it('counts the housings of one place, and names a turbine’s terminals by what arrives there', () => {
  const { sheets } = pennedSheets(demoPlan('UF-112'), ROOMS.tabloid, 'ieee-315');
  const texts = sheets.flatMap(({ pen }) =>
    pen.texts.map(({ lines }) =>
      lines
        .map(({ text }) => text)
        .join(' ')
        .replaceAll('\u00a0', ' '),
    ),
  );
  expect(texts.some((text) => text.startsWith('P-4, P-5 (N) 2 housings, each: type 2'))).toBe(true);
  expect(texts.some((text) => text.startsWith('turbine input 1 AC 3Ø 3W L1 L2 L3'))).toBe(true);
  expect(texts.join()).not.toMatch(/DC input 1 turbine/);
});

it('draws housings of one place apart where their devices differ', () => {
  const ports = [{ equipment: 'MP', port: 'feeder' }];
  const first = protector({ tag: 'P-1', ports });
  const taps = (second: Plan['protectors'][number]): string[][] =>
    pennedSheets(
      plan({
        site: { equipments: [equipment('MP', 'panel', 'Hall', ['feeder'])], runs: [] },
        protectors: [first, second],
      }),
      ROOMS.letter,
      'ieee-315',
    ).sheets.flatMap(({ pen }) => pen.taps.map(({ protectors }) => [...protectors]));
  expect(taps({ ...first, tag: 'P-2' })).toEqual([['P-1', 'P-2']]);
  const other = first.overcurrent.map((d) => ({ ...d, amps: (d.amps ?? 0) + 10 }));
  expect(other.length).toBeGreaterThan(0);
  expect(taps({ ...first, tag: 'P-2', overcurrent: other })).toEqual([['P-1'], ['P-2']]);
});
