import { describe, expect, it } from 'vitest';
import { asBuilt } from '../../src/documents/parts/as-built-of.js';
import type { DocumentContext } from '../../src/documents/parts/context.js';
import { nextRevision } from '../../src/documents/permit-sheet/addendum.js';
import { renderDocument, renderDocuments } from '../../src/documents/render.js';
import type { Plan } from '../../src/model/plan.js';
import { SettingsSchema } from '../../src/model/settings.js';
import type { SiteRecord } from '../../src/model/record.js';
import { demoPlan, demoPlans } from './fixtures/demo-plans.js';
import { recordOf } from './fixtures/records.js';
import { setByHand } from './fixtures/set-by-hand.js';

const contextOf = (record?: SiteRecord, more: Partial<DocumentContext> = {}): DocumentContext => ({
  settings: SettingsSchema.parse({}),
  date: '2025-03-28',
  fonts: { css: () => '', covers: () => true },
  measure: setByHand,
  ...(record === undefined ? {} : { record }),
  ...more,
});

/** The words of a page, its styles and pictures left out. */
const wordsOf = (html: string): string =>
  html
    .replace(/<style>[^]*?<\/style>|<svg[^]*?<\/svg>/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&nbsp;|\u00a0/g, ' ')
    .replace(/\s+/g, ' ');

const sectionOf = (html: string, id: string): string =>
  wordsOf(new RegExp(`<section[^>]*id="${id}"[^]*?</section>`).exec(html)?.[0] ?? '');

const house = (): Plan => demoPlan('UF-102');

/** P-4 with a longer lead: its level as it would be worked out anew. */
function longerLead(plan: Plan, metres: number, leadVoltage: number): SiteRecord {
  const anew = plan.protectors.map((one) => {
    if (one.tag !== 'P-4' || one.figures === null) return one;
    const { impulseWithstand, up } = one.figures;
    const margin = impulseWithstand === null || up === null ? null : impulseWithstand - up - leadVoltage;
    return { ...one, figures: { ...one.figures, leadVoltage, margin, reach: 4 } };
  });
  return recordOf(plan, {
    entry: (tag, entry) => (tag === 'P-4' ? { ...entry, leadLength: metres } : entry),
    asBuilt: { protectors: anew },
  });
}

describe('what a pack says of the work', () => {
  it('is that it is planned, before anything came back, on cover and margin', async () => {
    const { html } = await renderDocument('closeout-pack', house(), contextOf());
    expect(wordsOf(html)).toContain('PLANNED: this is what shall be fitted, not what was.');
    expect(html).toContain('planned');
    expect(html).not.toContain('id="as-built"');
  });

  it.each([
    ['as built', 'AS BUILT: the record is complete'],
    ['as built with deviations', 'AS BUILT WITH DEVIATIONS:'],
    ['record open', 'RECORD OPEN: 0 facts are missing, 0 are in conflict.'],
  ] as const)('of a record that is %s', async (state, says) => {
    const plan = house();
    const { html } = await renderDocument('closeout-pack', plan, contextOf(recordOf(plan, { state })));
    expect(wordsOf(html)).toContain(says);
  });

  it('is open where the record belongs to another plan, whatever it says itself', async () => {
    const plan = house();
    const context = contextOf(recordOf(plan), { recordFits: false });
    const { html } = await renderDocument('closeout-pack', plan, context);
    expect(wordsOf(html)).toContain('RECORD OPEN: 0 facts are missing, 1 is in conflict.');
    expect(sectionOf(html, 'as-built')).toContain('the plan changed after the work');
  });

  it('names who did it and when, on the cover and where it is signed', async () => {
    const plan = house();
    const { html } = await renderDocument('closeout-pack', plan, contextOf(recordOf(plan)));
    expect(wordsOf(html)).toContain('Done by R. Tansy, 2025-03-20');
    expect(sectionOf(html, 'record')).toContain('Installer R. Tansy L-118 2025-03-20');
  });
});

describe('what was recorded', () => {
  it('fills in the record and the wiring notes', async () => {
    const plan = house();
    const { html } = await renderDocument('closeout-pack', plan, contextOf(recordOf(plan)));
    const record = sectionOf(html, 'record');
    for (const text of ['INV-1000', '2 N m', '8 in', 'L1/G 126 V', '1 ON', '2-pole breaker 20 A'])
      expect(record).toContain(text);
    expect(html).not.toContain('<span class="blank"></span>');
    // P-3: its serial and volts at the box.
    expect(sectionOf(html, 'note-2')).toContain('INV-1002');
    expect(sectionOf(html, 'note-2')).toContain('126 V');
  });

  it('leaves a line to write on for what is missing', async () => {
    const plan = house();
    const record = recordOf(plan, {
      entry: (tag, entry) => (tag === 'P-2' ? { ...entry, torque: '', serials: [] } : entry),
      reading: (one) => (one.tag === 'P-2' ? { ...one, found: '' } : one),
    });
    const { html } = await renderDocument('closeout-pack', plan, contextOf(record));
    expect(html.split('<span class="blank"></span>')).toHaveLength(2);
    expect(html).toContain('<span class="blank">+/−</span>');
  });

  it('is told of both housings that share a reading', () => {
    const plan = demoPlan('UF-105');
    const [one, other] = plan.protectors.filter(({ housing }) => housing.of === 2);
    const { volts } = asBuilt(plan, recordOf(plan), true);
    const of = (tag: string | undefined): number => volts.filter((found) => found.tag === tag).length;
    expect(of(one?.tag)).toBeGreaterThan(0);
    expect(of(other?.tag)).toBe(of(one?.tag));
  });

  it('names a part without a serial by its date code', async () => {
    const plan = house();
    const record = recordOf(plan, {
      entry: (_, entry) => ({ ...entry, serials: [{ serial: 'none', dateCode: '2407' }] }),
    });
    const { html } = await renderDocument('closeout-pack', plan, contextOf(record));
    expect(sectionOf(html, 'record')).toContain('no serial, date code 2407');
    const labels = await renderDocument('labels', plan, contextOf(record));
    expect(wordsOf(labels.html)).toContain('Serial: 2407');
  });
});

describe('what is otherwise than planned', () => {
  const changesOf = (plan: Plan, record: SiteRecord): string[] =>
    asBuilt(plan, record, true).changes.map(({ tag, what, result }) => `${tag} ${what} ${result}`);

  it.each(demoPlans().map((plan) => [plan.job, plan] as const))(
    'is nothing where %s was fitted as planned',
    (_, plan) => {
      expect(changesOf(plan, recordOf(plan))).toEqual([]);
    },
  );

  it('is a longer lead, with the level and the reach that come of it', async () => {
    const plan = house();
    const holds = longerLead(plan, 1.4, 600);
    expect(changesOf(plan, holds)).toEqual(['P-4 lead none', 'P-4 level holds', 'P-4 reach none']);
    expect(changesOf(plan, longerLead(plan, 9, 6000))).toContain('P-4 level fails');
    const { html } = await renderDocument('closeout-pack', plan, contextOf(holds));
    expect(sectionOf(html, 'as-built')).toContain('P-4 leads together ≤ 19 in 55 in');
  });

  it('is another part, and one that fails a check isn’t told to hold', () => {
    const plan = house();
    const other = (items: SiteRecord['items']): SiteRecord =>
      recordOf(plan, {
        items,
        entry: (tag, entry) => (tag === 'P-3' ? { ...entry, partFitted: 'WK-OTHER' } : entry),
      });
    const item = {
      code: 'record/part-fails',
      severity: 'conflict',
      values: {},
      equipment: 'P-3',
      file: 'site-record.csv',
      line: 4,
      column: 'part_fitted',
      who: 'designer',
      field: 'part_fitted',
    } as const;
    expect(changesOf(plan, other([]))).toEqual(['P-3 part holds']);
    expect(changesOf(plan, other([item]))).toEqual(['P-3 part fails']);
  });

  it('is a dark light where one should be lit, volts outside their figures, and what was assumed', () => {
    const plan = house();
    const record = recordOf(plan, {
      reading: (one) =>
        one.tag !== 'P-3'
          ? one
          : one.kind === 'light' && one.channel === 2 && !one.due
            ? { ...one, found: 'dark' }
            : one.from === 'L1'
              ? { ...one, found: '140' }
              : one,
      facts: [
        {
          assumption: 'A1',
          tag: 'INV',
          fact: 'impulse_withstand',
          assumed: '4000',
          found: '2500',
          by: 'R. Tansy',
          date: '2025-03-20',
          photos: [],
          origin: { file: 'site-facts.csv', line: 2 },
        },
      ],
    });
    expect(changesOf(plan, record)).toEqual(['P-3 volts fails', 'P-3 light fails', 'INV fact none']);
  });

  it('says by whom it was accepted, or that nobody did', async () => {
    const plan = house();
    const dark = recordOf(plan, {
      state: 'as built with deviations',
      reading: (one) =>
        one.tag === 'P-4' && one.kind === 'light' && !one.due ? { ...one, found: 'dark' } : one,
    });
    const accepted = {
      ...dark,
      deviations: [
        {
          protector: 'P-4',
          check: 'light',
          by: 'A. Oakapple',
          date: '2025-03-24',
          reason: 'lamp',
          paper: '',
        },
      ] as const,
    };
    const told = async (record: unknown): Promise<string> =>
      sectionOf(
        (await renderDocument('closeout-pack', plan, contextOf(record as SiteRecord))).html,
        'as-built',
      );
    expect(await told(dark)).toContain('DOES NOT HOLD not accepted by anyone');
    expect(await told(accepted)).toContain('DOES NOT HOLD accepted by A. Oakapple, 2025-03-24; lamp');
  });

  it('has no name of the program’s own, in either language', async () => {
    const plan = demoPlan('UF-105');
    const record = recordOf(plan, {
      state: 'record open',
      reading: (one) => ({ ...one, found: one.kind === 'volts' ? '9999' : one.found }),
      entry: (tag, entry) => (tag === 'P-1' ? { ...entry, outcome: 'not fitted' } : entry),
    });
    for (const crewLanguage of ['en', 'es']) {
      const { html } = await renderDocument('closeout-pack', plan, contextOf(record, { crewLanguage }));
      const told = sectionOf(html, 'as-built') + sectionOf(html, 'record');
      expect(told).not.toMatch(/\w_\w|\bdc-in|\bac-in|\bac-out|undefined|NaN/);
    }
  });
});

describe('the addendum to the permit sheets', () => {
  const filesOf = async (plan: Plan, record?: SiteRecord): Promise<string[]> =>
    (await renderDocuments(plan, contextOf(record))).map(({ fileName }) => fileName);

  it('is there where the work changed what they say, and not for what a reading of the day found', async () => {
    const plan = house();
    expect(await filesOf(plan)).not.toContain('permit-addendum.pdf');
    expect(await filesOf(plan, recordOf(plan))).not.toContain('permit-addendum.pdf');
    const dark = recordOf(plan, {
      reading: (one) => (one.kind === 'light' ? { ...one, found: 'dark' } : one),
    });
    expect(await filesOf(plan, dark)).not.toContain('permit-addendum.pdf');
    expect(await filesOf(plan, longerLead(plan, 1.4, 600))).toContain('permit-addendum.pdf');
  });

  it('lists only what changed, as a revision, numbered behind the sheets, and defers', async () => {
    const plan = house();
    const documents = await renderDocuments(plan, contextOf(longerLead(plan, 1.4, 600)));
    const html = documents.find(({ fileName }) => fileName === 'permit-addendum.pdf')?.html ?? '';
    const words = wordsOf(html);
    for (const text of ['Rev. 1 2025-03-20 As built', 'P-4 leads together', 'AS BUILT', 'local code'])
      expect(words).toContain(text);
    expect(words).not.toMatch(/P-1 |P-2 /);
    const permit = documents.find(({ fileName }) => fileName === 'permit-sheet.pdf')?.html ?? '';
    const numbers = (of: string): string[] =>
      [...of.matchAll(/aria-label="Sheet ([^"]+)"/g)].map(([, n = '']) => n);
    const [own = ''] = numbers(html);
    expect(numbers(html)).toHaveLength(1);
    expect(numbers(permit)).not.toContain(own);
  });

  it('is no paper for a permit while the record is open', async () => {
    const plan = house();
    const record = { ...longerLead(plan, 1.4, 600), state: 'record open' } as const;
    const documents = await renderDocuments(plan, contextOf(record));
    const html = documents.find(({ fileName }) => fileName === 'permit-addendum.pdf')?.html ?? '';
    expect(wordsOf(html)).toContain('DRAFT, NOT FOR PERMIT');
    expect(html).toContain('class="watermark"');
  });

  it.each([
    ['', '1'],
    ['0', '1'],
    ['9', '10'],
    ['B', 'C'],
    ['Z', 'Z+1'],
    ['as sent', 'as sent+1'],
  ])('takes the revision behind %j', (was, is) => {
    expect(nextRevision(was)).toBe(is);
  });
});

describe('the owner’s sheet and the labels once the work is done', () => {
  it('show the lights of the first day in place of boxes to tick', async () => {
    const plan = house();
    const planned = await renderDocument('owner-sheet', plan, contextOf());
    expect(planned.html).toContain('☐ ON');
    expect(wordsOf(planned.html)).toContain('Made before the work.');
    const record = recordOf(plan, {
      reading: (one) =>
        one.tag === 'P-1' && one.channel === 2 && !one.due && one.kind === 'light'
          ? { ...one, found: 'dark' }
          : one,
    });
    const { html } = await renderDocument('owner-sheet', plan, contextOf(record));
    expect(html).not.toContain('☐ ON');
    expect(html).toContain('2 OFF');
    expect(wordsOf(html)).toContain(
      'Put in on 2025-03-20. We should look at them by 2026-03-20. Made after the work.',
    );
    const labels = wordsOf((await renderDocument('labels', plan, contextOf(record))).html);
    for (const text of [
      'Serial: INV-1000',
      'Date fitted: 2025-03-20',
      'Next check: 2026-03-20',
      'Breaker position: 13',
    ])
      expect(labels).toContain(text);
  });

  it('keep the boxes of a light that nobody has seen', async () => {
    const plan = house();
    const record = recordOf(plan, { reading: (one) => (one.tag === 'P-2' ? { ...one, found: '' } : one) });
    const { html } = await renderDocument('owner-sheet', plan, contextOf(record));
    expect(html.match(/☐ ON/g)).toHaveLength(2);
  });

  it('draw a light as it should be, and say that it was seen otherwise', async () => {
    const plan = house();
    const record = recordOf(plan, {
      reading: (one) =>
        one.tag === 'P-4' && one.channel === 1 && one.kind === 'light' && !one.due
          ? { ...one, found: 'dark' }
          : one,
    });
    const { html } = await renderDocument('owner-sheet', plan, contextOf(record));
    expect(html).toContain('1 ON, yellow');
    expect(wordsOf(html)).toContain('On the first day we saw light 1 off. Ask us why.');
  });

  it('leave out a protector that isn’t there', async () => {
    const plan = house();
    const record = recordOf(plan, {
      entry: (tag, entry) => (tag === 'P-4' ? { ...entry, outcome: 'not fitted' } : entry),
      asBuilt: { protectors: plan.protectors.filter(({ tag }) => tag !== 'P-4') },
    });
    for (const kind of ['owner-sheet', 'labels'] as const)
      expect(wordsOf((await renderDocument(kind, plan, contextOf(record))).html)).not.toContain('P-4');
    const pack = await renderDocument('closeout-pack', plan, contextOf(record));
    expect(sectionOf(pack.html, 'as-built')).toContain('P-4 outcome fitted not fitted');
  });
});
