import { describe, expect, it } from 'vitest';
import { blanksOf } from '../../src/documents/parts/blanks.js';
import { scheduleRows } from '../../src/documents/parts/schedule.js';
import { scheduleCells } from '../../src/documents/parts/contents/schedule-row.js';
import { shortCircuitHeld } from '../../src/documents/parts/contents/code-figures.js';
import { dataOf } from '../plan/plan-of.js';

// A fault current of which a part isn't known is a blank to fill in, whatever is known of it (rules.md 2.4).

const site = (generator: string) =>
  dataOf(
    '',
    `S service; ac_in=120/240; place=House; fault_current=8 kA
     T transfer-switch; connects_to=S; run_length=2 m; place=House
     P panel; connects_to=T; run_length=2 m; ac_in=120/240; place=House; protect=yes
     G generator; connects_to=T; run_length=2 m; ac_out=120/240; place=House${generator}`,
  );

describe.each([
  ['; fault_current=2 kA', true, ['8'], '8 kA', /^50 kA ≥ 8 kA$/],
  [
    '',
    false,
    ['8 +'],
    'at least 8 kA; not all that feeds it is on the list',
    /^50 kA, fault current to be filled in \(at least 8 kA\)$/,
  ],
] as const)('behind a transfer switch, a generator%s', (generator, isKnown, cell, row, held) => {
  const plan = site(generator);
  const panel = plan.protectors.find((p) => p.ports.some(({ equipment }) => equipment === 'P'));

  it('is a blank exactly where it isn’t wholly known, and what is known stands there', () => {
    expect(panel).toBeDefined();
    if (!panel) return;
    const blanks = blanksOf(plan).filter(({ tag, what }) => tag === panel.tag && what === 'fault current');
    expect(blanks).toHaveLength(isKnown ? 0 : 1);
    expect(scheduleCells(panel, plan).faultCurrent).toEqual({ lines: cell, fill: !isKnown });
    expect(scheduleRows(plan).find(({ tag }) => tag === panel.tag)?.requiredSccr).toBe(row);
    expect(shortCircuitHeld(panel)).toMatch(held);
  });
});

it('a battery whose fault current nobody states is asked for it', () => {
  const [row] = scheduleRows(dataOf('', 'B battery; battery_voltage=48; battery_chemistry=lfp; protect=yes'));
  expect(row?.requiredSccr).toBe('not known: not on the list');
});

it('at a control circuit none is asked', () => {
  const [row] = scheduleRows(
    dataOf('', 'K control-circuit; control_voltage=24 V dc; outdoors=yes; run_length=40 m; protect=yes'),
  );
  expect(row?.requiredSccr).toBe('not asked');
});
