import { describe, expect, it } from 'vitest';
import { items, planOf } from './plan-of.js';

// Section 5: an existing protector kept beside a new one in one place: both of one MCOV class.

const rows = (service: string, panel: string): string =>
  `SVC service; ac_in=120/240; fault_current=5 kA; ${service}
   P panel; connects_to=SVC; ac_in=120/240; run_length=10 m; protect=yes; ${panel}`;
const told = (list: string, facts = ''): readonly string[] =>
  items(planOf(facts, list), 'choose/beside-existing').map(
    (i) => `${i.severity} ${i.equipment}: ${i.message}`,
  );
const LOWER = 'of two the one with the lower MCOV takes the surges of both.';

describe('a new protector beside one that is there already', () => {
  it('in one place, on the same wires, is to be confirmed', () => {
    expect(told(rows('place=House; existing=an old one', 'place=House'))).toEqual([
      `confirm SVC: ALDER-2 at P feeder (MCOV 150 V) stands beside the protector that is there at SVC service: ${LOWER}`,
    ]);
    expect(told(rows('place=House; existing=BEECH-2', 'place=House'))).toEqual([
      `confirm SVC: ALDER-2 at P feeder (MCOV 150 V) stands beside the protector that is there at SVC service (MCOV 275 V): ${LOWER}`,
    ]);
    expect(told(rows('place=House', 'place=House; existing=an old one'))).toHaveLength(1);
  });

  it('not where the catalogue says that both are of one', () => {
    expect(told(rows('place=House; existing=ALDER-FIRST-2', 'place=House'))).toEqual([]);
  });

  it('nor in another place, nor where the place isn’t known, nor between two that are there', () => {
    expect(told(rows('place=House; existing=an old one', 'place=Shed'))).toEqual([]);
    expect(told(rows('existing=an old one', ''))).toEqual([]);
    expect(told(rows('place=House; existing=one', 'place=House; existing=two'))).toEqual([]);
    expect(told(rows('place=House', 'place=House'))).toEqual([]);
  });

  it('nor on other wires: behind a transfer switch, another circuit, a control circuit at the same port', () => {
    const switched = `SVC service; ac_in=120/240; fault_current=5 kA; place=House; existing=an old one
      TS transfer-switch; connects_to=SVC; place=House
      P panel; connects_to=TS; ac_in=120/240; protect=yes; place=House`;
    expect(told(switched)).toEqual([]);
    const apart = `SVC service; ac_in=120/240; fault_current=5 kA; place=House; existing=an old one
      BAT battery; battery_voltage=48; battery_chemistry=lfp; place=House; protect=yes`;
    expect(told(apart)).toEqual([]);
    const controls = `L load; ac_in=120; place=House
      C1 control-circuit; control_voltage=24 V dc; connects_to=L; place=House; protect=yes; existing=an old one
      C2 control-circuit; control_voltage=24 V dc; connects_to=L; place=House; protect=yes`;
    expect(told(controls)).toEqual([]);
  });

  it('on a battery bus and on a DC circuit too', () => {
    const bus = `B1 battery; battery_voltage=48; battery_chemistry=lfp; place=House; protect=yes; existing=an old one
      CC charge-controller; connects_to=B1; place=House
      B2 battery; connects_to=CC; battery_voltage=48; battery_chemistry=lfp; place=House; protect=yes`;
    expect(told(bus)).toEqual([
      `confirm B1: LARK at B2 battery (MCOV 75 V) stands beside the protector that is there at B1 battery: ${LOWER}`,
    ]);
    const dc = `CC charge-controller; dc_inputs=1; place=Roof
      A array; connects_to=CC; open_circuit_voltage=100; place=Roof; run_length=2 m; existing=an old one; protect=yes`;
    expect(told(dc)).toEqual([
      `confirm A: SWIFT at CC dc-in-1 (MCOV 150 V) stands beside the protector that is there at A output: ${LOWER}`,
    ]);
  });
});
