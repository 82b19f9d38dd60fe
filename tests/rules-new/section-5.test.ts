import { describe, expect, it } from 'vitest';
import {
  allPorts,
  at,
  because,
  catalogueOf,
  conductorsAt,
  defaultsOf,
  faults,
  items,
  lightsOf,
  one,
  partLine,
  planOf,
  rulesAt,
  strengthAt,
} from '../plan/plan-of.js';

// rules.md section 5, bullet by bullet from "Type 3 never stands in": of each a case that fires and one that doesn't, through whole
// plans. What is about rating (reach, Table F.1, In, class T1 on DC, MCOV class) stands with the rules that rate.

const wide = (n: number, more = ''): string =>
  catalogueOf(
    partLine(`A${n}`, `channels=${n}; mcov_ac=640; up=900; listed_for=ungrounded|impedance|corner${more}`),
  );
const noted = (plan: ReturnType<typeof planOf>, code: string): readonly string[] =>
  items(plan, code).map((i) => `${i.severity} ${i.equipment}.${i.column}`);

describe('type 3 never stands in for type 1 or 2', () => {
  const part = (type: string, more = ''): string =>
    catalogueOf(partLine('P', `channels=4; mcov_ac=640; up=900; type=${type}; connection=to-ground${more}`));
  const nec = 'S service; ac_in=208Y/120; outdoors=no';

  it('nec asks a UL type: 1 or 2 fits, 3 does not', () => {
    expect(one(planOf('', nec, { catalogue: part('2') }), 'S:service').part).toBe('P');
    const third = planOf('', nec, { catalogue: part('3') });
    expect(one(third, 'S:service').part).toBeNull();
    expect(faults(third)).toContain('choose/none-fits');
  });

  it('iec asks a class, whatever the UL type', () => {
    const iec = 'S service; ac_in=400Y/230; outdoors=no';
    const facts = 'basis=iec; earthing=TN; lightning_protection=isolated';
    expect(
      one(planOf(facts, iec, { catalogue: part('3', '; iec_class=T1; iimp_ka=25') }), 'S:service').part,
    ).toBe('P');
    expect(
      one(planOf(facts, iec, { catalogue: part('1', '; iec_class=T2; iimp_ka=25') }), 'S:service').part,
    ).toBeNull();
  });
});

describe('the ports of an inverter', () => {
  const rows = (
    third: string,
  ): string => `I inverter-charger; ac_in=120; ac_in_2=${third}; ac_out=120; place=Hut
     G generator; connects_to=I; ac_out=120; place=Hut; run_length=2 m
     H generator; connects_to=I; ac_out=120; place=Hut; run_length=2 m`;
  const shared = (n: number, third = '120', facts = ''): readonly string[] =>
    one(planOf(facts, rows(third), { catalogue: wide(n) }), 'I:ac-in').ports.map((p) => p.port);

  it('AC in 2 shares too where all conductors fit', () => {
    expect(shared(3)).toEqual(['ac-in', 'ac-in-2', 'ac-out']);
    expect(shared(2)).toEqual(['ac-in', 'ac-out']);
  });

  it('they share only if N fits too, where section 3 asks for it', () => {
    const iec = 'I inverter-charger; ac_in=230; ac_out=230';
    const ports = (n: number): readonly string[] =>
      one(planOf('basis=iec; earthing=TN', iec, { catalogue: wide(n) }), 'I:ac-in').ports.map((p) => p.port);
    expect(ports(4)).toEqual(['ac-in', 'ac-out']);
    expect(ports(2)).toEqual(['ac-in']);
  });

  it('spare channels: the N of each port first, then a doubled L1', () => {
    const wired = (n: number): readonly string[] =>
      conductorsAt(
        planOf('', 'I inverter-charger; ac_in=120; ac_out=120', { catalogue: wide(n) }),
        'I:ac-in',
      );
    expect(wired(4)).toEqual(['ac-in L1', 'ac-out L1', 'ac-in N', 'ac-out N']);
    expect(wired(5).at(-1)).toBe('ac-in L1 (doubled)');
    expect(wired(2)).toEqual(['ac-in L1', 'ac-out L1']);
  });
});

describe('a service outdoors', () => {
  const site = (indoors: string): string => `S service; ac_in=120/240; outdoors=yes; place=Pole
     M disconnect; connects_to=S; place=Pole; outdoors=yes; description=meter
     ${indoors}
     P panel; connects_to=M; ac_in=120/240; place=House / hall; run_length=40 m`;

  it('with nothing indoors in its building is no building of its own: what it feeds has the job’s occupancy, confirm', () => {
    const plan = planOf('occupancy=dwelling', site(''));
    expect(strengthAt(plan, 'P:feeder')).toBe('required');
    expect(defaultsOf(plan, 'building_occupancy').join()).toMatch(
      /^building_occupancy isn’t stated for P: taken as dwelling/,
    );
  });

  it('with a panel indoors it is one: what another building holds is its own', () => {
    const plan = planOf(
      'occupancy=dwelling',
      site('Q panel; connects_to=S; ac_in=120/240; place=Pole / hut; run_length=2 m; outdoors=no'),
    );
    expect(rulesAt(plan, 'P:feeder')).not.toContain('place/feeder');
    expect(defaultsOf(plan, 'building_occupancy').join()).not.toMatch(/taken as dwelling/);
  });
});

describe('terminals at the other end of a control circuit', () => {
  const rows = (circuit: string, other: string): string => `G generator; ac_out=120/240; place=Shed${other}
     K control-circuit; connects_to=G; control_voltage=24 V dc; place=House; run_length=40 m${circuit}`;

  it('belong to the control circuit: its protect counts there', () => {
    expect(at(planOf('', rows('', '')), 'G:terminals')).toHaveLength(1);
    expect(at(planOf('', rows('; protect=no', '')), 'G:terminals')).toHaveLength(0);
  });

  it('not that of the row it connects to', () => {
    expect(at(planOf('', rows('', '; protect=no')), 'G:terminals')).toHaveLength(1);
    expect(at(planOf('', rows('; protect=no', '; protect=yes')), 'G:terminals')).toHaveLength(0);
  });
});

describe('earthing that contradicts the system', () => {
  it('TT with a system that has no N: conflict', () => {
    const tt = (system: string): readonly string[] =>
      noted(
        planOf('basis=iec; earthing=TT', `L load; ac_in=${system}; protect=yes`),
        'rate/no-neutral-in-tt',
      );
    expect(tt('480 delta')).toHaveLength(1);
    expect(tt('400Y/230')).toEqual([]);
  });

  it('IT with n_pe_link yes: conflict', () => {
    const it = (link: string, earthing = 'IT'): readonly string[] =>
      noted(planOf(`basis=iec; earthing=${earthing}`, `S service; ac_in=400Y/230${link}`), 'rate/link-in-it');
    expect(it('; n_pe_link=yes')).toHaveLength(1);
    expect(it('; n_pe_link=no')).toEqual([]);
    expect(it('; n_pe_link=yes', 'TN')).toEqual([]);
  });

  it('a row’s stated dc_grounding counts at its own port, whatever input it was given by order', () => {
    const rows = (of: string): string => `X charge-controller; dc_inputs=2; place=Hut
       A array; connects_to=X; run_length=40 m; open_circuit_voltage=120${of}
       B array; connects_to=X; run_length=40 m; open_circuit_voltage=120`;
    expect(lightsOf(planOf('', rows('; dc_grounding=positive')), 'A:output', 'positive')[0]).toBe(
      'always: dark',
    );
    expect(lightsOf(planOf('', rows('')), 'A:output', 'positive')[0]).toBe('sun: lit');
  });
});

describe('what passes a connection through', () => {
  const rows = (box: string): string => `S service; ac_in=120/240; place=House
     D disconnect; connects_to=S; run_length=20 m${box}
     L load; connects_to=D; ac_in=120/240; place=House / hall; outdoors=no; run_length=20 m`;

  it('its place and outdoors count for the run, not for a port of its own', () => {
    const out = planOf('', rows('; place=Yard; outdoors=yes'));
    expect(rulesAt(out, 'L:feeder')).toContain('place/long-run');
    expect(out.protectors.flatMap((p) => p.ports.map((o) => o.equipment))).not.toContain('D');
    expect(one(out, 'L:feeder').outdoors).toBe(false);
  });

  it.each(['disconnect', 'transfer-switch'])(
    'worth_protecting and protect of a %s: nothing to do, confirm',
    (kind) => {
      const plan = (more: string): ReturnType<typeof planOf> =>
        planOf(
          '',
          `S service; ac_in=120/240; place=House\nD ${kind}; connects_to=S; place=House${more}\nL load; connects_to=D; ac_in=120/240; place=House`,
        );
      for (const more of ['; protect=yes', '; worth_protecting=no']) {
        expect(noted(plan(more), 'place/passes-through')).toHaveLength(1);
        expect(at(plan(more), 'L:feeder')).toEqual([]);
      }
      expect(noted(plan(''), 'place/passes-through')).toEqual([]);
    },
  );
});

describe('place/asked', () => {
  const dc = (
    panel: string,
    load: string,
  ): string => `B battery; battery_voltage=48; battery_chemistry=lfp; place=Hut
     D dc-panel; connects_to=B; place=Hut; run_length=1 m${panel}
     R dc-load; connects_to=D; place=Hut; run_length=1 m${load}`;

  it('at a transformer: ac-out', () => {
    const rows = (asked: string): string => `S service; ac_in=480Y/277; place=Works
       T transformer; connects_to=S; ac_in=480Y/277; ac_out=208Y/120; isolated=yes; place=Works${asked}
       P panel; connects_to=T; ac_in=208Y/120; place=Works`;
    expect(rulesAt(planOf('occupancy=other', rows('; protect=yes')), 'T:ac-out')).toEqual(['place/asked']);
    expect(at(planOf('occupancy=other', rows('; protect=yes')), 'T:ac-in')).toEqual([]);
    expect(at(planOf('occupancy=other', rows('')), 'T:ac-out')).toEqual([]);
  });

  it('at a dc-load and a dc-panel: dc-in', () => {
    expect(rulesAt(planOf('', dc('; protect=yes', '')), 'D:dc-in')).toEqual(['place/asked']);
    expect(rulesAt(planOf('', dc('', '; protect=yes')), 'R:dc-in')).toEqual(['place/asked']);
    expect(at(planOf('', dc('', '')), 'D:dc-in')).toEqual([]);
  });
});

describe('a cable to a DC load or panel', () => {
  const rows = (load: string): string => `B battery; battery_voltage=48; battery_chemistry=lfp; place=Hut
     D dc-panel; connects_to=B; place=Hut; run_length=1 m
     R dc-load; connects_to=D; ${load}`;

  it('that leaves the room asks at what it hangs on; at the load’s end only a long run does', () => {
    const other = planOf('', rows('place=Shed; building=Hut; run_length=4 m'));
    expect(rulesAt(other, 'D:dc-in')).toEqual(['place/battery']);
    expect(at(other, 'R:dc-in')).toEqual([]);
    expect(at(planOf('', rows('place=Hut; run_length=4 m')), 'D:dc-in')).toEqual([]);
  });

  it('outdoors on a run over the limit: both ends', () => {
    const mast = (length: string): ReturnType<typeof planOf> =>
      planOf('', rows(`place=Mast; outdoors=yes; run_length=${length}`));
    expect(rulesAt(mast('120 ft'), 'D:dc-in')).toEqual(['place/battery', 'place/long-run']);
    expect(rulesAt(mast('120 ft'), 'R:dc-in')).toEqual(['place/long-run']);
    expect(at(mast('90 ft'), 'R:dc-in')).toEqual([]);
  });

  it('a diversion load is exempt unless protect is yes', () => {
    const diversion = (
      more: string,
    ): string => `B battery; battery_voltage=48; battery_chemistry=lfp; place=Hut
       C charge-controller; connects_to=B; max_dc_voltage=150; dc_inputs=1; place=Hut
       V diversion-load; connects_to=C; place=Yard; outdoors=yes; run_length=60 m${more}`;
    expect(at(planOf('', diversion('')), 'V:dc-in')).toEqual([]);
    expect(rulesAt(planOf('', diversion('; protect=yes')), 'V:dc-in')).toContain('place/asked');
  });
});

describe('rules that count for kinds of their own', () => {
  it('place/inverter-ac for an AC battery', () => {
    expect(rulesAt(planOf('', 'E ac-battery; ac_out=240; place=House'), 'E:ac-out')).toContain(
      'place/inverter-ac',
    );
    expect(
      rulesAt(planOf('', 'G generator; ac_out=240; place=House; protect=yes'), 'G:output'),
    ).not.toContain('place/inverter-ac');
  });

  it('place/dc-input for the DC input of a pump drive', () => {
    const rows = `A array; connects_to=D; run_length=20 m; open_circuit_voltage=300
       D pump-drive; max_dc_voltage=800; place=Well
       S service; ac_in=480Y/277; place=Well
       E pump-drive; connects_to=S; ac_in=480Y/277; place=Well; run_length=4 m`;
    const plan = planOf('', rows);
    expect(rulesAt(plan, 'D:dc-in-1')).toContain('place/dc-input');
    expect(allPorts(plan)).not.toContain('E:dc-in-1');
  });

  it('place/feeder never for a disconnect', () => {
    const rows = `S service; ac_in=120/240; place=House
       D disconnect; connects_to=S; place=House / porch; run_length=20 m
       P panel; connects_to=D; ac_in=120/240; place=House / hall; run_length=1 m`;
    const plan = planOf('occupancy=dwelling', rows);
    expect(rulesAt(plan, 'P:feeder')).toContain('place/feeder');
    expect(plan.protectors.flatMap((p) => p.ports.map((o) => o.equipment))).not.toContain('D');
  });
});

describe('existing and protector of a row with several ports', () => {
  const rows = (more: string): string =>
    `I inverter-charger; ac_in=120/240; ac_out=120/240; place=House${more}\nG generator; connects_to=I; ac_out=120/240; place=House; run_length=2 m`;

  it('count for each of its placements', () => {
    const there = planOf('', rows('; existing=ALDER-2'));
    for (const port of ['I:ac-in', 'I:ac-out']) expect(one(there, port).existing).toBe('ALDER-2');
    const byHand = planOf('', rows('; protector=ALDER-2'));
    for (const port of ['I:ac-in', 'I:ac-out'])
      expect([one(byHand, port).byHand, one(byHand, port).part]).toEqual([true, 'ALDER-2']);
    expect(one(planOf('', rows('')), 'I:ac-in').existing).toBeNull();
    expect(one(planOf('', rows('')), 'I:ac-in').byHand).toBe(false);
  });
});

describe('grounding of DC', () => {
  const onController = (battery: string, array = ''): readonly string[] =>
    lightsOf(
      planOf(
        '',
        `A array; connects_to=X; run_length=4 m; open_circuit_voltage=120${array}\nX charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut${battery}`,
      ),
      'X:dc-in-1',
      'positive',
    );
  const bat = (more: string): string =>
    `; connects_to=B\nB battery; battery_chemistry=lfp; place=Hut; ${more}`;

  it('an array on a charge controller has that of its battery, unless stated', () => {
    expect(onController(bat('battery_voltage=48; dc_grounding=positive'))[0]).toBe('always: dark');
    expect(onController(bat('battery_voltage=48; dc_grounding=positive'), '; dc_grounding=negative')[0]).toBe(
      'sun: lit',
    );
    expect(onController(bat('battery_voltage=48; dc_grounding=floating'))[0]).toBe('sun: either');
  });

  it('negative where no battery is on the list', () => {
    expect(onController('')[0]).toBe('sun: lit');
  });

  it('of a battery over 60 V nominal: floating', () => {
    const light = (volts: string): readonly string[] =>
      lightsOf(
        planOf('', `B battery; battery_voltage=${volts}; cells=20; battery_chemistry=lfp; protect=yes`),
        'B:battery',
        'negative',
      );
    expect(light('61')).toEqual(['always: either']);
    expect(light('60')).toEqual(['always: dark']);
  });
});

describe('DANGER and WARNING, by the highest voltage of the plan at the box', () => {
  const hazardAt = (rows: string, where: string, facts = ''): string =>
    one(planOf(facts, rows), where).wiring.hazard;
  const battery = (volts: string, chemistry: string, more = ''): string =>
    `B battery; battery_voltage=${volts}; battery_chemistry=${chemistry}; protect=yes; place=Hut${more}`;

  it('a battery bus up to 60 V: arc and burns; above it shock', () => {
    expect(hazardAt(battery('48', 'lfp'), 'B:battery')).toBe('arc');
    expect(hazardAt(battery('12', 'lead-acid'), 'B:battery')).toBe('arc');
    // A lead-acid battery of 48 V is charged at up to 64.8 V.
    expect(hazardAt(battery('48', 'lead-acid'), 'B:battery')).toBe('shock');
  });

  it('an AC system is above 30 V, also where the protector is at the battery port of that box', () => {
    expect(hazardAt('S service; ac_in=120/240', 'S:service')).toBe('shock');
    const inverter = (ac: string): string => `I inverter-charger; ${ac}; place=House
       B battery; connects_to=I; battery_voltage=12; battery_chemistry=lfp; place=Shed; run_length=4 m; building=House`;
    const atBattery = planOf('', inverter('ac_in=unused; ac_out=120'));
    expect(one(atBattery, 'B:battery').wiring.hazard).toBe('arc');
    expect(one(atBattery, 'I:ac-out').wiring.hazard).toBe('shock');
  });

  it('a control circuit at its own end: low voltage; at the box of a generator, or of what nobody knows, shock', () => {
    const circuit = (other: string): string => `${other}
       K control-circuit; connects_to=O; control_voltage=24 V dc; place=Gate; outdoors=yes; run_length=40 m`;
    const generator = circuit('O generator; ac_out=120/240; place=Shed');
    expect(hazardAt(generator, 'K:terminals')).toBe('low-voltage');
    expect(hazardAt(generator, 'O:terminals')).toBe('shock');
    expect(hazardAt(circuit('O other; place=Shed'), 'O:terminals')).toBe('shock');
    expect(
      hazardAt(
        circuit(
          'O dc-load; connects_to=B; place=Shed\nB battery; battery_voltage=12; battery_chemistry=lfp; place=Shed',
        ),
        'O:terminals',
      ),
    ).toBe('arc');
  });

  it('a voltage that isn’t known is taken for a hazardous one', () => {
    expect(hazardAt('A array; protect=yes', 'A:output')).toBe('shock');
    expect(hazardAt('A array; open_circuit_voltage=45; protect=yes', 'A:output')).toBe('low-voltage');
  });
});

describe('impulseWithstand', () => {
  it('is the Uw that clamping was held against: stated, else that of the table, and it says which', () => {
    const of = (more: string): unknown => {
      const { figures } = one(planOf('', `L load; ac_in=120; protect=yes${more}`), 'L:feeder');
      return [
        figures?.impulseWithstand,
        figures?.withstandAssumed,
        figures &&
          (figures.margin ?? 0) ===
            (figures.impulseWithstand ?? 0) - (figures.up ?? 0) - (figures.leadVoltage ?? 0),
      ];
    };
    expect(of('; impulse_withstand=4000')).toEqual([4000, false, true]);
    expect(of('')).toEqual([1500, true, true]);
  });
});

describe('classes of batteries', () => {
  const mcov = (volts: string): number | null =>
    one(planOf('', `B battery; battery_voltage=${volts}; battery_chemistry=lfp; protect=yes`), 'B:battery')
      .required.mcov;

  it.each([
    ['12', 14.6],
    ['12.8', 14.6],
    ['24', 29.2],
    ['25.6', 29.2],
    ['36', 43.8],
    ['38.4', 43.8],
    ['48', 58.4],
    ['51.2', 58.4],
  ])('%s V: 4, 8, 12 or 16 LFP cells of 3.65 V (value from memory)', (volts, highest) => {
    expect(mcov(volts)).toBe(highest);
  });

  it('another nominal has no usual cells', () => {
    expect(mcov('44')).toBeNull();
  });

  it('battery_voltage of a DC load, a DC panel or an inverter is the nominal that it asks for', () => {
    const rows = (load: string): string =>
      `B battery; battery_voltage=48; battery_chemistry=lfp; place=Hut\nR dc-load; connects_to=B; place=Hut; battery_voltage=${load}`;
    expect(faults(planOf('', rows('24')))).not.toEqual([]);
    expect(faults(planOf('', rows('51.2')))).toEqual([]);
  });
});

describe('a generator without transfer equipment', () => {
  const rows = (between: string, to: string): string => `S service; ac_in=120/240; place=House
     P panel; connects_to=S; ac_in=120/240; place=House; run_length=2 m
     ${between}
     G generator; connects_to=${to}; ac_out=120/240; place=House; run_length=2 m`;
  const asked = (between: string, to: string): readonly string[] =>
    noted(planOf('', rows(between, to)), 'fact/transfer-equipment');

  it('missing at its row, looked for through panels and disconnects', () => {
    expect(asked('', 'P')[0]).toMatch(/^missing G/);
    expect(asked('D disconnect; connects_to=P; place=House; run_length=1 m', 'D')[0]).toMatch(/^missing G/);
  });

  it('not through a second AC in of an inverter, nor where there is a transfer switch', () => {
    const inverter =
      'I inverter-charger; connects_to=P; ac_in=120/240; ac_in_2=120/240; ac_out=120/240; place=House; run_length=1 m';
    expect(asked(inverter, 'I')).toEqual([]);
    const behindSwitch = `S service; ac_in=120/240; place=House
       T transfer-switch; connects_to=S; place=House; run_length=1 m
       P panel; connects_to=T; ac_in=120/240; place=House; run_length=2 m
       G generator; connects_to=T; ac_out=120/240; place=House; run_length=2 m`;
    expect(noted(planOf('', behindSwitch), 'fact/transfer-equipment')).toEqual([]);
  });
});

describe('behind a rapid-shutdown box', () => {
  const rows = (
    box: string,
  ): string => `A array; connects_to=${box === '' ? 'X' : 'D'}; run_length=40 m; open_circuit_voltage=300; place=Roof
     ${box}
     X grid-tie-inverter; dc_inputs=1; max_dc_voltage=600; ac_out=240; isolated=yes; place=House`;
  const box = 'D disconnect; connects_to=X; rapid_shutdown=yes; run_length=5 m; place=Roof';
  const light = (more: string, where: string): string | undefined =>
    lightsOf(planOf('', rows(more)), where, 'positive')[0];

  it('means the converter’s side of it; the array’s own output follows the sun', () => {
    expect(light(box, 'X:dc-in-1')).toBe('sun, inverter on: either');
    expect(light(box, 'A:output')).toBe('sun: either');
    expect(light('', 'X:dc-in-1')).toBe('sun: either');
  });
});

describe('rows that say less', () => {
  it('an empty place is that of the first equipment it connects to, through disconnects', () => {
    const rows = (place: string): string => `S service; ac_in=120/240; place=House
       D disconnect; connects_to=S; run_length=1 m; place=Porch
       L load; connects_to=D; ac_in=120/240; run_length=1 m; protect=yes${place}`;
    expect(one(planOf('', rows('')), 'L:feeder').place).toBe('House');
    expect(one(planOf('', rows('; place=Barn')), 'L:feeder').place).toBe('Barn');
  });

  it('as many lengths as targets, or one; else conflict', () => {
    const rows = (
      lengths: string,
    ): string => `I inverter-charger; ac_out=120; place=Hut\nJ inverter-charger; ac_out=120; place=Hut
       B battery; battery_voltage=48; battery_chemistry=lfp; connects_to=I|J; place=Hut; run_length=${lengths}`;
    const at2 = (lengths: string): readonly string[] =>
      planOf('', rows(lengths))
        .openItems.filter((i) => i.column === 'run_length' && i.severity === 'conflict')
        .map((i) => i.code);
    expect(at2('1 m| 2 m| 3 m')).toHaveLength(1);
    expect(at2('1 m| 2 m')).toEqual([]);
    expect(at2('1 m')).toEqual([]);
  });

  it('modules with strings_in_parallel alone: series follows; a product that differs is a conflict', () => {
    const mcov = (more: string): number | null =>
      one(
        planOf(
          'lowest_temp=25 C',
          `A array; voc_stc=40; isc_stc=10; voc_coefficient=-0.3 %/C; ${more}; protect=yes`,
        ),
        'A:output',
      ).required.mcov;
    expect(mcov('modules=12; strings_in_parallel=3')).toBe(160);
    expect(mcov('modules_in_series=3; strings_in_parallel=3')).toBe(120);
    const uneven = planOf(
      'lowest_temp=25 C',
      'A array; voc_stc=40; modules=13; strings_in_parallel=3; protect=yes',
    );
    expect(faults(uneven)).not.toEqual([]);
  });
});

describe('a transformer', () => {
  const rows = (
    feeds: string,
    more = '',
  ): string => `S service; ac_in=480Y/277; place=Works; fault_current=20 kA${feeds === 'S' ? '; connects_to=T' : ''}
     T transformer; ac_in=480Y/277; ac_out=208Y/120; isolated=yes; place=Works${feeds === 'S' ? '' : '; connects_to=S'}${more}
     P panel; connects_to=T; ac_in=208Y/120; place=Works; run_length=1 m; protect=yes`;
  const runs = (plan: ReturnType<typeof planOf>): readonly string[] =>
    plan.site.runs.map((r) => `${r.from.equipment}:${r.from.port}-${r.to.equipment}:${r.to.port}`);

  it('what names it sits on its ac-out, a service feeds its ac-in', () => {
    for (const named of ['S', 'T'])
      expect(runs(planOf('occupancy=other', rows(named)))).toEqual(
        expect.arrayContaining(['S:service-T:ac-in', 'T:ac-out-P:feeder']),
      );
  });

  it('its fault_current, system_grounding and n_pe_link speak of ac-out', () => {
    const stated = planOf(
      'occupancy=other',
      rows('T', '; fault_current=6 kA; system_grounding=impedance; n_pe_link=no'),
    );
    expect(one(stated, 'P:feeder').grounding).toMatch(/impedance/);
    expect(one(stated, 'P:feeder').required.sccr).toBe(6000);
    expect(one(stated, 'S:service').grounding).toMatch(/solid/);
    expect(one(stated, 'S:service').required.sccr).toBe(20_000);
    expect(one(planOf('occupancy=other', rows('T')), 'P:feeder').grounding).toMatch(/solid/);
  });
});

describe('the motor of a drive', () => {
  const rows = (motor: string): string => `S service; ac_in=480Y/277; place=Barn
     D pump-drive; connects_to=S; ac_in=480Y/277; place=Barn; run_length=2 m
     M load; connects_to=D; ac_in=480 delta; place=Well; outdoors=yes${motor}`;

  it('protect yes: conflict; its run’s length isn’t asked', () => {
    expect(faults(planOf('occupancy=other', rows('; protect=yes'))).length).toBeGreaterThan(0);
    expect(faults(planOf('occupancy=other', rows('')))).toEqual([]);
    expect(at(planOf('occupancy=other', rows('')), 'M:feeder')).toEqual([]);
    expect(because(planOf('occupancy=other', rows('')), 'M:feeder')).not.toEqual([]);
  });
});

describe('kinds', () => {
  it('a word of two kinds: missing kind, with its candidates', () => {
    const kind = (word: string): readonly { message: string; hint: string }[] =>
      items(planOf('', `I ${word}; ac_out=120`), 'missing').filter((i) => i.column === 'kind');
    expect(JSON.stringify(kind('inverter'))).toMatch(
      /grid-tie-inverter.*inverter-charger|inverter-charger.*grid-tie-inverter/,
    );
    expect(kind('inverter-charger')).toEqual([]);
  });

  it('a lone `other` is asked about where a source or a load names it, or something hangs on both its sides', () => {
    const asked = (rows: string): readonly string[] =>
      items(planOf('', rows), 'missing')
        .filter((i) => i.column === 'kind')
        .map((i) => i.equipment);
    expect(asked('O other; place=Hut\nA array; connects_to=O; open_circuit_voltage=100')).toEqual(['O']);
    expect(asked('O other; place=Hut')).toEqual([]);
  });

  it('no source on the list means none that names the converter', () => {
    const assumed = (array: string): readonly string[] =>
      noted(
        planOf(
          'lowest_temp=0 C',
          `X charge-controller; dc_inputs=1; max_dc_voltage=150; place=Hut\nY charge-controller; dc_inputs=1; max_dc_voltage=150; place=Hut\n${array}`,
        ),
        'site/inputs-without-source',
      );
    const arrayOn = (x: string): string =>
      `A array; connects_to=${x}; run_length=4 m; open_circuit_voltage=100`;
    expect(
      at(
        planOf(
          '',
          `X charge-controller; dc_inputs=1; max_dc_voltage=150; place=Hut\n${arrayOn('Y')}\nY charge-controller; dc_inputs=1; max_dc_voltage=150; place=Hut`,
        ),
        'X:dc-in-1',
      ),
    ).toHaveLength(1);
    expect(assumed(arrayOn('X'))).not.toEqual(assumed(''));
  });
});

describe('lights and N', () => {
  it('N where it is bonded or in a solid system: dark; where nothing grounds it: either', () => {
    expect(
      lightsOf(planOf('', 'L load; ac_in=120; protect=yes', { catalogue: wide(2) }), 'L:feeder', 'N'),
    ).toEqual(['always: dark']);
    const none = planOf('', 'L load; ac_in=120; protect=yes; system_grounding=none', { catalogue: wide(2) });
    expect(lightsOf(none, 'L:feeder', 'N')).toEqual(['source on: either', 'source off: dark']);
  });

  it('the corner-grounded phase is L2 and has a channel like the others', () => {
    const plan = planOf('', 'S service; ac_in=240 delta; system_grounding=corner', { catalogue: wide(3) });
    expect(conductorsAt(plan, 'S:service')).toEqual(['L1', 'L2', 'L3']);
    expect(lightsOf(plan, 'S:service', 'L2')).toEqual(['always: dark']);
    expect(lightsOf(plan, 'S:service', 'L3')[0]).toBe('utility on: lit');
  });

  it('an array on an inverter-charger floats by default', () => {
    const rows = (of: string): string =>
      `I inverter-charger; dc_inputs=1; max_dc_voltage=400; ac_out=120; place=Hut\nA array; connects_to=I; run_length=4 m; open_circuit_voltage=100${of}`;
    expect(lightsOf(planOf('', rows('')), 'I:dc-in-1', 'negative')[0]).toBe('sun: either');
    expect(lightsOf(planOf('', rows('; dc_grounding=negative')), 'I:dc-in-1', 'negative')[0]).toBe(
      'always: dark',
    );
    expect(defaultsOf(planOf('', rows('')), 'dc_grounding')).not.toEqual([]);
    expect(defaultsOf(planOf('', rows('; dc_grounding=negative')), 'dc_grounding')).toEqual([]);
  });
});

describe('a link from N to ground in a system that isn’t solidly grounded', () => {
  const plan = (grounding: string, link: string): ReturnType<typeof planOf> =>
    planOf('', `S service; ac_in=480Y/277; system_grounding=${grounding}; n_pe_link=${link}`, {
      catalogue: wide(4),
    });

  it.each([
    ['impedance', 'dark'],
    ['none', 'either'],
  ])('%s: conflict, and N counts as lifted', (grounding, shows) => {
    const linked = plan(grounding, 'yes');
    expect(noted(linked, 'rate/link-not-solid')).toEqual(['conflict S.n_pe_link']);
    expect(conductorsAt(linked, 'S:service')).toEqual(['L1', 'L2', 'L3', 'N']);
    expect(lightsOf(linked, 'S:service', 'N')[0]).toBe(`source on: ${shows}`);
    expect(noted(plan(grounding, 'no'), 'rate/link-not-solid')).toEqual([]);
  });

  it('solid: none, and a spare channel doubles L1', () => {
    expect(noted(plan('solid', 'yes'), 'rate/link-not-solid')).toEqual([]);
    expect(conductorsAt(plan('solid', 'yes'), 'S:service')).toEqual(['L1', 'L2', 'L3', 'L1 (doubled)']);
  });

  it('iec IT says so by its earthing alone', () => {
    const it = planOf('basis=iec; earthing=IT', 'S service; ac_in=400Y/230; n_pe_link=yes');
    expect(noted(it, 'rate/link-not-solid')).toEqual([]);
    expect(noted(it, 'rate/link-in-it')).toHaveLength(1);
  });

  it('of a transformer it speaks of ac-out', () => {
    const rows = (at: string): string => `S service; ac_in=480Y/277; system_grounding=impedance; place=Works
       T transformer; connects_to=S; ac_in=480Y/277; ac_out=208Y/120; isolated=yes; place=Works; system_grounding=${at}; n_pe_link=yes`;
    expect(noted(planOf('occupancy=other', rows('solid')), 'rate/link-not-solid')).toEqual([]);
    expect(noted(planOf('occupancy=other', rows('impedance')), 'rate/link-not-solid')).toHaveLength(1);
  });
});
