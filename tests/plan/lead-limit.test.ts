import { describe, expect, it } from 'vitest';
import { leadAsPlanned } from '../../src/documents/parts/contents/lead-line.js';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import type { Plan } from '../../src/model/plan.js';
import { catalogueOf, dataOf, partLine, settingsOf } from './plan-of.js';

// Leads so long that level and leads are above the withstand, though shorter than what is aimed at. Own cases.

/** A battery with a stated withstand, and a part whose leads are planned at 0.3 m. */
function battery(withstand: string, facts = ''): Plan {
  const up = 'channels=2; mcov_dc=75; up=400; up_basis=VPR; lead_length=0.3 m; lead_gauge=10 AWG';
  return dataOf(
    facts,
    `B battery; battery_voltage=48; battery_chemistry=lfp; fault_current=5 kA; place=H / b; connects_to=C; run_length=60 ft; impulse_withstand=${withstand}
     C charge-controller; place=H / c`,
    { catalogue: catalogueOf(partLine('REED', up)) },
  );
}
const wiring = (plan: Plan): string => {
  const found = plan.protectors.find(({ ports: [port] }) => port?.equipment === 'B')?.wiring;
  return `${found?.leadLengthLimit} ${found?.leadLimitByWithstand}`;
};
/** What the picture of the wiring note says of the leads: their longest, then their wire. */
function says(plan: Plan): readonly string[] {
  const [note] = wiringNotes(plan, settingsOf(), 'en');
  const drawn = (note?.picture ?? '').replace(/<[^>]*>/g, '|').replace(/\|+/g, '|');
  const [, limit = '', wire = ''] = /together\|([^|]*)\|([^|]*)\|/.exec(drawn) ?? [];
  return [limit.replaceAll('\u00a0', ' '), wire.replaceAll('\u00a0', ' ')];
}

describe('the limit of the leads', () => {
  const WIRE = expect.stringMatching(/^10 AWG, straight/) as string;

  it('is what is aimed at where that leaves the level below the withstand; the note keeps to what level and reach were worked out with', () => {
    expect(wiring(battery('2500 V'))).toBe('0.5 false');
    // Whole inches, rounded down: 0.3 m are 11.8 in.
    expect(says(battery('2500 V'))).toEqual(['at most 11 in', WIRE]);
  });

  it('is the length at which level and leads reach the withstand, rounded down', () => {
    expect(wiring(battery('500 V'))).toBe('0.34 true');
    expect(says(battery('500 V'))).toEqual(['at most 11 in', WIRE]);
  });

  it('is printed as such where the leads were planned longer than it: a crew that kept to the plan would pass the withstand', () => {
    const planned = dataOf('', 'L load; ac_in=120; protect=yes; fault_current=1 kA; place=House', {
      catalogue: catalogueOf(
        partLine('REED', 'channels=2; mcov_ac=150; up=1400; up_basis=VPR; lead_gauge=10 AWG'),
      ),
    });
    const [found] = planned.protectors;
    expect([found?.wiring.leadLengthLimit, found?.wiring.leadLengthPlanned]).toEqual([0.34, 0.5]);
    expect(says(planned)).toEqual(['at most 13 in', WIRE]);
    expect(found && leadAsPlanned(found, planned)).toBe(
      'lead 19.7 in as planned; 13 in in the schedule, so that the level keeps the withstand',
    );
  });

  it('is none where the level alone is above the withstand, which makes the pack a draft: the note keeps to what is planned', () => {
    const plan = battery('390 V; protector=REED');
    expect(wiring(plan)).toBe('0 true');
    expect(says(plan)).toEqual(['at most 11 in', WIRE]);
    // A conflict makes the pack a draft.
    const conflicts = plan.openItems.filter(({ severity }) => severity === 'conflict');
    expect(conflicts.map(({ code }) => code)).toEqual(['choose/by-hand-fails']);
  });
});
