import { describe, expect, test } from 'vitest';
import { PLACE_MESSAGES } from '../../src/model/messages/place.js';
import type { Strength } from '../../src/model/words.js';
import { reason } from '../../src/model/reason.js';
import { asked } from '../../src/rules/place/asked.js';
import { farEndExempt } from '../../src/rules/place/far-end-exempt.js';
import { feeder } from '../../src/rules/place/feeder.js';
import { longRun } from '../../src/rules/place/long-run.js';
import type { AnyPlacementRule, PlacementReason } from '../../src/rules/placement-facts.js';
import { afterWaiving, requiredBy, waivedByList, type Waived } from '../../src/rules/waiving.js';
import { placementFacts } from './facts.js';

function of(rule: AnyPlacementRule, strength: Strength): PlacementReason {
  return { rule, strength, because: reason('asked/no') };
}
const recommended = of(longRun, 'recommended');
const required = of(feeder, 'required');
const byTheList = of(asked, 'recommended');

/** What is left, what is said of the rest, and the notes, by code and place. */
function told({ reasons, withheld, notes }: Waived) {
  return {
    left: reasons.map((r) => r.rule.id),
    withheld: withheld && [withheld.rule.id, withheld.because.code, withheld.waived],
    notes: notes.map((n) => [n.code, n.tag, n.field, n.values]),
  };
}
const NOTHING_SAID = { withheld: undefined, notes: [] };

describe('nothing worth protecting', () => {
  const worthNothing = placementFacts({ worthProtecting: false });
  const exempt = farEndExempt.decide(worthNothing).because.code;
  test('what is recommended goes, and why is said', () => {
    expect(told(afterWaiving(worthNothing, [recommended]))).toEqual({
      left: [],
      withheld: [farEndExempt.id, exempt, true],
      notes: [],
    });
  });
  test('what the list itself asks for stays, alone', () => {
    expect(told(afterWaiving(worthNothing, [recommended, byTheList]))).toEqual({
      left: [asked.id],
      withheld: [farEndExempt.id, exempt, true],
      notes: [],
    });
  });
  test('what a rule requires stays, all of it, and the contradiction is named', () => {
    expect(told(afterWaiving(worthNothing, [recommended, required]))).toEqual({
      left: [longRun.id, feeder.id],
      withheld: undefined,
      notes: [
        [PLACE_MESSAGES.nothingWorth.code, 'E-1', 'worth_protecting', { tag: 'E-1', rules: [feeder.id] }],
      ],
    });
  });
  test('what is worth protecting stays', () => {
    expect(told(afterWaiving(placementFacts(), [recommended]))).toEqual({
      left: [longRun.id],
      ...NOTHING_SAID,
    });
  });
});

describe('protect no', () => {
  const no = placementFacts({ protect: false });
  test('what is recommended goes', () => {
    expect(told(afterWaiving(no, [recommended]))).toEqual({ left: [], ...NOTHING_SAID });
  });
  test('what a rule requires stays, all of it, and the contradiction is named', () => {
    expect(told(afterWaiving(no, [required, recommended]))).toEqual({
      left: [feeder.id, longRun.id],
      withheld: undefined,
      notes: [[PLACE_MESSAGES.cannotWaive.code, 'E-1', 'protect', { tag: 'E-1', rules: [feeder.id] }]],
    });
  });
  test('a service is settled elsewhere: nothing goes, nothing is noted', () => {
    const service = placementFacts({ protect: false, kind: 'service', port: 'service' });
    expect(told(afterWaiving(service, [recommended]))).toEqual({ left: [longRun.id], ...NOTHING_SAID });
    expect(told(afterWaiving(service, [required]))).toEqual({ left: [feeder.id], ...NOTHING_SAID });
  });
  test('protect yes takes nothing away', () => {
    expect(told(afterWaiving(placementFacts({ protect: true }), [recommended]))).toEqual({
      left: [longRun.id],
      ...NOTHING_SAID,
    });
  });
});

describe('why the list takes away what is only recommended', () => {
  test.each([
    ['protect no', { protect: false }, asked],
    ['nothing worth protecting', { worthProtecting: false }, farEndExempt],
    ['both: the list’s own word first', { protect: false, worthProtecting: false }, asked],
  ] as const)('%s', (_, given, rule) => {
    const facts = placementFacts(given);
    expect(waivedByList(facts)).toEqual({ rule, because: rule.decide(facts).because, waived: true });
  });
  test.each([
    ['nothing stated', {}],
    ['protect yes', { protect: true }],
  ] as const)('%s: it doesn’t', (_, given) => {
    expect(waivedByList(placementFacts(given))).toBeUndefined();
  });
});

test('what is required there, by the rules’ ids', () => {
  expect(requiredBy([recommended, required, byTheList])).toEqual([feeder.id]);
  expect(requiredBy([recommended])).toEqual([]);
});
