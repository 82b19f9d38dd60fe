import { describe, expect, it } from 'vitest';
import { withAccepted } from '../../src/batch/accepted.js';
import { questionsOf } from '../../src/batch/questions.js';
import { renderDocuments } from '../../src/documents/render.js';
import type { Plan } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import { planJob } from '../../src/plan/plan-job.js';
import { readListContents } from '../../src/read/list/lists.js';
import { setByHand } from './fixtures/set-by-hand.js';

const settings = defaultSettings();
const LIST =
  'job,basis,tag,kind,connects_to,run_length (m),place,ac_in,open_circuit_voltage,dc_inputs\n' +
  'J,nec-2023,S,service,,,House / wall,120/240,,\n' +
  'J,nec-2023,A,array,C,3,House / roof,,,\n' +
  'J,nec-2023,C,charge-controller,,,House / hall,,,1\n';
const HEADING = 'job,tag,field,code,question,found,answer,by,date\n';
const VOLTS = 'J,A,open_circuit_voltage,fact/open-circuit-voltage,,,90 V,S. Example,2026-02-28\n';

function planned(answers: string): { plan: Plan; questions: ReturnType<typeof questionsOf> } {
  const { jobs } = readListContents([{ name: 'list.csv', content: LIST }], { settings }, undefined, {
    answers: [{ name: 'answers.csv', content: HEADING + answers }],
  });
  const [list] = jobs;
  if (!list) throw new Error('no job');
  const plan = withAccepted(planJob(list, { catalogue: undefined, settings }), list);
  return { plan, questions: questionsOf(list.job, list, plan.openItems) };
}

async function htmlOf(plan: Plan, name: string): Promise<string> {
  const fonts = { css: () => '', covers: (): boolean => true };
  const context = {
    settings,
    date: '2026-03-31',
    fonts,
    measure: setByHand,
    appendices: ['working', 'sources'] as const,
  };
  const documents = await renderDocuments(plan, context);
  return documents.find(({ fileName }) => fileName === name)?.html ?? '';
}

describe('what people answered and accepted, on paper', () => {
  const lightning = planned(VOLTS).questions.find((q) => q.field === 'lightning_protection');
  const accept = `J,,lightning_protection,default/used,"${lightning?.question ?? ''}",,accept,R. Example,2026-03-01\n`;

  it('stands among the assumptions, each with who accepted it and when; what nobody accepted is still to verify', async () => {
    expect(lightning?.example).toBe('accept');
    const accepted = 'No lightning protection system. Accepted by R. Example on 2026-03-01.';
    const { plan } = planned(VOLTS + accept);
    for (const name of ['permit-sheet.pdf', 'closeout-pack.pdf']) {
      const html = await htmlOf(plan, name);
      expect(html).toContain(accepted);
      expect(html).toContain('Verify.');
    }
    const before = await htmlOf(planned(VOLTS).plan, 'permit-sheet.pdf');
    expect(before).toContain('No lightning protection system. Verify.');
  });

  it('is a source like any other, with who answered and when', async () => {
    const html = await htmlOf(planned(VOLTS).plan, 'permit-appendix.pdf');
    expect(html).toContain('answered by S. Example on 2026-02-28 (answers.csv, line 2');
  });
});
