import { conductorText } from '../../src/words/conductors.js';
import { describe, expect, it } from 'vitest';
import { inEnglish } from '../in-english.js';
import { atPort, planOf } from './plan-of.js';

// Each fact is common practice of the trade, no source (check-values.md section 7): a list goes in, a plan comes out.

const ARRAY_FACTS = 'voc_stc (V),isc_stc (A),voc_coefficient,modules_in_series,strings_in_parallel';
const ARRAY = '49.8,10.9,-0.27 %/C,3,2';

describe('one two-channel protector for each DC input', () => {
  it('gives four controllers four', async () => {
    const plan = await planOf(`
job,tag,kind,quantity,connects_to,run_length (ft),place,max_dc_voltage (V),lowest_temp (C),battery_voltage (V),battery_chemistry,${ARRAY_FACTS}
J,ARR,array,4,CC,40,Hut / roof,,-20,,,${ARRAY}
J,CC,charge-controller,4,BAT,6,Hut / room,250,,,,,,,,
J,BAT,battery,,,,Hut / room,,,48,lead-acid,,,,,
`);
    const inputs = plan.protectors.filter((p) => p.ports.some((port) => port.port.startsWith('dc-in')));
    expect(inputs.map((p) => p.ports)).toEqual(
      [1, 2, 3, 4].map((n) => [{ equipment: `CC-${String(n)}`, port: 'dc-in-1' }]),
    );
    for (const p of inputs)
      expect(p.channels.map((c) => conductorText(c.wire))).toEqual(['positive', 'negative']);
  });

  it('gives an inverter with two tracker inputs two', async () => {
    const plan = await planOf(`
job,tag,kind,connects_to,run_length (ft),place,dc_inputs,max_dc_voltage (V),ac_in,ac_out,lowest_temp (C),${ARRAY_FACTS}
J,SVC,service,,,House / wall,,,120/240,,-18,,,,,
J,INV,grid-tie-inverter,SVC,10,House / garage,2,600,,240,,,,,,
J,ARR-E,array,INV/1,40,House / roof,,,,,,41.2,10.2,-0.28 %/C,10,1
J,ARR-W,array,INV/2,50,House / roof,,,,,,41.2,10.2,-0.28 %/C,9,1
`);
    const inputs = plan.protectors.filter((p) => p.ports.some((port) => port.port.startsWith('dc-in')));
    expect(inputs.map((p) => p.ports)).toEqual([
      [{ equipment: 'INV', port: 'dc-in-1' }],
      [{ equipment: 'INV', port: 'dc-in-2' }],
    ]);
    for (const p of inputs) expect(p.partDetails?.channels).toBe(2);
  });
});

describe('the AC side of an inverter', () => {
  it('serves AC in and AC out of a single-phase inverter with one two-channel protector', async () => {
    const plan = await planOf(`
job,tag,kind,connects_to,run_length (ft),place,ac_in,ac_out
J,GEN,generator,INV,10,Cabin / shed room,,120
J,INV,inverter-charger,,,Cabin / room,120,120
`);
    const ac = plan.protectors.filter((p) => p.ports.some((port) => port.equipment === 'INV'));
    expect(ac).toHaveLength(1);
    expect(ac[0]?.ports).toEqual([
      { equipment: 'INV', port: 'ac-in' },
      { equipment: 'INV', port: 'ac-out' },
    ]);
    expect(ac[0]?.channels.map((c) => conductorText(c.wire))).toEqual(['ac-in L1', 'ac-out L1']);
    expect(ac[0]?.wiring.fedFromTwoSupplies).toBe(true);
  });

  it('gives a 120/240 V inverter two, one at each port', async () => {
    const plan = await planOf(`
job,tag,kind,connects_to,run_length (ft),place,ac_in,ac_out
J,GEN,generator,INV,10,Cabin / shed room,,120/240
J,INV,inverter-charger,,,Cabin / room,120/240,120/240
`);
    const ac = plan.protectors.filter((p) => p.ports.some((port) => port.equipment === 'INV'));
    expect(ac.map((p) => p.ports)).toEqual([
      [{ equipment: 'INV', port: 'ac-in' }],
      [{ equipment: 'INV', port: 'ac-out' }],
    ]);
    for (const p of ac) expect(p.channels.map((c) => conductorText(c.wire))).toEqual(['L1', 'L2']);
  });
});

const turbine = (poles: number): string => `
job,tag,kind,connects_to,run_length (ft),place,max_dc_voltage (V),output,open_circuit_voltage (V),poles,rpm
J,WT,wind-turbine,CC,60,Tower / base,,three-phase,140,${String(poles)},300
J,CC,charge-controller,BAT,6,House / room,250,,,,
J,BAT,battery,,,House / room,,,,,
`;

describe('a wind turbine', () => {
  it('is protected at the base of the tower and in the building', async () => {
    const plan = await planOf(turbine(12));
    expect(atPort(plan, 'WT', 'output').map((p) => p.place)).toContain('Tower / base');
    expect(atPort(plan, 'CC', 'dc-in-1').map((p) => p.place)).toContain('House / room');
  });

  it('puts three phases on a pair of two-channel protectors, one phase doubled', async () => {
    const plan = await planOf(turbine(12));
    const pair = atPort(plan, 'WT', 'output');
    expect(pair.map((p) => p.partDetails?.channels)).toEqual([2, 2]);
    const conductors = pair.flatMap((p) => p.channels.map((c) => conductorText(c.wire)));
    expect(conductors.toSorted()).toEqual(['L1', 'L1 (doubled)', 'L2', 'L3']);
  });

  // Computed: pole pairs x rpm / 60.
  it.each([
    [12, 30],
    [8, 20],
  ])('of %i poles at 300 rpm flickers at %i Hz', async (poles, hertz) => {
    const plan = await planOf(turbine(poles));
    const [p] = atPort(plan, 'WT', 'output');
    const turning = p?.channels[0]?.indicator.find((i) => i.state === 'turning');
    expect(turning?.shows).toBe('flickers');
    expect(turning?.because).toMatchObject({
      code: 'light/flickers',
      values: { frequency: { value: hertz, unit: 'Hz' } },
    });
    expect(inEnglish(turning)?.because).toMatch(new RegExp(`\\b${String(hertz)} Hz`));
    expect(p?.channels[0]?.indicator.find((i) => i.state === 'still')?.shows).toBe('dark');
  });
});

const outbuilding = (feet: number, worth: string): string => `
job,tag,kind,connects_to,run_length (ft),place,worth_protecting,ac_in,fault_current (kA)
J,SVC,service,,,House / wall,,120/240,10
J,BARN,panel,SVC,${String(feet)},Barn,${worth},120/240,
`;

describe('a run of more than 100 ft', () => {
  it('is protected at both ends', async () => {
    const plan = await planOf(outbuilding(101, ''));
    expect(atPort(plan, 'BARN', 'feeder')).toHaveLength(1);
    expect(atPort(plan, 'SVC', 'service')[0]?.reasons.map((r) => r.rule)).toContain('place/long-run');
  });

  it('at 100 ft or less asks for nothing at its far end', async () => {
    const plan = await planOf(outbuilding(100, ''));
    expect(atPort(plan, 'BARN', 'feeder')).toEqual([]);
    expect(plan.notPlaced.filter((n) => n.equipment === 'BARN' && n.port === 'feeder')).not.toEqual([]);
  });

  it('is left bare at a far end that holds nothing worth protecting', async () => {
    const plan = await planOf(outbuilding(101, 'no'));
    expect(atPort(plan, 'BARN', 'feeder')).toEqual([]);
    const why = plan.notPlaced.filter((n) => n.equipment === 'BARN' && n.port === 'feeder');
    expect(why.map((n) => n.rule)).toContain('place/far-end-exempt');
  });
});

describe('the utility service', () => {
  const service = `
job,tag,kind,connects_to,place,outdoors,ac_in,fault_current (kA)
J,SVC,service,,House / wall,yes,120/240,10
`;
  it('is protected as near to the incoming feed as possible', async () => {
    const [p] = atPort(await planOf(service), 'SVC', 'service');
    expect(inEnglish(p)?.position).toMatch(/nearest|incoming|beside/i);
  });

  it('has both lights lit at 120/240 V', async () => {
    const [p] = atPort(await planOf(service), 'SVC', 'service');
    expect(p?.channels.map((c) => conductorText(c.wire))).toEqual(['L1', 'L2']);
    for (const c of p?.channels ?? []) {
      expect(c.indicator.find((i) => i.state === 'utility on')?.shows).toBe('lit');
      expect(c.indicator.find((i) => i.state === 'source off')?.shows).toBe('dark');
    }
  });

  it('outdoors is in a NEMA 4X housing, where the lights can be seen', async () => {
    const [p] = atPort(await planOf(service), 'SVC', 'service');
    expect(p?.partDetails?.enclosure).toBe('4X');
  });
});

describe('a grounded negative', () => {
  const controller = `
job,tag,kind,connects_to,run_length (ft),place,max_dc_voltage (V),lowest_temp (C),dc_grounding,${ARRAY_FACTS}
J,ARR,array,CC,40,Hut / roof,,-20,negative,${ARRAY}
J,CC,charge-controller,BAT,6,Hut / room,250,,,,,,,
J,BAT,battery,,,Hut / room,,,,,,,,
`;
  it('still gets a channel, rated for the whole voltage', async () => {
    const [p] = atPort(await planOf(controller), 'CC', 'dc-in-1');
    const negative = p?.channels.find((c) => c.wire.name === 'negative');
    expect(negative?.to).toBe('ground');
    // Computed: 3 x 49.8 V x (1 + 0.0027 x 45).
    expect(p?.required.mcov).toBeCloseTo(167.55, 1);
  });

  it('keeps its indicator dark, which is normal, whatever the ground-fault device does', async () => {
    const [p] = atPort(await planOf(controller), 'CC', 'dc-in-1');
    const negative = p?.channels.find((c) => c.wire.name === 'negative');
    expect(negative?.indicator.find((i) => i.state === 'always')?.shows).toBe('dark');
    expect(negative?.indicator.find((i) => i.state === 'ground-fault device open')?.shows).toBe('either');
    const positive = p?.channels.find((c) => c.wire.name === 'positive');
    expect(positive?.indicator.find((i) => i.state === 'sun')?.shows).toBe('lit');
    expect(positive?.indicator.find((i) => i.state === 'night')?.shows).toBe('dark');
  });
});
