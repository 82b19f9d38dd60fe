import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultSettings, readListText } from '../../src/index.js';
import { faults, items, one, planOfCsv } from './plan-of.js';

// A list that looks complete: an array whose module no library knows, 14 in series on a converter that bears 600 V.
const LIST = readFileSync('fixtures/lists/unknown-module.csv', 'utf8');
/** 49.94 V x 14 x 1.14 (NEC Table 690.7(A) at -8 °C) = 797 V. */
const LIBRARY = 'maker,model,kind,voc_stc\nPeatmoor,PM-7714,array,49.94 V\n';
const SMALL = 'maker,model,kind,voc_stc\nPeatmoor,PM-7714,array,30 V\n';

describe('an array whose module no library knows', () => {
  it('is a draft that asks for its Voc: what the converter bears is no bound', () => {
    const plan = planOfCsv(LIST);
    expect(plan.submittable).toBe(false);
    expect(faults(plan)).toEqual(['fact/voc-stc']);
    expect(items(plan, 'fact/voc-stc')[0]?.message).toMatch(/600 V that INV bears, which is no bound/);
    expect(one(plan, 'INV:dc-in-1').required.mcov).toBe(600);
    expect(plan.standings.find((s) => s.rule === 'rate/array-voltage')?.standing).not.toBe('met');
  });

  it('is a model to supply', () => {
    const { missingModels } = readListText('list.csv', LIST, { settings: defaultSettings() });
    expect(missingModels.map(({ maker, model }) => [maker, model])).toEqual([['Peatmoor', 'PM-7714']]);
  });

  it('breaks what its converter bears and 690.7 once its module is known: a conflict each', () => {
    const plan = planOfCsv(LIST, { library: LIBRARY });
    const conflicts = faults(plan).filter((code) => code.startsWith('rate/'));
    expect(conflicts).toEqual(['rate/above-code-limit', 'rate/above-converter']);
    expect(one(plan, 'INV:dc-in-1').required.mcov).toBeCloseTo(797.04, 2);
  });

  it('is no fault where its module is known and the string stays below', () => {
    expect(faults(planOfCsv(LIST, { library: SMALL }))).toEqual([]);
  });
});
