import { describe, expect, test } from 'vitest';
import { BASES, isNec } from '../../src/model/editions.js';
import { clause, type ClauseSubject } from '../../src/rules/clauses.js';
import { leadBehindDevice, leadForCurrent } from '../../src/rules/lead-ampacity.js';
import { leadDuty } from '../../src/rules/lead-duty.js';
import { overcurrentAc } from '../../src/rules/wire/overcurrent-ac.js';
import { overcurrentArray } from '../../src/rules/wire/overcurrent-array.js';
import type { OvercurrentDevicePlanned, OvercurrentFacts } from '../../src/rules/overcurrent-facts.js';
import { leadPlace, overcurrentFacts } from '../rules/facts.js';
import { one, planOf, catalogueOf, partLine } from '../plan/plan-of.js';

const NEC = BASES.filter(isNec);

function acDevice(some: Partial<OvercurrentFacts>): OvercurrentDevicePlanned {
  const decision = overcurrentAc.decide(overcurrentFacts(some));
  if (decision.outcome === 'outside') throw new Error('outside');
  return decision.planned;
}

describe('check-values.md section 10: conductors behind overcurrent devices', () => {
  test.each([
    [15, 'copper', '14 AWG'],
    [20, 'copper', '12 AWG'],
    [30, 'copper', '10 AWG'],
    [15, 'aluminium', '12 AWG'],
    [25, 'aluminium', '10 AWG'],
  ] as const)('NEC 240.4(D): %d A: %s %s', (amperes, metal, gauge) => {
    expect(leadBehindDevice(amperes, metal)?.name).toBe(gauge);
    expect(leadBehindDevice(amperes + 0.1, metal)?.name).not.toBe(gauge);
  });

  test.each([
    [40, 'copper', '8 AWG'],
    [55, 'copper', '6 AWG'],
    [70, 'copper', '4 AWG'],
    [35, 'aluminium', '8 AWG'],
    [40, 'aluminium', '6 AWG'],
    [55, 'aluminium', '4 AWG'],
  ] as const)('NEC Table 310.16 at 60 C (value from memory): %d A: %s %s', (amperes, metal, gauge) => {
    expect(leadForCurrent(amperes, metal)?.name).toBe(gauge);
    expect(leadForCurrent(amperes + 0.1, metal)?.name).not.toBe(gauge);
    expect(leadBehindDevice(amperes, metal)?.name).toBe(gauge);
  });

  test('NEC 240.21(B)(1)(1)b exception: leads of listed equipment by its instructions', () => {
    const of = (instructions: string): string | null | undefined => {
      const facts = `channels=2; mcov_ac=150; up=600; overcurrent_a=60; lead_by_instructions=${instructions}`;
      const catalogue = catalogueOf(partLine('OAK', facts));
      return one(planOf('', 'S service; ac_in=120/240', { catalogue }), 'S:service').figures?.smallestLead;
    };
    expect(of('no')).toBe('6 AWG Cu');
    expect(of('yes')).toBe('14 AWG Cu');
  });
});

describe('check-values.md section 10: overcurrent devices', () => {
  const three = { lines: ['L1', 'L2', 'L3'] } as const;
  test('NEC 240.85: a slash rating only on a solidly grounded system; straight on delta, corner, ungrounded, impedance, high leg', () => {
    expect(acDevice({}).straight).toBe(false);
    const asks = (systems: OvercurrentFacts['systems'], highLeg = false): boolean =>
      acDevice({ ...three, systems, highLeg }).straight;
    expect(asks([{ system: '480Y/277', whole: '480Y/277', grounding: 'solid' }])).toBe(false);
    for (const grounding of ['none', 'impedance', 'corner'] as const)
      expect(asks([{ system: '480Y/277', whole: '480Y/277', grounding }])).toBe(true);
    expect(asks([{ system: '480 delta', whole: '480Y/277', grounding: 'solid' }])).toBe(true);
    expect(asks([{ system: '240/120 high-leg', whole: '240/120 high-leg', grounding: 'solid' }], true)).toBe(
      true,
    );
  });

  test('NEC 240.22: no overcurrent device in a grounded conductor', () => {
    const systems = [{ system: '480 delta', whole: '480 delta', grounding: 'corner' }] as const;
    const planned = acDevice({ ...three, groundedConductor: 'L2', systems });
    expect(planned.poles).toBe(2);
    expect(planned.notes.map((note) => note.code)).toContain('overcurrent-note/straight-through');
  });

  test('NEC 690.8(B) (value from memory): 125 % of the current of 690.8(A)', () => {
    const part = { overcurrentMost: 30, overcurrentDevice: null };
    expect(leadDuty(leadPlace({ circuit: 'array', arrayCurrent: 20 }), part)).toEqual({
      of: 'current',
      amperes: 25,
    });
  });

  test('NEC 690.9(A): no device only where all that can reach it is borne', () => {
    const at = (arrayCurrent: number | undefined): string | undefined => {
      const facts = overcurrentFacts({ circuit: 'array', current: 'dc', arrayCurrent });
      const decision = overcurrentArray.decide(facts);
      return decision.outcome === 'device' ? decision.planned.device : undefined;
    };
    expect([at(30), at(30.1), at(undefined)]).toEqual(['none', 'either', 'either']);
  });

  test('NEC 110.14(A): one wire a terminal: a shared housing has a device for each port', () => {
    const catalogue = catalogueOf(
      partLine('OAK', 'channels=2; mcov_ac=150; up=600'),
      partLine('REED', 'channels=2; mcov_dc=75; up=400'),
    );
    const plan = planOf(
      '',
      `S service; ac_in=120
       I inverter-charger; connects_to=S; ac_in=120; ac_out=120
       B battery; connects_to=I; battery_voltage=48; battery_chemistry=lfp`,
      { catalogue },
    );
    const { overcurrent, wiring } = one(plan, 'I:ac-in');
    expect(overcurrent.map(({ port, poles }) => `${port} ${poles}`)).toEqual(['ac-in 1', 'ac-out 1']);
    expect(wiring.notes.join('\n')).toMatch(/device for each port.*ac-in and ac-out.*110\.14\(A\)/);
  });

  test('NEC 230.82(4) (value from memory): what may stand ahead of the disconnect', () => {
    expect(acDevice({ aheadOfDisconnect: true, ownDevice: 15 })).toMatchObject({
      device: 'none',
      because: { code: 'overcurrent/ahead-of-disconnect' },
    });
  });

  test.each([
    ['slash-rating', '240.85', false],
    ['no-device-in-grounded-conductor', '240.22', false],
    ['array-conductors', '690.8(B)', true],
    ['array-overcurrent', '690.9(A)', false],
    ['one-wire-a-terminal', '110.14(A)', false],
    ['ahead-of-service-disconnect', '230.82(4)', true],
    ['small-conductors', '240.4(D)', false],
    ['next-standard-size', '240.4(B)', true],
    ['leads-by-instructions', '240.21(B)(1)(1)b exception', false],
  ] satisfies readonly (readonly [ClauseSubject, string, boolean])[])(
    'the clause about %s is NEC %s in every cycle',
    (subject, number, memory) => {
      for (const basis of NEC) {
        expect(clause(subject, basis)).toMatchObject({ standard: 'NEC (NFPA 70)', clause: number });
        expect(clause(subject, basis)?.sure).toBe(memory ? 'memory' : undefined);
      }
      expect(clause(subject, 'iec')).toBeUndefined();
    },
  );

  test('the table of ampacities is 310.15(B)(16) in 2017 and 310.16 from 2020 on (value from memory)', () => {
    expect(NEC.map((basis) => clause('ampacity', basis)?.clause)).toEqual([
      'Table 310.15(B)(16)',
      'Table 310.16',
      'Table 310.16',
    ]);
  });
});
