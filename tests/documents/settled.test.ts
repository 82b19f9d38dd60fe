import { describe, expect, it } from 'vitest';
import { renderDocuments } from '../../src/documents/render.js';
import { dataOf, settingsOf } from '../plan/plan-of.js';
import { setByHand } from './fixtures/set-by-hand.js';

const HOW = 'assumed, settled by R. Example on 2026-02-03';
const CAPITAL = HOW.replace('assumed', 'Assumed');
const LIST = `S service; ac_in=120/240; place=House / wall
  A array; connects_to=C; run_length=3 m; open_circuit_voltage=90; place=House / roof
  C charge-controller; dc_inputs=1; place=House / hall`;
const SETTINGS = {
  settled: [
    { field: 'lightning_protection', value: 'none' },
    { field: 'system_grounding', value: 'solid' },
    { field: 'dc_grounding', value: 'negative', kinds: ['array'] },
  ].map((entry) => ({ ...entry, by: 'R. Example', date: '2026-02-03' })),
};
const plan = dataOf('', LIST, { settings: SETTINGS });
const context = {
  settings: settingsOf(SETTINGS),
  date: '2026-03-31',
  fonts: { css: () => '', covers: (): boolean => true },
  measure: setByHand,
};

async function htmlOf(of: typeof plan, name: string): Promise<string> {
  const documents = await renderDocuments(of, context);
  return documents.find(({ fileName }) => fileName === name)?.html ?? '';
}

describe('what a company settled, on paper', () => {
  it('stands in the closeout pack as on the permit sheets', async () => {
    const html = await htmlOf(plan, 'closeout-pack.pdf');
    expect(html).toContain(`No lightning protection system. ${CAPITAL}.`);
    expect(await htmlOf(dataOf('', LIST), 'closeout-pack.pdf')).not.toContain('settled by');
  });

  it('stands among the assumptions of the permit sheets, each with who settled it and when', async () => {
    const html = await htmlOf(plan, 'permit-sheet.pdf');
    expect(html).toContain(`No lightning protection system. ${CAPITAL}.`);
    expect(html).toContain(`AC system solidly grounded (S). ${CAPITAL}.`);
    expect(html).toContain(`DC negative grounded (A). ${CAPITAL}.`);
    expect(await htmlOf(dataOf('', LIST), 'permit-sheet.pdf')).not.toContain('settled by');
    const stated = `${LIST}; dc_grounding=floating`.replace(
      'S service;',
      'S service; system_grounding=solid;',
    );
    const sheet = await htmlOf(
      dataOf('lightning_protection=none', stated, { settings: SETTINGS }),
      'permit-sheet.pdf',
    );
    expect(sheet).not.toContain('solidly grounded (S)');
    expect(sheet).not.toContain('No lightning protection system');
  });
});
