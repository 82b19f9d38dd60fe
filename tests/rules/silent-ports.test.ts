import { expect, test } from 'vitest';
import { say } from '../../src/words/reasons/say.js';
import { whySilent } from '../../src/rules/silent-ports.js';

test.each([
  ['transfer-switch', 'place/long-run', 'a transfer switch has no protector of its own'],
  ['disconnect', 'place/long-run', 'a disconnect has no protector of its own'],
  ['other', 'place/asked', 'kind other'],
] as const)('%s says why nothing stands there', (kind, rule, words) => {
  const why = whySilent(kind);
  expect(why?.rule.id).toBe(rule);
  expect(why?.outside).toBe(true);
  expect(why && say(why.because)).toContain(words);
});

test('a kind that rules look at says nothing here', () => {
  expect(whySilent('panel')).toBeUndefined();
});
