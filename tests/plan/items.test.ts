import { englishPlan } from '../in-english.js';
import { describe, expect, it } from 'vitest';
import { defaultSettings, planJob, readListContents, type Plan } from '../../src/index.js';
import {
  allPorts,
  at,
  because,
  csvOf,
  dataOfCsv,
  defaultsOf,
  faults,
  items,
  listOf,
  planOf,
  planOfCsv,
} from './plan-of.js';

// contract.md, plan.json: places of items, order, numbering, rounding, nulls. Cases are our own.

/** A job of every kind, with nothing missing and nothing contradictory. */
const WHOLE = listOf(
  'basis=nec-2023; occupancy=dwelling; lowest_temp=-18 C; flash_density=2; lightning_protection=none',
  `SVC service; ac_in=120/240; place=House / wall; outdoors=yes; fault_current=10 kA; impulse_withstand=4 kV; ahead_of_disconnect=no; n_pe_link=yes; system_grounding=solid; worth_protecting=yes
   MP panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House / hall; outdoors=no; n_pe_link=no; lead_length=0.3 m
   BARN panel; connects_to=MP; run_length=60 m; ac_in=120/240; place=Barn / wall; building=Barn; building_occupancy=other; protect=yes
   INV grid-tie-inverter; connects_to=MP; run_length=40 m; dc_inputs=2; max_dc_voltage=600; isolated=yes; ac_out=240; place=House / attic
   E array; connects_to=INV/1; run_length=40 m; voc_stc=40; isc_stc=10; modules_in_series=10; strings_in_parallel=2; voc_coefficient=-0.27 %/C; cells=60; dc_grounding=floating; mounting=roof; optimizers=no
   W array; connects_to=INV/2; run_length=40 m; voc_stc=40; isc_stc=10; modules_in_series=9; strings_in_parallel=2; place=House / roof
   CC charge-controller; connects_to=BAT; run_length=1 m; dc_inputs=1; max_dc_voltage=250; place=House / cellar
   WT wind-turbine; connects_to=CC; run_length=50 m; output=three-phase; open_circuit_voltage=150; poles=12; rpm=300; place=Tower
   BAT battery; battery_voltage=48; battery_chemistry=lead-acid; fault_current=4 kA; place=House / shed
   CHG inverter-charger; connects_to=MP; run_length=4 m; ac_in=120/240; ac_in_2=120/240; ac_out=120/240; dc_inputs=1; max_dc_voltage=150; place=House / cellar; overvoltage_category=III
   R array; connects_to=CMB; run_length=8 m; voc_stc=40; modules_in_series=3; quantity=1
   CMB combiner; connects_to=CHG/1; run_length=9 m; place=House / roof
   GEN generator; connects_to=CHG; run_length=45 m; ac_out=120/240; place=Shed; outdoors=yes; fault_current=2 kA
   L load; connects_to=BARN; run_length=5 m; ac_in=120; place=Barn / stall
   CTL control-circuit; connects_to=GEN; run_length=45 m; control_voltage=12 V dc; supply=regulated; place=House; dc_grounding=negative
   HT hydro-turbine; connects_to=C2; run_length=90 m; output=dc; open_circuit_voltage=100; place=Creek
   C2 charge-controller; connects_to=BAT; run_length=1 m; dc_inputs=1; max_dc_voltage=150; place=House / cellar
   AM ac-module-branch; connects_to=MP; run_length=12 m; ac_out=240; place=House / roof; outdoors=yes
   TS transfer-switch; connects_to=MP; run_length=2 m; place=House / hall
   SUB panel; connects_to=TS; run_length=2 m; ac_in=120/240; place=House / hall
   SIG signal-line; connects_to=MP; place=House
   X other; place=House`,
);

describe('one wrong cell', () => {
  const lines = WHOLE.trimEnd()
    .split('\n')
    .map((line) => line.split(','));
  const headings = lines[0] ?? [];
  // Free text can't be wrong; a wrong tag leaves what names it without a target, which is said for each such row.
  const FREE: ReadonlySet<string> = new Set([
    'job',
    'tag',
    'place',
    'building',
    'supply',
    'module_technology',
  ]);
  const cells = lines.flatMap((line, r) =>
    r === 0
      ? []
      : line.flatMap((cell, c) => (cell === '' || FREE.has(headings[c] ?? '') ? [] : [[r, c] as const])),
  );
  const planWith = (r: number, c: number, text: string): Plan =>
    dataOfCsv(
      lines
        .map((line, i) => (i === r ? line.map((cell, j) => (j === c ? text : cell)) : line).join(','))
        .join('\n'),
      { unchecked: true },
    );
  const grave = (plan: Plan): Plan['openItems'] => plan.openItems.filter((i) => i.severity !== 'confirm');

  it('the whole list has none', () => {
    expect(faults(planOfCsv(WHOLE))).toEqual([]);
    expect(cells.length).toBeGreaterThan(120);
  });

  // Without a second AC in, MP and GEN share the first: at the generator’s row its transfer equipment is missing. And what MP
  // or SUB no longer names leaves the transfer switch between them without a supply or a load.
  const alsoAsked = (plan: Plan, r: number, c: number): Plan['openItems'] => {
    const column = headings[c] ?? '';
    const tag = lines[r]?.[headings.indexOf('tag')] ?? '';
    const asked = grave(plan).filter(
      (i) => i.code === 'fact/transfer-equipment' || i.code === 'site/pass-unconnected',
    );
    const most =
      column === 'ac_in_2'
        ? ['GEN']
        : column === 'connects_to' && ['MP', 'SUB', 'TS'].includes(tag)
          ? ['TS']
          : [];
    for (const item of asked) expect(most, `${tag}, ${column}`).toContain(item.equipment);
    expect(asked.length).toBeLessThanOrEqual(most.length);
    if (column === 'ac_in_2') expect(asked).toHaveLength(1);
    return asked;
  };

  it('is one clear message at its line and column, and no other fault', () => {
    for (const [r, c] of cells) {
      const plan = planWith(r, c, '?!?');
      const also = alsoAsked(plan, r, c);
      const found = grave(plan)
        .filter((i) => !also.includes(i))
        .map((i) => [i.line, i.column]);
      expect(found, `line ${r + 1}, ${headings[c] ?? ''}`).toEqual([[r + 1, headings[c]]]);
    }
  });

  it('left blank is at most one missing fact, of its own line', () => {
    for (const [r, c] of cells) {
      const plan = planWith(r, c, '');
      const also = alsoAsked(plan, r, c);
      const found = grave(plan).filter((i) => !also.includes(i));
      expect(
        found.length,
        `line ${r + 1}, ${headings[c] ?? ''}: ${JSON.stringify(found)}`,
      ).toBeLessThanOrEqual(1);
      for (const item of found) {
        expect(item.severity).toBe('missing');
        if (item.equipment !== '') expect(item.line).toBe(r + 1);
      }
    }
  });
});

describe('places of items', () => {
  it('name file, line and the heading as the file has it; an absent heading is ``', () => {
    const csv = `Job,Tag,Type,Connected to,Cable length (ft),Location\nJ,A,array,CC,40,Hut / roof\nJ,CC,charge controller,,,Hut\n`;
    const plan = planOfCsv(csv, { name: 'lists/site one.csv' });
    expect(items(plan, 'missing').map((i) => [i.code, i.file, i.line, i.column])).toEqual([
      ['fact/modules-in-series', 'lists/site one.csv', 2, ''],
      ['fact/voc-stc', 'lists/site one.csv', 2, ''],
    ]);
    const withHeading = planOfCsv(
      csv
        .replace('Location', 'Location,Modules per string')
        .replaceAll(/\n(?=J|$)/g, ',\n')
        .replace('string,\n', 'string\n'),
    );
    expect(items(withHeading, 'fact/modules-in-series')[0]?.column).toBe('Modules per string');
  });

  it('a record of several lines counts by its first', () => {
    const csv = 'job,tag,kind,description,connects_to\nJ,L,load,"one\ntwo\nthree",\nJ,P,panel,,NOWHERE\n';
    expect(items(planOfCsv(csv), 'conflict').map((i) => i.line)).toEqual([5]);
  });

  it('an item of a fact that is stated is at that fact: job facts on the row that states them', () => {
    const csv = csvOf([
      { job: 'J', tag: 'S', kind: 'service', ac_in: '120/240' },
      { job: 'J', tag: 'L', kind: 'load', ac_in: '120', lowest_temp: 'cold' },
    ]);
    expect(items(planOfCsv(csv), 'cell/wrong').map((i) => [i.line, i.column, i.equipment])).toEqual([
      [3, 'lowest_temp', ''],
    ]);
  });

  it('an item of a library fact is at the library', () => {
    const plan = planOf(
      'lowest_temp=20 C; occupancy=other',
      `A array; connects_to=CC; run_length=4 m; maker=M; model=X; modules_in_series=9
       CC charge-controller; dc_inputs=1; max_dc_voltage=150; maker=M; model=C; place=Hut`,
      { library: 'maker,model,voc_stc,max_dc_voltage\nM,X,40,\nM,C,,150\n' },
    );
    const voc = plan.site.equipments.find((e) => e.tag === 'A')?.facts.find((f) => f.field === 'voc_stc');
    expect(voc?.origin).toEqual({ from: 'library', file: 'library.csv', line: 2, column: 'voc_stc' });
    expect(items(plan, 'rate/above-converter').map((i) => [i.file, i.line, i.column])).toEqual([
      ['list.csv', 2, 'modules_in_series'],
    ]);
  });

  it('of a job in two files each names its own; two rows with one tag name both files', () => {
    const read = readListContents(
      [
        { name: 'b.csv', content: 'job,tag,kind,connects_to\nJ,L,load,NOWHERE\nJ,T,load,\n' },
        { name: 'a.csv', content: 'job,tag,kind\nJ,T,load\n' },
      ],
      { settings: defaultSettings() },
    );
    const [job] = read.jobs;
    if (!job) throw new Error('no job');
    const plan = englishPlan(planJob(job, { catalogue: undefined, settings: defaultSettings() }));
    expect(items(plan, 'site/connection-to-nothing').map((i) => [i.file, i.line])).toEqual([['b.csv', 2]]);
    expect(items(plan, 'site/tag-twice').map((i) => i.message)).toEqual([
      'Two rows have the tag T: line 2 of a.csv and line 3 of b.csv; the second is left out.',
    ]);
  });

  it('rows of one quantity share a line; a default names its rows on one item', () => {
    const plan = planOf('', 'L load; quantity=14; ac_in=120; protect=yes\nM load; ac_in=120; protect=yes');
    expect(plan.site.equipments.map((e) => e.line)).toEqual([...Array.from({ length: 14 }, () => 2), 3]);
    const [worth] = defaultsOf(plan, 'worth_protecting');
    expect(worth).toMatch(/L-1, L-2, .*L-12 and 3 more: taken as yes/);
    // A row is one equipment: a blank quantity is nothing to confirm.
    expect(defaultsOf(plan, 'quantity')).toEqual([]);
  });
});

describe('severity and order', () => {
  it('missing and conflict make a draft, confirm alone doesn’t', () => {
    const complete = planOfCsv(WHOLE);
    expect(complete.openItems.length).toBeGreaterThan(0);
    expect(complete.openItems.every((i) => i.severity === 'confirm')).toBe(true);
    expect(complete.submittable).toBe(true);
    expect(planOf('', 'S service').submittable).toBe(false);
    expect(planOf('', 'S service; ac_in=120; connects_to=NOWHERE').submittable).toBe(false);
  });

  it('conflicts come first, then what is missing, then what is to be confirmed; within them by equipment in natural order', () => {
    const plan = planOf(
      '',
      `P10 panel; connects_to=NOWHERE; protect=yes; place=A
       P9 panel; connects_to=NOWHERE; protect=yes; place=A
       S service; ac_in=120/240; place=A`,
    );
    expect(plan.openItems.slice(0, 4).map((i) => [i.severity, i.equipment])).toEqual([
      ['conflict', 'P9'],
      ['conflict', 'P10'],
      ['missing', 'P9'],
      ['missing', 'P10'],
    ]);
    expect(new Set(plan.openItems.slice(4).map((i) => i.severity))).toEqual(new Set(['confirm']));
  });
});

describe('protectors and bare ports', () => {
  it('every port of every kind is in protectors or in notPlaced, with a reason', () => {
    const plan = planOfCsv(WHOLE);
    const ports = allPorts(plan);
    expect(new Set(plan.site.equipments.map((e) => e.kind)).size).toBe(17);
    for (const where of ports) {
      const placed = at(plan, where).length > 0;
      const reasons = because(plan, where);
      expect(placed ? reasons : reasons.map((r) => r.because !== ''), where).toEqual(
        placed ? [] : reasons.map(() => true),
      );
      expect(placed || reasons.length > 0, where).toBe(true);
    }
    for (const where of ['TS:terminals', 'SIG:terminals', 'X:terminals'])
      expect(because(plan, where)).toHaveLength(1);
  });

  it('tags run by equipment tag in natural order, then port in the order of the contract, then housing', () => {
    const plan = planOf(
      'lowest_temp=0 C',
      `U10 load; ac_in=208Y/120; protect=yes; place=A
       U9 inverter-charger; ac_in=120/240; ac_in_2=120/240; ac_out=208Y/120; dc_inputs=2; max_dc_voltage=150; place=A
       B battery; connects_to=U9; battery_voltage=48; battery_chemistry=lfp; run_length=40 m; place=B
       U9-C control-circuit; connects_to=U9; control_voltage=24 V dc; run_length=4 m; outdoors=yes; place=A`,
    );
    expect(plan.protectors.map((p) => p.tag)).toEqual(plan.protectors.map((_, i) => `P-${i + 1}`));
    expect(plan.protectors.map((p) => `${p.ports[0]?.equipment ?? ''}:${p.ports[0]?.port ?? ''}`)).toEqual([
      'B:battery',
      'U9:dc-in-1',
      'U9:dc-in-2',
      'U9:battery',
      'U9:ac-in',
      'U9:ac-in-2',
      'U9:ac-out',
      'U9:terminals',
      'U9-C:terminals',
      'U10:feeder',
    ]);
  });

  it('dc-in-10 stands after dc-in-9', () => {
    const plan = planOf('', 'C charge-controller; dc_inputs=11; max_dc_voltage=150');
    expect(plan.protectors.map((p) => p.ports[0]?.port)).toEqual(
      Array.from({ length: 11 }, (_, i) => `dc-in-${i + 1}`),
    );
  });

  it('no part: part and figures are null', () => {
    const plan = planOf('', 'S service');
    expect(plan.protectors[0]).toMatchObject({ part: null, figures: null, partDetails: null });
  });

  it('figures are rounded to 0.01, and in volts, amperes and metres', () => {
    const plan = planOfCsv(WHOLE);
    for (const p of plan.protectors) {
      for (const value of [...Object.values(p.required), ...Object.values(p.figures ?? {})]) {
        if (typeof value === 'number')
          expect(Math.abs(value * 100 - Math.round(value * 100))).toBeLessThan(1e-6);
      }
    }
    expect(at(plan, 'SVC:service')[0]?.required).toMatchObject({ in: 10_000, sccr: 10_000 });
    expect(
      plan.site.runs.every((r) => r.length === null || Math.round(r.length * 100) / 100 === r.length),
    ).toBe(true);
  });

  it('the plan holds its site, the rejected parts and the clauses of the rules that fired', () => {
    const plan = planOfCsv(WHOLE);
    expect(plan.site.runs.length).toBeGreaterThan(15);
    expect(plan.protectors.some((p) => p.rejected.length > 0)).toBe(true);
    const fired = new Set(plan.protectors.flatMap((p) => p.reasons.map((r) => r.rule)));
    for (const rule of fired) expect(plan.clauses.map((c) => c.rule)).toContain(rule);
    expect(plan.clauses.find((c) => c.rule === 'place/feeder')?.clause).toBe('215.18');
    expect(plan.clauses.every((c) => c.commonPractice === (c.clause === ''))).toBe(true);
  });

  it('orders count what has to be bought', () => {
    const plan = planOfCsv(WHOLE);
    const counted = new Map<string, number>();
    for (const p of plan.protectors) if (p.part !== null) counted.set(p.part, (counted.get(p.part) ?? 0) + 1);
    expect(new Map(plan.orders.map((o) => [o.part, o.quantity]))).toEqual(counted);
  });
});
