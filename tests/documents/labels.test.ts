import { describe, expect, it } from 'vitest';
import type { DocumentContext } from '../../src/documents/parts/context.js';
import { labelSize } from '../../src/documents/labels/label-grid.js';
import { renderDocument, renderDocuments } from '../../src/documents/render.js';
import type { Settings } from '../../src/model/settings.js';
import { SettingsSchema } from '../../src/model/settings.js';
import { labelsOf, type Unsized } from '../../src/documents/labels/label.js';
import { sureColour } from '../../src/documents/parts/sure-colours.js';
import { platesOf } from '../../src/documents/labels/plates.js';
import type { Plan } from '../../src/model/plan.js';
import { ownerStrings } from '../../src/words/languages.js';
import { dataOf } from '../plan/plan-of.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { draftPlan, housePlan } from './fixtures/plans.js';
import { stressPlan } from './fixtures/stress.js';
import { setByHand } from './fixtures/set-by-hand.js';

type Grid = Partial<Settings['labels']>;

async function contextOf(labels: Grid): Promise<DocumentContext> {
  const settings = SettingsSchema.parse({ labels });
  return { settings, date: '2025-03-14', fonts: (await embeddedFonts()).standAloneKit, measure: setByHand };
}

describe('the size of a label', () => {
  it('is what the sheet leaves: 4 x 3 1/3 in on the default grid of a letter sheet', () => {
    const { width, height } = labelSize(SettingsSchema.parse({}).labels, 'letter');
    expect(width / 72).toBeCloseTo(4, 2);
    expect(height / 72).toBeCloseTo(10 / 3, 2);
  });
});

describe('a sheet of labels', () => {
  it('has one label a protector, with its tag, its blanks and the signal word', async () => {
    const plan = housePlan();
    const { html } = await renderDocument('labels', plan, await contextOf({}));
    expect(html.match(/class="label"/g)).toHaveLength(plan.protectors.length);
    for (const { tag } of plan.protectors) expect(html).toContain(`>${tag}</h2>`);
    for (const blank of ['Serial: ', 'Date fitted: ', 'Next check: '])
      expect(html.split(`<li>${blank}</li>`)).toHaveLength(plan.protectors.length + 1);
    // The signal word goes by what the plan says of the box.
    const words = (word: string): number => [...html.matchAll(new RegExp(`</svg>${word}<`, 'g'))].length;
    expect(words('DANGER')).toBe(plan.protectors.filter((p) => p.wiring.hazard === 'shock').length);
    expect(words('DANGER') + words('WARNING')).toBe(plan.protectors.length);
    expect(html.match(/Fed from two supplies/g)).toHaveLength(
      plan.protectors.filter((p) => p.wiring.fedFromTwoSupplies).length,
    );
  });

  it('is none of a draft', async () => {
    const context = await contextOf({});
    const { html } = await renderDocument('labels', draftPlan(), context);
    expect(html).not.toContain('class="label"');
    expect(html).toContain('A draft has no labels.');
    const files = (await renderDocuments(draftPlan(), context)).map(({ fileName }) => fileName);
    expect(files).toEqual(['closeout-pack.pdf', 'permit-sheet.pdf', 'owner-sheet.pdf', 'site-record.pdf']);
  });

  it('takes as many sheets as the grid needs', async () => {
    const { html } = await renderDocument(
      'labels',
      { ...stressPlan(), submittable: true },
      await contextOf({ columns: 3, rows: 4 }),
    );
    expect(html.match(/<section class="label-sheet">/g)).toHaveLength(Math.ceil(40 / 12));
  });
});

describe('what a label says', () => {
  const labelsIn = (plan: Plan, language = 'en'): Unsized[] =>
    labelsOf({ plan, strings: ownerStrings(language), phone: '555-0142' });
  const demo = (job: string): Plan => {
    const found = demoPlans().find((plan) => plan.job === job);
    if (!found) throw new Error(`no job ${job}`);
    return found;
  };

  it('is conductor, colour and light of each channel, and how they look otherwise', () => {
    const [, battery, input] = labelsIn(demo('UF-101'));
    expect(battery?.lights).toEqual([
      'At all times:',
      '1  positive (+), red wire: ON, yellow',
      '2  negative (-), white or gray wire: OFF',
    ]);
    expect(input?.lights).toEqual([
      'By day:',
      '1  positive (+), red wire: ON, blue',
      '2  negative (-): OFF',
      'At night: all off. That is fine.',
    ]);
    expect([input?.side, input?.where]).toEqual([
      'sun side',
      'at the box that charges the batteries. Hut, power room',
    ]);
    expect(battery?.live).toBe('STAYS LIVE: the battery terminals, up to the first device.');
  });

  it('is a box to tick where the first day counts, and the flag in its words', () => {
    const [input] = labelsIn(demo('UF-102'));
    expect(input?.lights[1]).toBe('1  positive (+), red wire: first day ☐ ON ☐ OFF');
    const [flag] = labelsIn(demo('UF-106'), 'es');
    expect(flag?.lights.at(-1)).toBe('BUENA: verde. GASTADA: roja.');
  });

  it.each(['en', 'es'])(
    '%s: names the side of a port that two share, and no port of the list',
    (language) => {
      for (const plan of demoPlans()) {
        const text = JSON.stringify(labelsIn(plan, language));
        expect(text).not.toMatch(/\b(dc-in|ac-in|ac-out|dc-bus)\b|undefined|\{\w+\}/);
      }
      const shared = labelsIn(demo('UF-104'), language).find(({ lights }) => lights.length > 4);
      const { sides } = ownerStrings(language);
      expect(shared?.lights.join(' ')).toContain(`1  ${sides.generator} `);
      expect(shared?.lights.join(' ')).toContain(`2  ${sides.house} `);
    },
  );

  it('has no blank for a breaker where none is asked for', () => {
    const facts = labelsIn(demo('UF-102')).map(({ facts: of }) => of.map(({ what }) => what));
    const none = demo('UF-102').protectors.map((p) => p.overcurrent.every(({ device }) => device === 'none'));
    expect(facts.map((of) => !of.includes('Breaker position'))).toEqual(none);
  });
});

describe('plates', () => {
  const site = (facts: string, occupancy = 'other'): Plan =>
    dataOf(
      `occupancy=${occupancy}`,
      `SVC service; ${facts}\nMP panel; connects_to=SVC; run_length=9 m; protect=yes`,
    );
  const told = (plan: Plan): string[] => platesOf(plan).map(({ at, word, text }) => `${at} ${word} ${text}`);

  // The marking of 408.3(F), value from memory; 208 V: 240 V x sqrt(3) / 2 (check-values.md).
  it.each<[string, string, string[]]>([
    [
      'an ungrounded system',
      'ac_in=480 delta; system_grounding=none',
      [
        'MP CAUTION Ungrounded system operating 480 volts between conductors',
        'SVC CAUTION Ungrounded system operating 480 volts between conductors',
      ],
    ],
    [
      'a high leg',
      'ac_in=240/120 high-leg',
      ['MP CAUTION B phase has 208 volts to ground', 'SVC CAUTION B phase has 208 volts to ground'],
    ],
    ['a solid system', 'ac_in=208Y/120', []],
    ['a corner-grounded one', 'ac_in=480 delta; system_grounding=corner', []],
    [
      'a stated fault current',
      'ac_in=208Y/120; fault_current=10 kA',
      ['SVC  Available fault current: 10,000 A'],
    ],
  ])('of %s', (_, facts, plates) => {
    expect(told(site(facts))).toEqual(plates);
  });

  it('none of the fault current at a dwelling unit, and none under IEC', () => {
    expect(told(site('ac_in=120/240; fault_current=10 kA', 'dwelling'))).toEqual([]);
    const iec = demoPlans().filter((plan) => plan.basis === 'iec');
    expect(iec.flatMap(told)).toEqual([]);
    expect(iec.length).toBeGreaterThan(0);
  });

  it('stand behind the labels only where the settings ask for them', async () => {
    const plan = demoPlans().find(({ job }) => job === 'UF-109');
    if (!plan) throw new Error('no UF-109');
    const context = await contextOf({});
    const { html } = await renderDocument('labels', plan, context);
    expect(html).not.toContain('volts between conductors');
    const asked = { ...context, settings: { ...context.settings, plates: true } };
    const { html: withPlates } = await renderDocument('labels', plan, asked);
    expect(withPlates.match(/operating 480 volts between conductors/g)).toHaveLength(2);
  });
});

describe('the colour of a conductor', () => {
  it('stands on a label where the wiring note tells it, and nowhere else', () => {
    let unsure = 0;
    for (const plan of demoPlans()) {
      const labels = labelsOf({ plan, strings: ownerStrings('en'), phone: '' });
      for (const [index, protector] of plan.protectors.entries())
        for (const channel of protector.channels) {
          if (channel.colour === '') continue;
          const line =
            labels[index]?.lights.find((text) => text.startsWith(`${String(channel.channel)}  `)) ?? '';
          if (line === '') continue;
          const isSure = sureColour(protector, channel, plan.basis) !== '';
          if (!isSure) unsure += 1;
          expect(line.includes(' wire'), `${plan.job} ${protector.tag}: ${line}`).toBe(isSure);
        }
    }
    expect(unsure).toBeGreaterThan(0);
  });
});
