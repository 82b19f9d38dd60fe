import { describe, expect, it } from 'vitest';
import { at, because, faults, items, one, planOf, rulesAt } from './plan-of.js';
import type { EnglishPlan } from '../in-english.js';

// rules.md section 1 and what section 5 says of it, of the kinds that came with the trade's lists. Cases are our own.

const PULSES = /carries switched pulses/;
const why = (plan: EnglishPlan, where: string): string =>
  because(plan, where)
    .map((n) => n.because)
    .join('; ');

describe('a pump drive', () => {
  const rows = (motor = '', drive = 'max_dc_voltage=800'): string =>
    `DRV pump-drive; ${drive}; place=Shed
     A array; connects_to=DRV; run_length=40 m; open_circuit_voltage=500; isc_stc=9; strings_in_parallel=1; place=Field
     PUMP load; connects_to=DRV; place=Well; outdoors=yes${motor}`;

  it('has one at its DC input, and none on what it gives its motor: its maker is asked', () => {
    const plan = planOf('', rows('; run_length=128 m'));
    expect(rulesAt(plan, 'DRV:dc-in-1')).toContain('place/dc-input');
    for (const where of ['DRV:ac-out', 'PUMP:feeder']) {
      expect(at(plan, where), where).toEqual([]);
      expect(why(plan, where)).toMatch(PULSES);
    }
    expect(items(plan, 'place/drive-output').map((i) => [i.severity, i.equipment, i.who])).toEqual([
      ['confirm', 'DRV', 'maker'],
    ]);
  });

  it('isn’t asked for the length of its motor’s cable', () => {
    expect(items(planOf('', rows()), 'fact/run-length')).toEqual([]);
  });

  it('is a conflict where the list asks for one at the motor, and none where it waives one', () => {
    const asked = planOf('', rows('; run_length=9 m; protect=yes'));
    expect(faults(asked)).toContain('place/asked-at-motor');
    expect(at(asked, 'PUMP:feeder')).toEqual([]);
    expect(faults(planOf('', rows('; run_length=9 m; protect=no')))).not.toContain('place/asked-at-motor');
  });

  it('has its main port at the DC input, or at AC in where it has no other', () => {
    const dc = planOf('', rows('; run_length=9 m', 'max_dc_voltage=800; protect=yes'));
    expect(rulesAt(dc, 'DRV:dc-in-1')).toContain('place/asked');
    const ac = planOf(
      '',
      `SVC service; ac_in=240; place=House
       DRV pump-drive; ac_in=240; connects_to=SVC; run_length=5 m; place=House; protect=yes
       PUMP load; connects_to=DRV; run_length=5 m; place=House`,
    );
    expect(rulesAt(ac, 'DRV:ac-in')).toEqual(['place/asked']);
    expect(at(ac, 'DRV:ac-out')).toEqual([]);
  });
});

describe('a cable to a DC load or panel', () => {
  const rows = (load: string): string =>
    `BAT battery; battery_voltage=48; battery_chemistry=lfp; place=Hut / floor
     DP dc-panel; connects_to=BAT; run_length=2 m; place=Hut / floor
     RADIO dc-load; connects_to=DP; ${load}`;

  it('that leaves the room asks for one at the panel that it hangs on alone', () => {
    const plan = planOf('', rows('run_length=6 m; place=Hut / attic'));
    expect(rulesAt(plan, 'DP:dc-in')).toEqual(['place/battery']);
    for (const where of ['BAT:battery', 'RADIO:dc-in']) expect(at(plan, where), where).toEqual([]);
    expect(one(plan, 'DP:dc-in').required.mcov).toBeCloseTo(58.4, 2);
  });

  it('that stays there asks for none', () => {
    const plan = planOf('', rows('run_length=6 m; place=Hut / floor'));
    expect(plan.protectors).toEqual([]);
  });

  it('asks at the battery where the load hangs on that', () => {
    const plan = planOf(
      '',
      `BAT battery; battery_voltage=48; battery_chemistry=lfp; place=Hut / floor
       RADIO dc-load; connects_to=BAT; run_length=6 m; place=Hut / attic`,
    );
    expect(rulesAt(plan, 'BAT:battery')).toEqual(['place/battery']);
    expect(at(plan, 'RADIO:dc-in')).toEqual([]);
  });

  it('to a radio on a mast, on a long run: both ends', () => {
    const plan = planOf('', rows('run_length=45 m; place=Mast; outdoors=yes'));
    expect(rulesAt(plan, 'DP:dc-in')).toEqual(['place/battery', 'place/long-run']);
    expect(rulesAt(plan, 'RADIO:dc-in')).toEqual(['place/long-run']);
  });

  it('protect yes stands at the load’s own port', () => {
    const plan = planOf('', rows('run_length=1 m; place=Hut / floor; protect=yes'));
    expect(plan.protectors.flatMap((p) => p.ports.map((o) => `${o.equipment}:${o.port}`))).toEqual([
      'RADIO:dc-in',
    ]);
  });
});

describe('a diversion load', () => {
  const rows = (more = ''): string =>
    `CC charge-controller; dc_inputs=1; max_dc_voltage=150; place=Hut
     A array; connects_to=CC; run_length=4 m; open_circuit_voltage=100; isc_stc=9; strings_in_parallel=1
     BAT battery; battery_voltage=48; battery_chemistry=lfp; connects_to=CC; run_length=1 m; place=Hut
     HEAT diversion-load; connects_to=BAT; place=Yard; outdoors=yes${more}`;

  it('is bare on a long run, with its reason, and its length isn’t asked for', () => {
    const plan = planOf('', rows('; run_length=60 m'));
    expect(at(plan, 'HEAT:dc-in')).toEqual([]);
    expect(why(plan, 'HEAT:dc-in')).toMatch(/nobody need protect/);
    expect(items(planOf('', rows()), 'fact/run-length')).toEqual([]);
  });

  it('has one where the list asks', () => {
    expect(rulesAt(planOf('', rows('; run_length=60 m; protect=yes')), 'HEAT:dc-in')).toEqual([
      'place/asked',
      'place/long-run',
    ]);
  });
});

describe('feeders and AC out', () => {
  const dwelling = 'occupancy=dwelling';
  const reasonAt = (plan: EnglishPlan, where: string): string | undefined =>
    one(plan, where).reasons.find((r) => r.rule === 'place/feeder')?.because;

  it('from a transformer and from an AC battery count as feeders', () => {
    const behind = planOf(
      dwelling,
      `SVC service; ac_in=480Y/277; place=House
       T transformer; isolated=yes; ac_in=480Y/277; ac_out=208Y/120; connects_to=SVC; run_length=5 m; place=House
       P panel; ac_in=208Y/120; connects_to=T; run_length=5 m; place=House`,
    );
    expect(reasonAt(behind, 'P:feeder')).toBe(
      'a feeder from T supplies this panel of a dwelling unit (215.18)',
    );
    const battery = planOf(
      dwelling,
      `AB ac-battery; ac_out=120/240; place=House
       P panel; ac_in=120/240; connects_to=AB; run_length=5 m; place=House`,
    );
    expect(reasonAt(battery, 'P:feeder')).toMatch(/^a feeder from AB /);
    expect(rulesAt(battery, 'AB:ac-out')).toEqual(['place/inverter-ac']);
  });

  it('protect yes on a transformer: at its AC out', () => {
    const plan = planOf(
      'occupancy=other',
      `SVC service; ac_in=480Y/277; place=House; protect=no
       T transformer; isolated=yes; ac_in=480Y/277; ac_out=208Y/120; connects_to=SVC; run_length=5 m; place=House; protect=yes`,
    );
    expect(rulesAt(plan, 'T:ac-out')).toEqual(['place/asked']);
    expect(at(plan, 'T:ac-in')).toEqual([]);
    expect(why(plan, 'T:ac-in')).not.toBe('');
  });

  it('pass a disconnect, which has none, whatever the list asks of it', () => {
    const plan = planOf(
      dwelling,
      `SVC service; ac_in=120/240; place=House
       D disconnect; connects_to=SVC; run_length=2 m; place=House; protect=yes
       P panel; ac_in=120/240; connects_to=D; run_length=9 m; place=House`,
    );
    expect(reasonAt(plan, 'P:feeder')).toBe(
      'a feeder from SVC supplies this panel of a dwelling unit (215.18)',
    );
    expect(items(plan, 'place/passes-through').map((i) => [i.severity, i.equipment])).toEqual([
      ['confirm', 'D'],
    ]);
    expect(plan.protectors.some((p) => p.ports.some((o) => o.equipment === 'D'))).toBe(false);
    expect(faults(plan)).not.toContain('place/no-main-port');
  });
});
