import { describe, expect, it } from 'vitest';
import { noteKinds } from '../../src/documents/closeout-pack/note-kinds.js';
import type { Plan, PlannedProtector } from '../../src/model/plan.js';
import { reason } from '../../src/model/reason.js';
import { demoPlans } from './fixtures/demo-plans.js';

// Protectors that share a picture must be alike in all that the picture and its steps show: else a crew wires one by another's figures.

type Change = (one: PlannedProtector) => PlannedProtector;
const wiring =
  (some: Partial<PlannedProtector['wiring']>): Change =>
  (one) => ({ ...one, wiring: { ...one.wiring, ...some } });

const CHANGES: readonly (readonly [string, Change])[] = [
  ['part', (one) => ({ ...one, part: 'another part' })],
  ['protector that is there already', (one) => ({ ...one, existing: 'another' })],
  ['grounding', (one) => ({ ...one, grounding: 'not-known' })],
  ['voltages', (one) => ({ ...one, system: null })],
  ['size of its device', (one) => ({ ...one, overcurrent: one.overcurrent.map((d) => ({ ...d, amps: 7 })) })],
  [
    'current that its device interrupts',
    (one) => ({ ...one, overcurrent: one.overcurrent.map((d) => ({ ...d, interrupting: 77_000 })) }),
  ],
  ['lights', (one) => ({ ...one, channels: one.channels.map((c) => ({ ...c, indicator: [] })) })],
  ['colours', (one) => ({ ...one, channels: one.channels.map((c) => ({ ...c, colour: 'pink' })) })],
  ['number of channels', (one) => ({ ...one, channels: one.channels.slice(1) })],
  ['torque', wiring({ torque: '99 Nm' })],
  ['longest lead', wiring({ leadLengthLimit: 0.01 })],
  ['planned lead', wiring({ leadLengthPlanned: 9 })],
  ['wire of the leads', wiring({ leadGauge: '1 AWG' })],
  ['place of its ground lead', wiring({ groundTo: reason('ground-lead/bonded-bar') })],
  ['hazard', wiring({ hazard: 'low-voltage' })],
  ['number of supplies', (one) => wiring({ fedFromTwoSupplies: !one.wiring.fedFromTwoSupplies })(one)],
  ['notes', (one) => wiring({ notes: [reason('wiring-note/current-not-known')] })(one)],
  ['part of the site', (one) => wiring({ isolation: { ...one.wiring.isolation, part: 99 } })(one)],
  ['steps that make it dead', (one) => wiring({ isolation: { ...one.wiring.isolation, steps: [] } })(one)],
  [
    'sources that nobody knows',
    (one) => wiring({ isolation: { ...one.wiring.isolation, unknown: !one.wiring.isolation.unknown } })(one),
  ],
  ['readings', (one) => wiring({ measuring: { ...one.wiring.measuring, bands: [] } })(one)],
  ['meter', (one) => wiring({ measuring: { ...one.wiring.measuring, meter: null } })(one)],
  ['clothing', (one) => wiring({ measuring: { ...one.wiring.measuring, clothing: null } })(one)],
];

/** A plan of the demo whose notes share a picture between places of one housing, and the tag of the second of them. */
function sharing(): { plan: Plan; tag: string } {
  for (const plan of demoPlans()) {
    const kind = noteKinds(plan).find((places) => places.length > 1 && places[0].length === 1);
    const second = kind?.[1]?.[0];
    if (second && second.overcurrent.length > 0 && second.wiring.isolation.steps.length > 0)
      return { plan, tag: second.tag };
  }
  throw new Error('no two protectors of the demo share a picture');
}

describe('two protectors that share a picture', () => {
  const { plan, tag } = sharing();
  const isAlone = (of: Plan): boolean =>
    noteKinds(of).every(
      ([first, ...rest]) => rest.length === 0 || ![first, ...rest].flat().some((p) => p.tag === tag),
    );

  it('are of one kind', () => {
    expect(isAlone(plan)).toBe(false);
  });

  it('are so though serial and place differ', () => {
    const protectors = plan.protectors.map((one) =>
      one.tag === tag ? { ...one, serial: 'S-1', place: 'Elsewhere' } : one,
    );
    expect(isAlone({ ...plan, protectors })).toBe(false);
  });

  it.each(CHANGES)('have one each once they differ in their %s', (_, change) => {
    const protectors = plan.protectors.map((one) => (one.tag === tag ? change(one) : one));
    expect(isAlone({ ...plan, protectors })).toBe(true);
  });
});
