import { describe, expect, it } from 'vitest';
import type { EnglishPlan } from '../in-english.js';
import { conductorsAt, defaultsOf, faults, items, lightsOf, one, planOf, rulesAt } from './plan-of.js';

// contract.md, "Defaults": what a company settled stands in for a default, below the list and the library. Cases are our own.

const BY = { by: 'R. Example', date: '2026-02-03' };

interface Entry {
  readonly field: string;
  readonly value: string | number | boolean;
  readonly kinds?: readonly string[];
  readonly occupancy?: string;
}

const planWith = (settled: readonly Entry[], facts: string, rows: string, library?: string): EnglishPlan =>
  planOf(facts, rows, {
    settings: { settled: settled.map((entry) => ({ ...BY, ...entry })) },
    ...(library === undefined ? {} : { library }),
  });

/** What a plan says that it rests on: `field value: rows`. */
const settledOf = (plan: EnglishPlan): readonly string[] =>
  plan.settled.map(({ field, value, rows }) => `${field} ${value}: ${rows.join(' ')}`.trimEnd());

const SITE = `S service; ac_in=120/240; place=House / wall
   P panel; connects_to=S; run_length=9 m; place=House / hall
   BARN panel; connects_to=P; run_length=60 m; place=Barn / wall; building=Barn
   C charge-controller; place=House / cellar; connects_to=B; run_length=1 m
   A array; connects_to=C; run_length=40 m; voc_stc=40; isc_stc=10; modules_in_series=2; max_dc_voltage=; place=House / roof
   B battery; battery_voltage=48; battery_chemistry=lead-acid; place=House / shed; fault_current=4 kA
   I inverter-charger; connects_to=B; run_length=3 m; ac_in=unused; ac_out=120/240; dc_inputs=0; place=House / cellar
   T control-circuit; connects_to=P; run_length=45 m; control_voltage=24 V dc; place=Barn / wall; building=Barn`.replace(
  'max_dc_voltage=; ',
  '',
);
const JOB = 'lowest_temp=-18 C';

/** The rows of a default that is to be confirmed, as its message names them. */
const asked = (plan: EnglishPlan, field: string): string => defaultsOf(plan, field).join('\n');

/** One case a field whose default is printed at that site: what settles it, and the default as it is. */
const AS_BY_DEFAULT: readonly (readonly [entry: Entry, rows: string])[] = [
  [{ field: 'occupancy', value: 'dwelling' }, ''],
  [{ field: 'lightning_protection', value: 'none' }, ''],
  [{ field: 'worth_protecting', value: 'yes' }, 'C'],
  [{ field: 'ahead_of_disconnect', value: 'no' }, 'S'],
  [{ field: 'outdoors', value: 'no' }, 'P'],
  [{ field: 'building_occupancy', value: 'other' }, 'BARN'],
  [{ field: 'module_technology', value: 'crystalline' }, 'A'],
  [{ field: 'system_grounding', value: 'solid' }, 'S'],
  [{ field: 'dc_grounding', value: 'negative', kinds: ['array', 'battery'] }, 'A'],
  [{ field: 'n_pe_link', value: 'yes', kinds: ['service'] }, 'S'],
  [{ field: 'n_pe_link', value: 'no', kinds: ['panel'] }, 'P'],
];

describe('a default that a company settled as it is', () => {
  const before = planOf(JOB, SITE);

  it.each(AS_BY_DEFAULT)('%o is assumed, not asked, and changes nothing else', (entry, row) => {
    const plan = planWith([entry], JOB, SITE);
    const mine = plan.settled.find(({ field }) => field === entry.field);
    expect(mine).toMatchObject({ value: String(entry.value), ...BY });
    expect(mine?.rows ?? []).toEqual(row === '' ? [] : expect.arrayContaining([row]));
    expect(asked(before, entry.field)).not.toBe('');
    expect(asked(plan, entry.field).length).toBeLessThan(asked(before, entry.field).length);
    for (const tag of mine?.rows ?? []) {
      const own = defaultsOf(plan, entry.field).filter((m) => m.includes(`taken as ${String(entry.value)}`));
      expect(own.join(' ')).not.toMatch(new RegExp(`\\b${tag}\\b`));
    }
    expect(plan.protectors.map((p) => [p.tag, p.part, p.ports, p.required])).toEqual(
      before.protectors.map((p) => [p.tag, p.part, p.ports, p.required]),
    );
    expect(plan.openItems.filter((i) => i.code !== 'default/used')).toEqual(
      before.openItems.filter((i) => i.code !== 'default/used'),
    );
  });

  it('the basis isn’t asked about any more', () => {
    expect(items(before, 'default/basis')).toHaveLength(1);
    const plan = planWith([{ field: 'basis', value: 'nec-2023' }], JOB, SITE);
    expect(items(plan, 'default/basis')).toEqual([]);
    expect(settledOf(plan)).toEqual(['basis nec-2023:']);
    expect(plan.facts.find(({ field }) => field === 'basis')?.origin).toEqual({
      from: 'setting',
      name: 'settled',
    });
  });

  it('the inputs of a charge controller aren’t asked about; an input that the list names goes before', () => {
    const settled = [{ field: 'dc_inputs', value: 1 }];
    expect(items(before, 'default/dc-inputs')).toHaveLength(1);
    const plan = planWith(settled, JOB, SITE);
    expect(items(plan, 'default/dc-inputs')).toEqual([]);
    expect(settledOf(plan)).toEqual(['dc_inputs 1: C']);
    const named = planWith(settled, JOB, SITE.replace('connects_to=C;', 'connects_to=C/2;'));
    expect(settledOf(named)).toEqual([]);
    expect(items(named, 'default/dc-inputs-named')).toHaveLength(1);
    expect(faults(named)).toEqual(faults(before));
  });

  it('a transformer is asked neither whether it isolates nor how it is grounded', () => {
    const rows =
      'S service; ac_in=480Y/277; place=A\nX transformer; connects_to=S; run_length=2 m; ac_in=480; ac_out=120/240; place=A\nP panel; connects_to=X; run_length=9 m; place=A';
    const codes = ['default/isolated', 'default/transformer-grounding'];
    const asks = (plan: EnglishPlan): readonly string[] =>
      plan.openItems.map((i) => i.code).filter((code) => codes.includes(code));
    expect(asks(planOf('', rows)).toSorted()).toEqual(codes);
    const plan = planWith(
      [
        { field: 'isolated', value: 'yes' },
        { field: 'system_grounding', value: 'solid', kinds: ['transformer'] },
      ],
      '',
      rows,
    );
    expect(asks(plan)).toEqual([]);
    expect(settledOf(plan)).toEqual([
      'isolated yes: X',
      expect.stringMatching(/^system_grounding solid: .*X/),
    ]);
    expect(asked(plan, 'system_grounding')).not.toMatch(/\bX\b/);
  });
});

describe('what a company settled doesn’t count', () => {
  const entry: Entry = { field: 'outdoors', value: 'yes', kinds: ['load'], occupancy: 'other' };
  const rows = 'L load; ac_in=120; protect=yes; place=A';
  const outdoorsOf = (plan: EnglishPlan): boolean | undefined =>
    plan.site.equipments.find((e) => e.tag === 'L')?.outdoors;

  it.each([
    ['for its kind and occupancy it does', entry, 'occupancy=other', rows, true, ['outdoors yes: L']],
    ['for another kind', { ...entry, kinds: ['panel'] }, 'occupancy=other', rows, false, []],
    ['for another occupancy', entry, 'occupancy=dwelling', rows, false, []],
    ['where the list states it otherwise', entry, 'occupancy=other', `${rows}; outdoors=no`, false, []],
    [
      'where the list states the same: then the list says so',
      entry,
      'occupancy=other',
      `${rows}; outdoors=yes`,
      true,
      [],
    ],
    ['where the cell can’t be read', entry, 'occupancy=other', `${rows}; outdoors=perhaps`, false, []],
  ] as const)('%s', (_, settled, facts, list, outdoors, named) => {
    const plan = planWith([settled], facts, list);
    expect(outdoorsOf(plan)).toBe(outdoors);
    expect(settledOf(plan)).toEqual(named);
  });

  it('where the library states it', () => {
    const library = 'maker,model,kind,outdoors\nInvented,M1,load,no\n';
    const plan = planWith([entry], 'occupancy=other', `${rows}; maker=Invented; model=M1`, library);
    expect(outdoorsOf(plan)).toBe(false);
    expect(settledOf(plan)).toEqual([]);
  });

  it('where a fact of the job is stated', () => {
    const plan = planWith([{ field: 'occupancy', value: 'other' }], 'occupancy=sleeping', SITE);
    expect(plan.occupancy).toBe('sleeping');
    expect(settledOf(plan)).toEqual([]);
  });

  it('for a grid-tie inverter that doesn’t say whether it isolates', () => {
    const list =
      'A array; open_circuit_voltage=300; connects_to=G; run_length=3 m; place=H\nG grid-tie-inverter; dc_inputs=1; ac_out=240; place=H';
    const plan = planWith([{ field: 'isolated', value: 'yes' }], '', list);
    expect(one(plan, 'G:dc-in-1').required).toEqual(one(planOf('', list), 'G:dc-in-1').required);
    expect(settledOf(plan)).toEqual([]);
  });

  it('for a disconnect that is only passed through', () => {
    const list =
      'S service; ac_in=120/240; place=A\nD disconnect; connects_to=S; run_length=1 m; place=A\nP panel; connects_to=D; run_length=1 m; place=A';
    const plan = planWith([{ field: 'worth_protecting', value: 'yes' }], '', list);
    expect(items(plan, 'place/passes-through')).toEqual([]);
  });

  it('against what another row states of the same bus', () => {
    const rows2 =
      'S service; ac_in=480Y/277; system_grounding=impedance; place=A\nP panel; connects_to=S; run_length=9 m; place=B';
    const plan = planWith([{ field: 'system_grounding', value: 'solid' }], '', rows2);
    expect(plan.protectors.length).toBeGreaterThan(0);
    expect(plan.protectors.map((p) => p.required.mcov)).toEqual(
      planOf('', rows2).protectors.map((p) => p.required.mcov),
    );
    expect(settledOf(plan)).toEqual([]);
  });

  it('against what another row states of the same pair of conductors', () => {
    const list = `A1 array; connects_to=C/1; run_length=3 m; open_circuit_voltage=90; dc_grounding=positive; place=H
       A2 array; connects_to=C/1; run_length=3 m; open_circuit_voltage=90; place=H
       C charge-controller; dc_inputs=1; place=H`;
    const plan = planWith([{ field: 'dc_grounding', value: 'floating', kinds: ['array'] }], '', list);
    expect(lightsOf(plan, 'C:dc-in-1', 'positive')).toEqual(
      lightsOf(planOf('', list), 'C:dc-in-1', 'positive'),
    );
    expect(faults(plan)).toEqual(faults(planOf('', list)));
    expect(settledOf(plan)).toEqual([]);
  });

  it('for a kind whose default is the other one, unless it names that kind', () => {
    const list =
      'A array; open_circuit_voltage=90; connects_to=C; run_length=40 m; place=H\nC charge-controller; dc_inputs=1; place=H';
    const outdoors = (kinds: readonly string[]): boolean | undefined =>
      planWith([{ field: 'outdoors', value: 'no', kinds }], '', list).site.equipments.find(
        (e) => e.tag === 'A',
      )?.outdoors;
    expect([outdoors([]), outdoors(['array'])]).toEqual([true, false]);
    const service =
      'S service; ac_in=208Y/120; place=A\nP panel; connects_to=S; run_length=9 m; place=B; protect=yes';
    const link = (value: string): readonly string[] =>
      settledOf(planWith([{ field: 'n_pe_link', value }], '', service));
    expect([link('yes'), link('no')]).toEqual([['n_pe_link yes: S'], ['n_pe_link no: P']]);
  });

  it.each([
    [
      'a battery of 400 V',
      'B battery; battery_voltage=400; cells=112; battery_chemistry=lfp; protect=yes; place=H',
      'B:battery',
    ],
    [
      'an array on a grid-tie inverter',
      'B array; open_circuit_voltage=300; connects_to=G; run_length=3 m; place=H\nG grid-tie-inverter; dc_inputs=1; ac_out=240; place=H',
      'G:dc-in-1',
    ],
  ])('as a grounded pole for %s, which floats by default', (_, list, port) => {
    const plan = planWith([{ field: 'dc_grounding', value: 'negative' }], '', list);
    expect(lightsOf(plan, port, 'negative').join(' ')).toContain('either');
    expect(asked(plan, 'dc_grounding')).toContain('taken as floating');
    expect(settledOf(plan)).toEqual([]);
  });

  it.each(['480 delta', '240 delta'])(
    'as solid for %s, which has no neutral: rated as ungrounded, and asked',
    (system) => {
      const list = `S service; ac_in=${system}; place=A`;
      const plan = planWith([{ field: 'system_grounding', value: 'solid' }], '', list);
      expect(one(plan, 'S:service').required).toEqual(one(planOf('', list), 'S:service').required);
      expect(asked(plan, 'system_grounding')).toContain('taken as none');
      expect(settledOf(plan)).toEqual([]);
    },
  );

  it('for a panel behind a meter pole: it is where people live', () => {
    const list =
      'S service; ac_in=120/240; outdoors=yes; place=Pole\nP panel; connects_to=S; run_length=30 m; place=House / hall';
    const plan = planWith([{ field: 'building_occupancy', value: 'other' }], 'occupancy=dwelling', list);
    expect(rulesAt(plan, 'P:feeder')).toEqual(rulesAt(planOf('occupancy=dwelling', list), 'P:feeder'));
    expect(asked(plan, 'building_occupancy')).toContain('P');
    expect(settledOf(plan)).toEqual([]);
  });
});

describe('a value that differs from the default', () => {
  it('is used as if the list said so, with the setting as its origin', () => {
    const plan = planWith(
      [{ field: 'worth_protecting', value: 'no', kinds: ['load'] }],
      '',
      'S service; ac_in=120/240; place=A\nL load; connects_to=S; run_length=60 m; ac_in=120; outdoors=yes; place=B',
    );
    expect(one(plan, 'S:service')).toBeDefined();
    expect(plan.protectors.some((p) => p.ports.some((port) => port.equipment === 'L'))).toBe(false);
    expect(settledOf(plan)).toEqual(['worth_protecting no: L']);
    const facts = plan.site.equipments.find((e) => e.tag === 'L')?.facts;
    expect(facts?.find(({ field }) => field === 'worth_protecting')).toMatchObject({
      value: false,
      origin: { from: 'setting', name: 'settled' },
    });
  });

  it.each([
    ['system_grounding', 'none', 'S', 'P:feeder'],
    ['system_grounding', 'corner', 'S', 'P:feeder'],
  ])('%s %s rates as if the service stated it', (field, value, tag, port) => {
    const list = (own: string): string =>
      `${tag} service; ac_in=240 delta; place=A${own}\nP panel; connects_to=S; run_length=9 m; place=B; protect=yes`;
    const plan = planWith([{ field, value }], '', list(''));
    const stated = planOf('', list(`; ${field}=${value}`));
    expect(one(plan, port).required).toEqual(one(stated, port).required);
    expect(lightsOf(plan, port, 'L2')).toEqual(lightsOf(stated, port, 'L2'));
    expect(settledOf(plan)).toEqual([`${field} ${value}: P S`]);
    expect(defaultsOf(plan, field)).toEqual([]);
  });

  it('a grounding of DC conductors shows in their lights', () => {
    const list =
      'A array; open_circuit_voltage=90; connects_to=C; run_length=3 m; place=H\nC charge-controller; dc_inputs=1; place=H';
    const plan = planWith([{ field: 'dc_grounding', value: 'positive', kinds: ['array'] }], '', list);
    const stated = planOf('', list.replace('A array;', 'A array; dc_grounding=positive;'));
    expect(lightsOf(plan, 'C:dc-in-1', 'positive')).toEqual(lightsOf(stated, 'C:dc-in-1', 'positive'));
    expect(settledOf(plan)).toEqual(['dc_grounding positive: A']);
  });

  it('a link of N at a panel leaves it without a channel of its own', () => {
    const list =
      'S service; ac_in=208Y/120; place=A; system_grounding=solid\nP panel; connects_to=S; run_length=9 m; place=B; protect=yes';
    const plan = planWith([{ field: 'n_pe_link', value: 'yes', kinds: ['panel'] }], '', list);
    const stated = planOf('', `${list}; n_pe_link=yes`);
    expect(conductorsAt(plan, 'P:feeder')).toEqual(conductorsAt(stated, 'P:feeder'));
    expect(settledOf(plan)).toEqual(['n_pe_link yes: P']);
    expect(asked(plan, 'n_pe_link')).not.toMatch(/\bP\b/);
  });

  it('a link of N means nothing under TT, where it is at the utility’s transformer', () => {
    const list = 'S service; ac_in=400Y/230; place=A';
    const plan = planWith([{ field: 'n_pe_link', value: 'yes' }], 'basis=iec; earthing=TT', list);
    expect(conductorsAt(plan, 'S:service')).toEqual(
      conductorsAt(planOf('basis=iec; earthing=TT', list), 'S:service'),
    );
    expect(settledOf(plan)).toEqual([]);
  });

  it('a withstand is held against parts, where an assumed one only ranks them', () => {
    const list = 'L load; ac_in=120; protect=yes; place=A';
    const plan = planWith([{ field: 'impulse_withstand', value: 500 }], '', list);
    expect(faults(plan)).toEqual(['choose/none-fits']);
    expect(faults(planOf('', list))).toEqual([]);
    expect(settledOf(plan)).toEqual(['impulse_withstand 500 V: L']);
    expect(asked(plan, 'impulse_withstand')).toBe('');
  });

  it('the basis and the earthing of all jobs', () => {
    const plan = planWith(
      [
        { field: 'basis', value: 'iec' },
        { field: 'earthing', value: 'TT' },
      ],
      '',
      'S service; ac_in=230; place=A',
    );
    expect([plan.basis, plan.earthing]).toEqual(['iec', 'TT']);
    expect(settledOf(plan)).toEqual(['basis iec:', 'earthing TT:']);
    expect(plan.openItems.filter((i) => ['basis', 'earthing'].includes(i.column))).toEqual([]);
  });

  it('a flash density, in place of one that nobody knows', () => {
    const plan = planWith([{ field: 'flash_density', value: 2 }], '', 'S service; ac_in=120/240; place=A');
    expect(asked(plan, 'flash_density')).toBe('');
    expect(settledOf(plan)).toEqual(['flash_density 2:']);
    expect(plan.siteCalculations.length).toBeGreaterThan(0);
  });

  it('an occupancy settled for all jobs says for which of them the others are settled', () => {
    const entries = [
      { field: 'occupancy', value: 'other' },
      { field: 'lightning_protection', value: 'none', occupancy: 'other' },
    ];
    const list = 'S service; ac_in=120/240; place=A';
    expect(settledOf(planWith(entries, '', list))).toEqual([
      'occupancy other:',
      'lightning_protection none:',
    ]);
    expect(settledOf(planWith(entries, 'occupancy=dwelling', list))).toEqual([]);
  });
});
