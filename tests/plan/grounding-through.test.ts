import { describe, expect, it } from 'vitest';
import { one, planOf } from './plan-of.js';

// An inverter-charger passes its AC in through, so that its AC out is grounded as its AC in of the same system is (section 0).
// Line to line 480 V: the larger of 508 V (range B, value from memory) and 1.15 x 480 V; to ground 277 V: 1.15 x 277 V.

const LINE_TO_LINE = 552;
const TO_GROUND = 318.55;

const site = (service: string, inverter: string): string =>
  `SVC service; ${service}; place=Mill
   INV inverter-charger; ${inverter}; place=Mill
   P panel; ac_in=480Y/277; connects_to=INV; run_length=9 m; place=Mill`;

describe('behind an inverter-charger on a service', () => {
  const passing = 'ac_in=480Y/277; ac_out=480Y/277; connects_to=SVC; run_length=9 m';
  it.each([
    ['impedance', LINE_TO_LINE, 'impedance'],
    ['corner', LINE_TO_LINE, 'corner'],
    ['none', LINE_TO_LINE, 'ungrounded'],
    ['solid', TO_GROUND, null],
  ])('that is grounded %s: AC out and what it feeds are too', (grounding, mcov, listedFor) => {
    const plan = planOf('occupancy=other', site(`ac_in=480Y/277; system_grounding=${grounding}`, passing));
    for (const where of ['INV:ac-in', 'INV:ac-out', 'P:feeder']) {
      if (where === 'P:feeder' && !plan.protectors.some((p) => p.ports.some((o) => o.equipment === 'P')))
        continue;
      expect(one(plan, where).required.mcov, where).toBeCloseTo(mcov, 2);
      expect(one(plan, where).required.listedFor, where).toBe(listedFor);
    }
  });

  it('of another system than its AC in: its own, solid by default', () => {
    const plan = planOf(
      'occupancy=other',
      `SVC service; ac_in=480Y/277; system_grounding=impedance; place=Mill
       INV inverter-charger; ac_in=480Y/277; ac_out=120/240; connects_to=SVC; run_length=9 m; place=Mill`,
    );
    expect(one(plan, 'INV:ac-in').required.mcov).toBe(LINE_TO_LINE);
    expect(one(plan, 'INV:ac-out').required.mcov).toBe(138);
  });

  it('whose AC in nothing feeds: solid by default', () => {
    const plan = planOf(
      'occupancy=other',
      'INV inverter-charger; ac_in=480Y/277; ac_out=480Y/277; place=Mill',
    );
    expect(one(plan, 'INV:ac-out').required.mcov).toBeCloseTo(TO_GROUND, 2);
  });
});
