import { describe, expect, it } from 'vitest';
import {
  at,
  because,
  conductorsAt,
  faults,
  items,
  lightsOf,
  one,
  planOf,
  rulesAt,
  strengthAt,
} from './plan-of.js';

// rules.md section 5, question by question, where no other file of this folder has it. Cases are our own.

describe('turbines', () => {
  it('output of a turbine blank: missing', () => {
    const plan = planOf(
      '',
      'W wind-turbine; open_circuit_voltage=90; connects_to=C; run_length=3 m; place=Tower\nC charge-controller; dc_inputs=1; place=Hut',
    );
    expect(faults(plan)).toEqual(['fact/output']);
  });

  it('an array on an inverter-charger floats by default', () => {
    const plan = planOf(
      '',
      'A array; open_circuit_voltage=90; connects_to=I; run_length=3 m\nI inverter-charger; dc_inputs=1; ac_out=120; place=Hut',
    );
    expect(lightsOf(plan, 'I:dc-in-1', 'positive')).toEqual(['sun: either', 'night: dark']);
  });
});

describe('critical length and risk level', () => {
  const crl = (lines: string): number | undefined =>
    planOf(`basis=iec; earthing=TN; occupancy=dwelling; flash_density=1; ${lines}`, 'S service; ac_in=230')
      .siteCalculations.find((c) => c.title === 'Calculated risk level')
      ?.steps.at(-1)?.value;

  it('CRL’s 1 km is cut from the end of: LV overhead, LV cable, HV overhead, HV cable', () => {
    // 85 / (weights x km): 2, 1, 0.4, 0.2 (cl. 443.5, value from memory).
    expect(crl('lv_overhead_km=0.5; lv_underground_km=0.5; hv_overhead_km=3; hv_underground_km=3')).toBe(
      56.67,
    );
    expect(crl('lv_overhead_km=0; lv_underground_km=0; hv_overhead_km=0.5; hv_underground_km=3')).toBe(
      283.33,
    );
    expect(crl('')).toBe(42.5);
  });
});

describe('the far end', () => {
  it('a run whose row holds nothing worth protecting isn’t asked for its length', () => {
    const plan = planOf(
      '',
      'S service; ac_in=120; place=A\nB load; connects_to=S; ac_in=120; place=B; worth_protecting=no',
    );
    expect(items(plan, 'fact/run-length')).toEqual([]);
    expect(because(plan, 'B:feeder').map((n) => n.rule)).toContain('place/long-run');
  });

  it('place/asked counts as recommended', () => {
    const plan = planOf('', 'B load; ac_in=120; worth_protecting=no; protect=yes');
    expect(strengthAt(plan, 'B:feeder')).toBe('recommended');
    expect(rulesAt(plan, 'B:feeder')).toEqual(['place/asked']);
  });
});

describe('control circuits, generators and batteries', () => {
  it('place/control’s other end is `terminals` of the row that it names, beside that row’s other ports', () => {
    const plan = planOf(
      '',
      'G generator; ac_out=120; place=Shed\nC control-circuit; connects_to=G; run_length=4 m; control_voltage=12 V dc; place=House',
    );
    expect(plan.site.equipments.find((e) => e.tag === 'G')?.ports).toEqual(['output', 'terminals']);
    expect(rulesAt(plan, 'G:terminals')).toEqual(['place/control']);
    expect(one(plan, 'G:terminals').required).toMatchObject({ current: 'dc', mcov: 16.2 });
  });

  it('protector, serial and lead length of a control circuit count at both its ends', () => {
    const plan = planOf(
      '',
      'G generator; ac_out=120; place=Shed\nC control-circuit; connects_to=G; run_length=4 m; control_voltage=12 V dc; place=House; protector=LARK; serial=S-1; lead_length=0.2 m',
    );
    for (const where of ['G:terminals', 'C:terminals']) {
      expect(one(plan, where)).toMatchObject({ part: 'LARK', byHand: true, serial: 'S-1' });
      expect(one(plan, where).wiring.leadLengthPlanned).toBe(0.2);
    }
  });
});

describe('corner grounding', () => {
  it('the corner-grounded phase is L2 and gets a channel like the others, dark', () => {
    const plan = planOf('', 'S service; ac_in=240 delta; system_grounding=corner');
    expect(conductorsAt(plan, 'S:service')).toEqual(['L1', 'L2', 'L3']);
    expect(lightsOf(plan, 'S:service', 'L2')).toEqual(['always: dark']);
  });
});

describe('type 3', () => {
  it('never stands in for 1 or 2 with nec, on DC neither', () => {
    const catalogue =
      'part,channels,mcov_dc,up,up_basis,in_ka,sccr_dc_ka,type,listing,enclosure\nX,2,150,600,VPR,10,20,3,invented,4X\n';
    const row = 'A array; open_circuit_voltage=100; protect=yes';
    expect(one(planOf('', row, { catalogue }), 'A:output').part).toBeNull();
    expect(at(planOf('basis=iec; earthing=TN', row, { catalogue }), 'A:output')[0]?.part).toBe('X');
  });
});
