import { describe, expect, it } from 'vitest';
import type { DocumentContext } from '../../src/documents/context.js';
import { renderDocument, renderDocuments } from '../../src/documents/render.js';
import { PlanSchema } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import { draftPlan, housePlan, hutPlan } from './fixtures/plans.js';

const context: DocumentContext = {
  settings: defaultSettings(),
  date: '2025-03-14',
  fonts: { css: '', covers: (codePoint) => codePoint < 0x2500 },
};
const plans = { hutPlan, housePlan, draftPlan };

describe.each(Object.entries(plans))('the documents of %s', (_name, make) => {
  const plan = PlanSchema.parse(make());

  it('are the four of a pack, without a script', async () => {
    const documents = await renderDocuments(plan, context);
    expect(documents.map((d) => d.fileName)).toEqual([
      'closeout-pack.pdf',
      'permit-sheet.pdf',
      'owner-sheet.pdf',
      'labels.pdf',
    ]);
    for (const document of documents) {
      expect(document.html).toMatch(/^<!doctype html>\n<html lang="en">/);
      expect(document.html).not.toMatch(/<script/i);
      expect(document.html.includes('DRAFT')).toBe(!plan.submittable);
    }
  });

  it('name each protector, its part, conductors and lights in the closeout pack', async () => {
    const { html } = await renderDocument('closeout-pack', plan, context);
    for (const protector of plan.protectors) {
      expect(html).toContain(`>${protector.tag}<`);
      if (protector.part !== null) expect(html).toContain(protector.part);
      for (const channel of protector.channels) {
        expect(html).toContain(channel.conductor);
        for (const light of channel.indicator) expect(html).toContain(light.state);
      }
    }
  });
});

describe('a hostile name', () => {
  it('prints as typed', async () => {
    const [closeout] = await renderDocuments(PlanSchema.parse(housePlan()), context);
    expect(closeout?.html).toContain('&lt;script&gt;alert(1)&lt;/script&gt; {{x}} &#x3D;1+1');
  });
});
