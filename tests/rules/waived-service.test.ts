import { expect, test } from 'vitest';
import { PLACE_MESSAGES } from '../../src/model/messages/place.js';
import type { Strength } from '../../src/model/words.js';
import { reason } from '../../src/model/reason.js';
import { asked } from '../../src/rules/place/asked.js';
import { longRun } from '../../src/rules/place/long-run.js';
import { service } from '../../src/rules/place/service.js';
import { windPremises } from '../../src/rules/place/wind-premises.js';
import type { AnyPlacementRule } from '../../src/rules/placement-facts.js';
import { waivedService, type WaivedService } from '../../src/rules/waived-service.js';

const of = (rule: AnyPlacementRule, strength: Strength) => ({ rule, strength, because: reason('asked/no') });
const required = of(service, 'required');
const recommended = of(service, 'recommended');

function at(some: Partial<WaivedService>) {
  const given = { basis: 'nec-2023', tag: 'SVC', reasons: [required], nextPanels: [true], ...some } as const;
  const { reasons, withheld, notes } = waivedService(given);
  return {
    left: reasons.map((r) => r.rule.id),
    withheld: withheld && [withheld.rule.id, withheld.because.code, withheld.waived],
    notes: notes.map((n) => [n.code, n.tag, n.field, n.values]),
  };
}
const refused = (rules: readonly string[]) => [
  PLACE_MESSAGES.cannotWaive.code,
  'SVC',
  'protect',
  { tag: 'SVC', rules },
];
const WAIVED = { left: [], withheld: [asked.id, 'asked/no', true], notes: [] };
const EXCEPTED = {
  left: [],
  withheld: [asked.id, 'asked/no-by-exception', true],
  notes: [[PLACE_MESSAGES.waivedByException.code, 'SVC', 'protect', { tag: 'SVC' }]],
};
const STAYS = { left: [service.id], withheld: undefined, notes: [refused([service.id])] };

// NEC 2020 and 2023 230.67(B), exception: each next level of distribution equipment has a protector.
test.each([
  ['what isn’t required goes', { reasons: [recommended] }, WAIVED],
  ['nothing was asked there: the list’s word is told all the same', { reasons: [] }, WAIVED],
  ['required, every next panel has one: by the exception', { nextPanels: [true, true] }, EXCEPTED],
  ['required, with nec-2020 too', { basis: 'nec-2020' }, EXCEPTED],
  ['required, one next panel has none: it stays', { nextPanels: [true, false] }, STAYS],
  ['required, no next panel is on the list: it stays', { nextPanels: [] }, STAYS],
  ['required by iec, which has no such exception: it stays', { basis: 'iec' }, STAYS],
  [
    'required by another rule too: it stays, all of it',
    { reasons: [required, of(windPremises, 'required')] },
    {
      left: [service.id, windPremises.id],
      withheld: undefined,
      notes: [refused([service.id, windPremises.id])],
    },
  ],
  [
    'required by another rule alone: it stays',
    { reasons: [recommended, of(windPremises, 'required'), of(longRun, 'recommended')] },
    {
      left: [service.id, windPremises.id, longRun.id],
      withheld: undefined,
      notes: [refused([windPremises.id])],
    },
  ],
] satisfies readonly (readonly [string, Partial<WaivedService>, unknown])[])('%s', (_, given, expected) => {
  expect(at(given)).toEqual(expected);
});
