import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Plan, PlannedProtector } from '../../src/model/plan.js';
import { BASES } from '../../src/model/editions.js';
import { wireOf } from '../../src/output/earlier-protector.js';
import { planJson, readPlan } from '../../src/output/plan-file.js';
import { whyText } from '../../src/screen/why.js';
import { conductorText } from '../../src/words/conductors.js';
import { isObject } from '../../src/words/english-beside.js';
import { channel, lamp, plan, protector } from '../documents/fixtures/builder.js';
import { versionOne } from './version-one.js';

const GOLDEN = new URL('../golden/', import.meta.url);
const texts = readdirSync(GOLDEN)
  .filter((name) => name.endsWith('.json') && name !== 'digests.json')
  .map((name) => ({ name, text: readFileSync(new URL(name, GOLDEN), 'utf8') }));

function readOf(json: unknown): Plan {
  const read = readPlan(json);
  if (!read) throw new Error('not a plan');
  return read.plan;
}

/** What a protector says as data, beyond sentences. */
const dataOf = (p: PlannedProtector): object => ({
  tag: p.tag,
  system: p.system,
  grounding: p.grounding,
  wires: p.channels.map((c) => c.wire),
  unprotected: p.wiring.unprotected.map((u) => u.wire),
  stated: [p.wiring.overcurrent, p.wiring.torque, p.wiring.wireRange],
});

describe('plan.json', () => {
  it.each(texts)('$name: read and written again it is the same, byte for byte', ({ text }) => {
    expect(texts.length).toBeGreaterThan(4);
    expect(planJson(readOf(JSON.parse(text)))).toBe(text);
  });

  it.each(texts)('$name as version 1: its texts give the same data', ({ text }) => {
    const now = readOf(JSON.parse(text));
    const earlier = readPlan(versionOne(text));
    expect(earlier?.version).toBe(1);
    expect(earlier?.plan.protectors.map(dataOf)).toEqual(now.protectors.map(dataOf));
    expect(now.protectors.length).toBeGreaterThan(0);
  });

  it.each(texts)('$name as version 1: titles, steps, sources and all other texts stay', ({ text }) => {
    const earlier = versionOne(text);
    expect(JSON.stringify(earlier)).not.toContain('"values"');
    expect(versionOne(planJson(readOf(earlier)))).toEqual(earlier);
  });
});

/** A plan as version 2 first had it: its reasons of placements named no basis. */
function withoutBasis(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutBasis);
  if (!isObject(value)) return value;
  const { code, values } = value;
  const isPlacement =
    typeof code === 'string' &&
    !code.startsWith('source/') &&
    isObject(values) &&
    BASES.some((basis) => basis === values['basis']);
  const given = Object.entries(value).map(([key, inner]) => [
    key,
    isPlacement && key === 'values' ? withoutBasis({ ...values, basis: undefined }) : withoutBasis(inner),
  ]);
  return Object.fromEntries(given) as unknown;
}

describe('a plan of version 2 whose reasons name no basis', () => {
  it.each(texts)('$name: its own basis decides the form of its lengths', ({ text }) => {
    const early = JSON.stringify(withoutBasis(JSON.parse(text)));
    expect(early).not.toBe(JSON.stringify(JSON.parse(text)));
    const read = readOf(JSON.parse(early));
    expect(read).toEqual(readOf(JSON.parse(text)));
    expect(planJson(read)).toBe(text);
    const why = (of: Plan): string => whyText({ ...of, equipments: of.site.equipments });
    expect(why(read)).toBe(why(readOf(JSON.parse(text))));
  });

  it('is refused where the values of a reason are none', () => {
    const [first] = texts;
    const json = JSON.parse(first?.text ?? '') as { notPlaced: readonly object[] };
    const damaged = { ...json, notPlaced: json.notPlaced.map((one) => ({ ...one, values: null })) };
    expect(json.notPlaced.length).toBeGreaterThan(0);
    expect(readPlan(json)).toBeDefined();
    expect(readPlan(damaged)).toBeUndefined();
  });
});

describe('a conductor of version 1', () => {
  it.each([
    ['positive', { port: null, name: 'positive', doubled: false }],
    ['L1 (doubled)', { port: null, name: 'L1', doubled: true }],
    ['ac-in-2 L2', { port: 'ac-in-2', name: 'L2', doubled: false }],
    ['ac-out N (doubled)', { port: 'ac-out', name: 'N', doubled: true }],
  ] as const)('%s', (text, wire) => {
    expect(wireOf(text)).toEqual(wire);
    expect(conductorText(wire)).toBe(text);
  });

  it.each(['', 'L4', 'L1 doubled', 'a b L1'])('%j is none: such a plan is not read', (conductor) => {
    expect(wireOf(conductor)).toBeUndefined();
    const text = planJson(plan({ protectors: [protector({ tag: 'P-1', ports: [] })] }));
    const json = versionOne(text.replaceAll('"conductor": "positive"', `"conductor": "${conductor}"`));
    expect(readPlan(json)).toBeUndefined();
    expect(readPlan(versionOne(text))).toBeDefined();
  });
});

describe('the grounding of a control circuit in a plan of version 1, told by its lights alone', () => {
  const dark = lamp('always', 'dark', 'grounded-conductor', 'no voltage to ground');
  const lit = lamp('source on', 'lit', 'energised', 'the control supply gives it its voltage');
  const either = (because: string): typeof lit => lamp('source on', 'either', 'floating', because);

  it.each([
    ['a grounded pole', 'negative', dark, 'negative'],
    ['the other pole', 'positive', dark, 'positive'],
    ['N', 'N', dark, 'neutral'],
    ['lit', 'N', lit, 'not-known'],
    ['floating', 'negative', either('neither wire is tied to ground: recorded'), 'floating'],
    ['not known', 'negative', either('its grounding isn’t known: recorded'), 'not-known'],
    ['not known, another apostrophe', 'negative', either('its grounding isn’t known: recorded'), 'not-known'],
  ])('%s', (_, conductor, light, grounding) => {
    const one = protector({
      tag: 'P-1',
      ports: [{ equipment: 'CTL', port: 'terminals' }],
      channels: [channel(1, 'L1', 'red', [lit]), channel(2, conductor, 'black', [light])],
    });
    const json = versionOne(planJson(plan({ protectors: [one] })));
    expect(readOf(json).protectors[0]?.grounding).toBe(grounding);
  });
});
