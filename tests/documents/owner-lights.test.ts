import { expect, it } from 'vitest';
import type { Plan } from '../../src/model/plan.js';
import { lightGroups } from '../../src/documents/parts/owner-lights.js';
import { ownerStrings } from '../../src/words/languages.js';
import { dataOf } from '../plan/plan-of.js';

/** Every picture of a protector, a line each: the word of the state, and each light as it looks then. */
function pictures(plan: Plan, port: string): string[] {
  const protector = plan.protectors.find((p) => p.ports.some((x) => `${x.equipment}:${x.port}` === port));
  if (!protector) throw new Error(`nothing at ${port}`);
  return lightGroups(plan, protector, ownerStrings('en').states).flatMap((group) =>
    group.states.map((s) => `${s.state}: ${s.lights.map((l) => `${l.number} ${l.look}`).join(', ')}`),
  );
}

it('a housing that a generator’s input shares with the output: the output stays lit when the generator is off', () => {
  const plan = dataOf(
    '',
    `INV inverter-charger; ac_in=120; ac_out=120; place=Hut
     GEN generator; connects_to=INV; run_length=5 m; ac_out=120; place=Hut
     BAT battery; connects_to=INV; run_length=1 m; battery_voltage=24; battery_chemistry=lfp; place=Hut`,
  );
  expect(pictures(plan, 'INV:ac-out')).toEqual([
    'Generator on: 1 lit',
    'Generator off: 1 dark',
    'Power on: 2 lit',
    'Power off: 2 dark',
  ]);
});

it('a panel behind a transfer switch: its lights are off when nothing feeds it, not when the generator is off', () => {
  const plan = dataOf(
    '',
    `SVC service; ac_in=120/240; place=House
     TS transfer-switch; connects_to=SVC; run_length=2 m; place=House
     GEN generator; connects_to=TS; run_length=20 m; ac_out=120/240; place=House
     MP panel; connects_to=TS; run_length=9 m; ac_in=120/240; place=House; protect=yes`,
  );
  expect(pictures(plan, 'MP:feeder')).toEqual([
    'Grid power on: 1 lit, 2 lit',
    'Generator on: 1 lit, 2 lit',
    'Power off: 1 dark, 2 dark',
  ]);
});

it('what a generator alone feeds goes by the generator; what an inverter feeds goes by the power', () => {
  const plan = dataOf(
    '',
    `GEN generator; ac_out=120/240; place=Shed; protect=yes
     P panel; connects_to=GEN; run_length=9 m; ac_in=120/240; place=Shed; protect=yes`,
  );
  for (const port of ['GEN:output', 'P:feeder']) {
    expect(pictures(plan, port)).toEqual(['Generator on: 1 lit, 2 lit', 'Generator off: 1 dark, 2 dark']);
  }
});
