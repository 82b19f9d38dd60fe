import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/model/plan.js';
import { assumptionRows, AssumptionsSchema } from '../../../src/documents/parts/contents/assumptions.js';
import { blanksOf } from '../../../src/documents/parts/blanks.js';
import {
  calculationSummary,
  CalculationSummarySchema,
} from '../../../src/documents/parts/contents/calculations.js';
import { codeTable, CodeTableSchema } from '../../../src/documents/permit-sheet/contents/codes.js';
import { permitNotes, PermitNotesSchema } from '../../../src/documents/permit-sheet/contents/notes.js';
import type { BlockContext } from '../../../src/documents/permit-sheet/contents/context.js';
import { runsOf, wordRuns, type Runs } from '../../../src/documents/parts/contents/runs.js';
import { permitSchedule, PermitScheduleSchema } from '../../../src/documents/parts/contents/schedule.js';
import { systemInShort } from '../../../src/words/protector-short.js';
import { reason } from '../../../src/model/reason.js';
import { planOf } from '../../demo/plan-of.js';
import { demoPlans } from '../fixtures/demo-plans.js';

const PLANS = demoPlans();

/** The plan of one job of the demo; a test that changes one takes a copy. */
function demoPlan(job: string): Plan {
  const found = PLANS.find((plan) => plan.job === job);
  if (!found) throw new Error(`the demo has no job ${job}`);
  return found;
}

const WIDE: BlockContext = { narrow: false, dataSheets: undefined };
const NARROW: BlockContext = { narrow: true, dataSheets: undefined };
const said = (runs: Runs): string => runs.map(({ text }) => text).join('');

function codes(plan: Plan): Map<string, string[]> {
  return new Map(codeTable(plan).rows.map(({ clause, entries }) => [said(clause), entries.map(said)]));
}
const lines = (plan: Plan): string[] => codeTable(plan).lines.map(said);

/** Every text of all blocks of a plan. */
function textsOf(plan: Plan): string[] {
  const found: string[] = [];
  const walk = (value: unknown): void => {
    if (typeof value === 'string') found.push(value);
    else if (Array.isArray(value)) {
      const pieces = value as unknown[];
      const isRuns =
        pieces.length > 0 &&
        pieces.every(
          (v) =>
            typeof v === 'object' && v !== null && 'whole' in v && 'text' in v && typeof v.text === 'string',
        );
      if (isRuns) found.push(said(pieces as Runs));
      else pieces.forEach(walk);
    } else if (typeof value === 'object' && value !== null) Object.values(value).forEach(walk);
  };
  for (const context of [WIDE, NARROW]) {
    walk(permitSchedule(plan, context));
    walk(permitNotes(plan, context));
  }
  walk(codeTable(plan));
  walk(calculationSummary(plan));
  walk(assumptionRows(plan));
  return found;
}

/** What a reviewer can’t read: names of the program’s own. */
const OF_THE_PROGRAM = [
  /\b(?:place|rate|wire|indicate|fact|default|choose|site|standing)\/[a-z]/,
  /[a-z]_[a-z]/,
  /\b(?:dc-in-\d|ac-in|ac-out)\b/,
  /\.(?:csv|json)\b/,
  /\bas stated\b/,
  /\bdefault\b/i,
  /\bundefined\b|\bNaN\b|\[object/,
];

describe.each(PLANS.map((plan) => [plan.job, plan] as const))('the blocks of %s', (_, plan) => {
  it('satisfy their schemas', () => {
    for (const context of [WIDE, NARROW]) {
      expect(() => PermitScheduleSchema.parse(permitSchedule(plan, context))).not.toThrow();
      expect(() => PermitNotesSchema.parse(permitNotes(plan, context))).not.toThrow();
    }
    expect(() => CodeTableSchema.parse(codeTable(plan))).not.toThrow();
    expect(() => CalculationSummarySchema.parse(calculationSummary(plan))).not.toThrow();
    expect(() => AssumptionsSchema.parse(assumptionRows(plan))).not.toThrow();
  });

  it('have no word of the program’s own', () => {
    for (const text of textsOf(plan)) for (const pattern of OF_THE_PROGRAM) expect(text).not.toMatch(pattern);
  });

  it('are as short as a reviewer reads', () => {
    expect(codeTable(plan).rows.length).toBeLessThanOrEqual(16);
    expect(calculationSummary(plan).rows.length).toBeLessThanOrEqual(12);
  });

  it('name every protector in the schedule, once', () => {
    const tags = permitSchedule(plan, WIDE).rows.map(({ tags: of }) => said(of));
    expect(new Set(tags).size).toBe(tags.length);
    expect(tags.length).toBeLessThanOrEqual(plan.protectors.length);
  });
});

const HEADING =
  'job,basis,occupancy,lightning_protection,tag,kind,connects_to,run_length,place,fault_current,ac_in,ac_out,dc_inputs,max_dc_voltage,isolated';

describe('the schedule', () => {
  it('has housings that differ in nothing but their tags in one row, with quantity and inputs', async () => {
    const inputs = Array.from(
      { length: 5 },
      (_, i) => `J,nec-2023,other,none,ARR-${i + 1},array,INV/${i + 1},20 m,Hall / roof,,,,,,`,
    );
    const plan = await planOf(
      [HEADING, ...inputs, 'J,nec-2023,other,none,INV,grid-tie-inverter,,,Hall / room,,,,5,600,yes', ''].join(
        '\n',
      ),
    );
    const atInverter = plan.protectors.filter((p) => p.ports.some(({ port }) => port.startsWith('dc-in')));
    expect(atInverter).toHaveLength(5);
    const view = permitSchedule(plan, WIDE);
    const row = view.rows.find(({ cells }) =>
      cells.some((c) => c.lines.map(said).includes('INV, DC inputs 1 to 5')),
    );
    expect(row && said(row.tags)).toBe('P-1 to P-5');
    expect(row?.cells[0]?.lines.map(said)).toEqual(['5']);
    expect(view.heads[0]?.text).toBe('Qty');
  });

  it('tells housings apart whose figures differ, and has no quantity where all stand alone', () => {
    const view = permitSchedule(demoPlan('UF-102'), WIDE);
    expect(view.rows.map(({ tags }) => said(tags))).toEqual(['P-1', 'P-2', 'P-3', 'P-4']);
    expect(view.heads.map(({ text }) => text)).not.toContain('Qty');
  });

  it('has needed and given side by side, and rounds what is needed up', () => {
    const view = permitSchedule(demoPlan('UF-102'), WIDE);
    expect(view.subheads.map(({ text }) => text)).toEqual([
      'needed',
      'part',
      'needed',
      'part',
      'there',
      'SCCR',
    ]);
    const figures = view.rows[0]?.cells
      .filter(({ figure }) => figure)
      .map(({ lines: of }) => of.map(said).join());
    expect(figures).toEqual(['462', '500', '1800', '3', '10', '12.8 A', '10']);
  });

  it('names the clause that requires a protector, and else that it is recommended', () => {
    const last = permitSchedule(demoPlan('UF-102'), WIDE).rows.map(({ cells }) =>
      cells.at(-1)?.lines.map(said),
    );
    expect(last).toEqual([['recommended'], ['recommended'], ['required', '215.18'], ['required', '230.67']]);
  });

  it('takes two lines a row on narrow sheets: what and where, then figures', () => {
    const view = permitSchedule(demoPlan('UF-102'), NARROW);
    expect(said(view.rows[3]?.what ?? [])).toBe(
      'SVC, service; House / east wall (outdoors), behind main, nearest to the feed; 120/240 V, solidly grounded; channels L1, L2; WK-FOXGLOVE, Wicklethorn Works, INVENTED-0009; required 230.67',
    );
    expect(view.rows[3]?.cells.length).toBe(view.widthOfWhat);
    expect(view.whatHead).toBe('Protects; location; system; channels; part, maker, file; required by');
  });

  it('tells below the table what is equal for all, and keeps a column for what is not', () => {
    const view = permitSchedule(demoPlan('UF-102'), WIDE);
    expect(view.below.map(said)).toContain('All parts: UL 1449 5th ed.');
    expect(view.below.map(said)).toContain('Leads of all: 10 AWG, line plus ground at most 19 in.');
    expect(view.heads.map(({ text }) => text)).toContain('Leads: ground to');
    const mixed = permitSchedule(demoPlan('UF-106'), WIDE);
    expect(mixed.heads.map(({ text }) => text)).toContain('Leads: gauge, longest, ground to');
  });
});

describe('devices in the schedule', () => {
  const devices = (job: string) =>
    permitSchedule(demoPlan(job), WIDE).rows.map(({ tags, cells }) => {
      const told = cells.map((c) => c.lines.map(said).join(' '));
      return [said(tags), told.find((t) => /breaker|fuses|none of its own|class 2/.test(t))];
    });

  it('have volts and interrupting rating where the plan knows them', () => {
    expect(devices('UF-106').at(-1)).toEqual(['P-8', '3-pole breaker, 20–30 A, 480 V, ≥ 22 kA']);
  });

  it('say that there is none of its own, and up to what', () => {
    expect(devices('UF-106')[0]).toEqual(['P-1', 'none of its own (circuit ≤ 30 A)']);
  });
});

describe('what is left to fill in', () => {
  it('is nothing where the plan knows device, fault current and leads', () => {
    expect(blanksOf(demoPlan('UF-102'))).toEqual([]);
  });

  it('is device, fault current and a listing for ungrounded systems at a turbine, of which nobody states one', () => {
    const blanks = blanksOf(demoPlan('UF-105'));
    expect(blanks.filter(({ tag }) => tag === 'P-2').map(({ what }) => what)).toEqual([
      'device',
      'fault current',
      'listing',
    ]);
    expect(blanks.some(({ tag }) => tag === 'P-1')).toBe(false);
    const listed = structuredClone(demoPlan('UF-105'));
    for (const { partDetails } of listed.protectors) partDetails?.listedFor.push('ungrounded');
    expect(blanksOf(listed).some(({ what }) => what === 'listing')).toBe(false);
    expect(codes(listed).get('242.12')?.join()).toContain('listed for ungrounded systems');
    expect(codes(demoPlan('UF-105')).get('242.12')?.join()).toContain(
      'listing for ungrounded systems to be filled in',
    );
    expect(blanksOf(demoPlan('UF-114')).some(({ what }) => what === 'listing')).toBe(false);
  });

  it('is the fault current where a converter adds what nobody states', () => {
    expect(blanksOf(demoPlan('UF-104'))).toEqual([{ tag: 'P-1', what: 'fault current' }]);
  });

  it('is the fault current of a service too, where the drawing leaves it blank', () => {
    const plan = structuredClone(demoPlan('UF-102'));
    for (const one of plan.site.equipments)
      one.facts = one.facts.filter(({ field }) => field !== 'fault_current');
    expect(blanksOf(plan)).toEqual([{ tag: 'SVC', what: 'fault current' }]);
  });

  it('is nothing at a control circuit, whose supply limits its current', () => {
    expect(blanksOf(demoPlan('UF-106')).filter(({ tag }) => tag === 'P-2')).toEqual([]);
  });

  it('is lead and ground where no part is chosen', () => {
    const blanks = blanksOf(demoPlan('UF-110')).filter(({ tag }) => tag === 'P-4');
    expect(blanks.map(({ what }) => what)).toEqual(['device', 'fault current', 'lead', 'ground']);
  });
});

describe('the code table', () => {
  it('has each clause once, with tag and figure', () => {
    const of = codes(demoPlan('UF-102'));
    expect(of.get('230.67')).toEqual(['P-4: at the service SVC, type 2, In 20 kA ≥ 10 kA']);
    expect(of.get('215.18')).toEqual(['P-3: at MP, type 2, In 10 kA ≥ 10 kA']);
    expect(of.get('242.8')).toEqual(['P-1, P-2: 10 kA ≥ 12.8 A', 'P-3: 25 kA ≥ 10 kA', 'P-4: 50 kA ≥ 10 kA']);
    expect(of.get('690.7, 690.7(A)(1), 110.3(B)')).toEqual([
      'P-1: 462 V ≤ 600 V, ≤ 600 V of the converter',
      'P-2: 416 V ≤ 600 V, ≤ 600 V of the converter',
    ]);
    expect(of.get('242.9')).toEqual(['all: light']);
  });

  it('has them in the order of the articles', () => {
    expect([...codes(demoPlan('UF-112')).keys()].map((clause) => clause.split(', ')[0])).toEqual([
      '230.67',
      '240.4(D)',
      '242.6',
      '242.8',
      '242.10',
      '242.14',
      '242.20',
      '242.24',
      '690.7',
      '690.8(A)',
      '694.7(D)',
    ]);
    expect([...codes(demoPlan('UF-114')).keys()]).toEqual([
      'Table 534.2',
      'Table 534.4',
      '534.4.3',
      '534.4.4.2, IEC 60664-1 Table F.1',
      '534.4.4.4',
      '534.4.4.6',
      '534.4.8, 534.4.10',
      '712.443',
      '712.534, 534.4.9',
      'IEC 60364-7-712 Annex B',
    ]);
  });

  it('never calls a clause for another occupancy met: it doesn’t apply, and the protector is recommended', () => {
    const plan = demoPlan('UF-106');
    expect([...codes(plan).keys()].some((clause) => clause.includes('230.67'))).toBe(false);
    expect(lines(plan)[0]).toMatch(
      /^Does not apply: 230\.67 \(no dwelling unit or sleeping rooms\); 215\.18/,
    );
    expect(lines(plan)[1]).toBe('Recommended, not required by this code: P-1 to P-8.');
  });

  it('names the clause of the job’s own cycle', () => {
    expect(codes(demoPlan('UF-111')).has('285.7')).toBe(true);
    expect(codes(demoPlan('UF-113')).has('242.8')).toBe(true);
  });

  it('lists ungrounded conductors alone', () => {
    expect(codes(demoPlan('UF-103')).get('242.20')).toEqual(['P-1: +', 'P-2 to P-7: L1, L2']);
    expect(codes(demoPlan('UF-116')).get('242.20')).toContain('P-1 to P-4: −');
    const corner = structuredClone(demoPlan('UF-109'));
    for (const protector of corner.protectors) protector.grounding = 'corner';
    expect(codes(corner).get('242.20')).toEqual(['all: L1, L3']);
  });

  it('never allows a control circuit a larger device than its leads do, and says why it has no fault current', () => {
    const plan = demoPlan('UF-106');
    expect(codes(plan).get('240.4(D)')?.[0]).toBe(
      'P-2, P-7: class 2 supply, else a device of at most 15 A, leads 12 AWG (least 14 AWG Cu)',
    );
    expect(codes(plan).get('242.8')).toContain(
      'P-2, P-7: current limited by the class 2 supply; confirm, see A5',
    );
    const told = textsOf(plan).join('\n');
    expect(told).toContain('class 2 supply, else device ≤ 15 A by others');
    expect(told).toContain('No fault current at P-2, P-7: limited by the class 2 supply');
    expect(told).not.toMatch(/class 2[^\n]*30 A/);
  });

  it('names the assumption that what is to be confirmed rests on', () => {
    for (const plan of PLANS) {
      const numbers = new Set(assumptionRows(plan).rows.map(({ number }) => number));
      for (const text of [...codes(plan).values()].flat().filter((t) => t.includes('; confirm'))) {
        const named = /; confirm, see (A\d+(?:, A\d+)*)$/.exec(text)?.[1]?.split(', ') ?? [];
        expect([plan.job, text, named.length > 0]).toEqual([plan.job, text, true]);
        for (const one of named) expect(numbers).toContain(one);
      }
    }
  });

  it('says what is common practice where the edition has no figure', () => {
    expect(codes(demoPlan('UF-112')).get('230.67')).toEqual([
      'P-3: at the service SVC, type 2, In 20 kA ≥ 10 kA (common practice)',
    ]);
  });

  it('cites types by those that stand there', () => {
    expect(codes(demoPlan('UF-107')).get('242.13, 242.14')).toEqual([
      'P-2: type 2, load side of the first disconnect',
      'P-3: type 1, supply side of the first disconnect',
    ]);
  });

  it('says which articles it doesn’t look at, under a code that has them', () => {
    expect(lines(demoPlan('UF-102')).some((line) => line.includes('695.15'))).toBe(true);
    expect(lines(demoPlan('UF-114')).some((line) => line.includes('695.15'))).toBe(false);
  });

  it('has the clauses of IEC on such a job, and why the origin asks for none', () => {
    const plan = demoPlan('UF-114');
    expect(codes(plan).get('712.443')).toEqual(['P-3: L 25 m ≥ Lcrit 23 m']);
    expect(lines(plan)[0]).toBe(
      'Does not apply: 443.4, 443.5 (CRL 1063 ≥ 1000, surroundings urban, stated).',
    );
  });
});

describe('the calculation summary', () => {
  const rows = (job: string) =>
    new Map(
      calculationSummary(demoPlan(job)).rows.map((row) => [
        row.quantity,
        row.lines.map((l) => [said(l.tags), said(l.working), l.result, said(l.against)]),
      ]),
    );

  it('has formula with figures, result and what it was held against', () => {
    const of = rows('UF-102');
    expect(of.get('PV voltage, cold')?.[0]).toEqual([
      'P-1',
      'F = 1 + (-0.115 V/°C) × (-18 °C - 25 °C) / 41.2 V = 1.12002; 41.2 V × 10 × 1.12002',
      '462 V',
      '≤ 500 V part; ≤ 600 V converter; ≤ 600 V 690.7',
    ]);
    expect(of.get('AC voltage to ground')).toEqual([
      ['P-3, P-4', 'larger of 127 / 120 × 120 V = 127 V and 1.15 × 120 V', '138 V', '≤ 150 V part'],
    ]);
    expect(of.get('Level with leads; reach along the cable')?.map(([, , result]) => result)).toEqual([
      'its whole run',
      'its whole run',
      '92.9 ft',
    ]);
  });

  it('speaks of earth, not of ground, under the IEC', () => {
    const plan = demoPlan('UF-114');
    const labels = calculationSummary(plan).rows.map((r) => r.quantity);
    expect(labels).toContain('AC voltage to earth');
    expect(labels.join()).not.toContain('ground');
    const assumed = assumptionRows(plan).rows.map(({ text }) => JSON.stringify(text));
    expect(assumed.join()).toContain('AC system directly earthed');
    expect(assumed.join()).toContain('DC circuits unearthed, no pole bonded');
    expect(assumed.join()).not.toMatch(/ground/i);
    const systems = plan.protectors.map((p) => systemInShort(p, plan)).join();
    expect(systems).toContain('400/230 V, TT');
    expect(systems).not.toContain('ground');
  });

  it('says which bound held where it is not the working’s figure, in the job’s own unit', () => {
    // By hand: 118 V / 7.62 V/ft = 15.49 ft and 1108 V / 7.62 V/ft = 145.4 ft; 118 V / 25 V/m = 4.72 m.
    const reach = (job: string) =>
      rows(job)
        .get('Level with leads; reach along the cable')
        ?.map(([tags, working, result]) => [tags, working, result]);
    expect(reach('UF-106')?.slice(1, 3)).toEqual([
      [
        'P-2, P-7',
        '(500 V - 330 V - 52 V) / 7.62 V/ft: less than the least reach of the method, 32.8 ft (10 m)',
        '32.8 ft',
      ],
      ['P-6', '(2500 V - 1200 V - 192 V) / 7.62 V/ft = 145.4 ft; no more than 100 ft counts', '100 ft'],
    ]);
    expect(reach('UF-107')?.[0]).toEqual([
      'P-1, P-4',
      '(500 V - 330 V - 52 V) / 25 V/m: less than the least reach of the method, 10 m',
      '10 m',
    ]);
    expect(reach('UF-102')?.at(-1)).toEqual([
      'P-4',
      '(1500 V - 600 V - 192 V) / 7.62 V/ft = 92.9 ft',
      '92.9 ft',
    ]);
  });

  it('prints a reach that its printed figures give, for every job', () => {
    let seen = 0;
    for (const plan of PLANS)
      for (const [, working = '', result = ''] of rows(plan.job).get(
        'Level with leads; reach along the cable',
      ) ?? []) {
        const found =
          /^\(([\d.]+) V - ([\d.]+) V - ([\d.]+) V\) \/ ([\d.]+) V\/(ft|m)(?: = ([\d.]+) \5|: less than the least reach of the method, ([\d.]+) \5)(?:; no more than ([\d.]+) \5 counts)?/.exec(
            working,
          );
        if (!found) continue;
        seen += 1;
        const [uw = 0, up = 0, leads = 0, slope = 1] = found.slice(1, 5).map(Number);
        const of = Math.floor(((uw - up - leads) / slope) * 10 + 1e-6) / 10;
        const [, , , , , unit = '', quotient, least, most] = found;
        if (quotient !== undefined) expect(of).toBe(Number(quotient));
        expect(result).toBe(`${least ?? most ?? String(of)} ${unit}`);
        if (least !== undefined) expect(of).toBeLessThan(Number(least));
        if (most !== undefined) expect(of).toBeGreaterThan(Number(most));
      }
    expect(seen).toBeGreaterThan(10);
  });

  it('says with which lead a voltage was worked out: that of the schedule, which rounds it down', () => {
    const leads = (job: string) =>
      rows(job)
        .get('Voltage of the leads')
        ?.map(([tags, , result, held]) => [tags, result, held]);
    expect(leads('UF-106')?.[1]).toEqual([
      'P-2, P-7',
      '60 V',
      'rounded up to 10 V, 52 V in the level below; lead 9.8 in, in the schedule rounded down to 9 in',
    ]);
    expect(leads('UF-102')?.[0]?.[2]).toBe(
      'rounded up to 10 V, 192 V in the level below; lead 19.7 in, in the schedule rounded down to 19 in',
    );
    expect(leads('UF-112')?.[0]?.[2]).toBe('rounded up to 10 V, 192 V in the level below; lead 0.5 m');
  });

  it('has exposure and critical length under IEC alone', () => {
    expect(rows('UF-102').has('Calculated risk level')).toBe(false);
    expect(rows('UF-113').has('Critical length of DC runs')).toBe(false);
    expect(rows('UF-114').get('Calculated risk level')?.[0]?.slice(2)).toEqual(['1063', '≥ 1000 (443.5)']);
    expect(rows('UF-114').get('Critical length of DC runs')?.[0]?.slice(2)).toEqual([
      '23 m',
      'P-3: L 25 m ≥ Lcrit',
    ]);
  });
});

describe('assumptions', () => {
  const texts = (plan: Plan) =>
    assumptionRows(plan).rows.map(({ number, text }) => `${number} ${said(text)}`);

  it('stand numbered, in trade words, one a fact with its tags', () => {
    const of = texts(demoPlan('UF-102'));
    expect(of).toContain('A2 DC circuits ungrounded, no pole bonded (ARR-E, ARR-W). Verify.');
    expect(of).toHaveLength(8);
  });

  it('begin with what could turn a result: a part that may not protect before a source that isn’t known', () => {
    const plan = structuredClone(demoPlan('UF-106'));
    const at = { equipment: 'INV', ports: ['dc-in-1'] };
    const volts = (value: number) => ({ value, unit: 'V' as const });
    const shortfall = reason('level/near-withstand', {
      basis: 'VPR',
      up: volts(3000),
      leads: volts(178),
      withstand: volts(2500),
      share: null,
      assumed: true,
    });
    const item = {
      severity: 'confirm',
      equipment: 'INV',
      file: '',
      line: 0,
      column: '',
      who: 'maker',
    } as const;
    plan.openItems.push({ ...item, code: 'choose/may-not-protect', values: { at, part: 'X', shortfall } });
    const of = assumptionRows(plan).rows.slice(0, 3);
    expect(of.map(({ text }) => said(text))).toEqual([
      'MAY NOT PROTECT: VPR 3000 V + leads 178 V above 2500 V assumed. Ask the maker of the equipment for its impulse withstand (P-3). Verify.',
      'Supply of the control circuit not known: find every source before work starts (OPR). Verify.',
      expect.any(String),
    ]);
    expect(of.map(({ grave }) => grave)).toEqual([true, true, false]);
  });

  it('leave out what only the office needs', () => {
    const of = texts(demoPlan('UF-102')).join('\n');
    expect(
      demoPlan('UF-102').openItems.some(
        ({ values }) => 'field' in values && values.field === 'worth_protecting',
      ),
    ).toBe(true);
    expect(of).not.toMatch(/worth/i);
  });

  it('never say of a floating turbine that no listing is needed', () => {
    expect(texts(demoPlan('UF-112'))[0]).toBe(
      'A1 Turbine phases float: 242.6 asks for parts fit for ungrounded systems; what their listing says of that is to be filled in below the schedule, where the catalogue states nothing (WT). Verify.',
    );
    expect(texts(demoPlan('UF-113'))[0]).toContain('242.12 asks for parts fit');
  });

  it('say who settled what stands in for a fact, and when', () => {
    const plan = structuredClone(demoPlan('UF-102'));
    plan.settled.push({
      field: 'lightning_protection',
      value: 'none',
      rows: [],
      by: 'the design office',
      date: '2025-01-31',
    });
    expect(
      texts(plan).some((t) =>
        t.endsWith('No lightning protection system. Assumed, settled by the design office on 2025-01-31.'),
      ),
    ).toBe(true);
  });
});

describe('notes', () => {
  const texts = (job: string, of = WIDE) => permitNotes(demoPlan(job), of).rows.map(({ text }) => said(text));

  it('let local code and licensed practice go first', () => {
    expect(texts('UF-102')[0]).toMatch(/^Local code, the authority having jurisdiction/);
  });

  it('name the ports without a protector in one note, and apart those that a missing fact leaves open', () => {
    expect(texts('UF-102')).toContain(
      'No protector asked for at: output of ARR-E, ARR-W (no run outdoors or between buildings over 100 ft); AC output of INV (within reach of P-3).',
    );
    expect(texts('UF-110')).toContain('Not decided, as a fact is missing: output of ARR.');
  });

  it('say whether data sheets follow or are appended', () => {
    expect(texts('UF-102')).toContain('Data sheets of the parts: none appended to these sheets; to follow.');
    const parts = ['PM-INGLENOOK', 'WK-FOXGLOVE', 'WK-MALLOW'];
    expect(texts('UF-102', { ...WIDE, dataSheets: parts })).toContain('Data sheets of the parts: appended.');
    expect(texts('UF-102', { ...WIDE, dataSheets: [] })).toContain(
      'Data sheets: none found to append; to follow: WK-MALLOW, PM-INGLENOOK, WK-FOXGLOVE.',
    );
    expect(texts('UF-102', { ...WIDE, dataSheets: ['WK-FOXGLOVE', 'OF-ANOTHER-JOB'] })).toContain(
      'Data sheets appended: WK-FOXGLOVE; to follow: WK-MALLOW, PM-INGLENOOK.',
    );
  });

  it('ask for the bonding conductors by IEC 62446-1 on an IEC job alone', () => {
    expect(texts('UF-114').some((t) => t.startsWith('IEC 62446-1'))).toBe(true);
    expect(texts('UF-113').some((t) => t.includes('62446'))).toBe(false);
  });
});

describe('a text in pieces', () => {
  it('breaks no word at its hyphen, but a name that would push its table off the sheet', () => {
    const whole = (text: string): string[] =>
      wordRuns(text)
        .filter((piece) => piece.whole)
        .map((piece) => piece.text);
    expect(whole('Lanternfold Surge & Solar Co-operative')).toEqual(['Co-operative']);
    expect(whole('never on the neutral bar of a sub-panel, P-1')).toEqual(['sub-panel', 'P-1']);
    expect(whole(`${'long'.repeat(9)}-${'name'.repeat(9)} of-many-short-pieces-of-it`)).toEqual([]);
    const pieces = runsOf(demoPlan('UF-102'))('the sub-panel of P-1');
    expect(pieces.filter((piece) => piece.whole).map(({ text }) => text)).toEqual(['sub-panel', 'P-1']);
  });

  it('keeps tags and figures with their units whole', () => {
    const pieces = runsOf(demoPlan('UF-102'))('P-1, P-2: 10 kA ≥ 12.8 A at INV');
    expect(pieces.filter(({ whole }) => whole).map(({ text }) => text)).toEqual([
      'P-1,',
      'P-2:',
      '10 kA',
      '≥ 12.8 A',
    ]);
    expect(said(pieces)).toBe('P-1, P-2: 10 kA ≥ 12.8 A at INV');
  });

  it('keeps clauses, parts and files of listings whole', () => {
    const pieces = runsOf(demoPlan('UF-102'))('690.7(A)(1): WK-FOXGLOVE, INVENTED-0009 by 240.21(B)(1)(1)b');
    expect(pieces.filter(({ whole }) => whole).map(({ text }) => text)).toEqual([
      '690.7(A)(1)',
      'WK-FOXGLOVE,',
      'INVENTED-0009',
      '240.21(B)(1)(1)b',
    ]);
  });
});
