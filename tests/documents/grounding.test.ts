import { expect, it } from 'vitest';
import { systemInShort } from '../../src/words/protector-short.js';
import { catalogueOf, dataOf, partLine } from '../plan/plan-of.js';

const LIGHTS = catalogueOf(partLine('D', 'channels=2; mcov_dc=40; mcov_ac=40; up=330'));
const FLAGS = catalogueOf(partLine('D', 'channels=2; mcov_dc=40; mcov_ac=40; up=330; indicator=flag'));

const control = (facts: string): string =>
  `C control-circuit; place=Mast; connects_to=G; run_length=40 m; outdoors=yes; control_voltage=${facts}
   G generator; ac_out=120; place=Shed`;
const NOT_KNOWN = undefined;

// Data decides what the papers say of a grounding, whatever the lights of the part show and however a sentence is worded.
it.each([
  ['24 V dc', 'not-known', NOT_KNOWN],
  ['24 V dc; dc_grounding=negative', 'negative', 'negative grounded'],
  ['24 V dc; dc_grounding=positive', 'positive', 'positive grounded'],
  ['24 V dc; dc_grounding=floating', 'floating', 'floating'],
  ['24 V ac', 'not-known', NOT_KNOWN],
  ['24 V ac; dc_grounding=negative', 'neutral', 'N grounded'],
  ['24 V ac; dc_grounding=positive', 'not-known', NOT_KNOWN],
  ['24 V ac; dc_grounding=floating', 'floating', 'floating'],
])('a control circuit of %s: %s', (facts, grounding, text) => {
  for (const catalogue of [LIGHTS, FLAGS, null]) {
    const plan = dataOf('', control(facts), { catalogue });
    const ends = plan.protectors.filter((p) => p.ports.every(({ port }) => port === 'terminals'));
    expect(ends.length).toBe(2);
    expect(ends.map((p) => p.grounding)).toEqual(ends.map(() => grounding));
    expect(ends.map((p) => systemInShort(p, plan).split(', ')[1])).toEqual(ends.map(() => text));
  }
});

it('a turbine whose output isn’t stated has no system and no grounding yet', () => {
  const rows = `WT wind-turbine; place=Hill; connects_to=X; run_length=4 m
    X charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut`;
  const { protectors, basis } = dataOf('', rows);
  const [turbine] = protectors;
  expect([turbine?.system, turbine?.grounding]).toEqual([null, null]);
  expect(turbine && systemInShort(turbine, { basis, earthing: 'TN' })).toBe('not known');
});
