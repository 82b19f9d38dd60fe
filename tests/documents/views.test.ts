import { describe, expect, it } from 'vitest';
import { clauseStrip } from '../../src/documents/views/clause-strip.js';
import { records } from '../../src/documents/views/checks.js';
import { statedText } from '../../src/documents/views/site.js';
import { wiringNotes } from '../../src/documents/views/wiring-note.js';
import type { PlannedProtector } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import { channel, equipment, plan, protector, sourceLamps, sunLamps } from './fixtures/builder.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { housePlan, hutPlan } from './fixtures/plans.js';
import { catalogueOf, partLine, planOf } from '../plan/plan-of.js';

const origin = { from: 'list', file: 'list.csv', line: 2, column: 'x' } as const;

describe('a fact as it was typed', () => {
  it.each([
    ['-28', -28, '°C', '-28 °C'],
    ['-18 C', -18, '°C', '-18 °C'],
    ['10', -12.22, '°C', '10, read as -12.22 °C'],
    ['35', 10.67, 'm', '35, read as 10.67 m'],
    ['12 m', 12, 'm', '12 m'],
    ['10', 10000, 'A', '10, read as 10000 A'],
    ['3', 3, '', '3'],
    ['-0.27 %/C', '-0.27 %/C', '', '-0.27 %/C'],
  ])('%s is shown with the unit that it was read in', (text, value, unit, shown) => {
    expect(statedText({ field: 'lowest_temp', text, value, unit, origin })).toBe(shown);
  });
});

describe('the commissioning record', () => {
  it('takes what the list states, with its unit, and leaves the rest to be filled in', () => {
    const fact = { text: '10', value: 10000, unit: 'A', origin, field: 'fault_current' } as const;
    const base = hutPlan();
    const [first, ...others] = base.site.equipments;
    if (first === undefined) throw new Error('the hut has equipment');
    const of = {
      ...base,
      site: { ...base.site, equipments: [{ ...first, facts: [fact] }, ...others] },
      protectors: [
        protector({ tag: 'P-1', ports: [{ equipment: first.tag, port: 'output' }], serial: 'S-7' }),
      ],
    };
    expect(records(of)[0]).toMatchObject({
      serial: { value: 'S-7', toFillIn: false },
      leadLength: { value: '', toFillIn: true },
      faultCurrent: { value: '10 kA on the list', toFillIn: false },
    });
  });
});

describe('a channel that doubles a conductor', () => {
  const wiringOf = (conductors: readonly string[]): PlannedProtector['wiring'] => ({
    ...protector({ tag: 'P-1', ports: [] }).wiring,
    measurements: conductors.map((conductor) => ({
      conductor,
      current: 'ac',
      expected: `about 80 V at ${conductor}`,
      stopAt: 150,
    })),
  });

  function note(measured: readonly string[]): readonly string[] {
    const channels = ['L3', 'L1 (doubled)'].map((c, i) => channel(i + 1, c, 'black', sourceLamps));
    const of = plan({
      site: { equipments: [equipment('WT', 'wind-turbine', 'Mast', ['output'])], runs: [] },
      protectors: [
        protector({
          tag: 'P-1',
          ports: [{ equipment: 'WT', port: 'output' }],
          channels,
          wiring: wiringOf(measured),
        }),
      ],
    });
    const [first] = wiringNotes(of, defaultSettings(), 'letter');
    return first?.channels.map((c) => `${c.expected} | ${c.stopAt}`) ?? [];
  }

  it('is measured as its conductor', () => {
    expect(note(['L3', 'L1'])).toEqual(['about 80 V at L3 (AC) | 150 V', 'about 80 V at L1 (AC) | 150 V']);
  });

  it('is not to be connected where the plan has no figure for it', () => {
    expect(note(['L3'])[1]).toContain('do not connect');
  });
});

describe('the setting of a wiring note', () => {
  it('is closer only for notes that would not keep to their page', () => {
    const settings = defaultSettings();
    const density = (tag: string, note: string): string | undefined =>
      wiringNotes(demoPlans().find((p) => p.job === tag) ?? housePlan(), settings, 'letter').find(
        (n) => n.tag === note,
      )?.density;
    // Three reasons, three channels and no part: the highest note of the demo.
    expect(density('UF-110', 'P-2')).toBe('dense');
    expect(density('UF-110', 'P-1')).toBe('usual');
  });
});

describe('the strip of clauses', () => {
  it('names for a rule of lights the protectors alone that have such lights', () => {
    const clause = {
      standard: '',
      edition: '',
      clause: '',
      says: 'Look in daylight.',
      commonPractice: true,
      memory: false,
    };
    const of = plan({
      protectors: [
        protector({ tag: 'P-1', ports: [], channels: [channel(1, 'positive', 'red', sunLamps)] }),
        protector({ tag: 'P-2', ports: [], channels: [channel(1, 'L1', 'black', sourceLamps)] }),
      ],
      clauses: [
        { ...clause, rule: 'indicate/array-pole', title: 'The light of a pole' },
        { ...clause, rule: 'indicate/grounded-system-line', title: 'The light of a line' },
        { ...clause, rule: 'indicate/turbine-phase', title: 'The light of a phase' },
      ],
    });
    expect(clauseStrip(of).map((row) => row.standing)).toEqual([
      ['met at P-1'],
      ['met at P-2'],
      ['no protector rests on it here'],
    ]);
  });

  const AC = 'SVC service; ac_in=120/240; place=House';
  const CATALOGUE = catalogueOf(
    partLine('FIT', 'channels=2; mcov_ac=150; up=600'),
    partLine('LOW', 'channels=2; mcov_ac=120; up=600'),
  );
  const standings = (row: string): Record<string, string[]> =>
    Object.fromEntries(
      clauseStrip(planOf('occupancy=other', row, { catalogue: CATALOGUE })).map((c) => [c.rule, c.standing]),
    );

  it('calls no short-circuit rating met where the fault current isn’t known', () => {
    expect(standings(`${AC}; fault_current=10 kA`)['rate/short-circuit']).toEqual(['met at P-1']);
    expect(standings(AC)['rate/short-circuit']).toEqual([
      'to confirm at P-1: the available fault current isn’t stated',
    ]);
    expect(standings(AC)['rate/mcov']).toEqual(['met at P-1']);
  });

  it('with iec calls the listing of a part that states no IEC class to be confirmed', () => {
    const listing = (iecClass: string): string[] | undefined =>
      clauseStrip(
        planOf('basis=iec; earthing=TN; occupancy=other', 'S service; ac_in=230; fault_current=6 kA', {
          catalogue: catalogueOf(partLine('X', `channels=1; mcov_ac=275; up=900; iec_class=${iecClass}`)),
        }),
      ).find((c) => c.rule === 'rate/listing')?.standing;
    expect(listing('T2')).toEqual(['met at P-1']);
    expect(listing('')).toEqual(['to confirm at P-1: its part states no IEC class']);
  });

  it('calls no rule met that a part chosen by hand or there already fails, nor one that an unknown part may fail', () => {
    const failing = 'MCOV 120 V < 138 V';
    for (const how of ['protector', 'existing']) {
      const found = standings(`${AC}; fault_current=10 kA; ${how}=LOW`);
      expect(found['rate/mcov']).toEqual([`not met at P-1: ${failing}`]);
      expect(found['rate/ac-voltage']).toEqual([`not met at P-1: ${failing}`]);
      expect(found['rate/discharge']).toEqual(['met at P-1']);
    }
    const unknown = ['to confirm at P-1: the ratings of what is there aren’t known'];
    const found = standings(`${AC}; fault_current=10 kA; existing=old box`);
    expect(found['rate/ac-voltage']).toEqual(unknown);
    expect(found['rate/nominal-current']).toEqual(unknown);
    expect(found['place/service']).toEqual(['met at P-1']);
  });
});
