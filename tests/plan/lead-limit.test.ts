import { describe, expect, it } from 'vitest';
import { housingDrawing } from '../../src/documents/drawing/housing.js';
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
/** What the drawing and the table of the wiring note say, without breaks of lines. */
function says(plan: Plan): readonly string[] {
  const [protector] = plan.protectors;
  if (!protector) throw new Error('no protector');
  const drawn = housingDrawing(protector, plan.basis, 'green')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');
  const [note] = wiringNotes(plan, settingsOf(), 'letter');
  return [/Line lead plus ground lead: (.*?)\. Planned/.exec(drawn)?.[1] ?? '', note?.leads[0]?.value ?? ''];
}

describe('the limit of the leads', () => {
  it('is what is aimed at where that leaves the level below the withstand', () => {
    expect(wiring(battery('2500 V'))).toBe('0.5 false');
    expect(says(battery('2500 V'))).toEqual(['at most 19.7 in (0.5 m)', '11.8 in (0.3 m), 10 AWG']);
  });

  it('is the length at which level and leads reach the withstand, rounded down', () => {
    const limit = 'at most 13.4 in (0.34 m): beyond it the level is above the withstand of the equipment';
    expect(wiring(battery('500 V'))).toBe('0.34 true');
    expect(says(battery('500 V'))).toEqual([limit, `11.8 in (0.3 m), 10 AWG; ${limit}`]);
  });

  it('is none where the level alone is above the withstand', () => {
    expect(wiring(battery('390 V; protector=REED'))).toBe('0 true');
    expect(says(battery('390 V; protector=REED'))[0]).toMatch(/^as short as can be: /);
  });
});
