import { describe, expect, it } from 'vitest';
import type { DocumentContext } from '../../src/documents/parts/context.js';
import { labelSize } from '../../src/documents/labels/label-grid.js';
import { renderDocument } from '../../src/documents/render.js';
import type { Settings } from '../../src/model/settings.js';
import { SettingsSchema } from '../../src/model/settings.js';
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
  it('is what the sheet leaves: 4 x 2 in on the default grid of a letter sheet', () => {
    const { width, height } = labelSize(SettingsSchema.parse({}).labels, 'letter');
    expect(width / 72).toBeCloseTo(4, 2);
    expect(height / 72).toBeCloseTo(2, 2);
  });
});

describe('a sheet of labels', () => {
  it('has one label a protector, with its tag, its date and the signal word', async () => {
    const plan = housePlan();
    const { html } = await renderDocument('labels', plan, await contextOf({}));
    expect(html.match(/class="label"/g)).toHaveLength(plan.protectors.length);
    for (const { tag } of plan.protectors) expect(html).toContain(`>Surge protector ${tag}<`);
    // The signal word goes by what the plan says of the box.
    const words = (word: string): number => [...html.matchAll(new RegExp(`⚠ ${word}`, 'g'))].length;
    expect(words('DANGER')).toBe(plan.protectors.filter((p) => p.wiring.hazard === 'shock').length);
    expect(words('DANGER') + words('WARNING')).toBe(plan.protectors.length);
    expect(html.match(/Fed from two supplies/g)).toHaveLength(
      plan.protectors.filter((p) => p.wiring.fedFromTwoSupplies).length,
    );
  });

  it('says on each label of a draft that it is one', async () => {
    const { html } = await renderDocument('labels', draftPlan(), await contextOf({}));
    expect(html).toContain('<strong>DRAFT');
  });

  it('takes as many sheets as the grid needs', async () => {
    const { html } = await renderDocument('labels', stressPlan(), await contextOf({ columns: 3, rows: 4 }));
    expect(html.match(/<section class="label-sheet">/g)).toHaveLength(Math.ceil(40 / 12));
  });
});
