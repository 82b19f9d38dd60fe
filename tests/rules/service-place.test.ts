import { expect, test } from 'vitest';
import { reason } from '../../src/model/reason.js';
import { asked } from '../../src/rules/place/asked.js';
import { feeder } from '../../src/rules/place/feeder.js';
import { longRun } from '../../src/rules/place/long-run.js';
import { service } from '../../src/rules/place/service.js';
import { windPremises } from '../../src/rules/place/wind-premises.js';
import type { AnyPlacementRule, PlacementReason } from '../../src/rules/placement-facts.js';
import { atServicePlace } from '../../src/rules/service-place.js';

const because = reason('asked/no');
const of = (rule: AnyPlacementRule): PlacementReason => ({ rule, strength: 'required', because });
const moved = (rule: AnyPlacementRule): PlacementReason => ({
  ...of(rule),
  because: reason('service-place/reason', { reason: because, panel: 'MP' }),
});
const SHARED = { rule: service, because: reason('service-place/shared', { service: 'SVC' }) };

test.each([
  ['nothing is asked', [], [service], { stay: [], moved: [], withheld: SHARED }],
  [
    'what is asked goes to the service',
    [feeder],
    [service],
    { stay: [], moved: [moved(feeder)], withheld: SHARED },
  ],
  [
    'once, where the service is asked for it already',
    [feeder, longRun],
    [service, longRun],
    { stay: [], moved: [moved(feeder)], withheld: SHARED },
  ],
  ['twice at the panel: once', [feeder, feeder], [], { stay: [], moved: [moved(feeder)], withheld: SHARED }],
  [
    'what the list asks for at the panel stays there',
    [asked, feeder],
    [service],
    { stay: [of(asked)], moved: [moved(feeder)], withheld: undefined },
  ],
  [
    'the place of 694.7(D) stays',
    [windPremises],
    [service],
    { stay: [of(windPremises)], moved: [], withheld: undefined },
  ],
] as const)('%s', (_, panel, at, expected) => {
  const found = atServicePlace({ tag: 'MP', reasons: panel.map(of) }, { tag: 'SVC', reasons: at.map(of) });
  expect(found).toEqual(expected);
});
